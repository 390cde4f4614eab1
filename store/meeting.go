package store

import (
	"bytes"
	"encoding/binary"
	"errors"
	"iter"

	"go.etcd.io/bbolt"

	"barkslip/core/record"
)

// bucketMeeting keeps how far the book has met the journals of crews. It is made at the
// first meeting; what stands in it can always be had again by meeting from the beginning.
//
//	crew 32: made 8 (unix nanoseconds), at 8, lacks 8, met 8, fingerprint 16, CRC-32C 4
//	crew 32, number of a message 8: the prints of its events, 16 each, CRC-32C 4
var bucketMeeting = []byte("meeting")

// CrewMark tells the journal of one crew, sealed with the same keys, from any other.
type CrewMark [32]byte

// Print tells a record, with all that it says, from any other: its id with the record's
// checksum laid over the first four bytes.
type Print [16]byte

func printFor(id record.ID, sum [4]byte) (p Print) {
	copy(p[:], id[:])
	for i, x := range sum {
		p[i] ^= x
	}
	return p
}

// Print is the entry's print, as of the record that it becomes in a book.
func (n Entry) Print() Print {
	if len(n.packed) < 4 {
		return Print(n.id)
	}
	return printFor(n.id, [4]byte(n.packed[len(n.packed)-4:]))
}

// ID is the event's id.
func (n Entry) ID() record.ID { return n.id }

// Block is the block whose stump the event is about, record.None where it is about none.
func (n Entry) Block() record.ID { return n.stump.Block }

// Text is the event's line in a journal, without its newline.
func (n Entry) Text() []byte { return n.text() }

// Place is how far a book has met a crew's journal.
type Place struct {
	Made  int64  // when that journal was made, in unix nanoseconds: another is met from the beginning
	At    uint64 // the number of the last message taken; 0: none yet
	Lacks uint64 // how many of its messages that journal had lost when it was met from the beginning
	Met   int    // how many of the book's records that journal has
	of    [16]byte
}

const placeLen = 8 + 8 + 8 + 8 + 16 + 4

func (p Place) pack() []byte {
	out := make([]byte, 0, placeLen)
	for _, v := range []uint64{uint64(p.Made), p.At, p.Lacks, uint64(p.Met)} {
		out = binary.BigEndian.AppendUint64(out, v)
	}
	return checksummed(append(out, p.of[:]...))
}

func unpackPlace(v []byte) (p Place, ok bool) {
	v, ok = verified(v)
	if !ok || len(v) != placeLen-4 {
		return p, false
	}
	p.Made, p.At = int64(binary.BigEndian.Uint64(v)), binary.BigEndian.Uint64(v[8:])
	p.Lacks, p.Met = binary.BigEndian.Uint64(v[16:]), int(binary.BigEndian.Uint64(v[24:]))
	copy(p.of[:], v[32:])
	return p, true
}

// Meeting is how far the book has met a crew's journal, and how many of its records are
// to be sent there. Where nothing is known, or what is known does not hold, all are.
func (b *Book) Meeting(crew CrewMark) (place Place, unsent int, err error) {
	err = b.view(func(tx *bbolt.Tx, st *state) error {
		if meeting := tx.Bucket(bucketMeeting); meeting != nil {
			place, _ = unpackPlace(meeting.Get(crew[:]))
		}
		unsent = max(0, int(st.head.events)-place.Met)
		return nil
	})
	return place, unsent, err
}

// Unmet are the records that a crew's journal lacks, by block and stump, each as it goes
// out and with the print that it has in this book.
type Unmet struct {
	Entry
	As Print
}

// Met says whether a crew's journal has all records of the book, without looking for those
// that it lacks.
func (b *Book) Met(place Place) bool {
	h := b.state.Load().head
	return place.Made != 0 && place.of == h.fingerprint && place.Met == int(h.events)
}

// Unsent is what a crew's journal lacks of a book.
type Unsent struct {
	Count int // records
	book  *Book
	met   map[Print]bool
}

// Unsent looks for the records of the book that a crew's journal lacks.
func (b *Book) Unsent(crew CrewMark) (Unsent, error) {
	met, err := b.metPrints(crew)
	l := Unsent{book: b, met: met}
	if err != nil {
		return l, err
	}
	var s stretches
	for some := range s.all(b) {
		for i, k := range some.keys {
			if as, ok := printAt(k, some.values[i]); ok && !met[as] {
				l.Count++
			}
		}
	}
	return l, s.err
}

// All gives the records. Damage is told of at the end.
func (l Unsent) All() iter.Seq2[Unmet, error] {
	return func(yield func(Unmet, error) bool) {
		var s stretches
		bad := 0
		for some := range s.all(l.book) {
			for _, u := range some.unmet(l.met, &bad) {
				if !yield(u, nil) {
					return
				}
			}
		}
		if s.err == nil && bad > 0 {
			s.err = problem(ErrDamaged, record.ErrDamaged, "%s damaged and not sent; check the book %s", lostRecords(bad), l.book.path)
		}
		if s.err != nil {
			yield(Unmet{}, s.err)
		}
	}
}

// printAt is the print of a record of the journal.
func printAt(key, value []byte) (Print, bool) {
	_, _, id, ok := splitKey(key)
	if !ok || len(value) < 4 {
		return Print{}, false
	}
	return printFor(id, [4]byte(value[len(value)-4:])), true
}

func (s stretch) unmet(met map[Print]bool, bad *int) (out []Unmet) {
	var room shelf
	r := recordReader{st: s.st}
	for i, k := range s.keys {
		v := s.values[i]
		as, ok := printAt(k, v)
		if ok && met[as] {
			continue
		}
		kept, err := r.kept(k, v)
		if err != nil {
			*bad++
			continue
		}
		e, packed := knownNow(kept), v
		if e.Body != kept.Body {
			packed = room.pack(e)
		}
		out = append(out, Unmet{entryOf(e, packed), as})
	}
	return out
}

// metPrints are the prints of all that a crew's journal is known to have.
func (b *Book) metPrints(crew CrewMark) (map[Print]bool, error) {
	met := map[Print]bool{}
	err := b.view(func(tx *bbolt.Tx, _ *state) error {
		meeting := tx.Bucket(bucketMeeting)
		if meeting == nil {
			return nil
		}
		if place, ok := unpackPlace(meeting.Get(crew[:])); ok && place.Met > 0 {
			met = make(map[Print]bool, place.Met)
		}
		for k, v := range rising(meeting, crew[:]) {
			if len(k) == len(crew) {
				continue
			}
			prints, ok := verified(v) // what does not hold is sent again: others know it
			for ; ok && len(prints) >= len(Print{}); prints = prints[len(Print{}):] {
				met[Print(prints)] = true
			}
		}
		return nil
	})
	return met, err
}

// MetMessage is one message of a crew's journal: its number, and the prints of its events.
type MetMessage struct {
	Number uint64
	Prints []Print
}

// MetMore is what was met since: messages of the journal made at Made, up to the number
// At, and how many records of the book are met by them that were not.
type MetMore struct {
	Made     int64
	At       uint64
	Lacks    uint64
	Messages []MetMessage
	Records  int
}

// KeepMet keeps what was met since of a crew's journal.
func (b *Book) KeepMet(crew CrewMark, more MetMore) error {
	return b.meeting(func(c *change, meeting *bbolt.Bucket) error {
		for _, m := range more.Messages {
			prints := make([]byte, 0, len(Print{})*len(m.Prints)+4)
			for _, p := range m.Prints {
				prints = append(prints, p[:]...)
			}
			if err := meeting.Put(binary.BigEndian.AppendUint64(bytes.Clone(crew[:]), m.Number), checksummed(prints)); err != nil {
				return err
			}
		}
		place, _ := unpackPlace(meeting.Get(crew[:]))
		place.Made, place.At, place.Lacks = more.Made, more.At, more.Lacks
		place.Met = min(place.Met+more.Records, int(c.now.head.events))
		return meeting.Put(crew[:], place.pack())
	})
}

// Standing is a book as it stood when it was looked through.
type Standing struct{ of head }

// Standing is the book as it stands now.
func (b *Book) Standing() Standing { return Standing{b.state.Load().head} }

// SettleMet keeps how many records of the book, as it stood, are still to be sent to a
// crew's journal.
func (b *Book) SettleMet(crew CrewMark, as Standing, unsent int) error {
	return b.meeting(func(c *change, meeting *bbolt.Bucket) error {
		place, _ := unpackPlace(meeting.Get(crew[:]))
		had := place
		place.Met, place.of = max(0, int(as.of.events)-unsent), [16]byte{}
		if unsent == 0 {
			place.of = as.of.fingerprint
		}
		if place == had {
			return nil
		}
		return meeting.Put(crew[:], place.pack())
	})
}

// meeting changes what is kept of meetings.
func (b *Book) meeting(do func(c *change, meeting *bbolt.Bucket) error) error {
	b.writing.Lock()
	defer b.writing.Unlock()
	return b.write(0.9, false, func(c *change) error {
		meeting, err := c.tx.CreateBucketIfNotExists(bucketMeeting)
		if err != nil {
			return err
		}
		return do(c, meeting)
	})
}

// ForgetMeeting forgets how far the book has met a crew's journal, as where that journal
// was made anew.
func (b *Book) ForgetMeeting(crew CrewMark) error {
	return b.meeting(func(_ *change, meeting *bbolt.Bucket) error {
		var keys [][]byte
		for k := range rising(meeting, crew[:]) {
			keys = append(keys, bytes.Clone(k))
		}
		var errs []error
		for _, k := range keys {
			errs = append(errs, meeting.Delete(k))
		}
		return errors.Join(errs...)
	})
}

// EntriesIn parses lines of a journal that stand in memory. A line that does not hold
// yields a *LineError.
func EntriesIn(text []byte) iter.Seq2[Entry, error] {
	return func(yield func(Entry, error) bool) {
		for s := range sheets(bytes.NewReader(text)) {
			for _, l := range s.pack() {
				if !yield(l.entry, l.err) {
					return
				}
			}
		}
	}
}
