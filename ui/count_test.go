package ui

import (
	"testing"
	"time"

	"barkslip/core/record"
	"barkslip/core/walk"
)

// mostPresses is what an experienced hand, coach off, needs at most for a
// three-scion stump whose wood and method are as on the stump before.
const mostPresses = 24

// grafted takes the open stump from its look to white paint, three scions, as
// an experienced hand would.
func (d *driver) grafted() {
	d.t.Helper()
	d.on(walk.StepBleeding)
	d.press("1", "1", "enter", "enter") // dry, slips, gashes, fresh cut
	d.on(walk.StepNewFace)
	d.wait(15 * time.Minute)
	d.press("1", "3.4", "enter", "enter", "enter") // dry, measured, slots, wood as before
	d.on(walk.StepScion)
	d.press("enter", "enter", "enter", "enter") // three scions, sealed
	d.on(walk.StepWhite)
	d.wait(2*time.Hour + time.Minute)
	d.press("1")
	s := d.stump()
	if s.Stage() != record.StagePainted || len(s.Now().Grafts) != 3 {
		d.t.Fatalf("%s with %d scions", s.Stage(), len(s.Now().Grafts))
	}
}

// TestPressesOfAnExperiencedHand counts the presses from Enter on the block to
// white paint: on the graft day, and over both days with the cut-back.
func TestPressesOfAnExperiencedHand(t *testing.T) {
	d := newDriver(t, "2027-04-26 09:00")
	d.plant("Hollow Lane", rows(1, 3)...)
	d.did(tree(1, 1), "2027-04-20 09:00", cut()...)
	d.did(tree(1, 1), "2027-04-27 08:00", graft()...)
	d.did(tree(1, 1), "2027-04-27 09:00", &record.Sealed{Cover: record.Wrapped})
	d.did(tree(1, 1), "2027-04-27 11:30", &record.PaintedWhite{})
	d.did(tree(1, 2), "2027-04-26 09:00", cut()...)
	d.clock("2027-05-04 08:00")
	d.open()
	d.press("right")
	d.keys = 0
	d.press("enter")
	d.grafted()
	t.Logf("graft day, from Enter on the block to white paint: %d presses", d.keys)
	if d.keys > mostPresses {
		t.Errorf("%d presses, at most %d", d.keys, mostPresses)
	}
	d.press("esc", "right")
	d.keys = 0
	d.press("enter", "2", "enter", "enter", "enter", "enter") // limbs, reach, leaf, height, gashes
	d.on(walk.StepWait)
	d.clock("2027-05-12 08:00")
	d.grafted()
	t.Logf("with the cut-back, from Enter on the block to white paint: %d presses", d.keys)
	if d.keys > mostPresses {
		t.Errorf("%d presses, at most %d", d.keys, mostPresses)
	}
}
