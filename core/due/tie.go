package due

import (
	"slices"
	"time"

	"barkslip/core/girth"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Hints of the tie due.
const (
	tieFirst  uint8 = iota // counted from the first push
	tieShoot               // the shoot is, or will be, long enough
	tieGrowth              // another foot, by the growth measured
	tieWeek                // since the last tie, not measured
	tieFortnight
	tieLeafOut
)

// tieDue is the next tie of the leader to its stake, in the first two seasons.
func tieDue(c *dueCase) []Due {
	opens, since, hint := unit.Date(0), c.push, tieFirst
	if tie := record.LastOf(c.a.Ties); tie != nil {
		opens, hint = c.nextTie(tie)
		since = tie.At
	} else {
		opens, hint = c.firstTie()
	}
	if moved := c.season(opens); moved != opens {
		opens, hint = moved, tieLeafOut
	}
	last := c.first + trade.TieSeasons - 1
	if c.b.SeasonOf(opens) > last {
		return nil
	}
	return c.everySeason(c.days(opens, opens.Add(trade.TieBy), since, hint), last, trade.TieBy, tieLeafOut)
}

// firstTie is two weeks after the first push, or sooner if the shoot is long
// enough by then.
func (c *dueCase) firstTie() (unit.Date, uint8) {
	opens := c.pushDay.Add(trade.FirstTieDays)
	if long, ok := girth.Reaches(c.shoots(), trade.FirstTieShoot); ok && long < opens {
		return max(long, c.pushDay), tieShoot
	}
	return opens, tieFirst
}

// nextTie is when the shoot will have grown another foot, by what was measured
// of it this season; else a week on, or two late in the summer.
func (c *dueCase) nextTie(tie *record.Said[record.Tied]) (unit.Date, uint8) {
	last := c.b.Day(tie.At)
	season := c.b.SeasonOf(last)
	if tie.What.Shoot.Given() {
		shoots := slices.DeleteFunc(slices.Clone(c.shoots()), func(s girth.Shoot) bool {
			return c.b.SeasonOf(s.On) != season || s.On < last && s.Long > tie.What.Shoot.Length
		})
		if on, ok := girth.NextFoot(shoots, tie.What.Shoot.Length); ok {
			return max(on, last.Add(1)), tieGrowth
		}
	}
	if last <= c.b.InSeason(season, time.July, 31) {
		return last.Add(trade.TieDaysEarly), tieWeek
	}
	return last.Add(trade.TieDaysLate), tieFortnight
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
