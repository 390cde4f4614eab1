package store

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"barkslip/core/record"
)

// pageMap is which records stand on which page of a sound file, by the number of the page
// that they begin on, and which pages belong to it.
type pageMap struct {
	pageSize int
	pages    []uint64            // in use, without the two first
	on       map[uint64][]string // ids of the records on a page
	part     map[uint64]uint64   // the page that a page is part of
}

func mapPages(t *testing.T, path string) pageMap {
	t.Helper()
	f, m := opened(t, path, os.O_RDONLY)
	defer f.Close()
	w := newPageWalk(f, m, true)
	w.tree(m.root, nil)
	out := pageMap{int(m.pageSize), nil, map[uint64][]string{}, map[uint64]uint64{}}
	for id := range w.seen.all {
		p, said := readPage(f, m, id)
		if said != "" {
			t.Fatal(said)
		}
		for i := range uint64(p.over) + 1 {
			out.pages, out.part[id+i] = append(out.pages, id+i), id
		}
		if p.flags != flagLeaf {
			continue
		}
		elements(p.data, int(p.count), func(key, _ []byte) {
			if _, _, e, ok := splitKey(key); ok {
				out.on[id] = append(out.on[id], e.String())
			}
		})
	}
	return out
}

// hurts are what may happen to a page, as a change of the whole file.
var hurts = map[string]func(whole []byte, at, size int, r *rand.Rand) []byte{
	"zeroed": func(whole []byte, at, size int, _ *rand.Rand) []byte {
		clear(whole[at : at+size])
		return whole
	},
	"random": func(whole []byte, at, size int, r *rand.Rand) []byte {
		for i := range size {
			whole[at+i] = byte(r.Uint32())
		}
		return whole
	},
	"cut": func(whole []byte, at, size int, r *rand.Rand) []byte { // half of it never reached the disk
		clear(whole[at+r.IntN(size) : at+size])
		return whole
	},
	"swapped": func(whole []byte, at, size int, r *rand.Rand) []byte {
		other := r.IntN(len(whole)/size) * size
		page := append([]byte(nil), whole[at:at+size]...)
		copy(whole[at:], whole[other:other+size])
		copy(whole[other:], page)
		return whole
	},
}

// Whatever page of a book is hurt, all is salvaged but what stood on it; what is salvaged
// is as it was, what is missing is counted, and a sound book is made of it.
func TestSalvage(t *testing.T) {
	path, exported := filledFile(t, 30)
	whole, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	pages, all := mapPages(t, path), strings.Count(exported, "\n")
	dir, done := scratchDir(t)
	defer done()
	hurt, r := filepath.Join(dir, "hurt"), rand.New(rand.NewPCG(7, 7))
	step := 5
	if os.Getenv("BARKSLIP_SLOW") != "" {
		step = 1
	}
	tried, lost := 0, 0
	for name, change := range hurts {
		for i := r.IntN(step); i < len(pages.pages); i += step {
			at := int(pages.pages[i]) * pages.pageSize
			bad := change(append([]byte(nil), whole...), at, pages.pageSize, r)
			if err := os.WriteFile(hurt, bad, 0o600); err != nil {
				t.Fatal(err)
			}
			stood := map[uint64]bool{}
			for id := range pages.part {
				if from := int(id) * pages.pageSize; string(bad[from:from+pages.pageSize]) != string(whole[from:from+pages.pageSize]) {
					stood[pages.part[id]] = true
				}
			}
			may := 0
			for id := range stood {
				may += len(pages.on[id])
			}
			s, err := Salvage(hurt)
			if err != nil {
				t.Fatalf("%s page %d: %v", name, pages.pages[i], err)
			}
			if len(s.Events) < all-may {
				t.Errorf("%s page %d: %d of %d records, though only %d stood on it", name, pages.pages[i], len(s.Events), all, may)
			}
			for _, e := range s.Events {
				if !strings.Contains(exported, string(record.Line(e))+"\n") {
					t.Fatalf("%s page %d: a record is not as it was: %s", name, pages.pages[i], record.Line(e))
				}
			}
			if missing := all - len(s.Events); missing > 0 && s.Of > 0 && s.Missing() < missing {
				t.Errorf("%s page %d: %d are missing and %d told: %v", name, pages.pages[i], missing, s.Missing(), s.Say())
			}
			tried, lost = tried+1, lost+all-len(s.Events)
			if i%(4*step) < step {
				into := filepath.Join(dir, "new")
				if err := SalvageInto(s, into, options(1)); err != nil {
					t.Fatalf("%s page %d: %v", name, pages.pages[i], err)
				}
				_ = os.Remove(into)
			}
		}
	}
	t.Logf("%d pages hurt, %d of %d records lost", tried, lost, tried*all)
}

// A file of which the end is missing gives what stands on the pages that are there, also
// where neither of its first pages holds.
func TestSalvageCutShort(t *testing.T) {
	path, exported := filledFile(t, 30)
	whole, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	pages, all := mapPages(t, path), strings.Count(exported, "\n")
	for i, length := range []int{len(whole), usedBytes(t, path) * 3 / 4, usedBytes(t, path) / 2} {
		may := 0
		for id, on := range pages.on {
			last := id
			for part, of := range pages.part {
				if of == id {
					last = max(last, part)
				}
			}
			if int(last+1)*pages.pageSize <= length {
				may += len(on)
			}
		}
		hurt := append([]byte(nil), whole[:length]...)
		if i%2 == 0 {
			clear(hurt[:2*pages.pageSize])
		}
		file := filepath.Join(t.TempDir(), "hurt")
		if err := os.WriteFile(file, hurt, 0o600); err != nil {
			t.Fatal(err)
		}
		s, err := Salvage(file)
		if err != nil || len(s.Events) < may {
			t.Errorf("%d bytes: %d of %d records, %v", length, len(s.Events), may, err)
		}
		t.Logf("%d of %d bytes: %d of %d records, %v", length, len(whole), len(s.Events), all, s.Say())
	}
	for _, text := range []string{"", "not a book at all", strings.Repeat("\x00", 1<<16)} {
		file := filepath.Join(t.TempDir(), "none")
		if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		if _, err := Salvage(file); err == nil {
			t.Errorf("something was salvaged from %.20q", text)
		}
	}
}
