package due

import "barkslip/core/trade"

// confirmDue is the visit a month after the first push that tells whether the
// stump has taken.
func confirmDue(c *dueCase) []Due {
	opens := c.pushDay.Add(trade.TakenDays)
	if lastDay(c.b, c.a.Visits) >= opens {
		return nil
	}
	return c.one(c.days(opens, c.pushDay.Add(trade.ConfirmBy), c.push, 0))
}
