package due

import (
	"time"

	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Hints of the sprouts due.
const (
	sproutsAfterSet uint8 = iota
	sproutsAfterCut
	sproutsWeek      // since the last rubbing
	sproutsFortnight // since the last rubbing, with a leader
	sproutsLater     // since the last rubbing, in a later season
	sproutsLeafOut
)

// sproutsDue is the rubbing of stock sprouts: weekly in the first season, every
// two weeks once there is a leader, and every three in later seasons from
// leaf-out on.
func sproutsDue(c *dueCase) []Due {
	first, since, hint := c.sproutsFirst()
	opens := first
	if rub := record.LastOf(c.a.Rubbed); rub != nil {
		day := c.b.Day(rub.At)
		every, again := c.sproutsEvery(day)
		if next := day.Add(every); next > first {
			opens, since, hint = next, rub.At, again
		}
	}
	if moved := c.season(opens); moved != opens {
		opens, hint = moved, sproutsLeafOut
	}
	last := max(c.first+trade.SeasonsOfCare-1, c.b.SeasonOf(opens)+1)
	return c.everySeason(c.days(opens, opens.Add(trade.SproutsBy), since, hint), last, trade.SproutsBy, sproutsLeafOut)
}

// sproutsFirst is when sprouts are first to be looked for: the earlier of the
// days after setting and after cutting back.
func (c *dueCase) sproutsFirst() (opens unit.Date, since time.Time, hint uint8) {
	if !c.set.IsZero() {
		opens, since, hint = c.setDay.Add(trade.SproutsAfterSet), c.set, sproutsAfterSet
	}
	if cut := c.a.CutBack; cut != nil {
		if day := c.b.Day(cut.At).Add(trade.SproutsAfterCut); opens == 0 || day < opens {
			opens, since, hint = day, cut.At, sproutsAfterCut
		}
	}
	return opens, since, hint
}

// sproutsEvery is how many days after a rubbing the next is due.
func (c *dueCase) sproutsEvery(rubbed unit.Date) (days int, hint uint8) {
	switch {
	case c.b.SeasonOf(rubbed) > c.first:
		return trade.SproutsEveryLater, sproutsLater
	case c.a.Leader != nil:
		return trade.SproutsEveryLeader, sproutsFortnight
	}
	return trade.SproutsEvery, sproutsWeek
}
