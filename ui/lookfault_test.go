package ui

import (
	"errors"
	"path/filepath"
	"testing"
	"time"

	"barkslip/store"
)

// swapped is a book another may stand in the place of.
type swapped struct{ *store.Book }

// looker has the screens look on at a book, by a Refresh that the test sets.
func looker(d *driver, b Book, refresh func() (bool, error)) *root {
	return newRoot(Options{Book: b, Now: func() time.Time { return d.now }, Tick: func() time.Time { return d.hand },
		LocalZone: "America/New_York", Zones: time.LoadLocation, Refresh: refresh})
}

// Another book is put where the one that is looked on at stood: the block on the
// screen is not in it.
func TestLookAtABookThatWasReplaced(t *testing.T) {
	for _, keys := range [][]string{nil, {"enter"}, {"g"}, {"l"}, {"p"}, {"b"}} {
		d := newDriver(t, "2027-05-04 10:00")
		d.plant("Hollow Lane", rows(2, 3)...)
		other, err := store.Create(filepath.Join(t.TempDir(), "other.bark"), store.Options{})
		if err != nil {
			t.Fatal(err)
		}
		defer other.Close()
		s, newer := &swapped{d.book}, false
		d.root = looker(d, s, func() (bool, error) { was := newer; newer = false; return was, nil })
		d.size(80, 24)
		d.press(keys...)
		func() {
			defer func() {
				if p := recover(); p != nil {
					t.Errorf("after %v the screens fall over: %v", keys, p)
				}
			}()
			s.Book, newer = other, true
			d.root.Update(glanced(d.now))
			d.sees("Another book stands in the place")
			d.root.Update(tick(d.now))
			d.root.View()
			d.press("esc", "enter", "g", "esc", "esc")
			d.sees("looking on:")
		}()
	}
}

// What is wrong is said without a key, over what was said before, and no more once
// it is well again.
func TestLookSaysWhatIsWrongUnasked(t *testing.T) {
	d := newDriver(t, "2027-05-04 10:00")
	d.plant("Hollow Lane", rows(2, 3)...)
	fault := error(nil)
	d.root = looker(d, d.book, func() (bool, error) { return false, fault })
	d.size(80, 24)
	fault = errors.New("the book is gone; bring it back")
	d.root.Update(glanced(d.now))
	d.sees("Not up to date: the book is gone", "Hollow Lane")
	d.press("h", "esc") // says nothing of its own
	d.root.Update(glanced(d.now))
	d.sees("Not up to date: the book is gone")
	fault = nil
	d.root.Update(glanced(d.now))
	d.sees("The book is seen again.")
	d.lacks("Not up to date")
}

// A look at a book without a block shows the first block once it is begun.
func TestLookAtAnEmptyBookSeesTheFirstBlock(t *testing.T) {
	d := newDriver(t, "2027-05-04 10:00")
	newer := false
	d.root = looker(d, d.book, func() (bool, error) { was := newer; newer = false; return was, nil })
	d.size(80, 24)
	for _, key := range []string{"1", "2", "3", "enter"} {
		d.press(key)
		d.sees("nothing is written here", "How do you want to begin?")
	}
	root := d.root
	d.plant("Hollow Lane", rows(2, 3)...)
	d.root, newer = root, true
	d.size(80, 24)
	d.root.Update(glanced(d.now))
	d.sees("Hollow Lane")
}
