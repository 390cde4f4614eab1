package ui

import (
	"errors"
	"testing"
	"time"

	"barkslip/core/record"
)

// TestLookingOn: screens beside a book that is open elsewhere say so, show what is
// answered there, and put nothing down whatever is pressed.
func TestLookingOn(t *testing.T) {
	d := newDriver(t, "2027-05-04 10:00")
	d.plant("Hollow Lane", rows(2, 3)...)
	writer := d.root
	newer, fault := false, error(nil)
	d.root = newRoot(Options{
		Book: d.book, Now: func() time.Time { return d.now }, Tick: func() time.Time { return d.hand },
		LocalZone: "America/New_York", Zones: time.LoadLocation, Refresh: func() (bool, error) { was := newer; newer = false; return was, fault },
	})
	d.size(80, 24)
	d.sees("looking on:", "nothing is written")
	before, _ := d.book.Count()
	for _, key := range []string{"enter", "2", "m", "esc", "esc", "r", "1", "esc", "esc", "y", "d", "esc", "esc", "l", "esc", "o", "esc"} {
		d.press(key)
		d.sees("looking on:")
	}
	if after, _ := d.book.Count(); after != before {
		t.Fatalf("%d answers were put down by looking on", after-before)
	}

	looker := d.root
	d.root = writer
	d.press("enter", "2") // answered where it is open
	d.root = looker
	d.press("esc", "esc")
	if after, _ := d.book.Count(); after == before {
		t.Fatal("the other program put nothing down")
	}
	d.press("enter")
	newer = true
	looker.Update(glanced(d.now))
	d.sees("NEAREST LIMB")
	fault = errors.New("the book is gone; bring it back")
	looker.said.Text = ""
	looker.Update(glanced(d.now))
	d.sees("the book is gone", "looking on:")
	if _, err := looker.x.Write(record.Event{Body: &record.Noted{Text: "no"}}); err == nil {
		t.Error("a look writes")
	}
}
