package due

import (
	"time"

	"barkslip/core/record"
	"barkslip/core/trade"
)

// keepSproutsDue leaves sprouts on a stump whose grafts are all dead, so that
// the tree lives.
func keepSproutsDue(c *dueCase) []Due {
	if c.stage != record.StageFailed || len(c.a.Grafts) == 0 || c.a.Kept != nil {
		return nil
	}
	lost := c.a.LostAt()
	day := c.b.Day(lost)
	return c.one(c.days(day, day.Add(trade.KeepSproutsBy), lost, 0))
}

// Hints of the regraft due.
const (
	regraftFailed uint8 = iota
	regraftLeft         // left for the season
)

// regraftDue brings a failed stump, or one left for the season, back in the next
// spring. An attempt that was begun but not cut back does not yet close it.
func regraftDue(c *dueCase) []Due {
	a := c.a
	if n := len(c.s.Attempts); a.CutBack == nil && !a.Grafted() && a.GivenUp == nil && a.Failed == nil && n > 1 {
		a = c.s.Attempts[n-2]
	}
	since, hint := a.LostAt(), regraftFailed
	if up := a.GivenUp; up != nil {
		if !up.What.Season {
			return nil
		}
		since, hint = up.At, regraftLeft
	}
	if since.IsZero() || a.Untied != nil {
		return nil
	}
	lost := c.b.Day(since)
	season := c.b.SeasonOf(lost)
	opens := c.b.InSeason(season, time.March, 15)
	if opens <= lost {
		season++
		opens = c.b.InSeason(season, time.March, 15)
	}
	return c.one(c.days(opens, c.b.InSeason(season, time.May, 15), since, hint))
}
