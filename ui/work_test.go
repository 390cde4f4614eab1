package ui

import (
	"testing"
	"time"

	"barkslip/ui/part"
)

// A change of all stumps that takes long leaves the screens open for use, says how far it
// is, and is in force once it is on disk.
func TestOpenScreensWhileAChangeIsWorkedOut(t *testing.T) {
	d := newDriver(t, "2027-04-26 09:00")
	d.plant("Hollow Lane", rows(1, 3)...)
	w := d.watch()
	let := make(chan bool)
	w.before = func() error { <-let; return nil }
	d.root.x.Work = func() (int, int) { return 2, 3 }
	d.press("o", "2", "metric", "enter")
	if d.root.working == nil {
		t.Fatal("nothing is under way")
	}
	d.root.Update(worked{})
	d.sees("Working out what is due: 2 of 3 stumps.")
	d.press("o", "2", "us", "enter")
	d.sees(part.ErrWorking.Error())
	d.press("esc", "g")
	d.sees("rounds")
	if d.root.x.Site().Units.String() != "us" {
		t.Error("it is in force before it is on disk")
	}
	let <- true
	for last := time.Now().Add(10 * time.Second); d.root.working != nil && time.Now().Before(last); time.Sleep(time.Millisecond) {
		d.root.Update(worked{})
	}
	d.sees("The change is worked out and in force.", "rounds")
	if d.root.x.Site().Units.String() != "metric" || d.root.over != nil {
		t.Error("it is not in force, or something was laid over what was done meanwhile")
	}

	w.before = func() error { return errFull } // short of room: it is said, and nothing was changed
	d.press("esc", "o", "2", "us", "enter")
	d.sees(errFull.Error())
}
