package store

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"testing"
	"time"

	"barkslip/core/record"
)

// seenWithin waits until what a look shows has so many events.
func seenWithin(t *testing.T, l *Look, events int, within time.Duration) {
	t.Helper()
	for began := time.Now(); ; time.Sleep(20 * time.Millisecond) {
		if _, err := l.Refresh(); err != nil {
			t.Fatal(err)
		}
		if n, _ := l.Book().Count(); n == events {
			return
		} else if time.Since(began) > within {
			t.Fatalf("%d events are seen after %v, want %d", n, within, events)
		}
	}
}

func namesIn(t *testing.T, dir string) (names []string) {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		names = append(names, e.Name())
	}
	return names
}

// A look sees within two seconds what is answered where the book is open. It takes
// no lock, writes nothing and leaves nothing behind.
func TestALookSeesWhatIsAnswered(t *testing.T) {
	t.Setenv("TMPDIR", t.TempDir())
	b := newBook(t)
	mustAppend(t, b, settings(1)...)
	mustAppend(t, b, life(stumpAt(1, 4, 17), 6)...)
	l, err := OpenLook(b.Path(), options(1))
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	n, _ := b.Count()
	seenWithin(t, l, n, 0)
	for i := range 3 {
		before, err := os.ReadFile(b.Path())
		if err != nil {
			t.Fatal(err)
		}
		seenWithin(t, l, n+i, time.Second)
		if after, _ := os.ReadFile(b.Path()); !bytes.Equal(before, after) {
			t.Fatal("looking changed the book")
		}
		mustAppend(t, b, on(stumpAt(1, 5, 3), day, &record.Noted{Text: "seen"}))
		seenWithin(t, l, n+i+1, 2*time.Second)
	}
	if s, err := l.Stump(stumpAt(1, 5, 3)); err != nil || len(s.Notes) != 3 {
		t.Errorf("the stump has %d notes, %v", len(s.Notes), err)
	}
	if _, err := l.Append(on(stumpAt(1, 5, 3), day, &record.Noted{Text: "no"})); !errors.Is(err, ErrLooking) {
		t.Errorf("an answer to a look gives %v", err)
	}
	if names := namesIn(t, filepath.Dir(b.Path())); len(names) != 1 {
		t.Errorf("beside the book stand %v", names)
	}
	if names := namesIn(t, os.Getenv("TMPDIR")); len(names) != 0 {
		t.Errorf("left behind: %v", names)
	}
}

// A look keeps no writer out, and needs none.
func TestALookTakesNoLock(t *testing.T) {
	path, exported := filledFile(t, 3)
	l, err := OpenLook(path, options(1))
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	b, err := Open(path, options(2))
	if err != nil {
		t.Fatalf("a look keeps the book from being opened: %v", err)
	}
	if got := export(t, l.Book()); got != exported {
		t.Error("a look shows another journal")
	}
	checkAndClose(t, b)
}

// Whatever becomes of the file, what was seen last stays, with a sentence that
// says why; and it is seen again once it is whole again.
func TestALookOutlivesItsBook(t *testing.T) {
	path, exported := filledFile(t, 3)
	whole, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	later := time.Now()
	for name, harm := range map[string]func() error{
		"gone":     func() error { return os.Remove(path) },
		"cut":      func() error { return os.WriteFile(path, whole[:len(whole)/3], 0o600) },
		"no book":  func() error { return os.WriteFile(path, bytes.Repeat([]byte("x"), 9000), 0o600) },
		"empty":    func() error { return os.WriteFile(path, nil, 0o600) },
		"a folder": func() error { return errors.Join(os.Remove(path), os.Mkdir(path, 0o700)) },
	} {
		l, err := OpenLook(path, options(1))
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if err := harm(); err != nil {
			t.Fatal(err)
		}
		said := error(nil)
		for began := time.Now(); said == nil && time.Since(began) < 5*time.Second; time.Sleep(10 * time.Millisecond) {
			_, said = l.Refresh()
		}
		if said == nil || len(said.Error()) < 20 {
			t.Errorf("%s: says %v", name, said)
		}
		if got := export(t, l.Book()); got != exported {
			t.Errorf("%s: what was seen is lost", name)
		}
		if err := errors.Join(os.RemoveAll(path), os.WriteFile(path, whole, 0o600)); err != nil {
			t.Fatal(err)
		}
		later = later.Add(time.Minute)
		_ = os.Chtimes(path, later, later)
		n, _ := l.Book().Count()
		for began := time.Now(); said != nil && time.Since(began) < 5*time.Second; time.Sleep(10 * time.Millisecond) {
			_, said = l.Refresh()
		}
		if said != nil {
			t.Errorf("%s: whole again, it says %v", name, said)
		}
		seenWithin(t, l, n, time.Second)
		l.Close()
	}
	if _, err := OpenLook(path+"-none", options(1)); err == nil {
		t.Error("a look at no book")
	}
}
