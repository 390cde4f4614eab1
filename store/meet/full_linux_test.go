package meet

import (
	"context"
	"errors"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"barkslip/store"
)

// A disk that fills during a meeting loses nothing that was there, on either side, and the
// next meeting with room brings the rest, each event once.
func TestDiskFillsDuringAMeeting(t *testing.T) {
	dir := t.TempDir()
	if err := syscall.Mount("small", dir, "tmpfs", 0, "size=512k"); err != nil {
		t.Skip("this user may not mount a disk: ", err)
	}
	t.Cleanup(func() {
		if err := syscall.Unmount(dir, syscall.MNT_DETACH); err != nil {
			t.Error(err)
		}
	})
	s := truck(t, nil)
	at, crew := Server{URL: s.ClientURL()}, crewOf("hollow", 1)
	one := newBook(t, 1)
	made(t, one)
	for tree := range uint16(100) {
		note(t, one, stumpAt(1, tree+1), 20, strings.Repeat("long ", 20))
	}
	met(t, one, crew, at)

	two, err := store.Create(filepath.Join(dir, "book"), store.Options{Random: dice(2)})
	if err != nil {
		t.Fatal(err)
	}
	defer two.Close()
	note(t, two, stumpAt(2, 1), 30, "two")
	own := exported(t, two)
	for range 2 { // it can be tried again
		_, err = Meet(context.Background(), two, crew, at, Options{})
		if !errors.Is(err, store.ErrFull) || !strings.Contains(err.Error(), "full") {
			t.Fatal("on a full disk:", err)
		}
		sound(t, two)
		now := exported(t, two)
		for line := range strings.Lines(own) {
			if !strings.Contains(now, line) {
				t.Fatal("lost:", line)
			}
		}
	}
	note(t, one, stumpAt(3, 1), 5, "meanwhile")
	met(t, one, crew, at)

	if err := syscall.Mount("small", dir, "tmpfs", syscall.MS_REMOUNT, "size=32m"); err != nil {
		t.Fatal(err)
	}
	met(t, two, crew, at)
	met(t, one, crew, at)
	met(t, two, crew, at)
	if exported(t, one) != exported(t, two) {
		t.Error("the books are not one after there was room")
	}
	sound(t, two)
	onceEach(t, crew, s.ClientURL(), 5+100*20+30+5)
}
