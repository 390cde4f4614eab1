package core

import (
	"time"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// twineOn says whether twine is on the stem.
func (a *Attempt) twineOn() bool {
	return a.Twine != nil && (a.TwineCut == nil || a.TwineCut.At.Before(a.Twine.At))
}

// twineSeen is when the twine was last put on, checked or moved.
func (a *Attempt) twineSeen() time.Time {
	seen := a.Twine.At
	if s := lastOf(a.TwineChecks); s != nil && s.At.After(seen) {
		seen = s.At
	}
	if s := lastOf(a.TwineMoves); s != nil && s.At.After(seen) {
		seen = s.At
	}
	return seen
}

// twineCheckDue is a look at the twine each April, July and October while it is
// on.
func twineCheckDue(c *dueCase) []Due {
	if !c.a.twineOn() {
		return nil
	}
	seen := c.a.twineSeen()
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
