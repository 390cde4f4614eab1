package main

import (
	"bufio"
	"io"
	"path/filepath"
	"testing"
	"time"

	"barkslip/store"
	"barkslip/ui"
)

// TestMadeUpBookIsItsOwn: the sample asked for on the screens goes into a file of
// its own, is found again there, and leads back.
func TestMadeUpBookIsItsOwn(t *testing.T) {
	a := &app{out: bufio.NewWriter(io.Discard), err: io.Discard, clock: func() time.Time { return time.Date(2026, 11, 25, 15, 0, 0, 0, time.UTC) }}
	own, err := store.Create(filepath.Join(t.TempDir(), "book.bark"), store.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for range 2 {
		d := &desk{app: a, own: own, prefs: ui.Prefs{}}
		o, err := d.atMadeUp()
		if err != nil {
			t.Fatal(err)
		}
		if blocks := o.Book.Folded().List(); len(blocks) != 1 || !blocks[0].MadeUp || !o.OwnDay() || o.Sample != nil {
			t.Errorf("%d blocks", len(blocks))
		}
		if back, err := o.Own(); err != nil || back.Book != ui.Book(own) {
			t.Errorf("not back in the own book: %v", err)
		}
		if events, _ := own.Count(); events != 0 {
			t.Errorf("%d events in the own book", events)
		}
		if err := d.madeUp.Close(); err != nil {
			t.Fatal(err)
		}
	}
	if err := own.Close(); err != nil {
		t.Fatal(err)
	}
}
