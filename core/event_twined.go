package core

// Twined is the two loops of twine put round the stem and the stake.
type Twined struct {
	Loops    int
	Loop     Measure // girth of the tighter loop
	Stem     Measure // girth of the stem inside it
	Material string  // natural or synthetic
}

// Kind is twined.
func (*Twined) Kind() string { return "twined" }

func (b *Twined) fields(f fields) {
	f.number("loops", &b.Loops)
	f.length("loop", &b.Loop)
	f.length("stem", &b.Stem)
	f.text("material", &b.Material)
}

func (*Twined) question() string { return "twine" }

func (b *Twined) check() error { return oneOf("material", b.Material, true, "natural", "synthetic") }

func (b *Twined) apply(_ *Stump, a *Attempt, e Event) { a.Twine = standing(e, *b) }
