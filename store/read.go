package store

import (
	"cmp"
	"errors"
	"fmt"
	"iter"
	"slices"
	"time"

	"go.etcd.io/bbolt"

	"barkslip/core/record"
)

func utcOnly(string) (*time.Location, error) { return time.UTC, nil }

// gather unpacks the records of one spot, with their print. bad counts those that do not
// hold.
func gather(tx *bbolt.Tx, st *state, p spot) (events []record.Event, of uint64, bad int) {
	r := recordReader{st: st}
	for k, v := range rising(tx.Bucket(bucketJournal), p[:]) {
		of ^= printOf(k, v)
		e, err := r.unpack(k, v)
		if err != nil {
			bad++
			continue
		}
		events = append(events, e)
	}
	return events, of, bad
}

// treeRecords is the records of a tree: its limbs and its trunk.
type treeRecords struct {
	events []record.Event
	bad    int    // those of the tree that do not hold
	own    int    // those of the stump asked for, held or not
	print  uint64 // of those
}

// gatherTree unpacks the records of a stump's tree under all the names of its
// block, into room where that is enough.
func gatherTree(tx *bbolt.Tx, st *state, id record.StumpID, room []record.Event) (t treeRecords) {
	t.events = room[:0]
	r := recordReader{st: st}
	for _, prefix := range st.tree(id) {
		for k, v := range rising(tx.Bucket(bucketJournal), prefix) {
			if len(k) > treeLen && k[treeLen] == id.Limb {
				t.own++
				t.print ^= printOf(k, v)
			}
			e, err := r.unpack(k, v)
			if err != nil {
				t.bad++
				continue
			}
			t.events = append(t.events, e)
		}
	}
	return t
}

// recordReader reads records of the journal one after another, in the same memory. One is for one
// goroutine.
type recordReader struct {
	st *state
	of record.Unpacker
}

// unpack reads one record.
func (r *recordReader) unpack(key, value []byte) (record.Event, error) {
	e, err := r.kept(key, value)
	if err != nil {
		return e, err
	}
	return knownNow(e), nil
}

// kept reads one record as it was kept.
func (r *recordReader) kept(key, value []byte) (record.Event, error) {
	p, clock, id, ok := splitKey(key)
	if !ok {
		return record.Event{}, record.ErrDamaged
	}
	stump := record.NoStump
	if p != general {
		block, known := r.st.blocks[p.number()]
		if !known {
			return record.Event{}, record.ErrDamaged
		}
		stump = p.stump(block)
	}
	return r.of.Unpack(value, stump, clock, id)
}

// knownNow reads an event that was kept under a kind not known then as one of
// that kind, if this program knows it.
func knownNow(e record.Event) record.Event {
	if _, foreign := e.Body.(*record.Foreign); foreign {
		if read, err := record.ParseLine(record.Line(e)); err == nil {
			return read
		}
	}
	return e
}

// gatherStump unpacks the records of a stump under all the names of its block.
func gatherStump(tx *bbolt.Tx, st *state, id record.StumpID) (events []record.Event, of uint64, bad int) {
	for _, p := range st.spots(id) {
		es, print, n := gather(tx, st, p)
		events, of, bad = append(events, es...), of^print, bad+n
	}
	return events, of, bad
}

// Events is the events of one stump as they were written, in no order; of
// record.NoStump those about no stump. Where blocks were said to be the same it
// is the events of the tree in all of them. If records are damaged, the events
// that hold are given together with an error.
func (b *Book) Events(id record.StumpID) ([]record.Event, error) {
	var events []record.Event
	bad := 0
	err := b.view(func(tx *bbolt.Tx, st *state) error {
		var of uint64
		events, of, bad = gatherStump(tx, st, id)
		bad += missing(tx, st, st.canonical(id), len(events)+bad, of, bad == 0)
		return nil
	})
	if err == nil {
		err = lost(id, bad)
	}
	return events, err
}

// lost tells of records that do not hold; nil for none.
func lost(id record.StumpID, n int) error {
	if n == 0 {
		return nil
	}
	return problem(ErrDamaged, record.ErrDamaged, "of the answers about %s %s damaged; check the book and bring it back from a copy",
		named(id), lostRecords(n))
}

func named(id record.StumpID) string {
	if id == record.NoStump {
		return "the block"
	}
	return id.Long()
}

// Stump is the record of one stump, folded with what is its whole tree's; without
// events it is empty. If
// records are damaged, what can be read is given together with an error.
func (b *Book) Stump(id record.StumpID) (*record.Stump, error) {
	var tree treeRecords
	err := b.view(func(tx *bbolt.Tx, st *state) error {
		tree = gatherTree(tx, st, id, nil)
		tree.bad += missing(tx, st, st.canonical(id), tree.own, tree.print, tree.bad == 0)
		return nil
	})
	if err == nil {
		err = lost(id, tree.bad)
	}
	if err != nil && len(tree.events) == 0 {
		return nil, err
	}
	return record.Fold(b.state.Load().canonical(id), tree.events), err
}

// place is an event's place in the order of the journal.
type place struct {
	clock uint64
	id    record.ID
	spot  spot
}

func (p place) compare(o place) int { return cmp.Or(cmp.Compare(p.clock, o.clock), p.id.Compare(o.id)) }

// Journal gives every event in fold order. It stops at the first error of fn. Where the
// tree of the book is broken, the rest is read page by page and given behind; what is
// missing or damaged all the same is told of in the error at the end, and so is that
// there was damage. fn may use the book.
func (b *Book) Journal(fn func(record.Event) error) error {
	places, of, bad, err := b.places()
	broken := err != nil && errors.Is(err, ErrDamaged) && !b.dead.Load()
	if err != nil && !broken {
		return err
	}
	given, read, gone, print := map[record.ID]bool{}, 0, 0, head{}
	for chunk := range slices.Chunk(places, 2000) {
		got, err := b.read(chunk)
		if errors.Is(err, ErrDamaged) && !b.dead.Load() {
			broken = true
			break
		} else if err != nil {
			return err
		}
		bad, gone = bad+got.bad, gone+got.gone
		for i, e := range got.events {
			if err := fn(e); err != nil {
				return err
			}
			given[e.ID] = true
			print.turn(e.ID, got.sums[i][:])
			read++
		}
	}
	lost := int(of.events) - read
	changed := b.state.Load().head != of // it was written meanwhile
	if changed {
		lost -= gone
	}
	if !broken && max(lost, bad) <= 0 && (changed || print.fingerprint == of.fingerprint) {
		return nil
	}
	return b.salvageRest(fn, given)
}

// salvageRest gives what is found page by page and was not given yet, and tells of the
// damage.
func (b *Book) salvageRest(fn func(record.Event) error, given map[record.ID]bool) error {
	s, err := salvage(b.file)
	if err != nil {
		return b.explain(err)
	}
	read := len(given)
	for _, e := range s.Events {
		if given[e.ID] {
			continue
		}
		if err := fn(e); err != nil {
			return err
		}
		read++
	}
	return s.problem(b.path, read)
}

// problem is what is to be told of a damaged book of which so many records were read.
func (s *Salvaged) problem(path string, read int) error {
	lost := max(s.Of, len(s.Events)+s.Missing()) - read
	if lost <= 0 {
		return problem(ErrDamaged, record.ErrDamaged, "the book %s is damaged, but all %d records could be read, page by page; make a sound book of it with barkslip salvage",
			path, read)
	}
	return problem(ErrDamaged, record.ErrDamaged, "%d of the %d records of the book %s could be read; %s damaged and left out",
		read, read+lost, path, lostRecords(lost))
}

// lostRecords is a number of records as the subject of what happened to them.
func lostRecords(n int) string {
	if n == 1 {
		return "1 record was"
	}
	return fmt.Sprintf("%d records were", n)
}

// places lists all records in fold order, with what is kept about them all. bad
// counts those without a place.
func (b *Book) places() (places []place, of head, bad int, err error) {
	err = b.view(func(tx *bbolt.Tx, st *state) error {
		of = st.head
		places = make([]place, 0, min(of.events, 1<<24))
		for k := range rising(tx.Bucket(bucketJournal), nil) {
			p, clock, id, ok := splitKey(k)
			if !ok {
				bad++
				continue
			}
			places = append(places, place{clock, id, p})
		}
		return nil
	})
	slices.SortFunc(places, place.compare)
	return places, of, bad, err
}

// chunk is some records as they were read. bad counts those that do not hold, gone
// those that are not found: replaced meanwhile, or on a page out of order.
type chunk struct {
	events    []record.Event
	sums      [][4]byte // the checksum of each
	bad, gone int
}

// read unpacks the records at places.
func (b *Book) read(places []place) (got chunk, err error) {
	err = b.view(func(tx *bbolt.Tx, st *state) error {
		journal, r := tx.Bucket(bucketJournal), recordReader{st: st}
		for _, p := range places {
			key := recordKey(p.spot, p.clock, p.id)
			v := journal.Get(key)
			if v == nil {
				got.gone++
				continue
			}
			e, err := r.unpack(key, v)
			if err != nil {
				got.bad++
				continue
			}
			got.events, got.sums = append(got.events, e), append(got.sums, [4]byte(v[len(v)-4:]))
		}
		return nil
	})
	return got, err
}

// All is the journal as a sequence, as for joining it into another book.
func (b *Book) All() iter.Seq2[record.Event, error] { return all(b) }

// Journal is what gives its events one by one, in fold order.
type Journal interface {
	Journal(fn func(record.Event) error) error
}

func all(of Journal) iter.Seq2[record.Event, error] {
	return func(yield func(record.Event, error) bool) {
		err := of.Journal(func(e record.Event) error {
			if !yield(e, nil) {
				return errEnough
			}
			return nil
		})
		if err != nil && !errors.Is(err, errEnough) {
			yield(record.Event{}, err)
		}
	}
}

var errEnough = errors.New("enough")
