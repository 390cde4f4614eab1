package due

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"barkslip/core/record"
	"barkslip/core/trade"
)

// Facts is what the due rests on.
func (d Due) Facts() []trade.Fact { return d.Kind.work().Facts }

// Why says in one sentence what the due counts from. Names in braces in the
// kind's sentences stand for its times and the block's figures.
func (d Due) Why(b *record.Block) string {
	says := d.Kind.work().Says
	text := says[min(int(d.Hint), len(says)-1)]
	if !strings.Contains(text, "{since}") {
		d.Since = time.Time{}
	}
	out := make([]byte, 0, len(text)+16)
	for {
		plain, rest, more := strings.Cut(text, "{")
		out = append(out, plain...)
		if !more {
			return string(out)
		}
		name, after, _ := strings.Cut(rest, "}")
		out, text = d.fill(out, name, b), after
	}
}

// fill appends what a name in braces stands for. A day carries its year where the
// sentence names days of different years.
func (d Due) fill(out []byte, name string, b *record.Block) []byte {
	since, opens, by := d.Since.In(b.Zone), d.Opens.In(b.Zone), d.By.In(b.Zone)
	day := func(t time.Time, beside time.Time) []byte {
		if t.Year() != beside.Year() && !d.Since.IsZero() {
			return t.AppendFormat(out, "2 Jan 2006")
		}
		return t.AppendFormat(out, "2 Jan")
	}
	switch name {
	case "since":
		return day(since, by)
	case "at":
		return since.AppendFormat(out, "15:04")
	case "opens":
		return day(opens, since)
	case "span": // from the one day to the other; their year stands once, at the end
		out = append(day(opens, by), " to "...)
		return day(by, since)
	case "from":
		return opens.AppendFormat(out, "15:04")
	case "month":
		return opens.AppendFormat(out, "January")
	case "by":
		return day(by, since)
	case "till":
		return by.AppendFormat(out, "15:04")
	case "monthby":
		return by.AppendFormat(out, "January")
	case "wait":
		return strconv.AppendInt(out, int64(b.WaitDays()), 10)
	case "waited":
		return strconv.AppendInt(out, int64(b.WaitDays()+trade.GraftWithin), 10)
	case "winter":
		if b.Frosty {
			return append(out, ", as in frost country"...)
		}
		return append(out, ", as where winters are mild"...)
	case "shoot":
		return append(out, b.Units.Figure(trade.FirstTieShoot)...)
	case "long":
		return append(out, b.Units.Figure(trade.TwineShoot)...)
	case "foot":
		return append(out, b.Units.Figure(trade.TieEvery)...)
	}
	return append(append(append(out, '{'), name...), '}')
}

// Sentence is a due as the walk says it, with its dates.
func (d Due) Sentence(b *record.Block, now time.Time) string {
	if !d.Late(now) {
		return d.Why(b)
	}
	return fmt.Sprintf("%s This work is %s late.", d.Why(b), d.LateBy(b, now))
}

// LateBy is how late the due is at now: in the block's days, or by the clock for
// what runs by it within the day.
func (d Due) LateBy(b *record.Block, now time.Time) string {
	days := int(b.Day(now) - b.Day(d.By))
	by := now.Sub(d.By)
	switch {
	case days > 1:
		return fmt.Sprintf("%d days", days)
	case days == 1:
		return "a day"
	case by >= 2*time.Hour:
		return fmt.Sprintf("%d hours", int(by.Hours()))
	}
	return fmt.Sprintf("%d min", max(1, int(by.Minutes())))
}
