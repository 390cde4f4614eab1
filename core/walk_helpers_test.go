package core

import "slices"

// duesIn is what is due as of the newest answer, or later.
func duesIn(d *Diary) []Due {
	s := d.Fold()
	return slices.DeleteFunc(Dues(s, d.B), func(due Due) bool { return due.Ended(s.Newest) })
}

// dueIn is the due of a kind as of the newest answer, or later.
func dueIn(d *Diary, kind DueKind) (Due, bool) {
	for _, due := range duesIn(d) {
		if due.Kind == kind {
			return due, true
		}
	}
	return Due{}, false
}
