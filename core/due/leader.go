package due

import (
	"time"

	"barkslip/core/record"
	"barkslip/core/trade"
)

// Stake is setting the stake, once something pushes.
const Stake Kind = 7

var stake = Work{
	Kind: Stake, Name: "stake", While: pushed, Rule: stakeRule, Step: "stake",
	Says:  []string{"Push first seen {since}: put the stake up within 7 days, by {by}."},
	Facts: []trade.Fact{trade.StakeTime, trade.BudsMove},
}

func stakeRule(c *dueCase) []Due {
	if c.a.Stake != nil {
		return nil
	}
	return c.one(c.days(c.pushDay, c.pushDay.Add(trade.StakeAfterPush), c.push, 0))
}

// Leader is choosing the shoot that becomes the tree.
const Leader Kind = 12

// Hints of the leader due.
const (
	leaderFirst uint8 = iota
	leaderLost        // it broke or its graft died
	leaderShoot       // its shoot is not told
)

var leader = Work{
	Kind: Leader, Name: "leader", While: pushed, Rule: leaderRule, Step: "leader",
	Says: []string{
		"Push first seen {since}: choose the leader 14 to 28 days later.",
		"The leader was lost {since}: choose another by {by}.",
		"The leader was chosen {since}: record which of its graft's shoots it is.",
	},
	Facts: []trade.Fact{trade.Leader, trade.LeaderTime},
}

// leaderRule asks for a leader some weeks after a living graft was first seen
// pushing, and for another at once where the one chosen is lost.
func leaderRule(c *dueCase) []Due {
	push := c.livingPush()
	if push.IsZero() {
		return nil
	}
	if lost, ok := c.a.LeaderLost(); ok {
		day := c.b.Day(lost)
		return c.one(c.days(day, day.Add(trade.LeaderLostBy), lost, leaderLost))
	}
	if leads, ok := c.a.Leads(); ok {
		if leads.Shoot != "" {
			return nil
		}
		day := c.b.Day(leads.Since)
		return c.one(c.days(day, day.Add(trade.LeaderLostBy), leads.Since, leaderShoot))
	}
	day := c.b.Day(push)
	return c.one(c.days(day.Add(trade.LeaderDays), day.Add(trade.LeaderBy), push, leaderFirst))
}

// livingPush is when a graft that still lives and pushes was first seen to,
// zero where none does.
func (c *dueCase) livingPush() (first time.Time) {
	for _, g := range c.a.Grafts {
		if g.State != record.Pushing && g.State != record.Growing {
			continue
		}
		if at := c.a.PushedAt(g.Slot); first.IsZero() || at.Before(first) {
			first = at
		}
	}
	return first
}

// Pinch is pinching the leader's rivals.
const Pinch Kind = 14

// Hints of the pinch due.
const (
	pinchFirst uint8 = iota
	pinchAgain
)

var pinch = Work{
	Kind: Pinch, Name: "pinch", While: grafted, Rule: pinchRule, Step: "pinch",
	Says: []string{
		"The leader was chosen {since}: pinch its rivals within 3 days.",
		"Last pinched {since}: pinch again 14 to 21 days later.",
	},
	Facts: []trade.Fact{trade.Leader, trade.PinchTime},
}

// pinchRule holds the leader's rivals back: when it is chosen, and every two to
// three weeks up to the block's day in August; none opens or stays after it.
func pinchRule(c *dueCase) []Due {
	leads, ok := c.a.Leads()
	if _, lost := c.a.LeaderLost(); !ok || lost {
		return nil
	}
	chosen := c.b.Day(leads.Since)
	until := c.b.LastPinch(c.b.SeasonOf(chosen))
	last := record.LastOf(c.a.Pinches)
	if last == nil || c.b.Day(last.At) < chosen {
		return c.until(c.days(chosen, chosen.Add(trade.PinchBy), leads.Since, pinchFirst), until)
	}
	day := c.b.Day(last.At)
	return c.until(c.days(day.Add(trade.PinchEvery), day.Add(trade.PinchEveryBy), last.At, pinchAgain), until)
}
