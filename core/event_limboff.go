package core

// LimbTakenOff is a limb near the graft sawn off after it was judged.
type LimbTakenOff struct {
	Left    int     // limbs that stay
	Nearest Measure // clear stem down to the nearest that stays, 0 if none or not yet measured
}

// Kind is limb-taken-off.
func (*LimbTakenOff) Kind() string { return "limb-taken-off" }

func (b *LimbTakenOff) fields(f fields) {
	f.number("left", &b.Left)
	f.length("nearest", &b.Nearest)
}

func (b *LimbTakenOff) apply(_ *Stump, a *Attempt, e Event) {
	a.LimbsOff = append(a.LimbsOff, said(e, *b))
}
