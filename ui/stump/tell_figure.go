package stump

import (
	"fmt"
	"time"

	"barkslip/core/girth"
	"barkslip/core/trade"
	"barkslip/core/unit"
	"barkslip/core/walk"
	"barkslip/ui/figure"
)

// figureWords tells what the figures of the step show.
func (s *Screen) figureWords() (out []string) {
	switch s.asked.Step.ID {
	case walk.StepTorn, walk.StepMeasure, walk.StepLongWay, walk.StepSlots, walk.StepNewFace, walk.StepVisit, walk.StepDeath, walk.StepScratch,
		walk.StepShoots, walk.StepBroken:
		return s.topWords()
	case walk.StepThick, walk.StepScion:
		return append(s.topWords(), s.scionWords()...)
	case walk.StepNodes:
		if s.sub != nil {
			return s.walk.StickHint()
		}
		return append(s.topWords(), s.scionWords()...)
	case walk.StepSeal, walk.StepWhite:
		return append(s.heatTold(), s.topWords()...)
	case walk.StepStake, walk.StepLeader, walk.StepLeaderShoot, walk.StepTie, walk.StepPinch, walk.StepHeadBack, walk.StepSeason:
		return append(s.growthWords(), s.topWords()...)
	}
	return nil
}

// topWords is the stump from above: its size, each slot with its way to the next
// along the bark, and bark that can carry none.
func (s *Screen) topWords() (out []string) {
	top, ok := s.top()
	if !ok {
		return nil
	}
	switch {
	case top.Assumed:
	case top.Across2 > 0 && top.Across2 != top.Across:
		out = append(out, fmt.Sprintf("The stump is %s across the long way, at %s, and %s at right angles.",
			s.in(top.Across), top.LongWay.Words(), s.in(top.Across2)))
	default:
		out = append(out, fmt.Sprintf("The stump is %s across.", s.in(top.Across)))
	}
	oval := girth.Oval{Across: top.Across, Across2: top.Across2, LongWay: top.LongWay}
	for i, slot := range top.Slots {
		words := fmt.Sprintf("Slot %s at %s", slot.Label, slot.Bearing.Words())
		if n := len(top.Slots); n > 1 {
			next := top.Slots[(i+1)%n]
			words = fmt.Sprintf("%s, %s clockwise along the bark to slot %s", words, s.in(between(oval, slot.Bearing, next.Bearing)), next.Label)
		}
		switch slot.State {
		case figure.Set:
			words += ", its scion is set"
		case figure.InHand:
			words += ", in hand now"
		}
		out = append(out, words+".")
	}
	for _, arc := range top.Blocked {
		word := arc.Word
		if word == "" {
			word = "blocked"
		}
		out = append(out, fmt.Sprintf("Bark %s at %s, for %s.", word, arc.Bearing.Words(), s.in(arc.Width)))
	}
	return out
}

// between is the way clockwise along the bark from one bearing to another.
func between(o girth.Oval, from, to unit.Bearing) unit.Length {
	way := o.Along(to) - o.Along(from)
	if way < 0 {
		way += o.Girth()
	}
	return way
}

// scionWords is one scion with its cuts and nails.
func (s *Screen) scionWords() []string {
	cut, answer, ok := s.scionCuts()
	if !ok {
		return nil
	}
	says := []string{
		sentence("The scion: "+s.in(cut.Thick)+" thick", "long cut "+s.in(cut.LongCut), "back cut from "+s.in(cut.Back)+" above the end",
			s.in(cut.Tip)+" left at the tip"),
		fmt.Sprintf("Its slot: %s to %s wide.", s.in(answer.Slot.Least), s.in(answer.Slot.Most)),
	}
	for i, n := range answer.Nails {
		says = append(says, fmt.Sprintf("Nail %d: %s below the top of the long cut, %s long.", i+1, s.in(n.FromTop), s.in(n.Length)))
	}
	return says
}

// heatTold is the day's heat in the graft: the top of each curve and its hour.
func (s *Screen) heatTold() []string {
	heat, ok := s.heat()
	if !ok {
		return nil
	}
	b, c := s.x.Site(), heat.Curves
	top := func(temps ...[]unit.Temperature) string {
		at, most := time.Time{}, unit.Temperature(-273)
		for i, t := range c.Times {
			for _, of := range temps {
				if of[i] > most {
					at, most = t, of[i]
				}
			}
		}
		return fmt.Sprintf("%s at %s", b.Units.Temperature(most), at.In(b.Zone).Format("15:04"))
	}
	out := []string{fmt.Sprintf("Heat of the day from %s on: under dark sealer the graft comes to %s, under white to %s; air at most %s. The limit is %s.",
		heat.Sealed.In(b.Zone).Format("15:04"), top(c.BlackScion, c.BlackSide), top(c.WhiteScion, c.WhiteSide), top(c.Air), b.Units.Temperature(trade.InjuryFrom))}
	if by := s.walk.WhiteBy(); !by.IsZero() {
		out = append(out, "It is to be white by "+unit.When(by, s.x.Time(), b.Zone)+".")
	}
	return out
}

// growthWords is the leader against its stake: what was measured, the aim, the next
// tie, and what is forecast.
func (s *Screen) growthWords() (out []string) {
	fig, ok := s.growth()
	if !ok {
		return nil
	}
	for _, m := range fig.Measured {
		out = append(out, fmt.Sprintf("The leader was %s long on %s.", s.in(m.Length), m.On.Short()))
	}
	if fig.StakeTop > 0 {
		out = append(out, fmt.Sprintf("The stake ends %s above the graft; the leader should end the season %s to %s above the graft.",
			s.in(fig.StakeTop), s.in(fig.AimLow), s.in(fig.AimHigh)))
	}
	if fig.Next > 0 {
		out = append(out, fmt.Sprintf("The next tie goes %s above the graft.", s.in(fig.Next)))
	}
	if n := len(fig.Forecast); n > 1 {
		last := fig.Forecast[n-1]
		out = append(out, fmt.Sprintf("At this pace it is %s long on %s.", s.in(last.Length), last.On.Short()))
	}
	return out
}
