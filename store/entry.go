package store

import (
	"bytes"
	"errors"
	"fmt"
	"iter"
	"unsafe"

	"barkslip/core/record"
)

// Entry is an event in the form in which a book keeps it, on its way from one journal
// into another.
type Entry struct {
	stump  record.StumpID
	clock  uint64
	id     record.ID
	at     int64  // unix seconds
	offset int32  // of its clock from UTC, in seconds
	line   int32  // of the journal as text, from 1; 0 where it comes from none
	packed []byte // see record.Pack
}

// Entries are the events of a journal, in any order. With a *LineError or a *RefusedError the
// rest goes on; any other error ends them.
type Entries = iter.Seq2[Entry, error]

// entryOf is an event with its packed form.
func entryOf(e record.Event, packed []byte) Entry {
	_, offset := e.At.Zone()
	return Entry{stump: e.Stump, clock: e.Clock, id: e.ID, at: e.At.Unix(), offset: int32(offset), packed: packed}
}

// entrySize is about how many bytes an entry takes in memory.
func (n Entry) size() int { return int(unsafe.Sizeof(n)) + len(n.packed) }

// event is the event itself.
func (n Entry) event() (record.Event, error) { return record.Unpack(n.packed, n.stump, n.clock, n.id) }

// text is the event's line in an export. A packed form that is not read is nothing.
func (n Entry) text() []byte {
	e, err := n.event()
	if err != nil {
		return nil
	}
	return record.Line(knownNow(e))
}

// same says whether two entries are one event.
func (n Entry) same(o Entry) bool {
	return n.id == o.id && n.clock == o.clock && n.stump == o.stump && bytes.Equal(n.packed, o.packed)
}

// RefusedError is an event that does not hold in itself and is not let into a book.
type RefusedError struct {
	id   record.ID
	line int32 // of the journal it came from, 0 where it came from none
	err  error
}

func (r *RefusedError) Error() string {
	if r.line > 0 {
		return fmt.Sprintf("line %d: %v", r.line, r.err)
	}
	return fmt.Sprintf("the event %s does not hold: %v", r.id, r.err)
}

// Unwrap gives why it does not hold.
func (r *RefusedError) Unwrap() error { return r.err }

// Packing packs events one by one.
func Packing(events iter.Seq2[record.Event, error]) Entries {
	return func(yield func(Entry, error) bool) {
		var room shelf
		for e, err := range events {
			if err == nil && (e.ID == record.None || e.Clock == 0 || e.Body == nil) {
				err = problem(ErrRefused, nil, "an event without id, clock or body was given")
			}
			var n Entry
			if err == nil {
				n, err = checked(&room, e)
			}
			if !yield(n, err) {
				return
			}
			var bad *LineError
			var refused *RefusedError
			if err != nil && !errors.As(err, &bad) && !errors.As(err, &refused) {
				return
			}
		}
	}
}

// checked is the entry of an event that holds in itself.
func checked(room *shelf, e record.Event) (Entry, error) {
	if err := record.Check(e); err != nil {
		return Entry{}, &RefusedError{id: e.ID, err: err}
	}
	return entryOf(e, room.pack(e)), nil
}

// shelf is room for the packed forms of many events: they stand behind one another, so
// that there are few pieces of memory to look after.
type shelf struct {
	room   []byte
	packer record.Packer
}

const (
	shelfBytes = 64 << 10
	shelfLeft  = 1 << 10 // where less is left another piece is begun
)

// pack packs an event.
func (s *shelf) pack(e record.Event) []byte {
	s.make(shelfLeft)
	return s.cut(s.packer.Pack(s.room, e))
}

// copy copies a packed form.
func (s *shelf) copy(packed []byte) []byte {
	s.make(len(packed))
	return s.cut(append(s.room, packed...))
}

func (s *shelf) make(n int) {
	if cap(s.room)-len(s.room) < n {
		s.room = make([]byte, 0, max(n, shelfBytes))
	}
}

// cut gives what was written behind the rest.
func (s *shelf) cut(room []byte) []byte {
	from := len(s.room)
	s.room = room
	return room[from:len(room):len(room)]
}
