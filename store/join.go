package store

import (
	"bytes"
	"errors"
	"fmt"
	"iter"
	"slices"

	"barkslip/core/record"
)

// joinBatch is how many events go into one transaction. Events come in the
// order of their clocks, so each batch touches pages all over the book: few
// large ones are quicker.
var joinBatch = 250_000

// JoinReport says what joining a journal did.
type JoinReport struct {
	Added    int         // events that were new
	Known    int         // events that were in the book already
	Clashing []record.ID // ids found with two contents
	Refused  []error     // for each event that does not hold in itself and was left out
}

// Join takes in events of another journal: the book then holds the union, and
// neither order nor repetition makes a difference. Of two events with one id
// the one whose checksum holds is kept, of two that hold the one whose line
// comes first in the order of bytes. Items with a *LineError are passed over, and
// so are events that do not hold, as of a damaged book; any other error ends the
// joining, with what came before it kept.
func (b *Book) Join(events iter.Seq2[record.Event, error]) (JoinReport, error) {
	b.writing.Lock()
	defer b.writing.Unlock()
	j := &joining{b: b, own: b.state.Load().head.clock, touched: map[record.StumpID]bool{}, clashing: map[record.ID]bool{}}
	err := b.mayWrite()
	if err == nil {
		err = b.view(j.known.fill)
	}
	if err != nil {
		return j.report, err
	}
	var source error
	for e, err := range events {
		var bad *LineError
		if errors.As(err, &bad) {
			continue
		}
		if source = err; err != nil {
			break
		}
		if refused := j.door(e); refused != nil {
			j.report.Refused = append(j.report.Refused, fmt.Errorf("the event %s does not hold: %w", e.ID, refused))
			continue
		}
		if j.batch = append(j.batch, e); len(j.batch) == joinBatch {
			if err := j.flush(true); err != nil {
				return j.done(), errors.Join(err, j.settleRest())
			}
		}
	}
	err = j.flush(false)
	if err != nil && j.loose {
		err = errors.Join(err, j.settleRest())
	}
	return j.done(), errors.Join(err, source)
}

// joining is a join under way.
type joining struct {
	b        *Book
	own      uint64 // the book's clock before anything came in
	batch    []record.Event
	known    idSet
	touched  map[record.StumpID]bool
	general  bool
	loose    bool // batches were written whose summaries are still to be made
	report   JoinReport
	clashing map[record.ID]bool
}

// door says why an event is not let in.
func (j *joining) door(e record.Event) error {
	if e.Body == nil {
		return nil // the batch refuses it whole
	}
	if e.Clock > j.own+aheadMost {
		return fmt.Errorf("its clock is %d, more than %d ahead of this book's %d", e.Clock, uint64(aheadMost), j.own)
	}
	return record.Check(e)
}

func (j *joining) done() JoinReport {
	for id := range j.clashing {
		j.report.Clashing = append(j.report.Clashing, id)
	}
	slices.SortFunc(j.report.Clashing, record.ID.Compare)
	return j.report
}

// flush writes the batch. With loose its summaries are left for the last one.
func (j *joining) flush(loose bool) error {
	var made *change
	before := j.report
	err := j.b.write(0.9, loose, func(c *change) error {
		made = c
		if err := j.take(c); err != nil {
			return err
		}
		for id := range j.touched {
			c.touched[id] = true
		}
		c.general = c.general || j.general
		return nil
	})
	if err != nil {
		j.report.Added, j.report.Known = before.Added, before.Known
		return err
	}
	for _, e := range j.batch {
		j.known.add(e.ID)
	}
	j.batch = j.batch[:0]
	if loose {
		j.loose, j.touched, j.general = true, made.touched, made.general
	}
	return nil
}

// settleRest makes the summaries of what was written before joining failed. If
// that fails too they are made when the book is next opened.
func (j *joining) settleRest() error {
	j.batch = nil
	return j.flush(false)
}

// take puts the batch into the journal.
func (j *joining) take(c *change) error {
	batch, err := j.once()
	if err != nil {
		return err
	}
	records, err := c.records(batch)
	if err != nil {
		return err
	}
	suspects := map[record.ID]packed{}
	for _, r := range records {
		there := c.journal.Get(r.key)
		switch {
		case bytes.Equal(there, r.packed):
			j.report.Known++
		case there != nil || j.known.has(r.event.ID):
			suspects[r.event.ID] = r
		default:
			j.report.Added++
			if err := c.put(r.key, r.packed, r.event); err != nil {
				return err
			}
		}
	}
	return j.resolve(c, suspects)
}

// once is the batch with each id once.
func (j *joining) once() ([]record.Event, error) {
	at := make(map[record.ID]int, len(j.batch))
	out := make([]record.Event, 0, len(j.batch))
	for _, e := range j.batch {
		if e.Body == nil {
			return nil, problem(ErrRefused, nil, "an event without body was given")
		}
		i, twice := at[e.ID]
		if !twice {
			at[e.ID] = len(out)
			out = append(out, e)
			continue
		}
		j.report.Known++
		if order := bytes.Compare(record.Line(e), record.Line(out[i])); order != 0 {
			j.clashing[e.ID] = true
			if order < 0 {
				out[i] = e
			}
		}
	}
	return out, nil
}

// resolve looks through the journal for ids that seem to be in it, and keeps
// of two contents the right one.
func (j *joining) resolve(c *change, suspects map[record.ID]packed) error {
	if len(suspects) == 0 {
		return nil
	}
	found := map[record.ID][]byte{}
	cursor := c.journal.Cursor()
	for k, _ := cursor.First(); k != nil; k, _ = cursor.Next() {
		if _, _, id, ok := splitKey(k); ok {
			if _, wanted := suspects[id]; wanted {
				found[id] = bytes.Clone(k)
			}
		}
	}
	for id, r := range suspects {
		key, in := found[id]
		if !in { // only the first half of the id was known
			j.report.Added++
			if err := c.put(r.key, r.packed, r.event); err != nil {
				return err
			}
			continue
		}
		j.report.Known++
		if err := j.choose(c, key, r); err != nil {
			return err
		}
	}
	return nil
}

// choose keeps the record at key or puts r in its place.
func (j *joining) choose(c *change, key []byte, r packed) error {
	there, err := c.now.unpack(key, c.journal.Get(key))
	if err == nil {
		order := bytes.Compare(record.Line(r.event), record.Line(there))
		if order == 0 {
			return nil
		}
		if order > 0 {
			j.clashing[r.event.ID] = true
			return nil
		}
	}
	j.clashing[r.event.ID] = true
	c.touch(there.Stump)
	if err := c.journal.Delete(key); err != nil {
		return err
	}
	c.recount = true
	c.touch(r.event.Stump)
	return c.journal.Put(r.key, r.packed)
}
