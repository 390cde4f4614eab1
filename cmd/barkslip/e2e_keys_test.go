package main_test

import (
	"testing"

	"barkslip/core/record"
)

// mostPresses is what an experienced hand may need for a three-scion stump,
// from opening it to painted white, with wood and method as before. The stump is
// round; a second diameter is as many keys more as its figures have, and one for
// the long way.
const mostPresses = 18

func testKeys(t *testing.T) {
	slow(t)
	t.Parallel()
	w := newWorld(t, "2027-05-04 10:00")
	w.knows("RK", false)
	w.plant(1, 2, func(p *planting) {
		p.cutBack(1, 1, "2027-04-26 10:00")
		p.cutBack(1, 2, "2027-04-26 10:10")
		p.grafted(1, 2, "2027-05-04", 3)
		p.did(1, 2, "2027-05-04 09:10", &record.Sealed{Cover: record.Wrapped})
		p.did(1, 2, "2027-05-04 09:50", &record.PaintedWhite{})
	})
	x := w.open(80, 24)
	x.sees(blockName)
	x.answers("Enter", "bleeding")
	x.sees(`row 1 tree 1\b`)
	x.answers("1", "slip")
	x.answers("1", "fresh gashes")
	x.answers("Enter", "fresh cut")
	x.answers("Enter", "new face")
	x.at("2027-05-04 10:16")
	x.answers("1", "measure")
	x.types("3.3")
	x.answers("Enter", "slots")
	x.sees("3 slots")
	x.answers("Enter", "wood")
	x.answers("Enter", "scions")
	for _, next := range []string{"Scion 2 of 3", "Scion 3 of 3", here + " +seal"} {
		x.press("Enter")
		x.sees(next)
	}
	x.answers("Enter", "paint white")
	x.at("2027-05-04 12:30")
	x.sees("1 to paint.*now")
	x.answers("Enter", "rest")

	t.Logf("three-scion stump: %d key presses", x.presses)
	if x.presses > mostPresses {
		t.Errorf("%d key presses, at most %d allowed", x.presses, mostPresses)
	}
	got := w.kinds("1/1")
	for kind, n := range map[string]int{"looked": 3, "gashed": 2, "fresh-cut": 1, "wood-chosen": 1, "scion-set": 3, "sealed": 1, "painted-white": 1} {
		if got[kind] != n {
			t.Errorf("%d of %s in the journal, want %d", got[kind], kind, n)
		}
	}
}
