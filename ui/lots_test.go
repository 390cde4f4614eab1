package ui

import (
	"testing"

	"barkslip/core/record"
	"barkslip/core/walk"
)

// TestLotsFromTheKeyboard receives a lot, reads its store, holds it and lets it
// go; what speaks against it is said in the list and where wood is chosen.
func TestLotsFromTheKeyboard(t *testing.T) {
	d := newDriver(t, "2027-05-04 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.open()
	d.press("l")
	d.sees("Lots of scion wood", "Moving wood")
	d.press("1")
	d.press("enter")
	d.sees("is not understood", "a name, such as L-27")
	d.press("L-28", "enter", "Lantern", "enter", "last winter", "enter")
	d.sees("is not understood")
	d.press("esc")
	if len(d.root.x.Book.Folded().LotList()) != 0 {
		t.Fatal("a lot was kept before its last question")
	}
	d.press("l", "1")
	d.press("L-28", "enter", "Lantern", "enter", "2026-11-12", "enter", "0", "enter")
	d.sees("a whole number from 1")
	d.press("backspace")
	d.press("40", "enter", "9in", "enter")
	d.sees("from 1/8 in to 2 in")
	d.press("esc")
	d.press("l", "1")
	d.press("L-28", "enter", "Lantern", "enter", "2026-11-12", "enter", "40", "enter", "3/8", "enter")
	d.press("old orchard", "enter", "cellar, bagged", "enter", "enter")
	d.pasteText("NY-7 \u202e\x1b[31m木 ½")
	d.press("enter")
	d.sees("Recorded: lot L-28, Lantern", "OLD WOOD: cut 12 Nov 2026", "L-28")

	d.press("1", "1")
	d.press("46", "enter")
	d.sees("stands at 46 F")
	d.sees("WARM WOOD: its store stood at 46 F on 4 May, over 40 F", "40 sticks", "3/8 in", "From old orchard", "Kept cellar, bagged", "Permit NY-7 [31m木 ½",
		"none set yet", "No scion of it was set yet")
	d.press("2")
	d.press("mouldy", "enter")
	d.sees("HELD: mouldy", "None of it was set yet, so no stump has it")
	d.press("3")
	d.sees("there is no stump to show")
	d.press("2")
	d.sees("may be used again")
	d.lacks("HELD")

	lot := d.root.x.Book.Folded().LotList()[0]
	if w := lot.Received.What; w.Sticks != 40 || w.Permit != "NY-7 [31m木 ½" || w.Thickness.Typed != "3/8" || len(lot.Readings) != 1 || lot.Held.What.Held {
		t.Errorf("the lot is %+v", lot)
	}
}

// TestDoubtfulWoodIsNotLikely asks for a key of its own where something speaks
// against the wood, and says what.
func TestDoubtfulWoodIsNotLikely(t *testing.T) {
	d := newDriver(t, "2027-05-04 08:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.append(record.Event{At: d.now, Hand: "RK", Body: &record.LotReceived{Lot: record.ID{8}, Name: "L-1", Variety: "Lantern"}},
		record.Event{At: d.now, Hand: "RK", Body: &record.StoreRead{Lot: record.ID{8}, Temp: record.Degrees{Temperature: 9, Typed: "9C"}}})
	d.toWood()
	d.sees("WARM WOOD")
	d.press("enter")
	d.on(walk.StepWood)
	d.choose("L-1")
	d.on(walk.StepThick)
	d.sees("WARM WOOD: its store stood at 48 F on 4 May,", "over 40 F.")
}
