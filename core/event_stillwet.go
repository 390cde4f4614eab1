package core

// StillWet says the sealer cannot take white yet: not dry, or rained on.
type StillWet struct{ Rain bool }

// Kind is still-wet.
func (*StillWet) Kind() string { return "still-wet" }

func (b *StillWet) fields(f fields) { f.flag("rain", &b.Rain) }

func (b *StillWet) apply(_ *Stump, a *Attempt, e Event) { a.StillWet = append(a.StillWet, said(e, *b)) }
