package due

import (
	"slices"

	"barkslip/core/record"
)

// Clashes is the stumps on which answers disagree, in walking order.
func Clashes(sums []Summary) (out []record.StumpID) {
	for _, s := range sums {
		if s.Clash {
			out = append(out, s.ID)
		}
	}
	slices.SortFunc(out, record.StumpID.WalkCompare)
	return out
}

// NextClash is the next stump behind one on which answers disagree, round to the
// beginning and at last itself; ok is false where there is none.
func NextClash(sums []Summary, from record.StumpID) (id record.StumpID, ok bool) {
	all := Clashes(sums)
	for _, id := range all {
		if id.WalkCompare(from) > 0 {
			return id, true
		}
	}
	if len(all) == 0 {
		return record.NoStump, false
	}
	return all[0], true
}
