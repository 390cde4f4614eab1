package core

// Pinched is the tips of the rivals pinched.
type Pinched struct{}

// Kind is pinched.
func (*Pinched) Kind() string { return "pinched" }

func (*Pinched) fields(fields) {}

func (b *Pinched) apply(_ *Stump, a *Attempt, e Event) { a.Pinches = append(a.Pinches, said(e, *b)) }
