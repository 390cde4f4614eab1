package record

import (
	"strings"

	"barkslip/core/unit"
)

// Sealed is the graft sealed; it starts the white clock.
type Sealed struct{ Cover Cover }

// Kind is sealed.
func (*Sealed) Kind() string { return "sealed" }

// Say is the answer in a few words.
func (b *Sealed) Say(_ unit.System) string {
	return "sealed, " + string(b.Cover)
}

func (b *Sealed) fields(f fields) { word(f, "cover", &b.Cover) }

func (*Sealed) question() string { return "sealed" }

func (b *Sealed) check() error { return oneOf("cover", b.Cover, false, Covers...) }

func (b *Sealed) apply(_ *Stump, a *Attempt, e Event) { a.Sealed = standing(e, *b) }

func (*Sealed) cause(a *Attempt) cause { return a.wasSet() }

func (*Sealed) followed(a *Attempt) bool { return a.White != nil }

// StillWet says the sealer cannot take white yet: not dry, or rained on.
type StillWet struct{ Rain bool }

// Kind is still-wet.
func (*StillWet) Kind() string { return "still-wet" }

// Say is the answer in a few words.
func (b *StillWet) Say(_ unit.System) string {
	if b.Rain {
		return "rained on"
	}
	return "still wet"
}

func (b *StillWet) fields(f fields) { f.flag("rain", &b.Rain) }

func (b *StillWet) apply(_ *Stump, a *Attempt, e Event) { a.StillWet = append(a.StillWet, said(e, *b)) }

func (*StillWet) cause(a *Attempt) cause { return a.wasSealed() }

// PaintedWhite ends the white clock.
type PaintedWhite struct{}

// Kind is painted-white.
func (*PaintedWhite) Kind() string { return "painted-white" }

// Say is the answer in a few words.
func (b *PaintedWhite) Say(_ unit.System) string {
	return strings.ReplaceAll(b.Kind(), "-", " ")
}

func (*PaintedWhite) fields(fields) {}

func (*PaintedWhite) question() string { return "white" }

func (b *PaintedWhite) apply(_ *Stump, a *Attempt, e Event) { a.White = standing(e, *b) }

func (*PaintedWhite) cause(a *Attempt) cause { return a.wasSealed() }

// RingSet is an earwig ring put on or renewed.
type RingSet struct{}

// Kind is ring-set.
func (*RingSet) Kind() string { return "ring-set" }

// Say is the answer in a few words.
func (b *RingSet) Say(_ unit.System) string {
	return strings.ReplaceAll(b.Kind(), "-", " ")
}

func (*RingSet) fields(fields) {}

func (b *RingSet) apply(_ *Stump, a *Attempt, e Event) { a.Rings = append(a.Rings, said(e, *b)) }

func (*RingSet) cause(a *Attempt) cause { return a.wasSet() }

// SealChecked is the look at the seal some days after.
type SealChecked struct{ Cracked bool }

// Kind is seal-checked.
func (*SealChecked) Kind() string { return "seal-checked" }

// Say is the answer in a few words.
func (b *SealChecked) Say(_ unit.System) string {
	if b.Cracked {
		return "seal cracked"
	}
	return "seal whole"
}

func (b *SealChecked) fields(f fields) { f.flag("cracked", &b.Cracked) }

func (b *SealChecked) apply(_ *Stump, a *Attempt, e Event) {
	a.SealChecks = append(a.SealChecks, said(e, *b))
}

func (*SealChecked) cause(a *Attempt) cause { return a.wasSealed() }

// Resealed is sealer put on again.
type Resealed struct{}

// Kind is resealed.
func (*Resealed) Kind() string { return "resealed" }

// Say is the answer in a few words.
func (b *Resealed) Say(_ unit.System) string {
	return strings.ReplaceAll(b.Kind(), "-", " ")
}

func (*Resealed) fields(fields) {}

func (b *Resealed) apply(_ *Stump, a *Attempt, e Event) { a.Reseals = append(a.Reseals, said(e, *b)) }

func (*Resealed) cause(a *Attempt) cause { return a.wasSealed() }

// goesWith: cracked, and mended there and then.
func (*Resealed) goesWith(first Body) bool { _, ok := first.(*SealChecked); return ok }

// WashedOff is white paint that rain took off again.
type WashedOff struct{}

// Kind is white-washed-off.
func (*WashedOff) Kind() string { return "white-washed-off" }

// Say is the answer in a few words.
func (*WashedOff) Say(unit.System) string { return "white washed off" }

func (*WashedOff) fields(fields) {}

func (b *WashedOff) apply(_ *Stump, a *Attempt, e Event) { a.Washed = append(a.Washed, said(e, *b)) }

// doneAnew: white that was painted since an earlier rain is washed off by
// another.
func (*WashedOff) doneAnew(a *Attempt) bool { return a.IsWhite() }

// RainedHard is hard rain on a sealed graft, some time after it: nobody has looked
// yet whether the seal held.
type RainedHard struct{}

// Kind is rained-hard.
func (*RainedHard) Kind() string { return "rained-hard" }

// Say is the answer in a few words.
func (*RainedHard) Say(unit.System) string { return "hard rain on the seal" }

func (*RainedHard) fields(fields) {}

func (b *RainedHard) apply(_ *Stump, a *Attempt, e Event) {
	a.HardRain = append(a.HardRain, said(e, *b))
}

func (*RainedHard) cause(a *Attempt) cause { return a.wasSealed() }
