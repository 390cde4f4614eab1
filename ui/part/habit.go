package part

import (
	"slices"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/walk"
)

// Habit is the wood and method of the stump worked before this one: the one
// whose wood or seal was answered last.
func (x *Session) Habit(id record.StumpID) walk.Habit {
	h := x.habit(id)
	h.Stake = x.stakeBefore(id)
	return h
}

func (x *Session) habit(id record.StumpID) walk.Habit {
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
	switch b := b.(type) {
	case *record.Staked:
		x.staked = &stake{id.Block, b}
	case *record.WoodChosen, *record.Sealed:
		if w, isWood := b.(*record.WoodChosen); isWood && w.Slot > 0 { // of one scion alone
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

// stake is the stake set last on a block, nil where none is known.
type stake struct {
	block record.ID
	set   *record.Staked
}

// mostForStake is how many stumps are looked at for the stake set last.
const mostForStake = 24

// stakeBefore is the stake of the stump staked last: of this session, or of the
// stumps worked last.
func (x *Session) stakeBefore(id record.StumpID) *record.Staked {
	if x.staked != nil && x.staked.block == id.Block {
		return x.staked.set
	}
	x.staked = &stake{block: id.Block}
	sums := slices.DeleteFunc(slices.Clone(x.Summaries(id.Block)), func(s due.Summary) bool { return s.Stage < record.StagePushing })
	slices.SortFunc(sums, func(a, b due.Summary) int { return b.Newest.Compare(a.Newest) })
	var at time.Time
	for _, sum := range sums[:min(len(sums), mostForStake)] {
		if s, err := x.Book.Stump(sum.ID); err == nil && s.Now().Stake != nil && s.Now().Stake.At.After(at) {
			set := s.Now().Stake.What
			at, x.staked.set = s.Now().Stake.At, &set
		}
	}
	return x.staked.set
}

// ForgetHabit forgets it: what was taken back may have been wood, a seal or a
// stake.
func (x *Session) ForgetHabit() { x.before, x.earlier, x.staked = walk.Habit{}, walk.Habit{}, nil }
