package core

// Sealed is the graft sealed; it starts the white clock.
type Sealed struct{ Cover Cover }

// Kind is sealed.
func (*Sealed) Kind() string { return "sealed" }

func (b *Sealed) fields(f fields) { word(f, "cover", &b.Cover) }

func (*Sealed) question() string { return "sealed" }

func (b *Sealed) check() error { return oneOf("cover", b.Cover, false, Covers...) }

func (b *Sealed) apply(_ *Stump, a *Attempt, e Event) { a.Sealed = standing(e, *b) }
