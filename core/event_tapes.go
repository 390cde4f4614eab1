package core

// TapesLoosened is the ties loosened or taken off for the winter.
type TapesLoosened struct{}

// Kind is tapes-loosened.
func (*TapesLoosened) Kind() string { return "tapes-loosened" }

func (*TapesLoosened) fields(fields) {}

func (b *TapesLoosened) apply(_ *Stump, a *Attempt, e Event) {
	a.TapesOff = append(a.TapesOff, said(e, *b))
}
