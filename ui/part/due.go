package part

import (
	"fmt"
	"time"

	"barkslip/core/due"
	"barkslip/ui/paper"
)

// Late is how late work is: 15 min late, 3 h late, 29 days late.
func Late(by time.Duration) string {
	switch {
	case by < time.Hour:
		return fmt.Sprintf("%d min late", max(1, int(by.Minutes())))
	case by < 24*time.Hour:
		return fmt.Sprintf("%d h late", int(by.Hours()))
	}
	return Counted(int(by.Hours()/24), "day") + " late"
}

// DueWords is when the work of a due is to be done: the clock today, the
// day this year, else the month.
func (x *Session) DueWords(d due.Due) (string, paper.Ink) {
	b, now := x.Site(), x.Time()
	short := func(t time.Time) string {
		t = t.In(b.Zone)
		switch {
		case b.Day(t) == b.Day(now):
			return t.Format("15:04")
		case t.Year() == now.In(b.Zone).Year():
			return t.Format("2 Jan")
		}
		return t.Format("Jan 2006")
	}
	switch {
	case d.Late(now):
		return "LATE", paper.Warn
	case d.Open(now) && !d.Kind.Timed() && b.Day(d.By) == b.Day(now):
		return "today", paper.Warn
	case d.Open(now):
		return "by " + short(d.By), paper.Warn
	}
	if d.Opens.In(b.Zone).Year() != now.In(b.Zone).Year() {
		return "in " + short(d.Opens), paper.Faint
	}
	return "from " + short(d.Opens), paper.Faint
}
