package due

import (
	"slices"
	"time"

	"barkslip/core/ready"
	"barkslip/core/record"
	"barkslip/core/trade"
)

// CutBack is cutting a stump back, in time for the season of slip.
const CutBack Kind = 24

// Hints of the cut-back due.
const (
	cutNever   uint8 = iota
	cutEarlier       // in an earlier year, and not grafted
)

var cutBack = Work{
	Kind: CutBack, Name: "cut-back", While: ungrafted, Rule: cutBackRule, Step: "limbs",
	Says: []string{
		"Bark slips soon: cut it back from {span}, as many as can be grafted a week later.",
		"Cut back {since} and not grafted: cut it back again from {span}.",
	},
	Facts: []trade.Fact{trade.DaysToGraft, trade.SlipSeason, trade.SlipDates},
}

// cutBackRule asks for the cut before and in the season of slip, while what is
// cut can still be grafted in it, and again each year.
func cutBackRule(c *dueCase) []Due {
	season, since, hint := c.nextSlip()
	d := c.days(season.From.Add(-trade.CutBackOpens), season.To.Add(-trade.CutBackBy), since, hint)
	return c.yearly(d, season.To.Add(-trade.CutBackEnds))
}

// nextSlip is the season of slip for which the stump is to be cut back next.
func (c *dueCase) nextSlip() (s record.SlipSeason, since time.Time, hint uint8) {
	if c.a.CutBack == nil {
		if c.s.Added != nil {
			since = c.s.Added.At
		} else if len(c.s.Live) > 0 {
			since = c.s.Live[0].At
		}
		if c.a.Nurse != nil {
			since = c.a.Nurse.At
		}
		day := c.b.Day(since)
		if s = c.b.Slip(day); day > s.To.Add(-trade.CutBackEnds) {
			s = c.b.Slip(s.To.Add(1))
		}
		return s, since, cutNever
	}
	s, in := c.slipOfCut()
	if in {
		s = c.b.Slip(s.To.Add(1))
	}
	return s, c.a.CutBack.At, cutEarlier
}

// slipOfCut is the season of slip for which the stump was cut back; in is false
// where it was cut too long before one: then it is the next.
func (c *dueCase) slipOfCut() (s record.SlipSeason, in bool) {
	cut := c.b.Day(c.a.CutBack.At)
	s = c.b.Slip(cut)
	return s, int(s.From-cut) <= trade.CutBackKeeps
}

// Look is the first look after cutting back.
const Look Kind = 2

var look = Work{
	Kind: Look, Name: "look", While: draining, Rule: lookRule, Step: "bleeding", Timed: true,
	Says:  []string{"Cut back {since}: look at it {wait} to {waited} days later."},
	Facts: []trade.Fact{trade.DaysToGraft, trade.Bleeding},
}

// lookRule runs from a week after cutting back, or the block's own wait, until
// somebody has looked: by the third day after.
func lookRule(c *dueCase) []Due {
	season, in := c.slipOfCut()
	if !in || c.looked() {
		return nil
	}
	cut := c.b.Day(c.a.CutBack.At)
	return c.until(c.days(cut.Add(c.b.WaitDays()), cut.Add(c.b.WaitDays()+trade.GraftWithin), c.a.CutBack.At, 0), season.To)
}

// looked says whether the face or the bark was looked at here since it was cut
// back; a look at the bark from another limb is none at this face.
func (c *dueCase) looked() bool {
	return slices.ContainsFunc(c.a.Looks, func(l record.Said[record.Looked]) bool {
		return !l.At.Before(c.a.CutBack.At) && !c.s.Elsewhere(l.ID)
	})
}

// LookAgain is the next look, or the work that a look led to.
const LookAgain Kind = 1

// Hints of the look-again due: what it waits for.
const (
	againWait uint8 = iota
	againLook
	againWipe
	againWork // a gash, a hole, a limb off, a fresh cut: nothing to wait for
)

var lookAgain = Work{
	Kind: LookAgain, Name: "look-again", While: draining, Rule: lookAgainRule, Step: "bleeding", Timed: true,
	Says: []string{
		"Told {since} to wait until {opens} {from}: look within a day of that.",
		"Cut, gashed or drilled {since} at {at}: the sap has settled by {from}; look again by {till}.",
		"Damp {since} at {at}: see between {from} and {till} whether it wets again.",
		"Looked at {since} at {at}: do what it needs, and look again by {by}.",
	},
	Facts: []trade.Fact{trade.Bleeding, trade.DryFace, trade.WaitDays},
}

// lookAgainRule opens when the verdict's wait is over: within a day of a wait of
// days, within the hour of one of minutes; at once where the verdict names work
// to do. It follows a look or a fresh cut.
func lookAgainRule(c *dueCase) []Due {
	season, in := c.slipOfCut()
	if !in || !c.looked() && len(c.a.FreshCuts) == 0 {
		return nil
	}
	v := c.verdict()
	if v.Verdict == ready.Graft {
		return nil
	}
	if v.Until == nil {
		return c.until(c.at(c.judged, c.judged.AddDate(0, 0, 1), c.judged).hinted(againWork), season.To)
	}
	opens := v.Until.In(c.b.Zone).Truncate(time.Second)
	d := c.at(opens, opens.AddDate(0, 0, 1), waitingSince(c.a, opens))
	switch v.Verdict {
	case ready.Look:
		d.By, d.Hint = opens.Add(time.Hour), againLook
	case ready.Wipe:
		d.By, d.Hint = opens.Add(time.Hour), againWipe
	}
	return c.until(d, season.To)
}

// Graft is setting the scions, on the day on which the stump was found ready.
const Graft Kind = 3

var graft = Work{
	Kind: Graft, Name: "graft", While: draining, Rule: graftRule, Step: "measure",
	Says:  []string{"Found ready {since} at {at}: graft it the same day, or judge it again."},
	Facts: []trade.Fact{trade.DryFace, trade.BarkSticks, trade.DaysToGraft},
}

// graftRule is on the day on which the stump was found ready, until its first
// scion is set.
func graftRule(c *dueCase) []Due {
	season, in := c.slipOfCut()
	if !in || c.verdict().Verdict != ready.Graft {
		return nil
	}
	day := c.b.Day(c.judged)
	return c.until(c.days(day, day, c.judged, 0), season.To)
}

// verdict is the advice as of the newest work of preparing.
func (c *dueCase) verdict() *ready.Advice {
	if c.advice == nil {
		c.judged = prepared(c.a)
		v := ready.Judge(ready.FoundOn(c.s, c.b, c.judged), c.judged, c.b.Zone, c.b.Units)
		c.advice = &v
	}
	return c.advice
}

// prepared is when work was last done or seen on the stump before its scions.
func prepared(a *record.Attempt) time.Time {
	newest := workedUntil(a, time.Time{})
	for _, at := range []time.Time{said(a.Nurse), said(a.CutBack), said(a.Measured), said(record.LastOf(a.LimbsOff))} {
		if at.After(newest) {
			newest = at
		}
	}
	return newest
}

// waitingSince is the newest look, cut, gash or hole up to a time: what the wait
// until then counts from.
func waitingSince(a *record.Attempt, until time.Time) time.Time { return workedUntil(a, until) }

// workedUntil is the newest look, cut, gash or hole up to a time, or of all where
// that is zero.
func workedUntil(a *record.Attempt, until time.Time) time.Time {
	newest := newestUntil(a.Looks, until)
	for _, at := range []time.Time{newestUntil(a.FreshCuts, until), newestUntil(a.Gashes, until), newestUntil(a.Holes, until)} {
		if at.After(newest) {
			newest = at
		}
	}
	return newest
}

func newestUntil[T any](list []record.Said[T], until time.Time) time.Time {
	for i := len(list) - 1; i >= 0; i-- {
		if until.IsZero() || !list[i].At.After(until) {
			return list[i].At
		}
	}
	return time.Time{}
}

func said[T any](s *record.Said[T]) time.Time {
	if s == nil {
		return time.Time{}
	}
	return s.At
}
