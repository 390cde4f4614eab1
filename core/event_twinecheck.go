package core

// TwineChecked is a look at the twine, with the stem's girth if measured.
type TwineChecked struct {
	Stem  Measure
	Tight bool
}

// Kind is twine-checked.
func (*TwineChecked) Kind() string { return "twine-checked" }

func (b *TwineChecked) fields(f fields) {
	f.length("stem", &b.Stem)
	f.flag("tight", &b.Tight)
}

func (b *TwineChecked) apply(_ *Stump, a *Attempt, e Event) {
	a.TwineChecks = append(a.TwineChecks, said(e, *b))
}
