package core

import "barkslip/core/unit"

// Staked is a stake set beside the stump.
type Staked struct {
	Height Measure      // of the stake's top above the graft
	Side   unit.Bearing // of the stump on which it stands
}

// Kind is staked.
func (*Staked) Kind() string { return "staked" }

func (b *Staked) fields(f fields) {
	f.length("height", &b.Height)
	f.bearing("side_deg", &b.Side)
}

func (*Staked) question() string { return "stake" }

func (b *Staked) apply(_ *Stump, a *Attempt, e Event) { a.Stake = standing(e, *b) }
