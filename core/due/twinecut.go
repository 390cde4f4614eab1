package due

import (
	"slices"
	"time"

	"barkslip/core/girth"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Hints of the cut-twine due.
const (
	cutGirdling uint8 = iota // by the growth of the stem inside the loop
	cutOld                   // by the years it has been on
	cutTight                 // it was seen tight
)

// cutTwineDue takes the twine off a month before the stem fills its loop, and
// three years after it was put on at the latest.
func cutTwineDue(c *dueCase) []Due {
	if !c.a.TwineOn() {
		return nil
	}
	twined := c.a.Twine.At
	day := c.b.Day(twined)
	old := day.AddYears(trade.TwineYears)
	on, hint, ok := c.girdles()
	if opens := max(on.Add(-trade.TwineWarnDays), day); ok && opens < old {
		return c.one(c.days(opens, on, twined, hint))
	}
	return c.one(c.days(old, old.Add(trade.TwineOldBy), twined, cutOld))
}

// girdles is the day the twine grows, or was seen, tight.
func (c *dueCase) girdles() (on unit.Date, hint uint8, ok bool) {
	if at, tight := c.a.SeenTight(); tight {
		return c.b.Day(at), cutTight, true
	}
	t, err := girth.Twine(TwinePlan(c.a, c.b))
	if err != nil || t.TightOn == nil {
		return 0, 0, false
	}
	return *t.TightOn, cutGirdling, true
}

// twinePlan is the loop as it is now and the girths measured inside it. With
// fewer than three it goes by the usual gain a year.
func TwinePlan(a *record.Attempt, b *record.Block) girth.TwinePlan {
	p := girth.TwinePlan{Loop: a.Twine.What.Loop.Length}
	add := func(at time.Time, stem record.Measure) {
		if stem.Length > 0 && !at.Before(a.Twine.At) {
			p.Readings = append(p.Readings, girth.Reading{On: b.Day(at), Girth: stem.Length})
		}
	}
	add(a.Twine.At, a.Twine.What.Stem)
	for _, s := range a.TwineChecks {
		add(s.At, s.What.Stem)
	}
	for _, m := range a.TwineMoves {
		if add(m.At, m.What.Stem); m.What.Loop.Given() && !m.At.Before(a.Twine.At) {
			p.Loop = m.What.Loop.Length
		}
	}
	p.Readings = oneADay(p.Readings)
	if len(p.Readings) < leastGirths {
		rate := trade.GirthAYear
		p.Rate = &rate
	}
	return p
}

// leastGirths is how many girths show a growth of the stem's own.
const leastGirths = 3

// oneADay puts readings in order of date and keeps the last of each day.
func oneADay(readings []girth.Reading) []girth.Reading {
	slices.SortStableFunc(readings, func(x, y girth.Reading) int { return int(x.On) - int(y.On) })
	out := readings[:0]
	for i, r := range readings {
		if i+1 == len(readings) || readings[i+1].On != r.On {
			out = append(out, r)
		}
	}
	return out
}
