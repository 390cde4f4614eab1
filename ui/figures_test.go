package ui

import (
	"testing"
	"time"

	"barkslip/core/walk"
)

// TestTornBarkIsDrawn: where bark is torn is seen while it is typed, and on the new
// face, in a full window; before the stump is measured it is said what size it is
// drawn as.
func TestTornBarkIsDrawn(t *testing.T) {
	d := newDriver(t, "2027-04-26 09:00")
	d.plant("Hollow Lane", rows(2, 3)...)
	d.press("enter", "2", "enter", "enter", "enter", "enter")
	d.clock("2027-05-04 08:00")
	d.press("1", "1", "enter", "2")
	d.on(walk.StepTorn)
	d.press("120:2in")
	d.sees("N", "torn", "as 4 in")
	d.press("enter")
	d.on(walk.StepNewFace)
	d.sees("N", "torn", "as 4 in")
	d.size(120, 40)
	d.sees("torn", "drawn as 4 in")
	d.size(80, 24)
	d.wait(16 * time.Minute)
	d.press("1", "3.4 3.1")
	d.sees("torn", "3 3/8 in")
}
