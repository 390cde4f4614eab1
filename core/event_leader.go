package core

// LeaderChosen is the shoot that becomes the tree.
type LeaderChosen struct {
	Slot  int
	Shoot string // which shoot of the graft: upper, lower, second
}

// Kind is leader-chosen.
func (*LeaderChosen) Kind() string { return "leader-chosen" }

func (b *LeaderChosen) fields(f fields) {
	f.number("slot", &b.Slot)
	f.text("shoot", &b.Shoot)
}

func (*LeaderChosen) question() string { return "leader" }

func (b *LeaderChosen) apply(_ *Stump, a *Attempt, e Event) { a.Leader = standing(e, *b) }
