package record

import (
	"errors"
	"fmt"

	"barkslip/core/unit"
)

// ScionBroke is a scion that broke, or was dropped, before it was sealed: its
// slot is open again, and its wood is used all the same.
type ScionBroke struct {
	Slot int // from 1
	Lot  ID  // of its wood; None if of no recorded lot
}

// Kind is scion-broke.
func (*ScionBroke) Kind() string { return "scion-broke" }

// Say is the answer in a few words.
func (b *ScionBroke) Say(unit.System) string { return fmt.Sprintf("scion %d broke or dropped", b.Slot) }

func (b *ScionBroke) fields(f fields) {
	f.number("slot", &b.Slot)
	f.id("lot", &b.Lot)
}

func (b *ScionBroke) check() error {
	if b.Slot < 1 || b.Slot > 24 {
		return errors.New("scion-broke needs a slot of 1 to 24")
	}
	return nil
}

func (b *ScionBroke) apply(_ *Stump, a *Attempt, e Event) { a.Broke = append(a.Broke, said(e, *b)) }

func (*ScionBroke) cause(a *Attempt) cause {
	if len(a.Grafts) == 0 && len(a.Broke) > 0 {
		return cause{} // the last of them broke already
	}
	return a.wasSet()
}

// fare: its slot has no scion any more.
func (b *ScionBroke) fare(c *course) { delete(c.grafts, b.Slot) }

// BrokeIn is how many scions of a slot broke before they were sealed.
func (a *Attempt) BrokeIn(slot int) (n int) {
	for _, b := range a.Broke {
		if b.What.Slot == slot {
			n++
		}
	}
	return n
}

// broken says whether a scion broke after it was set and before it was sealed.
func (a *Attempt) broken(g *Graft) bool {
	for _, b := range a.Broke {
		if b.What.Slot == g.Slot && Newer(b, *g.Set) && !b.At.Before(g.Set.At) && (a.Sealed == nil || b.At.Before(a.Sealed.At)) {
			return true
		}
	}
	return false
}

// Used is how many scions of each lot the stump took in all its graftings, those
// that broke included; wood of no recorded lot is under None.
func (s *Stump) Used() map[ID]int {
	used := map[ID]int{}
	for _, a := range s.Attempts {
		for _, g := range a.Grafts {
			used[g.Set.What.Lot]++
		}
		for _, b := range a.Broke {
			used[b.What.Lot]++
		}
	}
	return used
}
