package ui

import (
	"testing"

	"barkslip/core/due"
	"barkslip/core/walk"
	"barkslip/ui/part"
	"barkslip/ui/stump"
)

// TestNextOpensNothingThatWaits goes over all that is due on the made-up block:
// no stump is opened that only says how long to leave it.
func TestNextOpensNothingThatWaits(t *testing.T) {
	d := onSample(t, "2027-05-20 10:12")
	for _, c := range due.Round(d.root.x.Summaries(d.root.x.Block), due.Now(d.now)) {
		d.root.do(part.Open{Stump: c.Stump})
		if s := d.step(); s == walk.StepWait || s == walk.StepRest {
			t.Errorf("%s is opened and asks %s", c.Stump.Place(), s)
		}
	}
}

// TestRoundLeavesWhatWaits: a stump that drains still is in the round of the
// week, and is left until its day.
func TestRoundLeavesWhatWaits(t *testing.T) {
	d := newDriver(t, "2027-05-04 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.did(tree(1, 1), "2027-04-28 09:00", cut()...)
	d.did(tree(1, 2), "2027-04-26 09:00", cut()...)
	d.open()
	d.press("g", "3", "down", "enter")
	d.sees("Leave 1/1 until 5 May")
	if is[*stump.Screen](d) {
		t.Error("it was opened all the same")
	}
	d.press("up", "enter")
	d.on(walk.StepBleeding)
	d.press("n")
	d.sees("That was the last of this round.")
}
