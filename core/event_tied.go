package core

// Tied is the leader tied to its stake.
type Tied struct {
	Shoot  Measure // length of the leader, from the graft to its tip
	Broken bool    // it is shorter than before because wind or a bird broke it
}

// Kind is tied.
func (*Tied) Kind() string { return "tied" }

func (b *Tied) fields(f fields) {
	f.length("shoot", &b.Shoot)
	f.flag("broken", &b.Broken)
}

func (b *Tied) apply(_ *Stump, a *Attempt, e Event) { a.Ties = append(a.Ties, said(e, *b)) }
