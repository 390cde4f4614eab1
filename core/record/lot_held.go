package record

import (
	"strings"
	"time"
)

// IsHeld says whether the lot is held: not to be used.
func (l *Lot) IsHeld() bool { return l.Held != nil && l.Held.What.Held }

// Follows says whether a lot that is held is followed to the stumps that it went
// to: its scions are in doubt too, and not its sticks alone.
func (l *Lot) Follows() bool { return l.IsHeld() && !l.Held.What.Left }

// HeldWords names a lot that is held, and says why: "lot L-27, HELD: mouldy".
func (l *Lot) HeldWords() string {
	return strings.TrimSuffix("lot "+l.Name()+", HELD: "+l.Held.What.Why, ": ")
}

// InUse says whether the lot is of this season's wood on a block, and not held.
func (l *Lot) InUse(b *Block, now time.Time) bool {
	age := int(b.Day(now) - b.Day(l.Received.At))
	return !l.IsHeld() && age <= lotDays && age >= 0
}

// lotDays is how long wood received is of this season.
const lotDays = 240

// Name is what the lot is called, a few letters of its id where it was never
// received.
func (l *Lot) Name() string {
	if l.Received == nil {
		return l.ID.String()[:6]
	}
	return l.Received.What.Name
}

// Named is the lots of a name, whatever its capitals and spaces, that go on;
// newest first.
func (b *Book) Named(name string) (out []*Lot) {
	for _, l := range b.LotList() {
		if plainName(l.Name()) == plainName(name) {
			out = append(out, l)
		}
	}
	return out
}

func plainName(name string) string { return strings.ToLower(strings.Join(strings.Fields(name), " ")) }

// CutOutNow is what is recorded when the scions of a lot are cut out of an attempt:
// that they were, and that they are dead of poor wood, where any still lives; the
// other grafts are not spoken of.
func (a *Attempt) CutOutNow(b *Book, lot ID) []Body {
	of := b.LotOf(lot)
	v := &Visited{}
	lives := false
	for _, g := range a.Grafts {
		if g.State != Dead && of != nil && b.LotOf(g.Set.What.Lot) == of {
			v.Found = append(v.Found, Finding{Slot: g.Slot, State: Dead, Cause: "poor wood"})
			lives = true
		}
	}
	out := []Body{&LotFollowed{Lot: lot, Do: WereCut}}
	if lives {
		out = append(out, v)
	}
	return out
}
