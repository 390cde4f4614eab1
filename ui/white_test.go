package ui

import (
	"testing"
	"time"

	"barkslip/core/record"
	"barkslip/ui/part"
)

// TestWhiteClockWords follows one white clock in the frame of every screen from
// sealing to paint. The block has no place, so the sun does not shorten it.
func TestWhiteClockWords(t *testing.T) {
	d := newDriver(t, "2027-05-04 10:00")
	d.plant("Hollow Lane", rows(1, 3)...)
	d.sealed(tree(1, 2), "2027-04-20 09:00", "2027-05-04 09:00", "2027-05-04 10:00")
	d.open()
	for _, c := range []struct {
		at    string
		words string
	}{
		{"2027-05-04 10:00", "1 to paint, next in 2 h 00"},
		{"2027-05-04 11:00", "1 to paint, next in 1 h 00"},
		{"2027-05-04 11:48", "1 to paint, next in 12 min"},
		{"2027-05-04 12:00", "1 to paint, 1 now, by 13:00"},
		{"2027-05-04 13:00", "1 to paint, 1 now, by 13:00"},
		{"2027-05-04 13:01", "1 to paint, 1 LATE"},
	} {
		d.clock(c.at)
		for _, way := range []string{"", "enter", "w", "esc", "m", "esc", "x", "esc", "esc"} {
			if way != "" {
				d.press(way)
			}
			if !over[*part.List](d) && !over[*part.Page](d) {
				d.sees(c.words)
			}
		}
	}
	d.goTo(1, 2)
	d.choose("painted white")
	d.lacks("to paint", "LATE")
}

// TestBellRingsOnceAndOnceMore rings when a clock comes due and when it runs
// out, once each, and right after opening the program anew.
func TestBellRingsOnceAndOnceMore(t *testing.T) {
	d := newDriver(t, "2027-05-04 10:00")
	d.plant("Hollow Lane", rows(1, 3)...)
	d.sealed(tree(1, 2), "2027-04-20 09:00", "2027-05-04 09:00", "2027-05-04 10:00")
	d.open()
	bells := func(when string, want int) {
		t.Helper()
		for range 5 {
			d.clock(when)
		}
		if d.bell != want {
			t.Fatalf("%s: %d bells, want %d", when, d.bell, want)
		}
	}
	bells("2027-05-04 10:00", 0)
	bells("2027-05-04 11:59", 0)
	bells("2027-05-04 12:00", 1)
	bells("2027-05-04 12:59", 1)
	bells("2027-05-04 13:01", 2)
	bells("2027-05-04 20:00", 2)
	d.open()
	bells("2027-05-04 20:00", 3)
	d.goTo(1, 2)
	d.choose("painted white")
	bells("2027-05-04 21:00", 3)
	d.press("u")
	bells("2027-05-04 21:00", 4)
}

// TestBellRingsForEachClock has two clocks that come due apart.
func TestBellRingsForEachClock(t *testing.T) {
	d := newDriver(t, "2027-05-04 10:00")
	d.plant("Hollow Lane", rows(1, 3)...)
	d.sealed(tree(1, 1), "2027-04-20 09:00", "2027-05-04 08:00", "2027-05-04 09:00")
	d.sealed(tree(1, 2), "2027-04-20 09:00", "2027-05-04 08:30", "2027-05-04 09:30")
	d.open()
	for _, c := range []struct {
		at   string
		want int
	}{{"2027-05-04 10:59", 0}, {"2027-05-04 11:00", 1}, {"2027-05-04 11:29", 1}, {"2027-05-04 11:30", 2}, {"2027-05-04 12:01", 3}, {"2027-05-04 12:31", 4}} {
		d.clock(c.at)
		if d.bell != c.want {
			t.Errorf("%s: %d bells, want %d", c.at, d.bell, c.want)
		}
	}
	d.sees("2 to paint, 2 LATE")
}

// TestStillWetPutsTheClockOff says that the sealer is wet.
func TestStillWetPutsTheClockOff(t *testing.T) {
	d := newDriver(t, "2027-05-04 10:00")
	d.plant("Hollow Lane", rows(1, 3)...)
	d.sealed(tree(1, 2), "2027-04-20 09:00", "2027-05-04 09:00", "2027-05-04 10:00")
	d.open()
	d.clock("2027-05-04 12:50")
	d.goTo(1, 2)
	d.choose("still wet")
	d.sees("13:20", "1 to paint, next in 30 min")
	d.wait(30 * time.Minute)
	if d.bell == 0 {
		t.Error("no bell when it may be dry")
	}
	d.sees("1 now")
}

// TestWhiteClocksOfOtherBlocks sees the clock of one block on another.
func TestWhiteClocksOfOtherBlocks(t *testing.T) {
	d := newDriver(t, "2027-05-04 10:00")
	d.plant("Hollow Lane", rows(1, 3)...)
	d.sealed(tree(1, 2), "2027-04-20 09:00", "2027-05-04 09:00", "2027-05-04 10:00")
	other := record.ID{9}
	d.append(record.Event{At: d.now, Hand: "RK", Body: &record.BlockMade{Block: other, Name: "Far field"}})
	d.open()
	d.press("b")
	d.pickWord("Far field")
	if d.root.x.Block != other {
		t.Fatal("not on the other block")
	}
	d.sees("Far field", "1 to paint")
	d.clock("2027-05-04 12:00")
	if d.bell != 1 {
		t.Errorf("%d bells", d.bell)
	}
}

// TestClockMarksLateWithoutColour finds the late stump by its sign.
func TestClockMarksLateWithoutColour(t *testing.T) {
	d := newDriver(t, "2027-05-04 14:00")
	d.plant("Hollow Lane", rows(1, 3)...)
	d.sealed(tree(1, 2), "2027-04-20 09:00", "2027-05-04 09:00", "2027-05-04 10:00")
	d.open()
	d.sees("1 late: paint white")
	d.press("right")
	d.sees("1/2  sealed", "paint white 60 min late")
}

// TestLaptopClockBehind is told when the newest answer lies after the clock.
func TestLaptopClockBehind(t *testing.T) {
	d := newDriver(t, "2027-05-04 14:00")
	d.plant("Hollow Lane", rows(1, 3)...)
	d.now = at("2020-01-01 00:00")
	d.open()
	d.sees("4 May 14:00", "after this laptop's clock")
}
