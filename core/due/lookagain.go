package due

import (
	"time"

	"barkslip/core/ready"
	"barkslip/core/record"
)

// Hints of the look-again due: what it waits for.
const (
	againWait uint8 = iota
	againLook
	againWipe
)

// lookAgainDue opens when the verdict's wait is over: within a day of a wait of
// days, within the hour of one of minutes. It follows a look or a fresh cut.
func lookAgainDue(c *dueCase) []Due {
	if len(c.a.Looks) == 0 && len(c.a.FreshCuts) == 0 {
		return nil
	}
	v := c.verdict()
	if v.Until == nil {
		return nil
	}
	opens := v.Until.In(c.b.Zone)
	since := waitingSince(c.a, opens)
	switch v.Verdict {
	case ready.Look:
		return c.one(hinted(c.at(opens, opens.Add(time.Hour), since), againLook))
	case ready.Wipe:
		return c.one(hinted(c.at(opens, opens.Add(time.Hour), since), againWipe))
	}
	return c.one(hinted(c.at(opens, opens.AddDate(0, 0, 1), since), againWait))
}

func hinted(d Due, hint uint8) Due {
	d.Hint = hint
	return d
}

// waitingSince is the newest look, cut, gash or hole up to a time: what the wait
// until then counts from.
func waitingSince(a *record.Attempt, until time.Time) (since time.Time) {
	see := func(t time.Time) {
		if !t.After(until) && t.After(since) {
			since = t
		}
	}
	for _, l := range a.Looks {
		see(l.At)
	}
	for _, f := range a.FreshCuts {
		see(f.At)
	}
	for _, g := range a.Gashes {
		see(g.At)
	}
	for _, h := range a.Holes {
		see(h.At)
	}
	return since
}
