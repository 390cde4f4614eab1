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
	d.sees("When does bark slip here?", "For the 12 stumps to graft take 36 scions", "9 to 12 sticks")
	d.press("esc")
	d.lacks("slip")

	set("slip-from", "05-10")
	set("slip-to", "05-25")
	set("a-day", "3")
	d.open()
	d.sees("slip 6 d left, cut back 0") // what is cut back today is ready two days after the last
	d.press("p")
	d.sees("6 days of slip are left, to 25 May. 2 a day keeps pace", "Cut back none today.", "bark does not slip", "0 of 3")

	set("wait-days", "5")
	d.press("esc")
	d.open()
	d.sees("cut back 3")
}
