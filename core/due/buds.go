package due

import (
	"time"

	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Buds is the look at the buds of every graft.
const Buds Kind = 8

// Hints of the buds due.
const (
	budsFirst uint8 = iota
	budsAgain
	budsScratch // from day 42 a graft that has not moved is scratched
	budsGreen   // all that has not moved was green: left to day 60
	budsLast    // day 60 is past
	budsAsked   // one hand saw a graft dead that another saw alive
)

var buds = Work{
	Kind: Buds, Name: "buds", While: grafted, Rule: budsRule, Step: "visit",
	Says: []string{
		"Scions set {since}: buds begin to move after 2 to 3 weeks.",
		"Seen {since} with grafts not moving: look again every 7 days.",
		"Not moving when last seen {since}: from day 42 after setting scratch the bark, brown is dead.",
		"Green when scratched: leave it until day 60 after setting, {opens}.",
		"Still not moving past day 60 after setting: scratch it again and decide.",
		"Two hands differ on one graft {since}, dead or alive: look at it again.",
	},
	Facts: []trade.Fact{trade.BudsMove, trade.BudRounds, trade.ScratchTest},
}

// budsRule asks for a look at the buds, two weeks after setting and then weekly,
// until every graft pushes or is dead. A visit that left a graft untold is none. A
// graft that is said to be dead and alive is looked at again at once.
func budsRule(c *dueCase) []Due {
	if at := c.disputed(); !at.IsZero() {
		day := c.b.Day(at)
		return c.one(c.days(day, day.Add(trade.DisputedBy), at, budsAsked))
	}
	if c.a.Settled() {
		return nil
	}
	opens, hint, since := c.setDay.Add(trade.BudsDays), budsFirst, c.set
	by := c.setDay.Add(trade.BudsBy)
	seen, last := c.wholeVisit()
	if last != 0 {
		if next := last.Add(trade.BudsEvery); next > opens {
			opens, by, hint, since = next, next.Add(trade.BudsBy-trade.BudsDays), budsAgain, seen
		}
	}
	d := c.scratching(opens, by, last, since, hint)
	return c.one(d)
}

// disputed is when a graft was last seen dead by one hand and alive by another
// that nobody looked at since; zero where none was.
func (c *dueCase) disputed() (at time.Time) {
	for _, g := range c.a.Grafts {
		if d := c.s.Disputed(g.Slot); d.After(at) && !g.Seen.After(d) && d.After(g.Set.At) {
			at = d
		}
	}
	return at
}

// wholeVisit is the newest visit that told of every graft alive then, zero where
// there was none.
func (c *dueCase) wholeVisit() (at time.Time, day unit.Date) {
	for i := len(c.a.Visits) - 1; i >= 0; i-- {
		if v := c.a.Visits[i]; c.whole(v) {
			return v.At, c.b.Day(v.At)
		}
	}
	return at, 0
}

// whole says whether a visit told of every graft that was not dead before it.
func (c *dueCase) whole(v record.Said[record.Visited]) bool {
	for _, g := range c.a.Grafts {
		deadBefore := g.State == record.Dead && g.Since.Before(v.At)
		if record.FindingOf(&v, g.Slot) == nil && !deadBefore {
			return false
		}
	}
	return true
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

// greenAt says whether the newest scratch of a graft, in the time for it, was
// green.
func (c *dueCase) greenAt(slot int) bool {
	for i := len(c.a.Visits) - 1; i >= 0; i-- {
		v := c.a.Visits[i]
		if c.b.Day(v.At) < c.setDay.Add(trade.ScratchFrom) {
			return false
		}
		if f := record.FindingOf(&v, slot); f != nil && f.Scratch != "" {
			return f.Scratch == record.Green
		}
	}
	return false
}

// ConfirmTake is the visit that tells which grafts have taken.
const ConfirmTake Kind = 9

var confirmTake = Work{
	Kind: ConfirmTake, Name: "confirm-take", While: pushed, Rule: confirmRule, Step: "visit",
	Says:  []string{"Push first seen {since}: a graft has taken if it is alive and growing 30 days later."},
	Facts: []trade.Fact{trade.MovingNotTaking, trade.CallusDays},
}

// confirmRule is the visit a month after the first push, to every living graft.
func confirmRule(c *dueCase) []Due {
	opens := c.pushDay.Add(trade.TakenDays)
	if _, last := c.wholeVisit(); last >= opens {
		return nil
	}
	return c.one(c.days(opens, c.pushDay.Add(trade.ConfirmBy), c.push, 0))
}
