package part

import (
	"time"

	"barkslip/core/record"
	"barkslip/core/walk"
)

// Habit is the wood and method of the stump worked before this one: the one
// whose wood or seal was answered last.
func (x *Session) Habit(id record.StumpID) walk.Habit {
	if x.before.Stump == record.NoStump || x.before.Stump.Block != x.Block {
		x.before = x.findHabit(id)
	}
	if x.before.Stump == id {
		if x.earlier.Stump == record.NoStump {
			x.earlier = x.findHabit(id)
		}
		return x.earlier
	}
	return x.before
}

// NoteHabit remembers the stump just worked as the one before the next.
func (x *Session) NoteHabit(id record.StumpID, b record.Body) {
	switch w, isWood := b.(*record.WoodChosen); b.(type) {
	case *record.WoodChosen, *record.Sealed:
		if isWood && w.Slot > 0 { // of one scion alone
			return
		}
		if x.before.Stump != id {
			x.earlier = x.before
		}
		if s, err := x.Book.Stump(id); err == nil {
			x.before = walk.HabitOf(s)
		}
	}
}

// findHabit looks in the book for the stump with scions worked last.
func (x *Session) findHabit(not record.StumpID) walk.Habit {
	best, newest := record.NoStump, time.Time{}
	for _, s := range x.Summaries(x.Block) {
		if s.ID != not && s.Scions > 0 && s.Stage <= record.StagePainted && s.Newest.After(newest) {
			best, newest = s.ID, s.Newest
		}
	}
	if best == record.NoStump {
		return walk.Habit{}
	}
	s, err := x.Book.Stump(best)
	if err != nil {
		return walk.Habit{}
	}
	return walk.HabitOf(s)
}

// ForgetHabit forgets it: what was taken back may have been wood or a seal.
func (x *Session) ForgetHabit() { x.before, x.earlier = walk.Habit{}, walk.Habit{} }
