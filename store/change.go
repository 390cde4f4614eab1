package store

import (
	"bytes"
	"errors"
	"math"
	"os"
	"slices"

	"go.etcd.io/bbolt"

	"barkslip/core/due"
	"barkslip/core/record"
)

// change is one write transaction under way: records, the summaries they
// change and the head go together or not at all.
type change struct {
	tx        *bbolt.Tx
	journal   *bbolt.Bucket
	summaries *bbolt.Bucket
	zones     record.Zones
	work      *work
	was       *state // before
	now       state  // after
	touched   map[record.StumpID]bool
	changed   map[record.StumpID]due.Changed // of those touched, as they stand after; nil where nobody asks
	asked     map[record.StumpID]bool        // the same under the blocks that go on
	general   bool                           // events about no stump came in
	recount   bool                           // a record was replaced, so the head is counted anew
	anew      bool                           // all summaries are made anew
	other     *takeover                      // summaries that may be taken over, nil for none
}

// write makes one change of the book. With loose, the records alone are
// written; what they touch is left for a later change to settle.
func (b *Book) write(fill float64, loose bool, do func(c *change) error) error {
	if err := b.mayWrite(); err != nil {
		return err
	}
	var c *change
	err := guard(func() error {
		tx, err := b.begin(true)
		if err != nil {
			return err
		}
		defer tx.Rollback()
		if err := b.wholeFile(tx); err != nil {
			return err
		}
		c = newChange(b, tx, fill)
		if err := do(c); err != nil {
			return err
		}
		if err := c.finish(loose); err != nil {
			return err
		}
		if c.anew && sumsPrint(tx) != c.now.prints.sums {
			return problem(ErrDamaged, nil, "the book %s is damaged: its summaries cannot be made anew on the pages where they stand; bring it back from a copy", b.path)
		}
		b.mu.Lock()
		defer b.mu.Unlock()
		if err := tx.Commit(); err != nil {
			return err
		}
		after := c.now
		b.state.Store(&after)
		return nil
	})
	b.noteFault(err)
	if err != nil && c != nil && b.arrived(c) {
		b.fault.CompareAndSwap(nil, &err)
		return problem(ErrUnsure, err, "the disk with %s failed while writing: it is not sure that the answer was kept; close the book and check it", b.path)
	}
	return b.explain(err)
}

func newChange(b *Book, tx *bbolt.Tx, fill float64) *change {
	c := &change{
		tx: tx, journal: tx.Bucket(bucketJournal), summaries: tx.Bucket(bucketSummaries), zones: b.zones, work: &b.work,
		was: b.state.Load(), now: *b.state.Load(), touched: map[record.StumpID]bool{},
	}
	c.journal.FillPercent, c.summaries.FillPercent = fill, fill
	return c
}

// mayWrite says why the book cannot be written, if so.
func (b *Book) mayWrite() error {
	if b.readOnly {
		return problem(ErrReadOnly, nil, "the book %s was opened for reading only", b.path)
	}
	if fault := b.fault.Load(); fault != nil {
		return problem(ErrDamaged, *fault, "the book %s was found damaged, so nothing more is written to it; close it and check it", b.path)
	}
	return nil
}

// wholeFile makes sure that the file is still as long as its pages say, and
// still the one that stands at the book's path.
func (b *Book) wholeFile(tx *bbolt.Tx) error {
	open, err := b.file.Stat()
	if err != nil {
		return err
	}
	if open.Size() < tx.Size() {
		return problem(ErrCutShort, nil, "the book %s was cut short while it was open; bring it back from a copy", b.path)
	}
	if b.copied != "" {
		return nil // a passing copy has no name
	}
	there, err := os.Stat(b.file.Name())
	if errors.Is(err, os.ErrNotExist) || err == nil && !os.SameFile(open, there) {
		return problem(ErrMoved, err, "the book %s was moved or replaced while it was open; close it and open it again", b.path)
	}
	return err
}

// arrived says whether a change whose commit failed is in the file all the
// same, so that it may yet reach the disk.
func (b *Book) arrived(c *change) bool {
	found := false
	_ = b.view(func(tx *bbolt.Tx, _ *state) error {
		found = bytes.Equal(tx.Bucket(bucketMeta).Get(keyHead), c.now.head.pack()) && c.now.head != c.was.head
		return nil
	})
	return found
}

// number is a block's number in the keys, given at its first use.
func (c *change) number(block record.ID) (uint16, error) {
	if n, ok := c.now.numbers[block]; ok {
		return n, nil
	}
	if len(c.now.numbers) == math.MaxUint16 {
		return 0, problem(ErrRefused, nil, "the book holds %d blocks and takes no more", math.MaxUint16)
	}
	n := uint16(len(c.now.numbers) + 1)
	for c.now.blocks[n] != record.None {
		n++
	}
	c.now = c.now.numbered(block, n)
	return n, c.tx.Bucket(bucketBlocks).Put(block[:], numberKey(n))
}

// spot is where the records about a stump go.
func (c *change) spot(stump record.StumpID) (spot, error) {
	if stump == record.NoStump {
		return general, nil
	}
	n, err := c.number(stump.Block)
	return spotOf(n, stump), err
}

// keyOf is the key of an entry's record.
func (c *change) keyOf(n Entry) ([]byte, error) {
	p, err := c.spot(n.stump)
	return recordKey(p, n.clock, n.id), err
}

// put writes the record of an event that is not in the journal yet.
func (c *change) put(key []byte, n Entry) error {
	c.now.head.add(n)
	c.touch(n.stump)
	return c.journal.Put(key, n.packed)
}

func (c *change) touch(stump record.StumpID) {
	if stump == record.NoStump {
		c.general = true
		return
	}
	c.touched[stump] = true
}

// finish brings summaries and head to where the records are.
func (c *change) finish(loose bool) error {
	if c.recount {
		c.now.head = count(c.tx, &c.now, c.now.head.stumps)
	}
	if !loose {
		if err := c.settle(); err != nil {
			return err
		}
		if c.general || !c.now.based {
			c.now.prints.base, c.now.based = basePrint(c.tx), true
		}
		c.now.prints.last = uint64(c.tx.ID())
		if err := c.tx.Bucket(bucketMeta).Put(keyStamp, c.now.head.stamp(due.SummaryVersion, c.now.prints)); err != nil {
			return err
		}
	}
	return c.tx.Bucket(bucketMeta).Put(keyHead, c.now.head.pack())
}

// settle makes anew the summaries that the change touched.
func (c *change) settle() error {
	remake := map[record.StumpID]bool{}
	if c.general {
		c.now.folded = foldGeneral(c.tx, &c.now, c.zones)
		if err := c.regroup(remake); err != nil {
			return err
		}
	}
	c.asked = map[record.StumpID]bool{}
	for id := range c.touched {
		id = c.now.canonical(id)
		remake[id], c.asked[id] = true, true
		for _, limb := range limbsOf(c.tx, &c.now, id) { // what is the tree's holds for all its limbs
			remake[limb], c.asked[limb] = true, true
		}
	}
	list := make([]record.StumpID, 0, len(remake))
	for id := range remake {
		list = append(list, id)
	}
	slices.SortFunc(list, record.StumpID.Compare)
	c.takeOver(list)
	return c.remakeAll(list)
}

// count counts the journal from the first record to the last.
func count(tx *bbolt.Tx, st *state, stumps uint64) head {
	h, r := head{stumps: stumps}, recordReader{st: st}
	for k, v := range rising(tx.Bucket(bucketJournal), nil) {
		e, err := r.unpack(k, v)
		if err != nil {
			_, clock, id, _ := splitKey(k)
			h.events++ // a damaged record is still one
			h.turn(id, v)
			h.see(clock)
			continue
		}
		h.add(entryOf(e, v))
	}
	return h
}
