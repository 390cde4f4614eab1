package store

import (
	"errors"
	"os"
	"sync"
	"sync/atomic"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
)

// ErrLooking is an answer given to a look, which writes nothing.
var ErrLooking = errors.New("looking on")

// Look is a book seen beside whoever has it open: as it stood when it was last
// copied, kept up to date by Refresh. It takes no lock on
// the book and writes nothing to it, nor beside it.
type Look struct {
	path string
	o    Options
	now  atomic.Pointer[Book]

	mu    sync.Mutex
	seen  fileHead // of the copy that is shown, or that is being made
	mtime time.Time
	busy  bool
	ended bool      // closed: a copy that is being made is not wanted any more
	next  *Book     // copied, and not yet shown
	err   error     // why the last copy could not be made
	tried time.Time // when that was
}

// OpenLook opens a look at a book, whether or not another process has it open.
func OpenLook(path string, o Options) (*Look, error) {
	o = o.filled()
	o.ReadOnly = true
	if err := probe(path); err != nil {
		return nil, err
	}
	l := &Look{path: path, o: o}
	l.seen, l.mtime, _ = l.head()
	b, err := l.copied()
	if err != nil {
		return nil, err
	}
	l.now.Store(b)
	return l, nil
}

// copied opens a copy of the book as it stands.
func (l *Look) copied() (*Book, error) {
	if err := probe(l.path); err != nil {
		return nil, err
	}
	return openCopy(l.path, l.o)
}

// head is the first pages of the book's file as they stand, and when it was
// written last.
func (l *Look) head() (h fileHead, at time.Time, err error) {
	f, err := os.Open(l.path)
	if err != nil {
		return h, at, explain(l.path, err)
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil {
		at = info.ModTime()
	}
	h, err = readHead(f)
	return h, at, err
}

// again is after how long a copy that could not be made is tried again, though the
// book did not change: what was in the way may have gone.
const again = time.Second

// Refresh shows a newer copy if one is ready, and begins to make one in the
// background if the book has changed. Newer says whether what is shown changed; the
// error is why the book could not be seen again: what was seen before stays.
func (l *Look) Refresh() (newer bool, err error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.next != nil {
		old := l.now.Swap(l.next)
		l.next, newer = nil, true
		_ = old.Close()
	}
	if l.busy {
		return newer, nil
	}
	h, at, err := l.head()
	if err != nil {
		return newer, err
	}
	if h.same(l.seen) && h.size == l.seen.size && at.Equal(l.mtime) && (l.err == nil || time.Since(l.tried) < again) {
		return newer, l.err
	}
	l.seen, l.mtime, l.busy = h, at, true
	go l.copyOnce()
	return newer, l.err
}

func (l *Look) copyOnce() {
	if l.isClosed() {
		return
	}
	b, err := l.copied()
	l.mu.Lock()
	defer l.mu.Unlock()
	l.busy, l.err, l.tried = false, err, time.Now()
	switch {
	case err != nil:
	case l.ended:
		_ = b.Close()
	default:
		l.next = b
	}
}

// isClosed tells whether the look was closed before its next copy was begun; then
// none is made.
func (l *Look) isClosed() bool {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.busy = l.busy && !l.ended
	return l.ended
}

// Book is the copy that is shown now.
func (l *Look) Book() *Book { return l.now.Load() }

// Append refuses: a look writes nothing.
func (l *Look) Append(...record.Event) (due.Appended, error) {
	return due.Appended{}, problem(ErrLooking, nil, "looking on: nothing is written here; answer in the program that has the book open")
}

// Stump is the record of one stump, as the copy has it.
func (l *Look) Stump(id record.StumpID) (*record.Stump, error) { return l.Book().Stump(id) }

// Summaries is the summaries of a block's stumps, as the copy has them.
func (l *Look) Summaries(block record.ID) ([]due.Summary, error) { return l.Book().Summaries(block) }

// Folded is what is known apart from single stumps.
func (l *Look) Folded() *record.Book { return l.Book().Folded() }

// Newest is the time of the newest answer.
func (l *Look) Newest() time.Time { return l.Book().Newest() }

// Close lets go of the copies.
func (l *Look) Close() error {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.ended = true
	if l.next != nil {
		_ = l.next.Close()
		l.next = nil
	}
	return l.Book().Close()
}

// Events is the events of one stump, as the copy has them.
func (l *Look) Events(id record.StumpID) ([]record.Event, error) { return l.Book().Events(id) }
