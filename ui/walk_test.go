package ui

import "testing"

// cutBack takes the open stump through part 1.
func (d *driver) cutBack() { d.press("2", "enter", "enter", "enter", "enter") }

// toMeasure takes the open stump from a dry look to the measure.
func (d *driver) toMeasure() {
	d.press("1", "1", "enter", "enter")
}

func TestWalkOneStump(t *testing.T) {
	d := newDriver(t, "2027-04-26 09:00")
	d.block()
	d.press("enter")
	d.sees("How many limbs")
	d.cutBack()
	d.sees("Leave it until 3 May.")
	d.clock("2027-05-04 08:00")
	d.sees("Is the face dry?")
	d.toMeasure()
	d.sees("Is the new face dry?")
	d.clock("2027-05-04 08:20")
	d.press("1")
	d.sees("How far across")
	d.press("3.4 3.1", "enter")
	d.sees("Which way")
	d.press("1")
	d.sees("3 slots")
	d.press("enter")
	d.sees("Which wood for Lantern?")
	d.press("9", "enter")
	d.sees("How thick")
	d.press("enter")
	d.sees("How many nodes")
	d.press("enter")
	d.sees("Scion 1 of 3")
	d.press("enter", "3", "enter", "enter")
	d.sees("Seal it.")
	t.Log("\n" + d.screen())
	d.press("enter")
	d.sees("Paint it white when the sealer is dry, 10:20 to")
	d.clock("2027-05-04 10:30")
	d.sees("1 to paint, 1 now")
	d.press("1")
	d.sees("Done here for now")
	t.Log("\n" + d.screen())
}
