package core

import (
	"errors"

	"barkslip/core/unit"
)

// Slot is where one scion goes, as a bearing from the stump's centre.
type Slot struct{ Bearing unit.Bearing }

// SlotsMarked is the slots marked on the face, clockwise, numbered from 1.
// Without slots it is the plan so far: how many are asked for, and where the
// bark can take none.
type SlotsMarked struct {
	Slots   []Slot
	Blocked []Arc
	Asked   int // how many were asked for; 0 for as many as the girth gives
}

// Kind is slots-marked.
func (*SlotsMarked) Kind() string { return "slots-marked" }

func (b *SlotsMarked) fields(f fields) {
	listOf(f, "slots", &b.Slots, func(s *Slot, f fields) { f.bearing("bearing_deg", &s.Bearing) })
	arcs(f, "blocked", &b.Blocked)
	f.number("asked", &b.Asked)
}

func (*SlotsMarked) question() string { return "slots" }

func (b *SlotsMarked) check() error {
	if len(b.Slots) > 24 || b.Asked < 0 || b.Asked > 24 {
		return errors.New("slots-marked takes at most 24 slots")
	}
	return nil
}

func (b *SlotsMarked) apply(_ *Stump, a *Attempt, e Event) { a.Slots = standing(e, *b) }
