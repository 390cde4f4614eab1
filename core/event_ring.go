package core

// RingSet is an earwig ring put on or renewed.
type RingSet struct{}

// Kind is ring-set.
func (*RingSet) Kind() string { return "ring-set" }

func (*RingSet) fields(fields) {}

func (b *RingSet) apply(_ *Stump, a *Attempt, e Event) { a.Rings = append(a.Rings, said(e, *b)) }
