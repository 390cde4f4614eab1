package store

import (
	"bytes"
	"slices"
	"sync/atomic"

	"barkslip/core/due"
	"barkslip/core/record"
)

// summaryBatch is how many summaries are made before they are put into the book.
const summaryBatch = 4096

// remakeAll makes the summaries of stumps anew, on all cores.
func (c *change) remakeAll(list []record.StumpID) error {
	done := 0
	defer c.work.tell(0, 0)
	for some := range slices.Chunk(list, summaryBatch) {
		spots := make([]spot, len(some))
		for i, id := range some {
			p, err := c.spot(id)
			if err != nil {
				return err
			}
			spots[i] = p
		}
		made, err := c.summarized(some)
		if err != nil {
			return err
		}
		for i, m := range made {
			if err := c.keep(some[i], spots[i], m); err != nil {
				return err
			}
		}
		done += len(some)
		c.work.tell(done, len(list))
	}
	return nil
}

// summarized is a summary as it was made; see makeSummary.
type summarized struct {
	changed   due.Changed
	packed    []byte
	ok, whole bool
}

// summarized makes summaries of stumps. Nothing is written meanwhile.
func (c *change) summarized(list []record.StumpID) ([]summarized, error) {
	out := make([]summarized, len(list))
	return out, inParts(len(list), 32, func(from, to int) error { return c.summarize(list[from:to], out[from:to]) })
}

func (c *change) summarize(list []record.StumpID, out []summarized) error {
	var m maker
	var u due.Unpacker
	for i, id := range list {
		if c.other != nil && c.changed == nil {
			if out[i].packed = c.other.of(c.tx, &c.now, id, &u); out[i].packed != nil {
				out[i].ok, out[i].whole = true, true
				continue
			}
		}
		made, of, ok, whole := m.makeSummary(c.tx, &c.now, id)
		out[i] = summarized{ok: ok, whole: whole}
		if ok {
			p := spotOf(c.now.numbers[id.Block], id)
			out[i].packed = packSummary(p, made.Summary, of)
		}
		if c.changed != nil && c.asked[id] {
			out[i].changed = made
		}
	}
	return nil
}

// keep puts a summary where it goes, or takes away what stood there.
func (c *change) keep(id record.StumpID, p spot, m summarized) error {
	if c.changed != nil && c.asked[id] && m.whole {
		c.changed[id] = m.changed
	}
	had := c.summaries.Get(p[:])
	if had != nil && !m.ok || had == nil && m.ok || m.ok && !bytes.Equal(m.packed, had) {
		return c.exchange(p, had, m)
	}
	return nil
}

// exchange puts a summary in the place of another, of which one may be none.
func (c *change) exchange(p spot, had []byte, m summarized) error {
	if had != nil {
		c.now.head.stumps--
		c.now.prints.sums ^= printOf(p[:], had)
	}
	if !m.ok {
		return c.summaries.Delete(p[:])
	}
	c.now.head.stumps++
	c.now.prints.sums ^= printOf(p[:], m.packed)
	return c.summaries.Put(p[:], m.packed)
}

// Work is how far the summaries are that are being made.
type Work struct{ Done, Of int }

// Work is how far the summaries are that a change makes anew; nought of nought where none
// are being made.
func (b *Book) Work() Work { return b.work.now() }

// work is the Work under way.
type work struct{ at atomic.Pointer[Work] }

func (w *work) tell(done, of int) { w.at.Store(&Work{done, of}) }

func (w *work) now() Work {
	if at := w.at.Load(); at != nil {
		return *at
	}
	return Work{}
}
