package record

import (
	"fmt"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// WoodLeft is how much of a lot is left: its sticks give from Least to Most
// scions more, as a stick gives trade.GraftsPerStick to trade.GraftsPerStickMost.
type WoodLeft struct {
	Sticks int // as received
	Used   int // scions set of it, those that broke included
	Least  int // scions, 0 where it may be at its end
	Most   int // scions, 0 where it is used up by any count
}

// Left is what is left of the lot after so many scions; ok is false where its
// sticks were not counted.
func (l *Lot) Left(used int) (left WoodLeft, ok bool) {
	n := l.Received.What.Sticks
	if n <= 0 {
		return left, false
	}
	return WoodLeft{n, used, max(n*trade.GraftsPerStick-used, 0), max(n*trade.GraftsPerStickMost-used, 0)}, true
}

// Words is what is left in a few words: "5 to 11 scions left of 6 sticks".
func (w WoodLeft) Words() string {
	if w.Most == 0 {
		return fmt.Sprintf("used up by the count: %s of %s", unit.Count(w.Used, "scion"), unit.Count(w.Sticks, "stick"))
	}
	return fmt.Sprintf("%d to %d scions left of %s", w.Least, w.Most, unit.Count(w.Sticks, "stick"))
}

// LeftOf is what is left of the lot that a lot goes on as, used being the scions
// by lot; ok is false where that is not known.
func (b *Book) LeftOf(lot ID, used map[ID]int) (left WoodLeft, ok bool) {
	l := b.LotOf(lot)
	if l == nil || used == nil {
		return left, false
	}
	n := 0
	for id, scions := range used {
		if b.LotOf(id) == l {
			n += scions
		}
	}
	return l.Left(n)
}
