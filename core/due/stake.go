package due

import "barkslip/core/trade"

// Hints of the stake due.
const (
	stakeWaiting uint8 = iota // nothing pushes yet
	stakePushing
)

// stakeDue is from two weeks after setting until a stake stands, by a week after
// the first push. While nothing pushes it is not late before the last day on
// which a push is waited for, and that week.
func stakeDue(c *dueCase) []Due {
	if c.a.Stake != nil {
		return nil
	}
	opens := c.setDay.Add(trade.StakeDays)
	if c.pushDay != 0 {
		return c.one(c.days(opens, c.pushDay.Add(trade.StakeAfterPush), c.set, stakePushing))
	}
	return c.one(c.days(opens, c.setDay.Add(trade.GreenWaits+trade.StakeAfterPush), c.set, stakeWaiting))
}
