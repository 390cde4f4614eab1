package due

import (
	"time"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// twineCheckDue is a look at the twine each April, July and October while it is
// on.
func twineCheckDue(c *dueCase) []Due {
	if !c.a.TwineOn() {
		return nil
	}
	seen := c.a.TwineSeen()
	opens := c.nextTwineCheck(c.b.Day(seen))
	return c.one(c.days(opens, opens.Add(trade.TwineCheckBy), seen, 0))
}

// nextTwineCheck is the first day for checking after a day.
func (c *dueCase) nextTwineCheck(after unit.Date) unit.Date {
	for season := c.b.SeasonOf(after) - 1; ; season++ {
		for _, month := range []time.Month{time.April, time.July, time.October} {
			if d := c.b.InSeason(season, month, 1); d > after {
				return d
			}
		}
	}
}
