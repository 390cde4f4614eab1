package core

// Gashed is a set of gashes made low on the stem.
type Gashed struct {
	Number int
	Depth  Measure // into sapwood
}

// Kind is gashed.
func (*Gashed) Kind() string { return "gashed" }

func (b *Gashed) fields(f fields) {
	f.number("number", &b.Number)
	f.length("depth", &b.Depth)
}

func (b *Gashed) apply(_ *Stump, a *Attempt, e Event) { a.Gashes = append(a.Gashes, said(e, *b)) }
