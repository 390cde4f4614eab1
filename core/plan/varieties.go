package plan

import (
	"slices"
	"strings"

	"barkslip/core/record"
)

// LotNeed is a lot and what is needed of its variety.
type LotNeed struct {
	Lot     string // "" where no lot of the variety is there
	Variety string
	Left    *int // scions it still gives at the least; nil where its sticks were not counted
	Needed  int  // scions of the variety
}

// NeedByLot holds the scions needed by variety against the lots that may be used;
// a variety without a lot has a row of its own. In order of variety, then lot.
func NeedByLot(wood []Wood, needed map[string]int) (out []LotNeed) {
	met := map[string]bool{}
	for _, w := range wood {
		got := w.Lot.Received.What
		n := LotNeed{Lot: got.Name, Variety: got.Variety}
		if w.Counted {
			n.Left = &w.Left.Least
		}
		for variety, scions := range needed {
			if strings.EqualFold(variety, got.Variety) {
				n.Needed, met[variety] = scions, true
			}
		}
		out = append(out, n)
	}
	for variety, scions := range needed {
		if !met[variety] {
			out = append(out, LotNeed{Variety: variety, Left: new(int), Needed: scions})
		}
	}
	slices.SortFunc(out, func(a, b LotNeed) int {
		return strings.Compare(strings.ToLower(a.Variety)+"\x00"+a.Lot, strings.ToLower(b.Variety)+"\x00"+b.Lot)
	})
	return out
}

// VarietyOf is the variety that a stump is grafted to: its own, else the block's.
func VarietyOf(s *record.Stump, b *record.Block) string {
	if s.Added != nil && s.Added.What.Variety != "" {
		return s.Added.What.Variety
	}
	return b.Variety
}

// NeedByVariety is the scions that a load takes of each variety.
func (l Load) NeedByVariety() map[string]int {
	out := map[string]int{}
	for _, s := range l.Sticks {
		out[s.Variety] += s.Scions
	}
	return out
}
