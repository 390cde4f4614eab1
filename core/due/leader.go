package due

import (
	"barkslip/core/record"
	"barkslip/core/trade"
)

// Hints of the leader due.
const (
	leaderFirst uint8 = iota
	leaderLost        // it broke or its graft died
)

// leaderDue asks for a leader some weeks after the first push, and for another
// where the one chosen is lost.
func leaderDue(c *dueCase) []Due {
	if lost, ok := c.a.LeaderLost(); ok {
		day := c.b.Day(lost)
		return c.one(c.days(day, day.Add(trade.LeaderLostBy), lost, leaderLost))
	}
	if c.a.Leader != nil {
		return nil
	}
	return c.one(c.days(c.pushDay.Add(trade.LeaderDays), c.pushDay.Add(trade.LeaderBy), c.push, leaderFirst))
}

// Hints of the pinch due.
const (
	pinchFirst uint8 = iota
	pinchAgain
)

// pinchDue holds the leader's rivals back: when it is chosen, and every two to
// three weeks up to the block's day in August.
func pinchDue(c *dueCase) []Due {
	leads, ok := c.a.Leads()
	if _, lost := c.a.LeaderLost(); !ok || lost {
		return nil
	}
	chosen := c.b.Day(leads.Since)
	until := c.b.LastPinch(c.b.SeasonOf(chosen))
	last := record.LastOf(c.a.Pinches)
	if last == nil || c.b.Day(last.At) < chosen {
		return c.until(c.days(chosen, chosen.Add(trade.PinchBy), leads.Since, pinchFirst), max(until, chosen.Add(trade.PinchBy)))
	}
	day := c.b.Day(last.At)
	opens := day.Add(trade.PinchEvery)
	if opens > until {
		return nil
	}
	return c.until(c.days(opens, day.Add(trade.PinchEveryBy), last.At, pinchAgain), until)
}
