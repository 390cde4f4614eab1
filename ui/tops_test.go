package ui

import (
	"testing"

	"barkslip/core/record"
)

// TestTopsWaiting names the faces whose sap settles, those that are ready first,
// and shouts what should have been sealed beside the white clocks.
func TestTopsWaiting(t *testing.T) {
	d := newDriver(t, "2027-05-04 09:00")
	d.plant("Hollow Lane", rows(2, 9)...)
	for n, when := range map[int]string{6: "2027-05-04 08:42", 7: "2027-05-04 08:51"} {
		d.did(tree(1, n), "2027-04-20 09:00", cut()...)
		d.did(tree(1, n), when, graft()[:4]...)
	}
	d.open()
	d.sees("faces waiting: 1/6 ready, 1/7 in 6 min")
	d.lacks("to seal")
	d.did(tree(1, 9), "2027-04-20 09:00", cut()...)
	d.did(tree(1, 9), "2027-05-04 08:18", graft()...)
	d.open()
	d.sees("1/9 to seal, 12 min late", "faces waiting: 1/6 ready, 1/7 in 6 min")
	for _, size := range [][2]int{{60, 15}, {160, 40}} {
		d.size(size[0], size[1])
		d.sees("1/9 to seal, 12 min late")
		d.press("enter", "esc")
	}
	d.did(tree(1, 9), "2027-05-04 08:59", &record.Sealed{Cover: record.Wrapped})
	d.open()
	d.lacks("to seal")
	d.clock("2027-05-04 09:10")
	d.sees("faces waiting: 1/6 ready, 1/7 ready")
}

// What was missed long ago is told in days, as everywhere else.
func TestSealingMissedLongAgo(t *testing.T) {
	d := newDriver(t, "2027-05-04 09:00")
	d.plant("Hollow Lane", rows(2, 9)...)
	d.did(tree(1, 9), "2027-04-10 09:00", cut()...)
	d.did(tree(1, 9), "2027-04-24 08:18", graft()...)
	d.open()
	d.sees("1/9 to seal, 10 days late")
}
