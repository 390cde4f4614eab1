package due

import (
	"pgregory.net/rapid"

	"barkslip/core/record/recordtest"
)

// duesOf is what is due as of the newest answer, or later.
func duesOf(d *recordtest.Diary) []Due {
	s := d.Fold()
	return At(Of(s, d.B), s.Newest)
}

// dueOf is the due of a kind as of the newest answer, or later.
func dueOf(d *recordtest.Diary, kind Kind) (Due, bool) {
	for _, due := range duesOf(d) {
		if due.Kind == kind {
			return due, true
		}
	}
	return Due{}, false
}

// dpicker chooses a number from 0 to under n.
type dpicker func(n int) int

func ddrawn(t *rapid.T) dpicker {
	return func(n int) int { return rapid.IntRange(0, n-1).Draw(t, "pick") }
}
