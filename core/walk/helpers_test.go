package walk

import (
	"barkslip/core/due"
	"barkslip/core/record/recordtest"
)

// duesIn is what is due as of the newest answer, or later.
func duesIn(d *recordtest.Diary) []due.Due {
	s := d.Fold()
	return due.At(due.Of(s, d.B), s.Newest)
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
