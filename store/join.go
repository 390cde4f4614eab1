package store

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"iter"
	"slices"

	"barkslip/core/record"
)

// How many events go into one transaction, and of which size in memory. As text they
// come in the order of their clocks, so each batch touches pages all over the book: few
// large ones are quicker.
var (
	joinBatch = 500_000
	joinBytes = 96 << 20
)

// JoinReport says what joining a journal did.
type JoinReport struct {
	Added    int         // events that were new
	Known    int         // events that were in the book already
	Clashing []record.ID // ids found with two contents
	Refused  []error     // for each event that does not hold in itself and was left out, up to mostRefused
	More     int         // how many were left out beyond those
}

// mostRefused is how many events that were left out are told one by one.
const mostRefused = 1000

// Join takes in events of another journal, see JoinEntries. An event without id, clock or
// body ends the joining.
func (b *Book) Join(events iter.Seq2[record.Event, error]) (JoinReport, error) {
	return b.JoinEntries(context.Background(), Packing(events))
}

// JoinEntries takes in events of another journal: the book then holds the union, and
// neither order nor repetition makes a difference. Of two events with one id
// the one whose checksum holds is kept, of two that hold the one whose line
// comes first in the order of bytes. Items with a *LineError are passed over, and
// so are events that do not hold, as of a damaged book; any other error ends the
// joining, with what came before it kept. So does the end of ctx, which is no error.
func (b *Book) JoinEntries(ctx context.Context, entries Entries) (JoinReport, error) {
	return b.join(ctx, entries, nil)
}

// JoinBook takes in the entries of another book, see JoinEntries. Summaries that would be
// made the same here are taken over.
func (b *Book) JoinBook(ctx context.Context, other *Book, entries Entries) (JoinReport, error) {
	there, err := other.toTakeOver()
	if err != nil {
		there = nil // what holds of a damaged book is joined all the same
	}
	return b.join(ctx, entries, there)
}

func (b *Book) join(ctx context.Context, entries Entries, there *takeover) (JoinReport, error) {
	b.writing.Lock()
	defer b.writing.Unlock()
	j := &joining{b: b, other: there, own: b.state.Load().head.clock, touched: map[record.StumpID]bool{}, clashing: map[record.ID]bool{}}
	err := b.mayWrite()
	if err == nil {
		err = b.view(j.known.fill)
	}
	if err != nil {
		return j.report, err
	}
	var source error
	for n, err := range entries {
		var bad *LineError
		if errors.As(err, &bad) {
			continue
		}
		if err == nil {
			err = j.door(n)
		}
		var refused *RefusedError
		if errors.As(err, &refused) {
			if len(j.report.Refused) < mostRefused {
				j.report.Refused = append(j.report.Refused, refused)
			} else {
				j.report.More++
			}
			continue
		}
		if source = err; err != nil || ctx.Err() != nil {
			break
		}
		j.batch.add(n)
		if j.batch.len() >= joinBatch || j.batch.size >= joinBytes {
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
	other    *takeover
	own      uint64 // the book's clock before anything came in
	batch    load
	known    idSet
	touched  map[record.StumpID]bool
	general  bool
	loose    bool // batches were written whose summaries are still to be made
	report   JoinReport
	clashing map[record.ID]bool
}

// door says why an event is not let in.
func (j *joining) door(n Entry) error {
	if n.clock > j.own+aheadMost {
		return &RefusedError{n.id, n.line, fmt.Errorf("its clock is %d, more than %d ahead of this book's %d", n.clock, uint64(aheadMost), j.own)}
	}
	return nil
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
		made, c.other = c, j.other
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
	if loose {
		for _, n := range j.batch.all {
			j.known.add(n.id)
		}
		j.loose, j.touched, j.general = true, made.touched, made.general
	}
	j.batch = load{}
	return nil
}

// settleRest makes the summaries of what was written before joining failed. If
// that fails too they are made when the book is next opened.
func (j *joining) settleRest() error {
	j.batch = load{}
	return j.flush(false)
}

// take puts the batch into the journal.
func (j *joining) take(c *change) error {
	suspects := map[record.ID]Entry{}
	j.once()
	err := c.inOrder(&j.batch, func(key []byte, n Entry) error {
		switch {
		case !j.known.has(n.id):
			j.report.Added++
			return c.put(key, n)
		case bytes.Equal(c.journal.Get(key), n.packed):
			j.report.Known++
		default:
			suspects[n.id] = n
		}
		return nil
	})
	if err != nil {
		return err
	}
	return j.resolve(c, suspects)
}

// once leaves of the entries with one id in the batch one, and the others without a form.
func (j *joining) once() {
	at := make(map[record.ID]int32, j.batch.len())
	for i, n := range j.batch.all {
		first, twice := at[n.id]
		if !twice {
			at[n.id] = int32(i)
			continue
		}
		j.report.Known++
		if kept := j.batch.at(int(first)); !kept.same(*n) {
			if order := bytes.Compare(n.text(), kept.text()); order != 0 {
				j.clashing[n.id] = true
				if order < 0 {
					*kept = *n
				}
			}
		}
		n.packed = nil
	}
}

// resolve looks through the journal for ids that seem to be in it, and keeps
// of two contents the right one.
func (j *joining) resolve(c *change, suspects map[record.ID]Entry) error {
	if len(suspects) == 0 {
		return nil
	}
	found := map[record.ID][]byte{}
	for k := range rising(c.journal, nil) {
		if _, _, id, ok := splitKey(k); ok {
			if _, wanted := suspects[id]; wanted {
				found[id] = bytes.Clone(k)
			}
		}
	}
	for id, n := range suspects {
		own, err := c.keyOf(n)
		if err != nil {
			return err
		}
		key, in := found[id]
		if !in { // only the first half of the id was known
			j.report.Added++
			err = c.put(own, n)
		} else {
			j.report.Known++
			err = j.choose(c, key, own, n)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// choose keeps the record at key or puts n in its place, under its own key.
func (j *joining) choose(c *change, key, own []byte, n Entry) error {
	r := recordReader{st: &c.now}
	there, err := r.unpack(key, c.journal.Get(key))
	if err == nil {
		order := bytes.Compare(n.text(), record.Line(there))
		if order == 0 {
			return nil
		}
		if order > 0 {
			j.clashing[n.id] = true
			return nil
		}
	}
	j.clashing[n.id] = true
	c.touch(there.Stump)
	if err := c.journal.Delete(key); err != nil {
		return err
	}
	c.recount = true
	c.touch(n.stump)
	return c.journal.Put(own, n.packed)
}
