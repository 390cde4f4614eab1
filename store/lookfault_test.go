package store

import (
	"bytes"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"go.etcd.io/bbolt"

	"barkslip/core/due"
	"barkslip/core/record"
)

// A copy that failed for want of room is made once there is room, though the book
// did not change again.
func TestALookTriesAgain(t *testing.T) {
	temp := t.TempDir()
	t.Setenv("TMPDIR", temp)
	b := newBook(t)
	mustAppend(t, b, settings(1)...)
	l, err := OpenLook(b.Path(), options(1))
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	t.Setenv("TMPDIR", filepath.Join(temp, "none")) // no copy can be made
	mustAppend(t, b, on(stumpAt(1, 5, 3), day, &record.Noted{Text: "seen"}))
	for began := time.Now(); time.Since(began) < 3*time.Second; time.Sleep(20 * time.Millisecond) {
		if _, err = l.Refresh(); err != nil {
			break
		}
	}
	if err == nil {
		t.Fatal("nothing went wrong")
	}
	if !strings.Contains(err.Error(), "TMPDIR") {
		t.Errorf("it says %v", err)
	}
	t.Setenv("TMPDIR", temp)
	n, _ := b.Count()
	got := 0
	for began := time.Now(); time.Since(began) < 3*time.Second; time.Sleep(20 * time.Millisecond) {
		_, err = l.Refresh()
		if got, _ = l.Book().Count(); got == n {
			return
		}
	}
	t.Errorf("%d of %d events are seen, and it says %v", got, n, err)
}

// A look that is closed while it copies leaves nothing behind.
func TestALookLeavesNothing(t *testing.T) {
	temp := t.TempDir()
	t.Setenv("TMPDIR", temp)
	b := newBook(t)
	mustAppend(t, b, settings(1)...)
	var looks []*Look
	for i := range 30 {
		l, err := OpenLook(b.Path(), options(1))
		if err != nil {
			t.Fatal(err)
		}
		mustAppend(t, b, on(stumpAt(1, 5, uint16(i+1)), day, &record.Noted{Text: "seen"}))
		l.Refresh()
		l.Close()
		looks = append(looks, l)
	}
	for _, l := range looks {
		for began := time.Now(); l.copying() && time.Since(began) < 5*time.Second; time.Sleep(time.Millisecond) {
		}
	}
	for began := time.Now(); copiesOpen(temp) > 0 && time.Since(began) < 5*time.Second; time.Sleep(20 * time.Millisecond) {
	}
	if n := copiesOpen(temp); n > 0 {
		t.Errorf("%d copies are open still after all looks were closed", n)
	}
	if names := namesIn(t, temp); len(names) > 0 {
		t.Errorf("left behind: %v", names)
	}
}

// copying tells whether a copy is still being made.
func (l *Look) copying() bool {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.busy
}

// copiesOpen is how many files of a folder this process has open, where the system
// tells.
func copiesOpen(dir string) (n int) {
	files, _ := os.ReadDir("/proc/self/fd")
	for _, f := range files {
		if to, _ := os.Readlink("/proc/self/fd/" + f.Name()); strings.HasPrefix(to, dir+string(filepath.Separator)) {
			n++
		}
	}
	return n
}

// A copy has no name from its beginning on: a program that is cut off in the middle
// of it leaves nothing behind. Brought level again it is the book as it stands.
func TestACopyToReadHasNoName(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("an open file keeps its name there")
	}
	temp := t.TempDir()
	t.Setenv("TMPDIR", temp)
	path, _ := filledFile(t, 3)
	copied, err := rawCopy(path)
	if err != nil {
		t.Fatal(err)
	}
	defer copied.Close()
	if names := namesIn(t, temp); len(names) > 0 {
		t.Errorf("the copy is called %v", names)
	}
	b, err := Open(path, options(5))
	if err != nil {
		t.Fatal(err)
	}
	mustAppend(t, b, on(stumpAt(1, 5, 3), day, &record.Noted{Text: "since"}))
	from, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer from.Close()
	c := copier{from: from, to: copied, here: make([]byte, atOnce), there: make([]byte, atOnce)}
	if done, err := c.try(); !done || err != nil {
		t.Fatalf("levelling: %v, %v", done, err)
	}
	whole, _ := os.ReadFile(path)
	have := make([]byte, len(whole))
	n, _ := copied.ReadAt(have, 0)
	if n == 0 || !bytes.Equal(have[:n], whole[:n]) {
		t.Error("the copy is not level with the book")
	}
	checkAndClose(t, b)
}

// A book whose summaries were made by other rules is looked at with new ones; its
// own stay as they are.
func TestALookMakesStaleSummariesAnew(t *testing.T) {
	path, exported := filledFile(t, 3)
	alter(t, path, func(tx *bbolt.Tx) error {
		return tx.Bucket(bucketMeta).Put(keyStamp, head{}.stamp(due.SummaryVersion-1, prints{}))
	})
	before, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	l, err := OpenLook(path, options(1))
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	if got := export(t, l.Book()); got != exported {
		t.Error("a look shows another journal")
	}
	if sums, err := l.Summaries(blockID(1)); err != nil || len(sums) != 3 {
		t.Errorf("%d summaries, %v", len(sums), err)
	}
	if after, _ := os.ReadFile(path); !bytes.Equal(before, after) {
		t.Error("looking changed the book")
	}
}
