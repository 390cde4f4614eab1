package core

// NurseLimbOff is nurse limbs taken off in the dormant season.
type NurseLimbOff struct{ Left int }

// Kind is nurse-limb-off.
func (*NurseLimbOff) Kind() string { return "nurse-limb-off" }

func (b *NurseLimbOff) fields(f fields) { f.number("left", &b.Left) }

func (b *NurseLimbOff) apply(_ *Stump, a *Attempt, e Event) {
	a.NurseOff = append(a.NurseOff, said(e, *b))
}
