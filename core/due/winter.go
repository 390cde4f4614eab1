package due

import (
	"time"

	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// ended is the season that work around a season's end belongs to: from a month
// before the end until a month before the next, since such work may be early
// or late.
func ended(b *record.Block, d unit.Date) int { return b.SeasonOf(d.Add(earlyDays)) - 1 }

// earlyDays is how long before its day work of a season's end may be done.
const earlyDays = 30

// tyingDays is how far into the next season a first tie still belongs to the
// winter at its beginning: to the end of December.
const tyingDays = 92

// seasonsEndDue judges the stump in October of each year until it is untied.
func seasonsEndDue(c *dueCase) []Due {
	season, since := c.first, c.set
	if last := record.LastOf(c.a.Seasons); last != nil {
		season, since = max(season, ended(c.b, c.b.Day(last.At))+1), last.At
	}
	return c.one(c.days(c.b.InSeason(season, time.October, 1), c.b.InSeason(season, time.October, 31), since, 0))
}

// tiesOffDue loosens the tapes for the winter in the first two years, where ties
// were put on.
func tiesOffDue(c *dueCase) []Due {
	if len(c.a.Ties) == 0 {
		return nil
	}
	since := c.a.Ties[0].At
	season := max(c.first, c.b.SeasonOf(c.b.Day(since).Add(-tyingDays)))
	if last := record.LastOf(c.a.TapesOff); last != nil {
		season = max(season, ended(c.b, c.b.Day(last.At))+1)
	}
	winter := func(season int) Due {
		return c.days(max(c.b.InSeason(season, time.November, 1), c.b.Day(since)), c.b.InSeason(season, time.December, 31), since, 0)
	}
	switch last := c.first + trade.TieSeasons - 1; {
	case season > last:
		return nil
	case season == last:
		return c.one(winter(season))
	}
	next := winter(season + 1)
	return c.thenNext(winter(season), c.b.Day(next.Opens)-1, next)
}

// Hints of the dues of the dormant season.
const (
	winterMild uint8 = iota
	winterFrosty
	winterMildAgain // the leader was too short the winter before
	winterFrostyAgain
)

// winter makes a due of the dormant window after a number of seasons: from
// mid-January where winters are mild, from March in frost country.
func (c *dueCase) winter(season int, since time.Time) Due {
	if c.b.Frosty {
		return c.days(c.b.InSeason(season, time.March, 1), c.b.InSeason(season, time.April, 15), since, winterFrosty)
	}
	return c.days(c.b.InSeason(season, time.January, 15), c.b.InSeason(season, time.March, 1), since, winterMild)
}

// headBackDue heads the leader back in the dormant window after the first
// season, and in the next one after each winter in which it was too short.
func headBackDue(c *dueCase) []Due {
	season, since, again := c.first+1, c.set, uint8(0)
	for _, h := range c.a.Headed {
		if !h.What.Short {
			return nil
		}
		season, since, again = max(season, c.b.SeasonOf(c.b.Day(h.At))+1), h.At, winterMildAgain
	}
	d := c.winter(season, since)
	d.Hint += again
	return c.one(d)
}

// secondShootDue leaves the leader alone in the dormant window after the second
// season.
func secondShootDue(c *dueCase) []Due {
	if c.a.SecondOff != nil {
		return nil
	}
	return c.one(c.winter(c.first+2, c.set))
}

// nurseOffDue takes the nurse limbs off in the dormant windows after the first
// and second seasons, as long as any are left.
func nurseOffDue(c *dueCase) []Due {
	season := c.first + 1
	for _, off := range c.a.NurseOff {
		season = max(season, c.b.SeasonOf(c.b.Day(off.At))+1)
	}
	if season > c.first+2 || c.a.LimbsLeft() == 0 {
		return nil
	}
	return c.one(c.winter(season, c.set))
}
