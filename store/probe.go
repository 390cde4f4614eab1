package store

import (
	"bytes"
	"encoding/binary"
	"errors"
	"hash/fnv"
	"io"
	"io/fs"
	"math"
	"os"
	"time"
)

// The file's first two pages each say where its tree begins; the one written
// last counts, if its checksum holds. Layout in FORMAT.md.
const (
	pageHeader  = 16
	metaLen     = 64
	metaMagic   = 0xED0CDAED
	metaVersion = 2
	noFreelist  = ^uint64(0)

	flagBranch   = 0x01
	flagLeaf     = 0x02
	flagMeta     = 0x04
	flagFreelist = 0x10
)

var native = binary.NativeEndian

// metaPage is one of the two first pages.
type metaPage struct {
	magic    bool // it is such a page, whether or not its checksum holds
	holds    bool
	pageSize int64
	root     uint64
	freelist uint64
	high     uint64 // the first page behind the last one in use
	txid     uint64
	raw      []byte
}

func readMeta(f io.ReaderAt, at int64) metaPage {
	raw := make([]byte, pageHeader+metaLen)
	n, _ := f.ReadAt(raw, at)
	m := metaPage{raw: raw[:n]}
	if n < pageHeader+8 {
		return m
	}
	p := raw[pageHeader:]
	m.magic = native.Uint32(p) == metaMagic
	if n < len(raw) || !m.magic {
		return m
	}
	m.pageSize = int64(native.Uint32(p[8:]))
	m.root, m.freelist = native.Uint64(p[16:]), native.Uint64(p[32:])
	m.high, m.txid = native.Uint64(p[40:]), native.Uint64(p[48:])
	sum := fnv.New64a()
	sum.Write(p[:56])
	m.holds = native.Uint32(p[4:]) == metaVersion && native.Uint64(p[56:]) == sum.Sum64() && m.pageSize >= 512 && m.pageSize <= 1<<24
	return m
}

// fileHead is both first pages of a file and its length.
type fileHead struct {
	metas [2]metaPage
	size  int64
}

// readHead reads the first pages. Where the first does not hold, the second is
// looked for at every size a page may have.
func readHead(f *os.File) (h fileHead, err error) {
	h.metas[0] = readMeta(f, 0)
	if h.metas[0].holds {
		h.metas[1] = readMeta(f, h.metas[0].pageSize)
	} else {
		for size := int64(1024); size <= 1<<24 && !h.metas[1].holds; size *= 2 {
			if m := readMeta(f, size); m.holds && m.pageSize == size {
				h.metas[1] = m
			}
		}
	}
	// The length comes last: it only grows, before the pages that need it count.
	info, err := f.Stat()
	if err == nil {
		h.size = info.Size()
	}
	return h, err
}

// newest is the page that counts; ok is false if neither holds.
func (h fileHead) newest() (m metaPage, ok bool) {
	for _, x := range h.metas {
		if x.holds && (!ok || x.txid > m.txid) {
			m, ok = x, true
		}
	}
	return m, ok
}

// halved says whether the first page of the last change, or of that before it, is lost:
// one does not hold, or they are not of two changes that followed each other.
func (h fileHead) halved() bool {
	x, y := h.metas[0], h.metas[1]
	return !x.holds || !y.holds || max(x.txid, y.txid)-min(x.txid, y.txid) != 1
}

func (h fileHead) same(o fileHead) bool {
	return bytes.Equal(h.metas[0].raw, o.metas[0].raw) && bytes.Equal(h.metas[1].raw, o.metas[1].raw)
}

// probe looks at a file before any of its pages is mapped into memory, and
// says in one sentence why it cannot be opened as a book.
func probe(path string) error {
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrPermission):
		return noAccess(path, err)
	case err != nil:
		return explain(path, err)
	case info.IsDir():
		return problem(ErrNotABook, nil, "%s is a folder, not a book; give the file in it", path)
	case !info.Mode().IsRegular():
		return problem(ErrNotABook, nil, "%s is not a file, so it is no book; choose another", path)
	case info.Size() == 0:
		return problem(ErrNotABook, nil, "%s is an empty file, not a book; take it away or choose another", path)
	}
	f, err := os.Open(path)
	if errors.Is(err, fs.ErrPermission) {
		return noAccess(path, err)
	} else if err != nil {
		return explain(path, err)
	}
	defer f.Close()
	return judgeFile(f, path)
}

// judgeFile judges a file that another process may be writing to: what does not
// fit together counts only if no change ended while it was looked at. Where one
// ended each time, the book is busy.
func judgeFile(f *os.File, path string) error {
	for range 20 {
		h, err := readHead(f)
		if err != nil {
			return explain(path, err)
		}
		said := h.judge(f, path)
		if said == nil {
			return nil
		}
		if after, err := readHead(f); err != nil || after.same(h) {
			return said
		}
		time.Sleep(time.Millisecond)
	}
	return busy(path)
}

func busy(path string) error {
	return problem(ErrLocked, nil, "the book %s is being written all the time by another program; try again in a moment", path)
}

func noAccess(path string, err error) error {
	return problem(ErrNoAccess, err, "%s may not be read by this user", path)
}

// judge says whether what the first pages say can be true of the file.
func (h fileHead) judge(f io.ReaderAt, path string) error {
	m, ok := h.newest()
	switch {
	case ok && m.high > uint64(h.size)/uint64(m.pageSize):
		return problem(ErrCutShort, nil, "the book %s is cut short: of %d bytes only %d are there; bring it back from a copy", path, int64(min(m.high, uint64(math.MaxInt64/m.pageSize)))*m.pageSize, h.size)
	case !ok && !h.metas[0].magic:
		return problem(ErrNotABook, nil, "%s is not a book of this program; choose another file", path)
	case !ok && h.size < 4*4096:
		return problem(ErrCutShort, nil, "the book %s is cut short: only %d bytes are there; bring it back from a copy", path, h.size)
	case !ok:
		return problem(ErrDamaged, nil, "the book %s is damaged: its first pages do not hold; bring it back from a copy", path)
	}
	said := walkPages(f, m, false)
	if list := checkFreelist(f, m); list != "" {
		said = append(said, list)
	}
	if len(said) > 0 {
		return problem(ErrDamaged, nil, "the book %s is damaged: %s; bring it back from a copy", path, said[0])
	}
	return nil
}

// checkFreelist makes sure that the list of free pages holds together, since
// pages on it will be written over.
func checkFreelist(f io.ReaderAt, m metaPage) string {
	if m.freelist == noFreelist {
		return ""
	}
	p, said := readPage(f, m, m.freelist)
	if said != "" {
		return said
	}
	const broken = "its list of free pages does not hold"
	list, n := p.data[pageHeader:], uint64(p.count)
	if n == 0xFFFF {
		n, list = native.Uint64(list), list[8:]
	}
	if p.flags != flagFreelist || n > uint64(len(list)/8) {
		return broken
	}
	last := uint64(1)
	for i := range n {
		id := native.Uint64(list[i*8:])
		if id <= last || id >= m.high {
			return broken
		}
		last = id
	}
	return ""
}

// Halved says whether one of the two first pages of a book does not hold, so that its last
// change may be lost: the next change writes over the broken one.
func Halved(path string) bool {
	f, err := os.Open(path)
	if err != nil {
		return false
	}
	defer f.Close()
	for range 3 {
		h, err := readHead(f)
		if _, ok := h.newest(); err != nil || !ok || !h.halved() {
			return false
		}
		time.Sleep(halfWritten / 3) // another program may be writing it
	}
	return true
}
