package record

import (
	"slices"
	"strings"
	"time"

	"barkslip/core/unit"
)

// LostAt is when the attempt was lost: when the last graft was seen dead, or
// when it was put down as failed, whichever is earlier; zero while it lives.
func (a *Attempt) LostAt() (at time.Time) {
	if a.AllDead() {
		for _, g := range a.Grafts {
			if g.Since.After(at) {
				at = g.Since
			}
		}
	}
	if a.Failed != nil && (at.IsZero() || a.Failed.At.Before(at)) {
		at = a.Failed.At
	}
	return at
}

// Grafted says whether the grafting was ended: every slot has its scion, or the
// work went on with fewer.
func (a *Attempt) Grafted() bool {
	wentOn := a.Sealed != nil || a.White != nil || len(a.Visits) > 0
	return a.AllSet() || len(a.Grafts) > 0 && wentOn
}

// Settled says whether every graft pushes, grows or is dead.
func (a *Attempt) Settled() bool {
	for _, g := range a.Grafts {
		if g.Waiting() {
			return false
		}
	}
	return true
}

// Waiting says whether a graft is neither moving nor dead.
func (g *Graft) Waiting() bool { return g.State == "" || g.State == NoChange || g.State == Swelling }

// PushedAt is when a graft was first seen pushing or growing, zero before.
func (a *Attempt) PushedAt(slot int) time.Time {
	for _, v := range a.Visits {
		if f := FindingOf(&v, slot); f != nil && (f.State == Pushing || f.State == Growing) {
			return v.At
		}
	}
	return time.Time{}
}

// ShootOf is a graft's shoot as last measured, 0 before.
func (a *Attempt) ShootOf(slot int) (long unit.Length) {
	for _, v := range a.Visits {
		if f := FindingOf(&v, slot); f != nil && f.Shoot.Given() {
			long = f.Shoot.Length
		}
	}
	return long
}

// StateRank is higher for a graft that has come further.
func (g *Graft) StateRank() int { return slices.Index(GraftStates, g.Was()) }

// Was is the state a graft was last seen in; unmoved before the first visit.
func (g *Graft) Was() GraftState {
	if g.State == "" {
		return NoChange
	}
	return g.State
}

func StateWord(s GraftState) string { return strings.ReplaceAll(string(s), "-", " ") }

func FindingOf(v *Said[Visited], slot int) *Finding {
	if v == nil {
		return nil
	}
	for i := range v.What.Found {
		if v.What.Found[i].Slot == slot {
			return &v.What.Found[i]
		}
	}
	return nil
}

// Across is the stump's diameter as best known: measured on the face, at the
// cut-back, or from the list; 0 if unknown.
func (s *Stump) Across() unit.Length {
	a := s.Now()
	switch {
	case a.Measured != nil:
		return a.Measured.What.Across.Length
	case a.CutBack != nil && a.CutBack.What.Across.Given():
		return a.CutBack.What.Across.Length
	case s.Added != nil:
		return s.Added.What.Across.Length
	}
	return 0
}

// Thickest is the thickness of the scions set or chosen, 0 if unknown.
func (s *Stump) Thickest() (thick unit.Length) {
	a := s.Now()
	for _, g := range a.Grafts {
		thick = max(thick, g.Set.What.Thickness.Length)
	}
	if thick == 0 && a.Wood != nil {
		thick = a.Wood.What.Thickness.Length
	}
	return thick
}
