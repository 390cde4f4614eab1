package store

import (
	"bytes"
	"context"
	"errors"
	"io"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"go.etcd.io/bbolt"

	"barkslip/core/record"
)

// A flipped bit anywhere is found by the check, or it lies where nothing is
// kept: then every answer is still read as it was. Nothing crashes.
func TestFlippedBits(t *testing.T) {
	path, exported := filledFile(t, 30)
	whole, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	seed := rand.Uint64()
	t.Log("seed", seed)
	r := rand.New(rand.NewPCG(seed, 2))
	inUse := usedBytes(t, path)
	dir, done := scratchDir(t)
	defer done()
	hurt := filepath.Join(dir, "hurt")
	found := 0
	for range 200 {
		at, bit := r.IntN(inUse), byte(1)<<r.IntN(8)
		whole[at] ^= bit
		if err := os.WriteFile(hurt, whole, 0o600); err != nil {
			t.Fatal(err)
		}
		whole[at] ^= bit
		if said := readHurt(t, hurt, exported); said {
			found++
		}
		if t.Failed() {
			t.Fatalf("bit %#x of byte %d", bit, at)
		}
	}
	if found < 40 { // about 83 are, within 7 mostly: the rest lies in room that is free
		t.Errorf("only %d of 200 flips were found", found)
	}
	t.Log(found, "of 200 flips were found; the others changed nothing that is kept")
}

// opened opens the file of a book, with the first page that counts.
func opened(t *testing.T, path string, how int) (*os.File, metaPage) {
	t.Helper()
	f, err := os.OpenFile(path, how, 0)
	if err != nil {
		t.Fatal(err)
	}
	h, err := readHead(f)
	m, ok := h.newest()
	if err != nil || !ok {
		t.Fatal("the first pages do not hold", err)
	}
	return f, m
}

// usedBytes is how much of a book's file is in use.
func usedBytes(t *testing.T, path string) int {
	t.Helper()
	f, m := opened(t, path, os.O_RDONLY)
	defer f.Close()
	return int(int64(m.high) * m.pageSize)
}

// readHurt reads a damaged book in every way and says whether the damage was
// told of.
func readHurt(t *testing.T, path, exported string) bool {
	t.Helper()
	o := options(1)
	o.ReadOnly = true
	b, err := Open(path, o)
	if err != nil {
		wantProblem(t, "opening", err, ErrDamaged, ErrNotABook, ErrCutShort, ErrNewer)
		return true
	}
	defer func() { _ = b.Close() }()
	findings, err := b.Check()
	told := err != nil || len(findings) > 0
	var got strings.Builder
	readErr := WriteLines(&got, b)
	if readErr == nil && got.String() != exported && !told {
		t.Error("another journal was read without a word")
	}
	for _, s := range []record.StumpID{stumpAt(1, 1, 1), stumpAt(1, 2, 5), stumpAt(1, 3, 10), record.NoStump} {
		want := 14
		if s == record.NoStump {
			want = 5
		}
		if events, err := b.Events(s); err == nil && len(events) != want && !told {
			t.Errorf("%d events of %s without a word", len(events), named(s))
		}
	}
	_, err = b.Summaries(blockID(1))
	return told || readErr != nil || err != nil
}

// changePages gives the tree pages of a closed book to change, until it says
// that one was changed.
func changePages(t *testing.T, path string, change func(p page, items []item) bool) {
	t.Helper()
	f, m := opened(t, path, os.O_RDWR)
	defer f.Close()
	w := newPageWalk(f, m, true)
	w.tree(m.root, nil)
	for id := range w.seen.all {
		p, said := readPage(f, m, id)
		items, ok := p.items()
		if said != "" || !ok {
			t.Fatal(said)
		}
		if change(p, items) {
			if _, err := f.WriteAt(p.data, int64(id)*m.pageSize); err != nil {
				t.Fatal(err)
			}
			return
		}
	}
	t.Fatal("no page was changed")
}

// A page that leads to itself would be followed without end.
func TestPageThatLeadsToItself(t *testing.T) {
	path, exported := filledFile(t, 30)
	changePages(t, path, func(p page, items []item) bool {
		if p.flags != flagBranch {
			return false
		}
		native.PutUint64(p.data[pageHeader+16+8:], p.id) // the second child
		return true
	})
	if !readHurt(t, path, exported) {
		t.Error("it was not told of")
	}
	_, err := Open(path, options(1))
	wantProblem(t, "opening", err, ErrDamaged)
}

// Keys out of order must not lead a search back to where it was.
func TestKeysOutOfOrder(t *testing.T) {
	for i := range 9 {
		for _, kind := range []uint16{flagBranch, flagLeaf} {
			path, exported := filledFile(t, 30)
			changePages(t, path, func(p page, items []item) bool {
				if p.flags != kind || len(items) <= i || len(items[i].key) != keyLen {
					return false
				}
				items[i].key[5] ^= 0x10 // the tree
				return true
			})
			if !readHurt(t, path, exported) {
				t.Error("it was not told of")
			}
			overAllStumps(t, path)
		}
	}
}

// overAllStumps has a damaged book go over all its stumps, which must end.
func overAllStumps(t *testing.T, path string) {
	t.Helper()
	b, err := Open(path, options(1))
	if err != nil {
		wantProblem(t, "opening", err, ErrDamaged)
		return
	}
	defer b.Close()
	// Whether it is kept depends on the page that was hurt.
	_, _ = b.Append(about(&record.BlockSet{Block: blockID(1), Setting: "frosty", Value: "yes"}))
}

func TestDamagedRecordIsToldAndTheRestRead(t *testing.T) {
	path, exported := filledFile(t, 3)
	alter(t, path, func(tx *bbolt.Tx) error { return spoil(tx, stumpAt(1, 1, 2)) })
	wipeFree(t, path)
	b, err := Open(path, options(1))
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	events, err := b.Events(stumpAt(1, 1, 2))
	if wantProblem(t, "reading", err, ErrDamaged); len(events) != 13 {
		t.Errorf("%d events were read", len(events))
	}
	if s, err := b.Stump(stumpAt(1, 1, 2)); s == nil || err == nil {
		t.Errorf("stump %v, %v", s, err)
	}
	if _, err := b.Stump(stumpAt(1, 1, 3)); err != nil {
		t.Error("the next stump:", err)
	}
	n := 0
	err = b.Journal(func(record.Event) error { n++; return nil })
	if wantProblem(t, "the journal", err, ErrDamaged); n != 5+3*14-1 {
		t.Errorf("%d events in the journal", n)
	}
	if found, err := b.Check(); err != nil || len(found) == 0 {
		t.Errorf("the check found %v, %v", found, err)
	}
	// An answer to that stump is kept all the same, and a good copy heals it.
	mustAppend(t, b, on(stumpAt(1, 1, 2), day, &record.Noted{Text: "after"}))
	report, err := b.Join(ReadLines(reader(exported)))
	if err != nil || report.Added != 0 || len(report.Clashing) != 1 {
		t.Errorf("joining: %+v, %v", report, err)
	}
	checkSound(t, b)
}

// Of a page that is lost only some records may be found damaged; all that are
// missing are counted.
func TestMissingRecordsAreCounted(t *testing.T) {
	for _, c := range []struct {
		missing int
		says    string
	}{
		{0, "46 of the 47 records of the book PATH could be read; 1 record was damaged and left out"},
		{8, "38 of the 47 records of the book PATH could be read; 9 records were damaged and left out"},
	} {
		path, _ := filledFile(t, 3)
		alter(t, path, func(tx *bbolt.Tx) error {
			if err := spoil(tx, stumpAt(1, 1, 2)); err != nil {
				return err
			}
			p := spotOf(1, stumpAt(1, 1, 3))
			cursor := tx.Bucket(bucketJournal).Cursor()
			for range c.missing {
				cursor.Seek(p[:])
				if err := cursor.Delete(); err != nil {
					return err
				}
			}
			return nil
		})
		wipeFree(t, path)
		b, err := Open(path, options(1))
		if err != nil {
			t.Fatal(err)
		}
		n := 0
		err = b.Journal(func(record.Event) error { n++; return nil })
		wantProblem(t, "the journal", err, ErrDamaged)
		if want := strings.Replace(c.says, "PATH", path, 1); err == nil || err.Error() != want || n != 46-c.missing {
			t.Errorf("%d records read: %v, want %s", n, err, want)
		}
		found, err := b.Check()
		if want := canRead(46-c.missing, 47); err != nil || !slices.Contains(found, want) {
			t.Errorf("the check found %q (%v), want %q", found, err, want)
		}
		if err := b.Close(); err != nil {
			t.Error(err)
		}
	}
}

// A page whose keys lie elsewhere than its place says is told of, and its records are
// read: each is known by its checksum.
func TestRecordsOutOfPlaceAreCounted(t *testing.T) {
	path, _ := filledFile(t, 30)
	changePages(t, path, func(p page, items []item) bool {
		if p.flags != flagLeaf || len(items) < 5 || len(items[0].key) != keyLen || items[0].key[6] != 0 {
			return false
		}
		items[2].key[1] = 9 // another block's, between those of its own
		return true
	})
	b, err := Open(path, options(1))
	if err != nil { // it was a record about no stump
		wantProblem(t, "opening", err, ErrDamaged)
		if s, err := Salvage(path); err != nil || len(s.Events) != 425 {
			t.Errorf("%v, %v", s.Say(), err)
		}
		return
	}
	defer b.Close()
	n := 0
	err = b.Journal(func(record.Event) error { n++; return nil })
	events, _ := b.Count()
	if wantProblem(t, "the journal", err, ErrDamaged); n != events {
		t.Errorf("%d of %d records read", n, events)
	}
	if found, err := b.Check(); err != nil || len(found) == 0 {
		t.Errorf("the check found %q (%v)", found, err)
	}
}

// wipeFree clears the pages of a closed book that are not in use, on which older copies
// of its records stand.
func wipeFree(t *testing.T, path string) {
	t.Helper()
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	l, err := openLeaves(f)
	if err != nil || l.free == nil {
		t.Fatal("the free pages are not known", err)
	}
	for id := range l.free {
		if _, err := f.WriteAt(make([]byte, l.pageSize), int64(id)*l.pageSize); err != nil {
			t.Fatal(err)
		}
	}
}

// A record that is damaged where it stands is read from an older page where it is still
// whole, and the damage is told of.
func TestOlderPagesAreRead(t *testing.T) {
	path, exported := filledFile(t, 3)
	alter(t, path, func(tx *bbolt.Tx) error { return spoil(tx, stumpAt(1, 1, 2)) })
	b, err := Open(path, options(1))
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	n := 0
	err = b.Journal(func(e record.Event) error {
		if n++; !strings.Contains(exported, string(record.Line(e))+"\n") {
			t.Errorf("a record is not as it was: %s", record.Line(e))
		}
		return nil
	})
	if wantProblem(t, "the journal", err, ErrDamaged); n != 5+3*14 || !strings.Contains(err.Error(), "page by page") {
		t.Errorf("%d records: %v", n, err)
	}
}

// spoil turns over one bit in the middle of a stump's second record.
func spoil(tx *bbolt.Tx, stump record.StumpID) error {
	p := spotOf(1, stump)
	c := tx.Bucket(bucketJournal).Cursor()
	c.Seek(p[:])
	k, v := c.Next()
	bad := append([]byte(nil), v...)
	bad[len(bad)-6] ^= 4
	return tx.Bucket(bucketJournal).Put(k, bad)
}

func TestDamagedSummaryIsMadeAnewOnReading(t *testing.T) {
	path, _ := filledFile(t, 3)
	p := spotOf(1, stumpAt(1, 1, 2))
	alter(t, path, func(tx *bbolt.Tx) error {
		v := append([]byte(nil), tx.Bucket(bucketSummaries).Get(p[:])...)
		v[0] ^= 1
		return tx.Bucket(bucketSummaries).Put(p[:], v)
	})
	b, err := Open(path, options(1))
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	list, err := b.Summaries(blockID(1))
	if err != nil || len(list) != 3 || list[1].Stage != record.StagePainted {
		t.Errorf("%v, %v", list, err)
	}
	checkSound(t, b) // opening made them all anew
}

// A file cut short while it is open gives errors, and the book still closes.
func TestCutWhileOpen(t *testing.T) {
	for _, left := range []int64{0, 100, 4096, 8192, 20000} {
		b, err := Create(filepath.Join(t.TempDir(), "book"), options(1))
		if err != nil {
			t.Fatal(err)
		}
		fill(t, b, 60)
		if err := os.Truncate(b.Path(), left); err != nil {
			t.Fatal(err)
		}
		_, err = b.Append(on(stumpAt(1, 1, 1), day, &record.Noted{Text: "lost?"}))
		wantProblem(t, "append", err, ErrCutShort, ErrDamaged)
		readErr := b.Journal(func(record.Event) error { return nil })
		wantProblem(t, "journal", readErr, ErrDamaged)
		_, err = b.Summaries(blockID(1))
		_, errS := b.Stump(stumpAt(1, 6, 10))
		_, errJ := b.Join(sequence(nil))
		errC := CopyFile(b.Path(), b.Path()+".copy", options(1))
		found, errK := b.Check()
		if errC == nil || errK == nil && len(found) == 0 {
			t.Errorf("%d bytes left: copy %v, check %v %v", left, errC, found, errK)
		}
		t.Logf("%d bytes left: summaries %v; stump %v; join %v", left, err, errS, errJ)
		closed := make(chan error, 1)
		go func() { closed <- b.Close() }()
		select {
		case <-closed:
		case <-time.After(5 * time.Second):
			t.Fatalf("%d bytes left: the book does not close", left)
		}
	}
}

func TestMovedWhileOpen(t *testing.T) {
	b := newBook(t)
	if err := os.Rename(b.Path(), b.Path()+".moved"); err != nil {
		t.Fatal(err)
	}
	_, err := b.Append(on(stumpAt(1, 1, 1), day, &record.PaintedWhite{}))
	wantProblem(t, "moved", err, ErrMoved)
	if err := os.WriteFile(b.Path(), []byte("another"), 0o600); err != nil {
		t.Fatal(err)
	}
	_, err = b.Append(on(stumpAt(1, 1, 1), day, &record.PaintedWhite{}))
	wantProblem(t, "replaced", err, ErrMoved)
}

func TestProgramFaultIsNoDamage(t *testing.T) {
	err := guard(func() error {
		folding(stumpAt(1, 4, 17), func() { panic("a fault") })
		return nil
	})
	if !errors.Is(err, ErrProgram) || errors.Is(err, ErrDamaged) {
		t.Errorf("got %v", err)
	}
}

// A record of a stump that stands in the place of another, as on a page that was not written,
// is told of where the stump is read, though as many are there as should.
func TestAnotherRecordOfAStumpIsTold(t *testing.T) {
	path, _ := filledFile(t, 3)
	b, err := Open(path, options(1))
	if err != nil {
		t.Fatal(err)
	}
	id := stumpAt(1, 1, 2)
	p := spotOf(b.state.Load().numbers[id.Block], id)
	checkAndClose(t, b)
	alter(t, path, func(tx *bbolt.Tx) error {
		journal := tx.Bucket(bucketJournal)
		k, _ := journal.Cursor().Seek(p[:])
		_, clock, _, _ := splitKey(k)
		e := on(id, day, &record.Noted{Text: "not of this journal"})
		e.ID, e.Clock = record.ID{7}, clock
		return errors.Join(journal.Delete(bytes.Clone(k)), journal.Put(recordKey(p, clock, e.ID), record.Pack(nil, e)))
	})
	if b, err = Open(path, options(1)); err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	_, err = b.Stump(id)
	wantProblem(t, "the stump", err, ErrDamaged)
	_, err = b.Events(id)
	wantProblem(t, "its events", err, ErrDamaged)
	if _, err := b.Stump(stumpAt(1, 1, 3)); err != nil {
		t.Error("the next stump:", err)
	}
	wantProblem(t, "an export", WriteLines(io.Discard, b), ErrDamaged)
	var last error
	for _, err := range b.Entries(context.Background()) {
		last = err
	}
	wantProblem(t, "a join", last, ErrDamaged)
}

// Entries are followed upwards alone, so that reading ends whatever the pages say.
func TestEntriesAreFollowedUpwardsAlone(t *testing.T) {
	path, _ := filledFile(t, 30)
	changePages(t, path, func(p page, items []item) bool {
		if p.flags != flagLeaf || len(items) < 6 || len(items[2].key) != keyLen {
			return false
		}
		low, high := bytes.Clone(items[2].key), bytes.Clone(items[4].key)
		copy(items[2].key, high)
		copy(items[4].key, low)
		return true
	})
	o := options(1)
	o.ReadOnly = true
	b, err := Open(path, o)
	if err != nil {
		wantProblem(t, "opening", err, ErrDamaged)
		return
	}
	defer b.Close()
	err = b.view(func(tx *bbolt.Tx, _ *state) error {
		for range rising(tx.Bucket(bucketJournal), nil) {
		}
		return nil
	})
	wantProblem(t, "reading", err, ErrDamaged)
}
