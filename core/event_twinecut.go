package core

// TwineCut is the twine taken off before it girdles.
type TwineCut struct{}

// Kind is twine-cut.
func (*TwineCut) Kind() string { return "twine-cut" }

func (*TwineCut) fields(fields) {}

func (*TwineCut) question() string { return "twine-cut" }

func (b *TwineCut) apply(_ *Stump, a *Attempt, e Event) { a.TwineCut = standing(e, *b) }
