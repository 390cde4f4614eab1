package due

import (
	"time"

	"barkslip/core/girth"
	"barkslip/core/trade"
)

// Hints of the twine due.
const (
	twineLong uint8 = iota // the leader is, or will be, long enough
	twineAugust
)

// twineDue puts the twine on when the leader is long enough, on 1 August at the
// latest.
func twineDue(c *dueCase) []Due {
	leads, ok := c.a.Leads()
	if _, lost := c.a.LeaderLost(); !ok || lost || c.a.Twine != nil {
		return nil
	}
	chosen := c.b.Day(leads.Since)
	opens, hint := c.b.InSeason(c.b.SeasonOf(chosen), time.August, 1), twineAugust
	if long, ok := girth.Reaches(c.shoots(), trade.TwineShoot); ok && long < opens {
		opens, hint = long, twineLong
	}
	opens = max(opens, chosen)
	return c.one(c.days(opens, opens.Add(trade.TwineBy), leads.Since, hint))
}
