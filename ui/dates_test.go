package ui

import (
	"testing"

	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/ui/part"
)

// TestAsksWhichDay: in a metric block 5/4 may be two days; it is asked which, and
// in one kept in inches it is the 4th of May.
func TestAsksWhichDay(t *testing.T) {
	for _, c := range []struct{ key, want string }{{"1", "2027-04-05 13:40"}, {"2", "2027-05-04 13:40"}} {
		d := newDriver(t, "2027-05-20 14:30")
		d.plant("Hollow Lane", rows(1, 2)...)
		d.append(record.Event{At: d.now, Hand: "RK", Body: &record.BlockSet{Block: home, Setting: "units", Value: "metric"}})
		d.open()
		d.press("enter", "t", "5/4 13:40", "enter")
		d.sees("5/4 is which day?", "5 Apr 2027", "4 May 2027")
		d.press("3", "esc")
		d.sees("5/4 13:40")
		d.press("enter", c.key)
		if !d.root.x.Earlier.Equal(at(c.want)) {
			t.Errorf("%s: %s, want %s", c.key, d.root.x.Earlier, c.want)
		}
	}
	d := newDriver(t, "2027-05-20 14:30")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.press("enter", "t", "5/4 13:40", "enter")
	if !d.root.x.Earlier.Equal(at("2027-05-04 13:40")) {
		t.Errorf("in inches: %s", d.root.x.Earlier)
	}
}

// TestDatesWherePeopleTypeThem types a date in every field that takes one.
func TestDatesWherePeopleTypeThem(t *testing.T) {
	d := newDriver(t, "2027-05-20 14:30")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.press("o")
	d.pickWord("bark slips from")
	d.press("May 10", "enter", "esc")
	if got := d.root.x.Site().SlipFrom; got != (record.MonthDay{Month: 5, Day: 10}) {
		t.Errorf("bark slips from %v", got)
	}
	d.press("g", "4", "6/2", "enter")
	d.sees("2 Jun")
}

// TestCutDayIsReadAndNotToCome: wood is received with the day it was cut.
func TestCutDayIsReadAndNotToCome(t *testing.T) {
	d := newDriver(t, "2027-05-20 14:30")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.press("l")
	if !over[*part.Prompt](d) {
		d.press("1")
	}
	d.sees("Name of the lot")
	d.press("L-27", "enter", "Lantern", "enter", "tomorrow", "enter")
	d.sees("no later than today")
	for range "tomorrow" {
		d.press("backspace")
	}
	d.press("14 Feb", "enter", "enter", "enter", "enter", "enter", "enter", "enter")
	for _, lot := range d.root.x.Book.Folded().LotList() {
		if lot.Received.What.Cut == unit.MakeDate(2027, 2, 14) {
			return
		}
	}
	t.Errorf("no lot cut on 14 Feb:\n%s", d.screen())
}
