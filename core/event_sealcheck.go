package core

// SealChecked is the look at the seal some days after.
type SealChecked struct{ Cracked bool }

// Kind is seal-checked.
func (*SealChecked) Kind() string { return "seal-checked" }

func (b *SealChecked) fields(f fields) { f.flag("cracked", &b.Cracked) }

func (b *SealChecked) apply(_ *Stump, a *Attempt, e Event) {
	a.SealChecks = append(a.SealChecks, said(e, *b))
}
