package store

import (
	"cmp"
	"iter"
	"slices"

	"barkslip/core/record"
)

// bulkBatch is about how many events go into one transaction.
const bulkBatch = 50_000

// Bulk writes many events that are new to the book and have ids and clocks, as
// those of a made-up block. They come stump by stump, those about no stump
// first. Each batch is on the disk before the next begins; an error leaves the
// batches before it.
func (b *Book) Bulk(events iter.Seq[record.Event]) error {
	b.writing.Lock()
	defer b.writing.Unlock()
	var batch []record.Event
	for e := range events {
		last := len(batch) - 1
		if len(batch) >= bulkBatch && e.Stump != batch[last].Stump || last >= 0 && e.Stump != record.NoStump && batch[last].Stump == record.NoStump {
			if err := b.bulk(batch); err != nil {
				return err
			}
			batch = batch[:0]
		}
		batch = append(batch, e)
	}
	return b.bulk(batch)
}

func (b *Book) bulk(batch []record.Event) error {
	if len(batch) == 0 {
		return nil
	}
	return b.write(0.95, false, func(c *change) error {
		var entries load
		var room shelf
		for _, e := range batch {
			if e.ID == record.None || e.Clock == 0 || e.Body == nil {
				return problem(ErrRefused, nil, "an event without id, clock or body was given")
			}
			entries.add(entryOf(e, room.pack(e)))
		}
		return c.inOrder(&entries, func(key []byte, n Entry) error { return c.put(key, n) })
	})
}

// placed is where an entry goes in the journal.
type placed struct {
	whole uint64 // see spot.whole
	spot  spot
	at    int32 // which entry it is
	clock uint64
}

// inOrder gives the entries that have a form in the order of their keys.
func (c *change) inOrder(entries *load, each func(key []byte, n Entry) error) error {
	order := make([]placed, 0, entries.len())
	for i, n := range entries.all {
		if n.packed == nil {
			continue
		}
		p, err := c.spot(n.stump)
		if err != nil {
			return err
		}
		order = append(order, placed{p.whole(), p, int32(i), n.clock})
	}
	slices.SortFunc(order, func(a, b placed) int {
		if a.whole != b.whole || a.clock != b.clock {
			return cmp.Or(cmp.Compare(a.whole, b.whole), cmp.Compare(a.clock, b.clock))
		}
		return entries.at(int(a.at)).id.Compare(entries.at(int(b.at)).id)
	})
	for _, o := range order {
		n := *entries.at(int(o.at))
		if err := each(recordKey(o.spot, n.clock, n.id), n); err != nil {
			return err
		}
	}
	return nil
}
