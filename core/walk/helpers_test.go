package walk

import (
	"slices"

	"barkslip/core/due"
	"barkslip/core/record/recordtest"
)

// duesIn is what is due as of the newest answer, or later.
func duesIn(d *recordtest.Diary) []due.Due {
	s := d.Fold()
	return slices.DeleteFunc(due.Of(s, d.B), func(due due.Due) bool { return due.Ended(s.Newest) })
}

// dueIn is the due of a kind as of the newest answer, or later.
func dueIn(d *recordtest.Diary, kind due.Kind) (due.Due, bool) {
	for _, due := range duesIn(d) {
		if due.Kind == kind {
			return due, true
		}
	}
	return due.Due{}, false
}
