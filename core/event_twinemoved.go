package core

// TwineMoved is the twine let out or moved up, with the new loop's girth.
type TwineMoved struct {
	Loop Measure
	Stem Measure
}

// Kind is twine-moved.
func (*TwineMoved) Kind() string { return "twine-moved" }

func (b *TwineMoved) fields(f fields) {
	f.length("loop", &b.Loop)
	f.length("stem", &b.Stem)
}

func (b *TwineMoved) apply(_ *Stump, a *Attempt, e Event) {
	a.TwineMoves = append(a.TwineMoves, said(e, *b))
}
