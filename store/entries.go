package store

import (
	"bytes"
	"context"
	"errors"
	"iter"

	"go.etcd.io/bbolt"

	"barkslip/core/record"
	"barkslip/store/ahead"
)

// Entries are the events of the book, for joining it into another: stump by stump, those
// about no stump first, up to the end of ctx. Damage is told of as by Journal, with what
// holds given before.
func (b *Book) Entries(ctx context.Context) Entries {
	return func(yield func(Entry, error) bool) {
		of := b.state.Load().head
		var s stretches
		var got tally
		for r := range ahead.Each(ctx, s.all(b), stretch.read) {
			if !r.holds {
				continue
			}
			got.take(r.entry.id, r.sum)
			if !yield(r.entry, r.refused) {
				return
			}
		}
		if ctx.Err() != nil {
			return
		}
		if s.err != nil && (!errors.Is(s.err, ErrDamaged) || b.dead.Load()) {
			yield(Entry{}, s.err)
			return
		}
		changed := b.state.Load().head != of // it was written meanwhile
		if s.err == nil && (changed || got.head.events == of.events && got.head.fingerprint == of.fingerprint) {
			return
		}
		given := make(map[record.ID]bool, len(got.ids))
		for _, id := range got.ids {
			given[id] = true
		}
		var room shelf
		enough := false
		err := b.salvageRest(func(e record.Event) error {
			n, err := checked(&room, e)
			if enough = !yield(n, err); enough {
				return errEnough
			}
			return nil
		}, given)
		if err != nil && !enough {
			yield(Entry{}, err)
		}
	}
}

// tally is what was given of a journal.
type tally struct {
	head head
	ids  []record.ID
}

func (t *tally) take(id record.ID, sum [4]byte) {
	t.head.events++
	t.head.turn(id, sum[:])
	t.ids = append(t.ids, id)
}

// stretch is records that follow one another in the journal: keys and values, each in the
// memory of all.
type stretch struct {
	st           *state
	keys, values [][]byte
}

// stretchBytes is about how much of the journal is read at a time.
const stretchBytes = 256 << 10

// stretches reads the journal stretch by stretch; err is why it ended before its end.
type stretches struct{ err error }

func (s *stretches) all(b *Book) iter.Seq[stretch] {
	return func(yield func(stretch) bool) {
		var last []byte
		for {
			var got stretch
			s.err = b.view(func(tx *bbolt.Tx, st *state) error {
				got = readStretch(tx, st, last)
				return nil
			})
			if s.err != nil || len(got.keys) == 0 || !yield(got) {
				return
			}
			next := got.keys[len(got.keys)-1]
			if bytes.Compare(next, last) <= 0 { // damaged keys out of order that lead back
				s.err = problem(ErrDamaged, nil, "the book %s is damaged: its records do not stand in their order", b.path)
				return
			}
			last = next
		}
	}
}

// readStretch copies the records behind a key.
func readStretch(tx *bbolt.Tx, st *state, last []byte) (s stretch) {
	s.st = st
	room := shelf{room: make([]byte, 0, stretchBytes+stretchBytes/8)}
	c := tx.Bucket(bucketJournal).Cursor()
	k, v := c.Seek(last)
	if k != nil && bytes.Equal(k, last) {
		k, v = c.Next()
	}
	for size := 0; k != nil && size < stretchBytes; k, v = c.Next() {
		s.keys, s.values = append(s.keys, room.copy(k)), append(s.values, room.copy(v))
		size += len(k) + len(v)
	}
	return s
}

// read is a record of a stretch. One that does not hold is left out; one whose event does
// not hold in itself is refused.
type read struct {
	entry   Entry
	sum     [4]byte // the checksum of the record
	holds   bool
	refused error
}

func (s stretch) read() []read {
	out := make([]read, len(s.keys))
	var room shelf
	r := recordReader{st: s.st}
	for i, k := range s.keys {
		kept, err := r.kept(k, s.values[i])
		if err != nil {
			continue
		}
		e, packed := knownNow(kept), s.values[i]
		if e.Body != kept.Body {
			packed = room.pack(e)
		}
		out[i] = read{entry: entryOf(e, packed), sum: [4]byte(s.values[i][len(s.values[i])-4:]), holds: true}
		if err := record.Check(e); err != nil {
			out[i].refused = &RefusedError{id: e.ID, err: err}
		}
	}
	return out
}
