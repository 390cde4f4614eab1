package tally

import "barkslip/core/trade"

// Odds is the chance of a bud and how alike the scions of a stump fare, learned
// from the block's own record when it has enough.
type Odds struct {
	PerBud   float64
	Together float64
	Learned  bool
	Stumps   int // it was learned from
	Grafts   int // on those, of which it is known whether they took
}

// BudsUsual is the buds of two paired nodes.
const BudsUsual = 4

// UsualOdds is what is assumed until a block has a record of its own.
func UsualOdds() Odds { return Odds{PerBud: trade.ChanceOfBud, Together: trade.GraftsTogether} }
