package due

import (
	"time"

	"barkslip/core/ready"
	"barkslip/core/record"
	"barkslip/core/trade"
)

// Hints of the look due.
const (
	lookFirst uint8 = iota
	lookTold        // by the day the verdict names
)

// lookDue runs from a week after cutting back, or the block's own wait, until
// the scions are set: to be looked at by the third day after, or by the day that
// the verdict names if it says to wait longer.
func lookDue(c *dueCase) []Due {
	cut := c.b.Day(c.a.CutBack.At)
	d := c.days(cut.Add(c.b.WaitDays()), cut.Add(c.b.WaitDays()+trade.GraftWithin), c.a.CutBack.At, lookFirst)
	if v := c.verdict(); v.Verdict == ready.Wait && v.Until.After(d.Opens) {
		d.By, d.Hint = v.Until.In(c.b.Zone), lookTold
	}
	return c.one(d)
}

// verdict is the advice as of the newest work of preparing.
func (c *dueCase) verdict() *ready.Advice {
	if c.advice == nil {
		c.judged = prepared(c.a)
		v := ready.Judge(ready.FoundOn(c.s, c.b, c.judged), c.judged, c.b.Zone, c.b.Units)
		c.advice = &v
	}
	return c.advice
}

// prepared is when work was last done or seen on the stump before its scions.
func prepared(a *record.Attempt) (newest time.Time) {
	see := func(t time.Time) {
		if t.After(newest) {
			newest = t
		}
	}
	if a.Nurse != nil {
		see(a.Nurse.At)
	}
	if a.CutBack != nil {
		see(a.CutBack.At)
	}
	if a.Measured != nil {
		see(a.Measured.At)
	}
	if l := record.LastOf(a.LimbsOff); l != nil {
		see(l.At)
	}
	if g := record.LastOf(a.Gashes); g != nil {
		see(g.At)
	}
	if h := record.LastOf(a.Holes); h != nil {
		see(h.At)
	}
	if l := record.LastOf(a.Looks); l != nil {
		see(l.At)
	}
	if f := record.LastOf(a.FreshCuts); f != nil {
		see(f.At)
	}
	return newest
}
