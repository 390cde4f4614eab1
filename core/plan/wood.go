package plan

import (
	"strings"

	"barkslip/core/due"
	"barkslip/core/record"
)

// UsedOf adds the scions that each lot gave on stumps to those counted in used.
func UsedOf(used map[record.ID]int, sums []due.Summary) {
	for _, s := range sums {
		for _, u := range s.Used {
			used[u.Lot] += u.Scions
		}
	}
}

// Wood is a lot that may be used and what is left of it.
type Wood struct {
	Lot     *record.Lot
	Left    record.WoodLeft
	Counted bool // its sticks were counted, so that Left is known
}

// WoodOf is the wood that may be used, newest lots first: those held are left
// out, and those whose every stick is used up. used is the scions by lot.
func WoodOf(book *record.Book, used map[record.ID]int) (out []Wood) {
	for _, l := range book.LotList() {
		left, counted := book.LeftOf(l.ID, used)
		if l.IsHeld() || counted && left.Most == 0 {
			continue
		}
		out = append(out, Wood{l, left, counted})
	}
	return out
}

// Enough says how the wood of a variety stands to the scions needed of it: the
// least and the most that are left; counted is false where no lot of it has its
// sticks counted, or one has not.
func Enough(wood []Wood, variety string) (least, most int, counted bool) {
	for _, w := range wood {
		if !strings.EqualFold(w.Lot.Received.What.Variety, variety) {
			continue
		}
		if !w.Counted {
			return 0, 0, false
		}
		least, most, counted = least+w.Left.Least, most+w.Left.Most, true
	}
	return least, most, counted
}
