package ui

import (
	"testing"

	"barkslip/core/record"
	"barkslip/ui/changes"
	"barkslip/ui/stump"
)

// TestChangesSinceMonday: from the block one key shows what was done this week, by
// hand and by kind, and Enter the stumps.
func TestChangesSinceMonday(t *testing.T) {
	d := newDriver(t, "2027-05-04 11:30")
	d.plant("Hollow Lane", rows(2, 3)...)
	d.did(tree(1, 1), "2027-04-26 09:00", cut()...)
	d.did(tree(1, 2), "2027-05-03 09:00", &record.CutBack{})
	noted := record.Event{At: at("2027-05-03 10:00"), Hand: "MK", Stump: tree(1, 3), Body: &record.Noted{Text: "wet"}}
	d.append(noted)
	s, err := d.book.Stump(tree(1, 3))
	if err != nil {
		t.Fatal(err)
	}
	d.append(record.Undo([]record.Event{s.Live[len(s.Live)-1]}, at("2027-05-04 09:00"), "RK")...)
	d.open()
	d.press("esc", "j")
	if !is[*changes.Screen](d) {
		t.Fatalf("no changes:\n%s", d.screen())
	}
	d.sees("Since Mon 3 May. By hand.", "done or seen on 6 stumps, 1 taken back", "RK")
	d.press("2")
	d.sees("cut back", "1 on 1 stump", "stump added")
	d.press("4")
	d.sees("1 thing taken back on 1 stump", "noted, by RK")
	d.press("enter")
	d.sees("1/3", "noted by RK")
	d.press("esc", "2", "down")
	d.press("enter")
	d.sees("> 1")
	d.press("enter")
	if !is[*stump.Screen](d) {
		t.Fatalf("no stump is open:\n%s", d.screen())
	}
	d.press("esc")
	d.press("f", "tomorrow", "enter")
	d.sees("a day up to today")
	d.press("esc", "f", "26 apr", "enter")
	d.sees("Since Mon 26 Apr.")
	d.press("w")
	d.sees("A correction counts in place")
}

// TestLateWorkByHand: from the block in two keys, by the hand who worked last.
func TestLateWorkByHand(t *testing.T) {
	d := newDriver(t, "2027-05-04 08:00")
	d.plant("Hollow Lane", rows(2, 3)...)
	d.did(tree(1, 1), "2027-05-03 09:00", graft()...)
	d.did(tree(1, 1), "2027-05-03 10:00", &record.Sealed{Cover: record.Bare})
	d.now = at("2027-05-04 08:00")
	d.open()
	before := d.keys
	d.press("esc", "j", "5")
	d.sees("late on 1 stump", "RK", "1 stump")
	if d.keys-before > 3 {
		t.Errorf("%d keys", d.keys-before)
	}
	d.press("enter")
	d.sees("1/1", "white")
}

// TestChangesAtEverySize draws an empty block and a full one in each window.
func TestChangesAtEverySize(t *testing.T) {
	d := newDriver(t, "2027-05-12 08:00")
	d.plant("Hollow Lane", rows(12, 20)...)
	for _, now := range []string{"2027-05-12 08:00", "2027-05-18 08:00"} {
		d.now = at(now)
		d.open()
		for _, size := range [][2]int{{60, 15}, {80, 24}, {120, 40}} {
			d.size(size[0], size[1])
			d.press("esc", "j")
			for _, view := range []string{"1", "2", "3", "4", "5"} {
				d.press(view, "down", "up")
				d.sees("Hollow Lane")
				if !is[*changes.Screen](d) {
					t.Fatalf("%v %s:\n%s", size, view, d.screen())
				}
			}
			d.press("esc")
		}
	}
}
