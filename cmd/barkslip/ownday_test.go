package main

import (
	"bufio"
	"io"
	"os"
	"path/filepath"
	"testing"
	"time"

	"barkslip/core/sample"
	"barkslip/store"
)

// TestOwnDayEndsWithARealBlock: a made-up book stays on a grafting day until a
// real block is added; from then on it goes by the computer's clock.
func TestOwnDayEndsWithARealBlock(t *testing.T) {
	november := time.Date(2026, 11, 25, 15, 0, 0, 0, time.UTC)
	a := &app{out: bufio.NewWriter(io.Discard), err: io.Discard, clock: func() time.Time { return november }}
	dir := t.TempDir()
	path, list := filepath.Join(dir, "made-up.bark"), filepath.Join(dir, "list.csv")
	if err := a.writeSample(path, sample.Plan{Stumps: 30, Seed: 1}); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(list, []byte("row,tree\n1,1\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	now := func() (time.Time, time.Time) {
		book, err := store.Open(path, store.Options{ReadOnly: true})
		if err != nil {
			t.Fatal(err)
		}
		defer book.Close()
		return a.clockOf(book)(), book.Newest()
	}
	if made, _ := now(); made.Format("2 Jan 2006") != "20 May 2026" {
		t.Errorf("the made-up book's day is %s", made)
	}
	root := a.root()
	root.SetArgs([]string{"block", "add", list, "--block", "Home", "--zone", "America/New_York", "--book", path})
	if err := root.Execute(); err != nil {
		t.Fatal(err)
	}
	if real, newest := now(); !real.Equal(november) || !newest.Equal(november) {
		t.Errorf("it is %s and the newest answer is of %s, want %s", real, newest, november)
	}
}
