package store

import (
	"io"
	"os"
)

// leaves is a book's file read page by page, without trusting any page to lead to
// another: what a broken tree does not lead to any more is found all the same.
type leaves struct {
	f        io.ReaderAt
	size     int64
	pageSize int64
	high     uint64          // the first page behind the last one that may be in use
	free     map[uint64]bool // pages that are not in use; nil where that is not known
	broken   int             // pages in use that are no page of any kind
}

// pageSizes are the sizes that a page may have, the usual one first.
var pageSizes = []int64{4096, 16384, 8192, 65536, 32768, 2048, 1024}

// openLeaves looks at a file's first pages; where none holds, the size of its pages is
// the one by which most of them know their own number.
func openLeaves(f *os.File) (*leaves, error) {
	h, err := readHead(f)
	if err != nil {
		return nil, err
	}
	l := &leaves{f: f, size: h.size}
	m, ok := h.newest()
	if !ok {
		best := -1
		for _, size := range pageSizes {
			if n := countLeaves(f, h.size, size); n > best {
				best, l.pageSize = n, size
			}
		}
		l.high = uint64((h.size + l.pageSize - 1) / l.pageSize)
		return l, nil
	}
	l.pageSize, l.high = m.pageSize, uint64((h.size+m.pageSize-1)/m.pageSize)
	if h.halved() {
		return l, nil // the one that holds may be the older one, which does not know of what came after
	}
	l.high = min(l.high, m.high)
	if m.freelist != noFreelist && checkFreelist(f, m) == "" {
		l.free = map[uint64]bool{}
		for _, id := range freePages(f, m) {
			l.free[id] = true
		}
	}
	return l, nil
}

// mostProbed is how many pages are looked at to find the size of a file's pages.
const mostProbed = 4096

func countLeaves(f io.ReaderAt, size, pageSize int64) (n int) {
	head := make([]byte, pageHeader)
	for id := int64(0); id < mostProbed && id*pageSize < size; id++ {
		if _, err := f.ReadAt(head, id*pageSize); err == nil && native.Uint64(head) == uint64(id) && native.Uint16(head[8:]) == flagLeaf {
			n++
		}
	}
	return n
}

// freePages is the list of pages that are not in use.
func freePages(f io.ReaderAt, m metaPage) (ids []uint64) {
	p, said := readPage(f, m, m.freelist)
	if said != "" {
		return nil
	}
	list, n := p.data[pageHeader:], uint64(p.count)
	if n == 0xFFFF {
		n, list = native.Uint64(list), list[8:]
	}
	for i := range min(n, uint64(len(list)/8)) {
		ids = append(ids, native.Uint64(list[i*8:]))
	}
	return ids
}

// each gives every element that stands on a leaf page, those of small buckets that
// stand in an element among them, and whether its page is in use.
func (l *leaves) each(give func(key, value []byte, used bool)) {
	page := make([]byte, l.pageSize)
	covered := uint64(0) // pages before it overflow from one that was read
	for id := uint64(2); id < l.high; id++ {
		n, err := l.f.ReadAt(page, int64(id)*l.pageSize)
		if n < pageHeader {
			if err != nil && err != io.EOF {
				l.broken++ // a part of the disk that cannot be read
			}
			continue
		}
		clear(page[n:])
		used := !l.free[id]
		kind, over := native.Uint16(page[8:]), uint64(native.Uint32(page[12:]))
		if native.Uint64(page) != id || kind != flagLeaf {
			if used && id >= covered && (native.Uint64(page) != id || kind != flagBranch && kind != flagFreelist) {
				l.broken++
			} else if native.Uint64(page) == id && over < l.high-id {
				covered = max(covered, id+over+1)
			}
			continue
		}
		data := page
		if over > 0 && over < l.high-id {
			data = make([]byte, int64(over+1)*l.pageSize)
			_, _ = l.f.ReadAt(data, int64(id)*l.pageSize) // what is not there stays nought
			covered = max(covered, id+over+1)
		}
		elements(data, int(native.Uint16(page[10:])), func(key, value []byte) { give(key, value, used) })
	}
}

// elements takes a leaf page apart; an element that reaches outside it is left out, the
// rest is given.
func elements(data []byte, count int, give func(key, value []byte)) {
	const size = 16
	for i := range count {
		at := pageHeader + i*size
		if at+size > len(data) {
			return
		}
		e := data[at:]
		flags, pos := native.Uint32(e), int64(native.Uint32(e[4:]))
		klen, vlen := int64(native.Uint32(e[8:])), int64(native.Uint32(e[12:]))
		if flags > 1 || pos+klen+vlen > int64(len(e)) {
			continue
		}
		key, value := e[pos:pos+klen], e[pos+klen:pos+klen+vlen]
		if flags == 0 {
			give(key, value)
			continue
		}
		if inner := value; len(inner) >= 16+pageHeader && native.Uint64(inner) == 0 { // a small bucket stands in its element
			elements(inner[16:], int(native.Uint16(inner[16+10:])), give)
		}
	}
}
