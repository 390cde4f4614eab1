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

// SeasonsEnd is judging how the tree stands when its growth is over.
const SeasonsEnd Kind = 16

var seasonsEnd = Work{
	Kind: SeasonsEnd, Name: "seasons-end", While: grafted, Rule: seasonsEndRule, Step: "seasons-end",
	Says:  []string{"The season's growth is over in {month}: record how it stands by {by}."},
	Facts: []trade.Fact{trade.SeasonJudged, trade.MovingNotTaking},
}

// seasonsEndRule judges the stump in October of each year until it is untied.
func seasonsEndRule(c *dueCase) []Due {
	season, since := c.first, c.set
	if last := record.LastOf(c.a.Seasons); last != nil {
		season, since = max(season, ended(c.b, c.b.Day(last.At))+1), last.At
	}
	d := c.days(c.b.InSeason(season, time.October, 1), c.b.InSeason(season, time.October, 31), since, 0)
	return c.yearly(d, c.b.InSeason(season, time.December, 31))
}

// TiesOff is loosening the tapes for the winter.
const TiesOff Kind = 17

var tiesOff = Work{
	Kind: TiesOff, Name: "ties-off", While: grafted, Rule: tiesOffRule, Step: "ties-off",
	Says:  []string{"Tied since {since}: loosen the tapes from {month} to {monthby}, so that they do not cut in."},
	Facts: []trade.Fact{trade.WinterTapes},
}

// tiesOffRule loosens the tapes for the winter in the first two years, where
// ties were put on; past leaf-out it is too late for that winter.
func tiesOffRule(c *dueCase) []Due {
	if len(c.a.Ties) == 0 {
		return nil
	}
	since := c.a.Ties[0].At
	season := max(c.first, c.b.SeasonOf(c.b.Day(since).Add(-tyingDays)))
	if last := record.LastOf(c.a.TapesOff); last != nil {
		season = max(season, ended(c.b, c.b.Day(last.At))+1)
	}
	c.some = c.some[:0]
	for ; season <= c.first+trade.TieSeasons-1; season++ {
		opens := max(c.b.InSeason(season, time.November, 1), c.b.Day(since))
		d := c.days(opens, c.b.InSeason(season, time.December, 31), since, 0)
		c.some = append(c.some, c.ending(d, dayBefore(c.b.LeafOut(season+1))))
	}
	return c.some
}

// winter makes a due of the dormant window after a number of seasons: from
// mid-January where winters are mild, from March in frost country; what is not
// done by leaf-out comes again in the next.
func (c *dueCase) winter(season int, since time.Time, hint uint8) []Due {
	opens, by := c.b.InSeason(season, time.January, 15), c.b.InSeason(season, time.March, 1)
	if c.b.Frosty {
		opens, by = c.b.InSeason(season, time.March, 1), c.b.InSeason(season, time.April, 15)
	}
	return c.yearly(c.days(opens, by, since, hint), dayBefore(c.b.LeafOut(season)))
}

// notBefore is the season after that in which work was last put off, if it was.
func (c *dueCase) notBefore(season int, work string) int {
	for _, y := range c.a.AnotherYear {
		if y.What.Work == work {
			season = max(season, c.b.SeasonOf(c.b.Day(y.At))+1)
		}
	}
	return season
}

// HeadBack is heading the leader back above its stake.
const HeadBack Kind = 18

// Hints of the head-back due.
const (
	headFirst uint8 = iota
	headShort       // the leader was too short the winter before
)

var headBack = Work{
	Kind: HeadBack, Name: "head-back", While: pushed, Rule: headBackRule, Step: "head-back",
	Says: []string{
		"Scions set {since}: after the first season head the leader back, {span}{winter}.",
		"Too short {since}: head the leader back in the next winter, {span}{winter}.",
	},
	Facts: []trade.Fact{trade.HeadBack, trade.HeadBackShort, trade.HeadBackMild, trade.HeadBackFrost},
}

// headBackRule heads the leader back in the dormant window after the first
// season, and in the next one after each winter in which it was too short or
// put off.
func headBackRule(c *dueCase) []Due {
	if _, led := c.a.Leads(); !led {
		return nil
	}
	season, since, hint := c.first+1, c.set, headFirst
	for _, h := range c.a.Headed {
		if !h.What.Short {
			return nil
		}
		season, since, hint = max(season, c.b.SeasonOf(c.b.Day(h.At))+1), h.At, headShort
	}
	return c.winter(c.notBefore(season, "head-back"), since, hint)
}

// SecondShootOff is leaving the leader alone on the stump.
const SecondShootOff Kind = 19

var secondShootOff = Work{
	Kind: SecondShootOff, Name: "second-shoot-off", While: pushed, Rule: secondShootRule, Step: "second-shoot",
	Says:  []string{"Scions set {since}: after the second season take the second shoot off, {span}{winter}."},
	Facts: []trade.Fact{trade.KeptAlone, trade.HeadBackMild, trade.HeadBackFrost},
}

// secondShootRule leaves the leader, where one was chosen, alone in the dormant
// window after the second season.
func secondShootRule(c *dueCase) []Due {
	if _, led := c.a.Leads(); !led || c.a.SecondOff != nil {
		return nil
	}
	return c.winter(c.first+2, c.set, 0)
}

// NurseLimbsOff is taking nurse limbs off, or letting them stay another year.
const NurseLimbsOff Kind = 20

var nurseLimbsOff = Work{
	Kind: NurseLimbsOff, Name: "nurse-limbs-off", While: grafted, Rule: nurseOffRule, Step: "nurse-limbs-off",
	Says:  []string{"Scions set {since}: the graft's own leaf takes over, so take nurse limbs off {span}{winter}."},
	Facts: []trade.Fact{trade.NurseLimbs, trade.NurseOff},
}

// nurseOffRule takes the nurse limbs off in the dormant windows from the first
// season on, as long as any are left and not let stay another year.
func nurseOffRule(c *dueCase) []Due {
	if c.a.LimbsLeft() == 0 {
		return nil
	}
	season := c.first + 1
	for _, off := range c.a.NurseOff {
		season = max(season, c.b.SeasonOf(c.b.Day(off.At))+1)
	}
	return c.winter(c.notBefore(season, "nurse-limbs-off"), c.set, 0)
}
