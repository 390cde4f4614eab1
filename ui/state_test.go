package ui

import (
	"testing"

	"barkslip/core/record"
)

// The list of blocks says how each stands.
func TestBlocksAreListedWithTheirState(t *testing.T) {
	d := newDriver(t, "2027-05-04 14:00")
	d.plant("Hollow Lane", rows(1, 3)...)
	d.sealed(tree(1, 2), "2027-04-20 09:00", "2027-05-04 09:00", "2027-05-04 10:00")
	d.append(record.Event{At: d.now, Hand: "RK", Body: &record.BlockMade{Block: record.ID{9}, Name: "Far field"}})
	d.open()
	d.size(120, 40)
	d.press("b")
	d.sees("3 stumps, 1 late, 3 due, 1 to paint, last answer 4 May 2027 14:00", "Far field", "0 stumps")
	d.size(80, 24)
	d.press("esc", "b")
	d.sees("3 stumps, 1 late, 3 due, 1 to paint")
	d.lacks("last answer")
	d.size(60, 15)
	d.press("esc", "b")
	d.sees("3 stumps, 1 late, 3 due")
	d.lacks("due, 1 to paint")
}
