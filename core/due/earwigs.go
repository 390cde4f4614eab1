package due

import (
	"barkslip/core/record"
	"barkslip/core/trade"
)

// Hints of the earwigs due.
const (
	earwigsFirst uint8 = iota
	earwigsAgain
)

// earwigsDue renews the ring, on a block that has earwigs, before buds open and
// every fortnight until the shoots have hardened. A ring set with the graft is
// worn out by then and does not count.
func earwigsDue(c *dueCase) []Due {
	if !c.b.Earwigs {
		return nil
	}
	opens, by, since, hint := c.setDay.Add(trade.EarwigOpens), c.setDay.Add(trade.EarwigBy), c.set, earwigsFirst
	if ring := record.LastOf(c.a.Rings); ring != nil && c.b.Day(ring.At) >= opens {
		opens = c.b.Day(ring.At).Add(trade.EarwigDays)
		by, since, hint = opens.Add(trade.EarwigBy-trade.EarwigOpens), ring.At, earwigsAgain
	}
	if c.pushDay != 0 {
		hard := c.pushDay.Add(trade.EarwigHardenDays)
		if opens > hard {
			return nil
		}
		return c.until(c.days(opens, by, since, hint), hard)
	}
	return c.one(c.days(opens, by, since, hint))
}
