package core

import (
	"errors"

	"barkslip/core/unit"
)

// StumpMeasured is the face measured both ways.
type StumpMeasured struct {
	Across      Measure      // the longer diameter
	Across2     Measure      // at right angles to it; 0 for a round stump
	LongWay     unit.Bearing // of the longer diameter
	LongWaySaid bool         // LongWay was given, not assumed
}

// Kind is measured.
func (*StumpMeasured) Kind() string { return "measured" }

func (b *StumpMeasured) fields(f fields) {
	f.length("across", &b.Across)
	f.length("across2", &b.Across2)
	f.bearing("long_way_deg", &b.LongWay)
	f.flag("long_way_said", &b.LongWaySaid)
}

func (*StumpMeasured) question() string { return "measured" }

func (b *StumpMeasured) check() error {
	if b.Across.Length <= 0 {
		return errors.New("measured needs across")
	}
	return nil
}

func (b *StumpMeasured) apply(_ *Stump, a *Attempt, e Event) { a.Measured = standing(e, *b) }
