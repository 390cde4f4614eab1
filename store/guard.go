package store

import (
	"errors"
	"fmt"
	"runtime/debug"

	"go.etcd.io/bbolt"

	"barkslip/core/record"
)

// pageFault is a fault or a panic while reading the file's pages, as when the
// file was cut short while it was open.
type pageFault struct{ said any }

func (f *pageFault) Error() string { return fmt.Sprint("reading the file's pages failed: ", f.said) }

// guard turns faults and panics of do into a *pageFault.
func guard(do func() error) (err error) {
	defer debug.SetPanicOnFault(debug.SetPanicOnFault(true))
	defer func() {
		switch said := recover().(type) {
		case nil:
		case programFault:
			err = problem(ErrProgram, nil, "the program failed at the record of %s: %v", named(said.stump), said.said)
		default:
			err = &pageFault{said}
		}
	}()
	return do()
}

// programFault is a panic in the folding of records that were read well: a
// fault of the program, not of the file.
type programFault struct {
	stump record.StumpID
	said  any
}

// folding runs the pure part of work on a stump's records.
func folding(stump record.StumpID, do func()) {
	defer func() {
		if said := recover(); said != nil {
			panic(programFault{stump, said})
		}
	}()
	do()
}

// begin begins a transaction. If that itself faults, locks inside stay held and
// the book is dead: nothing but its file can be closed.
func (b *Book) begin(writable bool) (*bbolt.Tx, error) {
	begun := false
	defer func() {
		if !begun {
			b.dead.Store(true)
		}
	}()
	tx, err := b.db.Begin(writable)
	begun = true
	return tx, err
}

// view reads within one transaction, with the state that belongs to it. read
// must call nothing of the book.
func (b *Book) view(read func(tx *bbolt.Tx, st *state) error) error {
	b.mu.RLock()
	defer b.mu.RUnlock()
	if b.dead.Load() {
		return b.deadError()
	}
	err := guard(func() error {
		tx, err := b.begin(false)
		if err != nil {
			return err
		}
		defer tx.Rollback()
		return read(tx, b.state.Load())
	})
	b.noteFault(err)
	return b.explain(err)
}

func (b *Book) deadError() error {
	return problem(ErrDamaged, nil, "the book %s is damaged: its first pages do not hold any more; bring it back from a copy", b.path)
}

// noteFault remembers that the file's pages failed; nothing is written to the
// book from then on.
func (b *Book) noteFault(err error) {
	var fault *pageFault
	if errors.As(err, &fault) {
		b.fault.CompareAndSwap(nil, &err)
	}
}

func (b *Book) explain(err error) error { return explain(b.path, err) }
