package store

import (
	"bytes"
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
)

// tries is how many times damage is done, where BARKSLIP_DAMAGE does not say more.
func tries(t *testing.T, usual int) int {
	t.Helper()
	if n, err := strconv.Atoi(os.Getenv("BARKSLIP_DAMAGE")); err == nil && n > 0 {
		return n
	}
	return usual
}

// answersOf is all that a book answers with: its journal, its summaries, and the record of
// each stump; told says whether an error was met on the way.
func answersOf(path string) (answers map[string]string, told bool) {
	o := options(1)
	o.ReadOnly = true
	b, err := Open(path, o)
	if err != nil {
		return nil, true
	}
	defer func() { _ = b.Close() }()
	if b.Halved() {
		return nil, true
	}
	answers = map[string]string{}
	var lines strings.Builder
	if err := WriteLines(&lines, b); err == nil {
		answers["export"] = lines.String()
	}
	var entries strings.Builder
	whole := true
	for n, err := range b.Entries(context.Background()) {
		if err != nil {
			whole = false
			break
		}
		entries.Write(append(n.Text(), '\n'))
	}
	if whole {
		answers["join"] = entries.String()
	}
	var sums strings.Builder
	if err := b.EachSummary(func(s due.Summary) error {
		fmt.Fprintf(&sums, "%x\n", due.PackSummary(nil, s))
		return nil
	}); err == nil {
		answers["due"] = sums.String()
	}
	answers["settings"] = fmt.Sprintf("%+v %v %v", b.Folded().Blocks[blockID(1)], b.Newest(), b.Apart())
	for tree := range uint16(12) {
		id := stumpAt(1, 1+tree/4, 1+tree)
		if s, err := b.Stump(id); err == nil {
			text := s.Stage().String()
			for _, e := range s.Live {
				text += string(record.Line(e)) + "\n"
			}
			answers["stump "+id.Place()] = text
		}
	}
	return answers, false
}

// growing is a book that grew by single answers, and its file after each of them.
func growing(t *testing.T) (path string, stands [][]byte) {
	t.Helper()
	path = filepath.Join(t.TempDir(), "book")
	b, err := Create(path, options(5))
	if err != nil {
		t.Fatal(err)
	}
	mustAppend(t, b, settings(1)...)
	keep := func() {
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		stands = append(stands, data)
	}
	for tree := range uint16(12) {
		mustAppend(t, b, life(stumpAt(1, 1+tree/4, 1+tree), 60)...)
	}
	keep()
	for i := range 12 {
		mustAppend(t, b, on(stumpAt(1, uint16(1+i/4), uint16(1+i)), day.AddDate(0, 0, 100+i), &record.Noted{Text: fmt.Sprint("late note ", i)}))
		keep()
	}
	mustAppend(t, b, about(&record.BlockSet{Block: blockID(1), Setting: "frosty", Value: "yes"}))
	keep()
	for hours := range 4 { // a small change: what it wrote over is all that is not as it was before the last
		if err := b.SetApart(time.Duration(1+hours) * time.Hour); err != nil {
			t.Fatal(err)
		}
		keep()
	}
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	return path, stands
}

// pageLen is how long a page of a book's file is, and how many there are.
func pageLen(t *testing.T, path string) (size, pages int) {
	t.Helper()
	f, m := opened(t, path, os.O_RDONLY)
	defer f.Close()
	return int(m.pageSize), int(m.high)
}

// livePages are the numbers of the pages that a book's first pages lead to, and of those.
func livePages(t *testing.T, path string) []int {
	t.Helper()
	f, m := opened(t, path, os.O_RDONLY)
	defer f.Close()
	w := newPageWalk(f, m, true)
	w.tree(m.root, nil)
	live := []int{0, 1, int(m.freelist)}
	for id := range w.seen.all {
		live = append(live, int(id))
	}
	slices.Sort(live)
	return live
}

// compareAnswers fails where a book answers otherwise than it should, without a word.
func compareAnswers(t *testing.T, what string, got, want map[string]string) {
	t.Helper()
	for name, text := range got {
		if text != want[name] {
			t.Errorf("%s: another answer of %s without a word", what, name)
		}
	}
}

// Of each change one page after another did not reach the disk.
func TestALostWriteIsNotSilent(t *testing.T) {
	_, stands := growing(t)
	dir, done := scratchDir(t)
	defer done()
	hurt := filepath.Join(dir, "hurt")
	answers := func(data []byte) (map[string]string, bool) {
		t.Helper()
		if err := os.WriteFile(hurt, data, 0o600); err != nil {
			t.Fatal(err)
		}
		return answersOf(hurt)
	}
	cases, said := 0, 0
	for k := 1; k < len(stands); k++ {
		want, told := answers(stands[k])
		if told {
			t.Fatal("the sound book is told of")
		}
		size, pages := pageLen(t, hurt)
		for x := 2; x < pages; x++ {
			from, to := x*size, (x+1)*size
			was := make([]byte, size)
			if len(stands[k-1]) >= to {
				copy(was, stands[k-1][from:to])
			}
			if bytes.Equal(was, stands[k][from:to]) {
				continue
			}
			data := bytes.Clone(stands[k])
			copy(data[from:to], was)
			got, told := answers(data)
			if cases++; told {
				said++
			}
			compareAnswers(t, fmt.Sprintf("change %d, page %d", k, x), got, want)
		}
	}
	t.Logf("%d lost writes, %d told of on opening", cases, said)
}

// A book in which a page was flipped, swapped, zeroed, cut or not written gives the same
// answers, or says that it does not.
func TestNoDamageIsSilent(t *testing.T) {
	path, stands := growing(t)
	whole := stands[len(stands)-1]
	want, told := answersOf(path)
	if told {
		t.Fatal("the sound book is told of")
	}
	size, pages := pageLen(t, path)
	seed := rand.Uint64()
	r := rand.New(rand.NewPCG(seed, 7))
	t.Logf("seed %d, %d pages", seed, pages)
	live := livePages(t, path)
	dir, done := scratchDir(t)
	defer done()
	hurt := filepath.Join(dir, "hurt")
	page := func(data []byte, n int) []byte { return data[n*size : (n+1)*size] }
	kinds := []struct {
		name string
		do   func(data []byte) string
	}{
		{"flip", func(data []byte) string { // of a page that is in use
			at, bit := live[r.IntN(len(live))]*size+r.IntN(size), byte(1)<<r.IntN(8)
			data[at] ^= bit
			return fmt.Sprintf("bit %#x of byte %d, page %d", bit, at, at/size)
		}},
		{"swap", func(data []byte) string {
			x, y := r.IntN(pages), r.IntN(pages)
			was := append([]byte(nil), page(data, x)...)
			copy(page(data, x), page(data, y))
			copy(page(data, y), was)
			return fmt.Sprintf("pages %d and %d", x, y)
		}},
		{"misled", func(data []byte) string { // a page written where another goes, under the other's number
			x, y := 2+r.IntN(pages-2), 2+r.IntN(pages-2)
			copy(page(data, x), page(data, y))
			native.PutUint64(page(data, x), uint64(x))
			return fmt.Sprintf("page %d in the place of %d", y, x)
		}},
		{"zeroed", func(data []byte) string {
			x := r.IntN(pages)
			clear(page(data, x))
			return fmt.Sprintf("page %d", x)
		}},
		{"stale", func(data []byte) string {
			x := 2 + r.IntN(pages-2)
			of := stands[r.IntN(len(stands)-1)]
			if len(of) < (x+1)*size {
				return "none"
			}
			copy(page(data, x), page(of, x))
			return fmt.Sprintf("page %d", x)
		}},
	}
	heard := map[string][2]int{}
	for i := range tries(t, 300) {
		kind := kinds[0]
		if i%2 == 1 {
			kind = kinds[1+i/2%(len(kinds)-1)]
		}
		data := append([]byte(nil), whole...)
		what := kind.do(data)
		if err := os.WriteFile(hurt, data, 0o600); err != nil {
			t.Fatal(err)
		}
		got, told := answersOf(hurt)
		n := heard[kind.name]
		if n[0]++; told {
			n[1]++
		}
		heard[kind.name] = n
		compareAnswers(t, kind.name+", "+what, got, want)
	}
	t.Logf("tries and those told of on opening: %v", heard)
}
