package ui

import (
	"errors"
	"strings"
	"testing"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/walk"
	"barkslip/ui/first"
	"barkslip/ui/part"
)

// watched is a book whose writing can be watched or made to fail.
type watched struct {
	Book
	before func() error // called when events are handed over, nothing is on disk yet
	after  func()       // called when they are
}

func (w *watched) Append(events ...record.Event) (due.Appended, error) {
	if w.before != nil {
		if err := w.before(); err != nil {
			return due.Appended{}, err
		}
	}
	out, err := w.Book.Append(events...)
	if err == nil && w.after != nil {
		w.after()
	}
	return out, err
}

func (d *driver) watch() *watched {
	w := &watched{Book: d.book}
	d.root.x.Book = w
	return w
}

var errFull = errors.New("the disk is full; nothing was written")

// TestNothingIsTakenBeforeTheDisk goes through a walk and looks at the screen
// at each write before and after it is safe: what is asked stays asked until
// then, and nothing of the answer is shown as taken.
func TestNothingIsTakenBeforeTheDisk(t *testing.T) {
	d := newDriver(t, "2027-04-26 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.press("enter")
	w := d.watch()
	var order []string
	writes := 0
	w.before = func() error {
		writes++
		s := d.walk()
		if strings.Contains(d.screen(), "Recorded: ") && !strings.Contains(d.screen(), d.root.said.Text) {
			t.Errorf("taken is said while it is written:\n%s", d.screen())
		}
		if fresh, err := d.book.Stump(s.ID()); err != nil || len(fresh.Live) != len(s.Record().Live) {
			t.Errorf("the screen holds %d answers, the disk %d", len(s.Record().Live), len(fresh.Live))
		}
		d.root.say("", false)
		order = append(order, "handed over")
		return nil
	}
	w.after = func() { order = append(order, "on disk") }
	for _, keys := range [][]string{{"2"}, {"enter"}, {"enter"}, {"enter"}, {"enter"}, {"u"}, {"U"}, {"m", "wet", "enter"}} {
		before := writes
		d.press(keys...)
		if writes != before+1 {
			t.Fatalf("%v wrote %d times", keys, writes-before)
		}
		if said := d.root.said.Text; !strings.HasPrefix(said, "Recorded: ") && !strings.Contains(said, " back: ") {
			t.Fatalf("%v: said %q", keys, said)
		}
		d.sees(d.root.said.Text)
		order = append(order, "shown")
	}
	want := strings.Repeat("handed over, on disk, shown, ", 8)
	if got := strings.Join(order, ", ") + ", "; got != want {
		t.Errorf("order %s", got)
	}
}

// TestFailedWriteKeepsTheQuestion gives an answer of each sort to a book that
// cannot write: the question stays, the cause is said, nothing is taken.
func TestFailedWriteKeepsTheQuestion(t *testing.T) {
	d := newDriver(t, "2027-04-26 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.press("enter", "2")
	w := d.watch()
	for _, answer := range [][]string{{"30", "enter"}, {"enter"}, {"u"}, {"m", "wet", "enter"}, {"x", "1", "2"}} {
		d.root.say("", false)
		w.before = func() error { return errFull }
		d.press(answer...)
		w.before = nil
		d.sees("disk is full")
		d.lacks("Recorded:", "Took back:")
		if over[*part.Prompt](d) || d.walk().Field() != nil && d.walk().Field().Text() != "" {
			d.press("esc")
		}
		d.on(walk.StepReach)
		if n := len(d.live()); n != 1 {
			t.Fatalf("%v: %d answers stand", answer, n)
		}
	}
	d.press("30", "enter")
	d.sees("Recorded:")
	d.on(walk.StepLeaf)
}

// TestFailedRowAnswer sees that an answer for a row that cannot be written is
// not shown as taken, and can be given again.
func TestFailedRowAnswer(t *testing.T) {
	d := newDriver(t, "2027-05-04 12:00")
	d.plant("Hollow Lane", rows(2, 2)...)
	d.sealed(tree(1, 1), "2027-04-20 09:00", "2027-05-04 09:00", "2027-05-04 09:40")
	d.open()
	w := d.watch()
	w.before = func() error { return errFull }
	d.press("r")
	d.pickWord("painted white")
	d.press("enter")
	d.sees("disk is full")
	d.lacks("Recorded:")
	if sums, _ := d.book.Summaries(home); sums[0].Stage != record.StageSealed {
		t.Fatalf("stage %s", sums[0].Stage)
	}
	w.before = nil
	d.press("enter")
	d.sees("Recorded:")
}

// TestFailedFirstBlock sees that a block that cannot be written leaves the
// questions open with what was typed.
func TestFailedFirstBlock(t *testing.T) {
	d := newDriver(t, "2027-05-04 12:00")
	w := d.watch()
	w.before = func() error { return errFull }
	d.press("1", "Home block", "enter", "2", "enter", "3", "enter")
	for range 20 {
		d.press("enter")
		if d.root.said.Wrong {
			break
		}
	}
	d.sees("disk is full")
	if !is[*first.Screen](d) {
		t.Fatalf("left the questions:\n%s", d.screen())
	}
	w.before = nil
	d.press("enter")
	d.sees("Home block", "6 stumps")
}
