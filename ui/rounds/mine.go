package rounds

import (
	"fmt"
	"slices"

	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/ui/part"
)

// givenDay is the day of whose shares the round is: that named, else today.
func (s *Screen) givenDay() unit.Date {
	if s.span == aDay {
		return s.named
	}
	return s.x.Site().Day(s.x.Time())
}

// ownStumps tells which stumps are given to the hand for the day.
func (s *Screen) ownStumps() func(record.StumpID) bool {
	for _, g := range s.x.Site().GivenOn(s.givenDay()) {
		if g.What.To == s.hand() {
			return g.What.Set()
		}
	}
	return func(record.StumpID) bool { return false }
}

func (s *Screen) hand() string { return s.x.Book.Folded().Canonical("hand", s.x.Hand) }

// onlyMine shows only what the hand is given for the day, or all again.
func (s *Screen) onlyMine() part.Msgs {
	if !s.mine && !slices.ContainsFunc(s.x.Site().GivenOn(s.givenDay()), func(g record.Said[record.WorkGiven]) bool { return g.What.To == s.hand() }) {
		return part.Says(fmt.Sprintf("Nothing is given to %s for %s. p on the block is the plan; 1 there gives work.", s.x.Hand, s.givenDay().Short()))
	}
	s.mine = !s.mine
	return s.fromTop()
}
