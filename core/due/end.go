package due

import (
	"time"

	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Untie is taking twine, tapes and stake off for good.
const Untie Kind = 27

// Hints of the untie due.
const (
	untieFirst uint8 = iota
	untieAgain       // it was left another year
)

var untie = Work{
	Kind: Untie, Name: "untie", While: grafted, Rule: untieRule, Step: "untie",
	Says: []string{
		"Scions set {since}: two seasons are over and no twine is on, so see whether it stands alone.",
		"Left tied another year {since}: see whether it stands alone now.",
	},
	Facts: []trade.Fact{trade.Twine, trade.TwineGirdles, trade.CallusDays},
}

// untieRule asks whether the tree stands alone once its second season is over
// and twine and tapes are off, and in each spring after it was left tied.
func untieRule(c *dueCase) []Due {
	if c.a.TwineOn() {
		return nil
	}
	since, hint := c.set, untieFirst
	opens := c.b.SeasonEnds(c.first + 1).Add(1)
	if c.a.TwineCut != nil {
		opens = max(opens, c.b.Day(c.a.TwineCut.At))
	}
	opens = max(opens, c.tapesOff())
	for _, y := range c.a.AnotherYear {
		if y.What.Work == "untie" {
			next := c.b.InSeason(c.b.SeasonOf(c.b.Day(y.At))+1, time.April, 1)
			opens, since, hint = max(opens, next), y.At, untieAgain
		}
	}
	return c.one(c.days(opens, opens.Add(trade.UntieBy), since, hint))
}

// tapesOff is the day from which no tape is on: that on which they were last
// loosened or, where nobody did in time, the leaf-out after the last winter in
// which they are; 0 where none was put on.
func (c *dueCase) tapesOff() unit.Date {
	last, off := record.LastOf(c.a.Ties), record.LastOf(c.a.TapesOff)
	switch {
	case last == nil:
		return 0
	case off != nil && !off.At.Before(last.At):
		return c.b.Day(off.At)
	}
	return c.b.LeafOut(c.first + trade.TieSeasons)
}

// Regraft is cutting a stump back again that was lost or left.
const Regraft Kind = 23

// Hints of the regraft due.
const (
	regraftFailed uint8 = iota
	regraftLeft         // left for the season
)

var regraft = Work{
	Kind: Regraft, Name: "regraft", While: lost, Rule: regraftRule, Step: "ended",
	Says: []string{
		"Lost {since}: cut it back again from {span}.",
		"Left for the season {since}: cut it back again from {span}.",
	},
	Facts: []trade.Fact{trade.RegraftTime, trade.SproutsUsed},
}

// regraftRule brings a failed stump, or one left for the season, back in the
// next spring and in each after it. An attempt that was begun but not cut back
// does not yet close it.
func regraftRule(c *dueCase) []Due {
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
	by := c.b.InSeason(season, time.May, 15)
	return c.yearly(c.days(opens, by, since, hint), max(by, c.b.Slip(opens).To))
}
