package store

import (
	"hash/fnv"
	"os"
	"slices"
	"testing"
)

// A first page whose checksum holds may still tell of more pages than a file can have.
func TestMorePagesThanAFileCanHave(t *testing.T) {
	for _, high := range []uint64{1 << 40, 1 << 52, 1<<52 + 1, 1<<64 - 1} {
		path, _ := filledFile(t, 3)
		f, m := opened(t, path, os.O_RDWR)
		for at := range int64(2) {
			p := make([]byte, metaLen)
			if _, err := f.ReadAt(p, at*m.pageSize+pageHeader); err != nil {
				t.Fatal(err)
			}
			native.PutUint64(p[40:], high)
			sum := fnv.New64a()
			sum.Write(p[:56])
			native.PutUint64(p[56:], sum.Sum64())
			if _, err := f.WriteAt(p, at*m.pageSize+pageHeader); err != nil {
				t.Fatal(err)
			}
		}
		if err := f.Close(); err != nil {
			t.Fatal(err)
		}
		_, err := Open(path, options(1))
		wantProblem(t, "too many pages", err, ErrCutShort)
	}
}

// What is wrong with the head of a page with records is said in the same words whether the
// heads are looked at in memory or in the file, and before any page is followed.
func TestHeadsOfLeaves(t *testing.T) {
	usual := headsAtOnce
	defer func() { headsAtOnce = usual }()
	path := seasonBook(t, 60, 40)
	f, m := opened(t, path, os.O_RDWR)
	defer f.Close()
	w := newPageWalk(f, m, false)
	w.tree(m.root, nil)
	if len(w.last) < 20 {
		t.Fatalf("only %d pages are looked at by their heads", len(w.last))
	}
	inMemory := func() []string { headsAtOnce = 4; return walkPages(f, m, false) }
	inFile := func() []string { headsAtOnce = usual; return walkPages(f, m, false) }
	if said := append(inMemory(), inFile()...); len(said) > 0 {
		t.Fatal("of a sound book:", said)
	}
	for _, id := range w.last {
		for at, to := range map[int64]byte{0: 0xff, 8: flagBranch, 9: 1} { // its number, its kind
			was := make([]byte, 1)
			where := int64(id)*m.pageSize + at
			if _, err := f.ReadAt(was, where); err != nil {
				t.Fatal(err)
			}
			if _, err := f.WriteAt([]byte{was[0] ^ to}, where); err != nil {
				t.Fatal(err)
			}
			one, other := inMemory(), inFile()
			if len(one) == 0 || !slices.Equal(one, other) {
				t.Errorf("byte %d of page %d: %q in memory, %q in the file", at, id, one, other)
			}
			if _, err := f.WriteAt(was, where); err != nil {
				t.Fatal(err)
			}
		}
	}
	// A page that is not there any more is a fault of memory, and is said all the same.
	if err := f.Truncate(int64(slices.Max(w.last)) * m.pageSize); err != nil {
		t.Fatal(err)
	}
	if one, other := inMemory(), inFile(); len(one) == 0 || !slices.Equal(one, other) {
		t.Errorf("cut off: %q in memory, %q in the file", one, other)
	}
}
