package core

// LeaderBroken is the leader lost and another promoted.
type LeaderBroken struct {
	Cause    string
	Promoted int    // slot of the graft promoted, 0 if none is left
	Shoot    string // which of its shoots
}

// Kind is leader-broken.
func (*LeaderBroken) Kind() string { return "leader-broken" }

func (b *LeaderBroken) fields(f fields) {
	f.text("cause", &b.Cause)
	f.number("promoted", &b.Promoted)
	f.text("shoot", &b.Shoot)
}

func (b *LeaderBroken) apply(_ *Stump, a *Attempt, e Event) { a.Broken = append(a.Broken, said(e, *b)) }
