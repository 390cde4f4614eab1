// Package store keeps the book: one file holding the journal of events, safe
// against lost power and full disks, and the summaries made from it. It opens a
// book safely and brings an older one up to date, appends and joins events, reads
// them back folded, copies, checks and brings back. It decides nothing about what
// events mean: that is core's, of which it uses record and due, and no screen and
// no command is known to it. FORMAT.md describes the file.
package store

import (
	"crypto/rand"
	"io"
	"os"
	"sync"
	"sync/atomic"
	"time"

	"go.etcd.io/bbolt"

	"barkslip/core/record"
)

// Options say how a book is opened.
type Options struct {
	Zones    record.Zones  // nil: the zones of this machine
	Random   io.Reader     // 16 bytes an id; nil: the machine's random numbers
	ReadOnly bool          // for commands that only read
	Much     bool          // for commands that write much at once
	GoOn     bool          // also opens for writing a book that may have lost its last change: somebody was asked
	Timeout  time.Duration // how long to wait for a book that is open elsewhere; 0: 1 s
}

func (o Options) filled() Options {
	if o.Zones == nil {
		o.Zones = time.LoadLocation
	}
	if o.Random == nil {
		o.Random = rand.Reader
	}
	if o.Timeout <= 0 {
		o.Timeout = time.Second
	}
	return o
}

// Book is an open book. Its methods may be called from several goroutines.
type Book struct {
	path     string
	readOnly bool
	halved   bool // see Halved
	zones    record.Zones
	random   io.Reader
	db       *bbolt.DB
	file     *os.File
	copied   string // a copy made for reading, taken away on closing
	kept     string // see KeptOlder

	writing sync.Mutex            // one writer at a time
	mu      sync.RWMutex          // held by readers, and by the writer while it commits
	state   atomic.Pointer[state] // goes with the newest commit
	fault   atomic.Pointer[error] // the first failure of the file's pages
	dead    atomic.Bool           // not even a transaction can be begun
	closed  atomic.Bool
	work    work
}

// Path is the book's file.
func (b *Book) Path() string { return b.path }

// ReadOnly says whether the book was opened for reading alone.
func (b *Book) ReadOnly() bool { return b.readOnly }

// Halved says whether the book may have lost its last change, as when it was opened: one of
// its two first pages does not hold.
func (b *Book) Halved() bool { return b.halved }

// Folded is what is known apart from single stumps. It is not to be changed.
func (b *Book) Folded() *record.Book { return b.state.Load().folded }

// Count is how many events the journal has and how many stumps stand in the
// list.
func (b *Book) Count() (events, stumps int) {
	h := b.state.Load().head
	return int(h.events), int(h.stumps)
}

// Newest is the latest time any event was given for, zero in an empty book.
func (b *Book) Newest() time.Time { return b.state.Load().head.newestTime() }

// NewID is a new random id, for a block or a lot.
func (b *Book) NewID() (record.ID, error) {
	b.writing.Lock()
	defer b.writing.Unlock()
	return b.newID()
}

func (b *Book) newID() (id record.ID, err error) {
	if _, err = io.ReadFull(b.random, id[:]); err != nil {
		return id, problem(ErrDisk, err, "this machine gives no random numbers: %v", err)
	}
	return id, nil
}

// Close closes the file. Closing twice does nothing.
func (b *Book) Close() error {
	b.writing.Lock()
	defer b.writing.Unlock()
	if b.closed.Swap(true) {
		return nil
	}
	var err error
	if b.dead.Load() {
		err = b.file.Close()
	} else {
		err = guard(b.db.Close)
	}
	if b.copied != "" {
		_ = os.Remove(b.copied) // on most systems it is gone already
	}
	return b.explain(err)
}
