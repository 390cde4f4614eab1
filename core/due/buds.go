package due

import (
	"time"

	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Hints of the buds due.
const (
	budsFirst uint8 = iota
	budsAgain
	budsScratch // from day 42 a graft that has not moved is scratched
	budsGreen   // all that has not moved was green: left to day 60
	budsLast    // day 60 is past
)

// budsDue asks for a look at the buds, two weeks after setting and then weekly,
// until every graft pushes or is dead.
func budsDue(c *dueCase) []Due {
	if c.a.Settled() {
		return nil
	}
	opens, hint, since := c.setDay.Add(trade.BudsDays), budsFirst, c.set
	by := c.setDay.Add(trade.BudsBy)
	last := lastDay(c.b, c.a.Visits)
	if last != 0 {
		if next := last.Add(trade.BudsEvery); next > opens {
			opens, by, hint, since = next, next.Add(trade.BudsBy-trade.BudsDays), budsAgain, record.LastOf(c.a.Visits).At
		}
	}
	return c.one(c.scratching(opens, by, last, since, hint))
}

// scratching turns the look at the buds into the scratch that is due late in
// the wait.
func (c *dueCase) scratching(opens, by, last unit.Date, since time.Time, hint uint8) Due {
	green := c.setDay.Add(trade.GreenWaits)
	switch {
	case last < green && opens < green && c.allGreen():
		return c.days(green, green.Add(trade.BudsBy-trade.BudsDays), since, budsGreen)
	case opens > green:
		hint = budsLast
	case opens >= c.setDay.Add(trade.ScratchFrom):
		hint = budsScratch
	}
	return c.days(opens, by, since, hint)
}

// greenAt says whether the newest scratch of a graft, in the time for it, was
// green.
func (c *dueCase) greenAt(slot int) bool {
	for i := len(c.a.Visits) - 1; i >= 0; i-- {
		v := c.a.Visits[i]
		if c.b.Day(v.At) < c.setDay.Add(trade.ScratchFrom) {
			return false
		}
		for _, f := range v.What.Found {
			if f.Slot == slot && f.Scratch != "" {
				return f.Scratch == record.Green
			}
		}
	}
	return false
}

// allGreen says whether every graft that has not moved showed green when it was
// scratched, in the time for scratching.
func (c *dueCase) allGreen() bool {
	for _, g := range c.a.Grafts {
		if g.Waiting() && !c.greenAt(g.Slot) {
			return false
		}
	}
	return true
}
