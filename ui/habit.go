package ui

import (
	"time"

	"barkslip/core"
)

// habit is the wood and method of the stump worked before this one: the one
// whose wood or seal was answered last.
func (x *shared) habit(id core.StumpID) core.Habit {
	if x.before.Stump == core.NoStump || x.before.Stump.Block != x.block {
		x.before = x.findHabit(id)
	}
	if x.before.Stump == id {
		if x.earlier.Stump == core.NoStump {
			x.earlier = x.findHabit(id)
		}
		return x.earlier
	}
	return x.before
}

// noteHabit remembers the stump just worked as the one before the next.
func (x *shared) noteHabit(id core.StumpID, b core.Body) {
	switch b.(type) {
	case *core.WoodChosen, *core.Sealed:
		if x.before.Stump != id {
			x.earlier = x.before
		}
		if s, err := x.Book.Stump(id); err == nil {
			x.before = core.HabitOf(s)
		}
	}
}

// findHabit looks in the book for the stump with scions worked last.
func (x *shared) findHabit(not core.StumpID) core.Habit {
	best, newest := core.NoStump, time.Time{}
	for _, s := range x.summaries(x.block) {
		if s.ID != not && s.Scions > 0 && s.Stage <= core.Painted && s.Newest.After(newest) {
			best, newest = s.ID, s.Newest
		}
	}
	if best == core.NoStump {
		return core.Habit{}
	}
	s, err := x.Book.Stump(best)
	if err != nil {
		return core.Habit{}
	}
	return core.HabitOf(s)
}
