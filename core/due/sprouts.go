package due

import (
	"time"

	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Sprouts is rubbing off the stock's own sprouts.
const Sprouts Kind = 10

// Hints of the sprouts due.
const (
	sproutsAfterSet uint8 = iota
	sproutsAfterCut
	sproutsWeek      // since the last rubbing
	sproutsFortnight // since the last rubbing, with a leader
	sproutsLater     // since the last rubbing, in a later season
	sproutsLeafOut
)

var sprouts = Work{
	Kind: Sprouts, Name: "sprouts", While: working, Rule: sproutsRule, Step: "sprouts",
	Says: []string{
		"Scions set {since}: sprouts come 14 days later; rub them.",
		"Cut back {since}: sprouts come 21 days later; rub them.",
		"Last rubbed {since}: rub again after 7 days, until a leader is chosen.",
		"Last rubbed {since}: rub again after 14 days, now that a leader is chosen.",
		"Last rubbed {since}: rub again after 21 days, as in all later years.",
		"Sprouts start with the leaf, {opens}, and are rubbed every 21 days from then.",
	},
	Facts: []trade.Fact{trade.StockSprouts, trade.SproutRounds},
}

// sproutsRule is the rubbing of stock sprouts: weekly in the first season, every
// two weeks once there is a leader, and every three in later seasons from
// leaf-out on, each year until the tree is untied.
func sproutsRule(c *dueCase) []Due {
	opens, since, hint := c.sproutsFirst()
	if rub := c.rubbed(); rub != nil {
		day := c.b.Day(rub.At)
		every, again := c.sproutsEvery(day)
		if next := day.Add(every); next > opens {
			opens, since, hint = next, rub.At, again
		}
	}
	season := c.b.SeasonOf(opens)
	if leaf := c.b.LeafOut(season); season != c.first && opens < leaf {
		opens, hint = leaf, sproutsLeafOut
	}
	now := c.ending(c.days(opens, opens.Add(trade.SproutsBy), since, hint), c.b.SeasonEnds(season))
	leaf := c.b.LeafOut(season + 1)
	later := c.ending(c.days(leaf, leaf.Add(trade.SproutsBy), since, sproutsLeafOut), c.b.SeasonEnds(season+1))
	later.Yearly = true
	c.some = append(c.some[:0], now, later)
	return c.some
}

// rubbed is the last rubbing of which both was told, near the graft and below.
func (c *dueCase) rubbed() *record.Said[record.SproutsRubbed] {
	for i := len(c.a.Rubbed) - 1; i >= 0; i-- {
		if c.a.Rubbed[i].What.Told() {
			return &c.a.Rubbed[i]
		}
	}
	return nil
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

// KeepSprouts is leaving sprouts on a stump whose grafts are all dead.
const KeepSprouts Kind = 11

var keepSprouts = Work{
	Kind: KeepSprouts, Name: "keep-sprouts", While: lost, Rule: keepSproutsRule, Step: "keep-sprouts",
	Says:  []string{"The last graft was lost {since}: keep 1 to 3 sprouts by {by}, so that the tree lives."},
	Facts: []trade.Fact{trade.KeepSprouts, trade.SproutsUsed},
}

// keepSproutsRule leaves sprouts on a stump whose grafts are all dead, so that
// the tree lives, in the season in which they died.
func keepSproutsRule(c *dueCase) []Due {
	if c.stage != record.StageFailed || len(c.a.Grafts) == 0 || c.a.Kept != nil {
		return nil
	}
	lost := c.a.LostAt()
	day := c.b.Day(lost)
	return c.until(c.days(day, day.Add(trade.KeepSproutsBy), lost, 0), max(c.b.SeasonEnds(c.b.SeasonOf(day)), day.Add(trade.KeepSproutsBy)))
}
