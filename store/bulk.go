package store

import (
	"bytes"
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
		records, err := c.records(batch)
		if err != nil {
			return err
		}
		for _, r := range records {
			if err := c.put(r.key, r.packed, r.event); err != nil {
				return err
			}
		}
		return nil
	})
}

// packed is an event as it stands in the journal.
type packed struct {
	key, packed []byte
	event       record.Event
}

// records packs events, in the order of their keys.
func (c *change) records(events []record.Event) ([]packed, error) {
	out := make([]packed, len(events))
	for i, e := range events {
		if e.ID == record.None || e.Clock == 0 || e.Body == nil {
			return nil, problem(ErrRefused, nil, "an event without id, clock or body was given")
		}
		p, err := c.spot(e)
		if err != nil {
			return nil, err
		}
		out[i] = packed{recordKey(p, e.Clock, e.ID), record.Pack(nil, e), e}
	}
	slices.SortFunc(out, func(a, b packed) int { return bytes.Compare(a.key, b.key) })
	return out, nil
}
