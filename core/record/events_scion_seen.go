package record

import (
	"errors"
	"fmt"

	"barkslip/core/unit"
)

// ScionSeen is one of the things seen on a scion before it is said to be set,
// where each is asked by itself.
type ScionSeen struct {
	Slot int  // from 1
	Item int  // from 1: the things of CheckWords in their order, then the slit
	Good bool // it is as it should be
}

// SlitItem is the number of the slit among the things seen, behind the six.
const SlitItem = len(CheckWords) + 1

// Kind is scion-seen.
func (*ScionSeen) Kind() string { return "scion-seen" }

// Say is the answer in a few words.
func (b *ScionSeen) Say(unit.System) string {
	good, wrong := "the slit stops where it was cut", "split ran on"
	if b.Item >= 1 && b.Item <= len(CheckWords) {
		good, wrong = CheckWords[b.Item-1], wrongWords[b.Item-1]
	}
	if b.Good {
		return fmt.Sprintf("scion %d: %s", b.Slot, good)
	}
	return fmt.Sprintf("scion %d: %s", b.Slot, wrong)
}

func (b *ScionSeen) fields(f fields) {
	f.number("slot", &b.Slot)
	f.number("item", &b.Item)
	f.flag("good", &b.Good)
}

func (b *ScionSeen) check() error {
	switch {
	case b.Slot < 1 || b.Slot > 24:
		return errors.New("scion-seen needs a slot of 1 to 24")
	case b.Item < 1 || b.Item > SlitItem:
		return fmt.Errorf("scion-seen needs an item of 1 to %d", SlitItem)
	}
	return nil
}

func (b *ScionSeen) apply(_ *Stump, a *Attempt, e Event) { a.Seen = append(a.Seen, said(e, *b)) }

func (*ScionSeen) cause(a *Attempt) cause { return a.wasCutBack() }

func (b *ScionSeen) sameStep(other Body) bool {
	o, ok := other.(*ScionSeen)
	return ok && o.Slot == b.Slot && o.Item == b.Item
}

// begins: a scion seen after every graft was lost is of another attempt, as one
// that is set.
func (*ScionSeen) begins(c *course) bool { return c.ended() }

// SeenOf is what was told of the scion in hand for a slot, by the number of the
// thing; a scion that was set since, or broke, is not in hand any more.
func (a *Attempt) SeenOf(slot int) map[int]bool {
	told := map[int]bool{}
	for _, seen := range a.Seen {
		if seen.What.Slot == slot && !a.spent(seen) {
			told[seen.What.Item] = seen.What.Good
		}
	}
	return told
}

// spent says whether the scion that was seen has been set since, or broke.
func (a *Attempt) spent(seen Said[ScionSeen]) bool {
	if g := a.Graft(seen.What.Slot); g != nil && Newer(*g.Set, seen) {
		return true
	}
	for _, b := range a.Broke {
		if b.What.Slot == seen.What.Slot && Newer(b, seen) {
			return true
		}
	}
	return false
}
