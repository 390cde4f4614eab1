package store

import (
	"fmt"
	"os"
	"path/filepath"
	"sync"
	"testing"

	"go.etcd.io/bbolt"

	"barkslip/core/record"
)

func TestCopyWhileWriting(t *testing.T) {
	b := newBook(t)
	fill(t, b, 20)
	dir, stop := t.TempDir(), make(chan struct{})
	var writer sync.WaitGroup
	writer.Go(func() {
		for i := 0; ; i++ {
			select {
			case <-stop:
				return
			default:
				if _, err := b.Append(on(stumpAt(1, 9, uint16(i%40+1)), day, &record.Noted{Text: fmt.Sprint("note ", i)})); err != nil {
					t.Error(err)
					return
				}
			}
		}
	})
	last := 0
	for i := range 12 {
		path := filepath.Join(dir, fmt.Sprint("copy", i))
		if err := CopyFile(b.Path(), path, options(1)); err != nil {
			t.Fatal(err)
		}
		c, err := Open(path, options(1))
		if err != nil {
			t.Fatal(err)
		}
		n, _ := c.Count()
		if n < last {
			t.Errorf("copy %d has %d events, the one before %d", i, n, last)
		}
		last = n
		checkAndClose(t, c)
	}
	close(stop)
	writer.Wait()
	if last <= 5+20*14 {
		t.Error("nothing was written meanwhile")
	}
	wantProblem(t, "copying over a file", CopyFile(b.Path(), filepath.Join(dir, "copy0"), options(1)), ErrExists)
	wantProblem(t, "copying over itself", CopyFile(b.Path(), b.Path(), options(1)), ErrExists)
	wantProblem(t, "copying into no folder", CopyFile(b.Path(), filepath.Join(dir, "none", "copy"), options(1)), ErrMissing)
}

func TestRestore(t *testing.T) {
	from, exported := filledFile(t, 4)
	dir := t.TempDir()
	to := filepath.Join(dir, "book")
	must := func(err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
	}
	must(Restore(from, to, options(1)))
	must(os.WriteFile(to, []byte("spoilt"), 0o600))
	must(Restore(from, to, options(1)))
	must(Restore(from, to, options(1)))
	if old, err := os.ReadFile(to + ".before-restore-1"); err != nil || string(old) != "spoilt" {
		t.Errorf("kept aside: %q, %v", old, err)
	}
	for _, path := range []string{to, to + ".before-restore-2"} {
		b, err := Open(path, options(1))
		must(err)
		if export(t, b) != exported {
			t.Errorf("%s has another journal", path)
		}
		checkAndClose(t, b)
	}
	if left, _ := filepath.Glob(filepath.Join(dir, ".*")); len(left) > 0 {
		t.Error("left behind:", left)
	}
}

func TestRestoreRefuses(t *testing.T) {
	from, _ := filledFile(t, 4)
	to, exported := filledFile(t, 2)
	wantProblem(t, "from itself", Restore(from, from, options(1)), ErrExists)
	wantProblem(t, "onto a folder", Restore(from, t.TempDir(), options(1)), ErrNotABook)
	wantProblem(t, "from nothing", Restore(from+"x", to, options(1)), ErrMissing)
	alter(t, from, func(tx *bbolt.Tx) error { return spoil(tx, stumpAt(1, 1, 2)) })
	wantProblem(t, "from a damaged copy", Restore(from, to, options(1)), ErrDamaged)

	good, _ := filledFile(t, 3)
	b, err := Open(to, options(1))
	if err != nil {
		t.Fatal(err)
	}
	wantProblem(t, "onto an open book", Restore(good, to, options(1)), ErrLocked)
	if export(t, b) != exported {
		t.Error("the book changed")
	}
	checkAndClose(t, b)
	if aside, _ := filepath.Glob(to + ".*"); len(aside) > 0 {
		t.Error("kept aside:", aside)
	}
}
