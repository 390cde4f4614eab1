package ui

import (
	"strings"
	"testing"

	"barkslip/core/record"
	"barkslip/core/walk"
)

// atNodes is a stump with three slots marked, its wood chosen but for the buds.
func atNodes(t *testing.T) *driver {
	d := newDriver(t, "2027-05-04 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.did(tree(1, 1), "2027-04-20 09:00", cut()...)
	d.did(tree(1, 1), "2027-05-04 08:50", graft()[:7]...)
	d.did(tree(1, 1), "2027-05-04 08:55", &record.WoodChosen{Variety: "Lantern", Thickness: inches(0.5)})
	d.open()
	d.press("enter")
	d.on(walk.StepNodes)
	return d
}

// TestStickIsDrawnWhileTyped: the stick and its cuts stand under what is typed
// so far, in each full window, and large; before its first node it is said how
// a stick is typed.
func TestStickIsDrawnWhileTyped(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {120, 40}} {
		for _, large := range []string{"", "f"} {
			d := atNodes(t)
			d.size(size[0], size[1])
			d.press("7", large)
			d.sees("ps both", "p the first only", "x none that can grow")
			d.press("24 4:ps 5.2:p 7:x 11:ps 12.5:ps 16:")
			d.sees("--1--", "==2==", "It gives 2 scions. 1 more needed", "x none")
			if wrong := geometry(d.root.View(), size[0], size[1]); wrong != "" {
				t.Error(wrong)
			}
		}
	}
}

// TestStickRecorded: what was taken says where to cut, and so does each scion.
func TestStickTaken(t *testing.T) {
	d := atNodes(t)
	d.press("7", "24 4:ps 5.2:p 7:x 11:ps 12.5:ps", "enter")
	d.on(walk.StepScion)
	d.sees("cut at 1 1/4 to 5 11/16 in, 8 1/4 to 13 in", "Cut it 1 1/4 to 5 11/16 in from the butt.")
	d.press("enter")
	d.sees("Cut it 8 1/4 to 13 in from the butt.")
	d.correct(walk.StepNodes)
	d.sees("from the butt at 1 1/4", "8 1/4 to 13 in", "as cut", "2 scions")
}

// TestSplitIsOneDigit: a split that ran on is marked among the checks, then
// measured; the seal says so.
func TestSplitIsOneDigit(t *testing.T) {
	d := atNodes(t)
	d.press("1", "7", "enter")
	d.on(walk.StepSplit)
	d.press("2", "enter")
	d.on(walk.StepScion)
	_, set := newest[*record.ScionSet](d)
	if set.Slot != 1 || set.Split.Typed != "2" || set.Checks != record.AllGood {
		t.Errorf("%+v", set)
	}
	d.press("enter", "enter")
	d.on(walk.StepSeal)
	d.sees("The split at slot 1 ran 2 in: seal below")
}

// TestCorrectingTheHeightKeepsTheDiameter goes up and types the height alone.
func TestCorrectingTheHeightKeepsTheDiameter(t *testing.T) {
	d := newDriver(t, "2027-04-26 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.press("enter", "0", "42 3", "enter")
	d.correct(walk.StepHeight)
	d.sees("Enter takes 42 in, 3 in", "Type a height alone to keep the 3 in")
	d.press("40", "enter")
	if _, c := newest[*record.CutBack](d); c.Height.Typed != "40" || c.Across.Typed != "3" {
		t.Errorf("%+v", c)
	}
}

// TestMeasureLeftAsItIs: Enter on the measure that stands changes nothing, and
// the slots are not asked again.
func TestMeasureLeftAsItIs(t *testing.T) {
	d := atNodes(t)
	before := len(d.live())
	d.correct(walk.StepMeasure)
	d.sees("Enter takes 3.4 in")
	d.press("enter")
	d.on(walk.StepNodes)
	if n := len(d.live()); n != before {
		t.Errorf("%d answers stand, %d stood", n, before)
	}
	d.press("u")
	d.sees("Took back")
	if strings.Contains(d.screen(), "could not") {
		t.Error(d.screen())
	}
}

// TestBlockedBarkIsDrawnWhileTyped: the slots move away from bark as it is
// blocked.
func TestBlockedBarkIsDrawnWhileTyped(t *testing.T) {
	d := newDriver(t, "2027-05-04 09:00")
	d.plant("Hollow Lane", rows(1, 1)...)
	d.did(tree(1, 1), "2027-04-20 09:00", cut()...)
	d.did(tree(1, 1), "2027-05-04 08:50", graft()[:6]...)
	d.open()
	d.press("enter")
	d.on(walk.StepSlots)
	d.size(120, 40)
	d.press("4", "90:4i")
	d.lacks(" blocked")
	d.press("n")
	d.sees(" blocked")
}
