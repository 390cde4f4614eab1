package core

// Resealed is sealer put on again.
type Resealed struct{}

// Kind is resealed.
func (*Resealed) Kind() string { return "resealed" }

func (*Resealed) fields(fields) {}

func (b *Resealed) apply(_ *Stump, a *Attempt, e Event) { a.Reseals = append(a.Reseals, said(e, *b)) }
