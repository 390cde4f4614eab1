package store

import (
	"bytes"
	"cmp"
	"fmt"
	"io"
	"os"

	"golang.org/x/exp/mmap"
)

// page is a page with those that overflow from it, read from the file.
type page struct {
	id    uint64
	flags uint16
	count uint16
	over  uint32
	data  []byte
}

// readPage reads a page; said is what is wrong with it, or empty.
func readPage(f io.ReaderAt, m metaPage, id uint64) (p page, said string) {
	if id < 2 || id >= m.high {
		return p, fmt.Sprintf("page %d lies outside the file", id)
	}
	head := make([]byte, pageHeader)
	if _, err := f.ReadAt(head, int64(id)*m.pageSize); err != nil {
		return p, fmt.Sprintf("page %d cannot be read", id)
	}
	p = page{native.Uint64(head), native.Uint16(head[8:]), native.Uint16(head[10:]), native.Uint32(head[12:]), nil}
	if p.id != id {
		return p, fmt.Sprintf("page %d says it is page %d", id, p.id)
	}
	if uint64(p.over) >= m.high-id {
		return p, fmt.Sprintf("page %d runs past the end of the file", id)
	}
	p.data = make([]byte, (int64(p.over)+1)*m.pageSize)
	if _, err := f.ReadAt(p.data, int64(id)*m.pageSize); err != nil {
		return p, fmt.Sprintf("page %d cannot be read", id)
	}
	return p, ""
}

// item is one element of a tree page: a key with its value, or with the page
// where keys from it on stand.
type item struct {
	bucket bool
	key    []byte
	value  []byte
	child  uint64
}

// items takes a tree page apart; ok is false if an element reaches outside it.
func (p page) items() (out []item, ok bool) {
	const size = 16
	out = make([]item, 0, min(int(p.count), len(p.data)/size))
	for i := range int(p.count) {
		at := pageHeader + i*size
		if at+size > len(p.data) {
			return nil, false
		}
		e := p.data[at:]
		if p.flags == flagBranch {
			pos, klen := int(native.Uint32(e)), int(native.Uint32(e[4:]))
			if pos+klen > len(e) {
				return nil, false
			}
			out = append(out, item{key: e[pos : pos+klen], child: native.Uint64(e[8:])})
			continue
		}
		pos, klen, vlen := int(native.Uint32(e[4:])), int(native.Uint32(e[8:])), int(native.Uint32(e[12:]))
		if pos+klen+vlen > len(e) || native.Uint32(e) > 1 {
			return nil, false
		}
		out = append(out, item{native.Uint32(e) == 1, e[pos : pos+klen], e[pos+klen : pos+klen+vlen], 0})
	}
	return out, true
}

// pageWalk goes over the pages of the tree in the file itself, so that a broken
// page is found without being mapped and followed.
type pageWalk struct {
	f    io.ReaderAt
	m    metaPage
	full bool
	seen pageSet
	said []string
	last []uint64 // pages that are to hold records, of which the heads alone are read
}

// walkPages says what is wrong with the tree of pages. Unless full, pages that
// hold records are not read; that is enough to know that no page leads back to
// itself.
func walkPages(f io.ReaderAt, m metaPage, full bool) []string {
	w := newPageWalk(f, m, full)
	w.tree(m.root, nil)
	w.leaves()
	return w.said
}

func newPageWalk(f io.ReaderAt, m metaPage, full bool) *pageWalk {
	return &pageWalk{f: f, m: m, full: full, seen: newPageSet(m.high)}
}

func (w *pageWalk) say(format string, args ...any) {
	if len(w.said) < mostFindings {
		w.said = append(w.said, fmt.Sprintf(format, args...))
	}
}

// visit says whether a page is reached for the first time.
func (w *pageWalk) visit(id uint64) bool {
	if !w.seen.add(id) {
		w.say("page %d is used twice", id)
		return false
	}
	return true
}

// tree goes over a page and those under it. first is with which key it begins by the page
// above, nil for the top of a tree.
func (w *pageWalk) tree(id uint64, first []byte) {
	if !w.visit(id) {
		return
	}
	p, said := readPage(w.f, w.m, id)
	if said != "" {
		w.say("%s", said)
		return
	}
	if p.flags != flagBranch && p.flags != flagLeaf || p.flags == flagBranch && p.count == 0 {
		w.say("page %d is of another kind than its place in the tree", id)
		return
	}
	w.items(p, first)
}

// records says whether the pages under a branch page hold records of a large
// bucket, which are read in a full walk alone.
func (w *pageWalk) records(p page, items []item) bool {
	if w.full || p.flags != flagBranch {
		return false
	}
	first, said := readPage(w.f, w.m, items[0].child)
	return said == "" && first.flags == flagLeaf
}

func (w *pageWalk) items(p page, first []byte) {
	items, ok := p.items()
	if !ok {
		w.say("page %d reaches outside itself", p.id)
		return
	}
	if first != nil && (len(items) == 0 || !bytes.Equal(items[0].key, first)) {
		w.say("page %d does not begin as the page above says", p.id)
	}
	skip := w.records(p, items)
	for i, it := range items {
		if i > 0 && bytes.Compare(items[i-1].key, it.key) >= 0 {
			w.say("the keys of page %d are out of order", p.id)
		}
		switch {
		case skip:
			if w.visit(it.child) {
				w.last = append(w.last, it.child)
			}
		case p.flags == flagBranch:
			w.tree(it.child, it.key)
		case it.bucket:
			w.bucket(p.id, it.value)
		}
	}
}

// leaves looks at the heads of the pages that are to hold records. Those of a file of usual
// size are looked at in memory first, which takes a third of the time; what cannot be seen
// there, or is wrong, is looked at in the file itself.
func (w *pageWalk) leaves() {
	if file, ok := w.f.(*os.File); ok && len(w.last) > headsAtOnce && int64(w.m.high)*w.m.pageSize <= laidMost {
		if m, err := mmap.Open(file.Name()); err == nil {
			said := ""
			err := guard(func() (err error) { said, err = w.headsIn(m); return err })
			_ = m.Close()
			if said == "" && err == nil {
				return
			}
		}
	}
	if said, _ := w.headsIn(w.f); said != "" {
		w.say("%s", said)
	}
}

// laidMost is of how many bytes a file is laid into memory for its heads.
const laidMost = 128 << 20

// headsAtOnce is how many heads at least are looked at on one core, and in the file itself.
var headsAtOnce = 1024

// headsIn looks at the heads on all cores and says what is wrong with the first that does
// not fit.
func (w *pageWalk) headsIn(f io.ReaderAt) (said string, err error) {
	parts := make([]string, len(w.last)) // by where they begin
	err = inParts(len(w.last), headsAtOnce, func(from, to int) error {
		parts[from] = w.heads(f, w.last[from:to])
		return nil
	})
	return cmp.Or(parts...), err
}

// heads says which of some pages is the first that is none with records: one of another
// kind would lead elsewhere.
func (w *pageWalk) heads(f io.ReaderAt, ids []uint64) string {
	head := make([]byte, pageHeader)
	for _, id := range ids {
		switch _, err := f.ReadAt(head, int64(id)*w.m.pageSize); {
		case id < 2 || id >= w.m.high:
			return fmt.Sprintf("page %d lies outside the file", id)
		case err != nil:
			return fmt.Sprintf("page %d cannot be read", id)
		case native.Uint64(head) != id:
			return fmt.Sprintf("page %d says it is page %d", id, native.Uint64(head))
		case native.Uint16(head[8:]) != flagLeaf:
			return fmt.Sprintf("page %d is of another kind than its place in the tree", id)
		}
	}
	return ""
}

// bucket follows a bucket's header: root page 8, sequence 8, and behind it the
// only page of a small bucket, whose root page is 0.
func (w *pageWalk) bucket(id uint64, v []byte) {
	if len(v) < 16 {
		w.say("page %d holds a broken bucket", id)
		return
	}
	if root := native.Uint64(v); root != 0 {
		w.tree(root, nil)
		return
	}
	inner := v[16:]
	if len(inner) < pageHeader || native.Uint16(inner[8:]) != flagLeaf {
		w.say("page %d holds a broken bucket", id)
		return
	}
	w.items(page{id: id, flags: flagLeaf, count: native.Uint16(inner[10:]), data: inner}, nil)
}
