package ui

import (
	"testing"

	"barkslip/core/record"
)

// TestPaceOfABlock shows what keeps pace with the season of slip, also where
// its days are not known.
func TestPaceOfABlock(t *testing.T) {
	d := newDriver(t, "2027-05-20 09:00")
	d.plant("Hollow Lane", rows(3, 4)...)
	set := func(name, value string) {
		d.append(record.Event{At: d.now, Hand: "RK", Body: &record.BlockSet{Block: home, Setting: name, Value: value}})
	}
	set("latitude", "10")
	d.open()
	d.press("p")
	d.sees("When does bark slip here?")
	d.press("2")
	d.sees("12 stumps to graft, and their first season")
	d.press("1")
	d.sees("12 stumps to graft take 36 scions", "12 sticks for 36 scions")
	d.press("esc", "esc")
	d.lacks("slip")

	set("slip-from", "05-10")
	set("slip-to", "05-25")
	set("a-day", "3")
	d.open()
	d.sees("bark slips 6 more days, cut back 0 today") // what is cut back today is ready two days after the last
	d.press("p")
	d.sees("12 of 12 stumps are left when bark stops slipping on Tue 25 May 2027.", "Cut back none today.", "3 stumps a day, set for the block.")

	set("wait-days", "5")
	d.press("esc")
	d.open()
	d.sees("cut back 3")
}
