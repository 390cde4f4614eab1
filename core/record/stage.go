package record

import (
	"slices"
	"time"

	"barkslip/core/unit"
)

// Stage is how far a stump has come. It is derived, never stored by hand.
type Stage uint8

// The stages in order.
const (
	StageStanding Stage = iota
	StageDraining
	StageGrafted
	StageSealed
	StagePainted
	StagePushing
	StageLeader
	StageAboveStake
	StageHeadedBack
	StageUntied
	StageFailed
	StageGivenUp
)

// StageNames are the words for the stages.
var stageNames = [...]string{
	"standing", "draining", "grafted", "sealed", "painted", "pushing",
	"leader chosen", "above stake", "headed back", "untied", "failed", "given up",
}

// stageHeights are how far each stage has come, in eighths of the whole way.
var stageHeights = [...]int{0, 1, 2, 3, 4, 5, 6, 7, 7, 8, 0, 0}

// Stages lists them in order.
func Stages() []Stage {
	out := make([]Stage, len(stageNames))
	for i := range out {
		out[i] = Stage(i)
	}
	return out
}

func (s Stage) String() string { return stageNames[s] }

// Height is how far a stump at the stage has come, in eighths from standing to
// untied; 0 for one that is lost.
func (s Stage) Height() int { return stageHeights[s] }

// Lost says whether the attempt ended without a tree.
func (s Stage) Lost() bool { return s == StageFailed || s == StageGivenUp }

// Stage is the stage of the attempt under way.
func (s *Stump) Stage() Stage { return s.Now().Stage() }

// Stage is how far the attempt has come.
func (a *Attempt) Stage() Stage {
	switch {
	case a.Untied != nil:
		return StageUntied
	case a.GivenUp != nil:
		return StageGivenUp
	case a.Failed != nil || a.AllDead():
		return StageFailed
	case a.HeadedBack():
		return StageHeadedBack
	case a.PastStake():
		return StageAboveStake
	case a.Leader != nil:
		return StageLeader
	case !a.FirstPush().IsZero():
		return StagePushing
	case a.IsSealed() && a.IsWhite():
		return StagePainted
	case a.IsSealed() && len(a.Grafts) > 0:
		return StageSealed
	case len(a.Grafts) > 0: // the last scions may be to come
		return StageGrafted
	case a.CutBack != nil:
		return StageDraining
	}
	return StageStanding
}

// HeadedBack says whether the leader was headed back above its stake; one that
// was too short and cut to strong buds was not.
func (a *Attempt) HeadedBack() bool {
	return slices.ContainsFunc(a.Headed, func(h Said[HeadedBack]) bool { return !h.What.Short })
}

// AllSet says whether every slot marked has its scion, or stays empty.
func (a *Attempt) AllSet() bool {
	for n := 1; n <= a.Marked(); n++ {
		if !a.SlotTold(n) {
			return false
		}
	}
	return len(a.Grafts) > 0
}

// SlotTold says whether a slot has its scion or is said to stay empty.
func (a *Attempt) SlotTold(slot int) bool {
	return a.Graft(slot) != nil || slices.ContainsFunc(a.Empty, func(e Said[SlotEmpty]) bool { return e.What.Slot == slot })
}

// Marked is how many slots are marked.
func (a *Attempt) Marked() int {
	if a.Slots == nil {
		return 0
	}
	return len(a.Slots.What.Slots)
}

// AllDead says whether there are grafts and every one was seen dead.
func (a *Attempt) AllDead() bool {
	for _, g := range a.Grafts {
		if g.State != Dead {
			return false
		}
	}
	return len(a.Grafts) > 0
}

// SetAt is when the last scion was set, zero before.
func (a *Attempt) SetAt() (last time.Time) {
	for _, g := range a.Grafts {
		if g.Set.At.After(last) {
			last = g.Set.At
		}
	}
	return last
}

// FirstPush is when a graft was first seen pushing or growing, zero before.
func (a *Attempt) FirstPush() time.Time {
	for _, v := range a.Visits {
		for _, f := range v.What.Found {
			if f.State == Pushing || f.State == Growing {
				return v.At
			}
		}
	}
	return time.Time{}
}

// Shoot is the leader's length as last measured since it was last broken, headed
// back or lost to another, 0 before.
func (a *Attempt) Shoot() unit.Length {
	whole := a.WholeSince()
	for i := len(a.Ties) - 1; i >= 0; i-- {
		if l := a.Ties[i].What.Shoot; l.Given() && !a.Ties[i].At.Before(whole) {
			return l.Length
		}
	}
	return 0
}

// PastStake says whether the leader stands above its stake.
func (a *Attempt) PastStake() bool {
	return a.Leader != nil && a.Stake != nil && a.Stake.What.Height.Length > 0 && a.Shoot() > a.Stake.What.Height.Length
}
