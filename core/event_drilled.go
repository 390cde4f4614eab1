package core

// Drilled is drain holes bored low on the stem.
type Drilled struct{ Number int }

// Kind is drilled.
func (*Drilled) Kind() string { return "drilled" }

func (b *Drilled) fields(f fields) { f.number("number", &b.Number) }

func (b *Drilled) apply(_ *Stump, a *Attempt, e Event) { a.Holes = append(a.Holes, said(e, *b)) }
