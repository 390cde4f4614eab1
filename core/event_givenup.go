package core

// GivenUp is a stump that will not be grafted, or not again.
type GivenUp struct {
	Why    string
	Season bool // for this season only
}

// Kind is given-up.
func (*GivenUp) Kind() string { return "given-up" }

func (b *GivenUp) fields(f fields) {
	f.text("why", &b.Why)
	f.flag("season", &b.Season)
}

func (*GivenUp) question() string { return "given-up" }

func (b *GivenUp) apply(_ *Stump, a *Attempt, e Event) { a.GivenUp = standing(e, *b) }
