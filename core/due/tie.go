package due

import (
	"slices"
	"time"

	"barkslip/core/girth"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Tie is tying the leader to its stake.
const Tie Kind = 13

// Hints of the tie due.
const (
	tieFirst  uint8 = iota // counted from the first push
	tieShoot               // the shoot is, or will be, long enough
	tieGrowth              // another foot, by the growth measured
	tieWeek                // since the last tie, not measured
	tieFortnight
	tieSecond // the second season begins
	tieSlow   // it grows so slowly that it is looked at all the same
)

var tie = Work{
	Kind: Tie, Name: "tie", While: pushed, Rule: tieRule, Step: "tie",
	Says: []string{
		"Push first seen {since}: put the first tie on 14 days later.",
		"Pushing since {since}: the shoot measures {shoot} by {opens}, long enough for its first tie.",
		"Last tied {since}: by the growth measured it has made another {foot} by {opens}.",
		"Last tied {since}: tie again 7 days later while shoots run.",
		"Last tied {since}: tie again 14 days later, late in the summer.",
		"Shoots run again: tie the leader from {opens}, at every {foot} of growth.",
		"Last tied {since}: it grows slowly; measure it after 3 weeks all the same.",
	},
	Facts: []trade.Fact{trade.Ties, trade.TieTime},
}

// tieRule is the next tie of the leader to its stake, in the first two seasons,
// until it is tied within a foot of the stake's top or headed back.
func tieRule(c *dueCase) []Due {
	if c.a.HeadedBack() || c.tiedToTop() {
		return nil
	}
	second := c.first + trade.TieSeasons - 1
	opens, since, hint := unit.Date(0), c.push, tieFirst
	if last := c.lastTie(); last != nil {
		since = last.At
		opens, hint = c.nextTie(last)
	} else {
		opens, hint = c.firstTie()
	}
	season := c.b.SeasonOf(opens)
	c.some = c.some[:0]
	if season > second {
		return nil
	}
	due := func(opens unit.Date, hint uint8, season int) {
		c.some = append(c.some, c.ending(c.days(opens, opens.Add(trade.TieBy), since, hint), c.b.SeasonEnds(season)))
	}
	due(opens, hint, season)
	if season < second {
		due(c.b.InSeason(second, time.June, 1), tieSecond, second)
	}
	return c.some
}

// lastTie is the newest tie of the shoot that leads now, nil if it has none.
func (c *dueCase) lastTie() *record.Said[record.Tied] {
	t := record.LastOf(c.a.Ties)
	if t != nil && c.a.ChangedLeader().After(t.At) {
		return nil
	}
	return t
}

// tiedToTop says whether the leader is tied within a foot of its stake's top.
func (c *dueCase) tiedToTop() bool {
	t := c.lastTie()
	if t == nil || c.a.Stake == nil || !t.What.Shoot.Given() {
		return false
	}
	top := c.a.Stake.What.Height.Length
	return top > 0 && t.What.Shoot.Length >= top-trade.TieEvery-tapeSlack
}

// tapeSlack is how far off a length read from a tape may be.
const tapeSlack = unit.Millimetre

// firstTie is two weeks after the first push, or sooner if the shoot is long
// enough by then; at once for a shoot that took over. What has not begun when
// the season ends begins with the next one's shoots.
func (c *dueCase) firstTie() (unit.Date, uint8) {
	opens, hint := c.pushDay.Add(trade.FirstTieDays), tieFirst
	if long, ok := girth.Reaches(c.shoots(), trade.FirstTieShoot); ok && long < opens {
		opens, hint = max(long, c.pushDay), tieShoot
	}
	if changed := c.a.ChangedLeader(); !changed.IsZero() {
		opens = max(opens, c.b.Day(changed))
	}
	return c.inSeason(opens, hint)
}

// inSeason moves a tie that would fall into the winter to the first of June.
func (c *dueCase) inSeason(opens unit.Date, hint uint8) (unit.Date, uint8) {
	season := c.b.SeasonOf(opens)
	if june := c.b.InSeason(season, time.June, 1); season > c.first && opens < june && opens < c.b.LeafOut(season) {
		return june, tieSecond
	}
	return opens, hint
}

// nextTie is when the shoot will have grown another foot, by what was measured
// of it this season; else a week on, or two late in the summer. It is never more
// than three weeks off, and never crosses a winter.
func (c *dueCase) nextTie(tie *record.Said[record.Tied]) (unit.Date, uint8) {
	last := c.b.Day(tie.At)
	season := c.b.SeasonOf(last)
	opens, hint := last.Add(trade.TieDaysEarly), tieWeek
	if last > c.b.InSeason(season, time.July, 31) {
		opens, hint = last.Add(trade.TieDaysLate), tieFortnight
	}
	if tie.What.Shoot.Given() {
		shoots := slices.DeleteFunc(slices.Clone(c.shoots()), func(s girth.Shoot) bool {
			return c.b.SeasonOf(s.On) != season || s.On < last && s.Long > tie.What.Shoot.Length
		})
		if on, ok := girth.NextFoot(shoots, tie.What.Shoot.Length); ok {
			opens, hint = max(on, last.Add(1)), tieGrowth
			if slow := c.lastMeasured(last).Add(trade.TieForecast); opens > slow {
				opens, hint = slow, tieSlow
			}
		}
	}
	if opens > c.b.SeasonEnds(season) {
		return c.b.InSeason(season+1, time.June, 1), tieSecond
	}
	return opens, hint
}

// lastMeasured is the newest day on which the shoot was measured, at least a day.
func (c *dueCase) lastMeasured(least unit.Date) unit.Date {
	for _, s := range c.shoots() {
		least = max(least, s.On)
	}
	return least
}

// shoots is the leader's length as measured since it was last broken or headed
// back; before a leader is chosen, that of the longest shoot.
func (c *dueCase) shoots() []girth.Shoot {
	if c.grown != nil || len(c.a.Ties) == 0 && !measuredShoots(c.a) {
		return c.grown
	}
	out := []girth.Shoot{}
	whole := c.a.WholeSince()
	add := func(at time.Time, long unit.Length) {
		if long > 0 && !at.Before(whole) {
			out = append(out, girth.Shoot{On: c.b.Day(at), Long: long})
		}
	}
	leads, _ := c.a.Leads()
	for _, v := range c.a.Visits {
		add(v.At, longest(v.What.Found, leads.Slot))
	}
	for _, t := range c.a.Ties {
		add(t.At, t.What.Shoot.Length)
	}
	c.grown = out
	return out
}

func measuredShoots(a *record.Attempt) bool {
	for _, v := range a.Visits {
		if longest(v.What.Found, 0) > 0 {
			return true
		}
	}
	return false
}

// longest is the length measured on a slot's graft, or with slot 0 the longest
// of all.
func longest(found []record.Finding, slot int) (long unit.Length) {
	for _, f := range found {
		if slot == 0 || f.Slot == slot {
			long = max(long, f.Shoot.Length)
		}
	}
	return long
}
