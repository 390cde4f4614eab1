package part

import (
	"time"

	"barkslip/core/due"
	"barkslip/ui/paper"
)

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
