package store

import (
	"encoding/binary"
	"hash/crc32"
	"slices"

	"go.etcd.io/bbolt"

	"barkslip/core/due"
	"barkslip/core/record"
)

// A summary stands under the spot of its stump in the block that goes on, as
// the fixed layout of core/due and the print of its records, 8, followed by a CRC-32C over
// key, layout and print.

// packSummary packs a summary for its key, with the print of the records it was made from.
func packSummary(p spot, s due.Summary, of uint64) []byte {
	v := due.PackSummary(append(make([]byte, 0, 256), p[:]...), s)
	return checksummed(binary.BigEndian.AppendUint64(v, of))[len(p):]
}

func unpackSummary(u *due.Unpacker, p spot, v []byte, block *record.Block) (due.Summary, bool) {
	if len(v) < 8+4 {
		return due.Summary{}, false
	}
	body, sum := v[:len(v)-4], binary.BigEndian.Uint32(v[len(v)-4:])
	if crc32.Update(crc32.Checksum(p[:], castagnoli), castagnoli, body) != sum {
		return due.Summary{}, false
	}
	return u.Unpack(body[:len(body)-8], p.stump(block.ID), block.Zone)
}

// maker makes summaries one after another.
type maker struct{ room []record.Event } // for the records of one tree

// makeSummary makes a stump's record and its summary from the journal. A stump
// of which nothing stands any more, as when its adding was taken back, has no
// summary, nor has a trunk that has limbs: ok is false. Whole is false where a
// record of its tree is damaged.
func (m *maker) makeSummary(tx *bbolt.Tx, st *state, id record.StumpID) (made due.Changed, of uint64, ok, whole bool) {
	tree := gatherTree(tx, st, id, m.room)
	m.room = tree.events
	folding(id, func() {
		made.Stump = record.Fold(id, tree.events)
		made.Summary = due.Summarize(made.Stump, st.block(id.Block), tree.own)
		ok = made.Stump.Standing()
	})
	return made, tree.print, ok, tree.bad == 0
}

// missing is how many records of a stump, of which so many are there, are not those that
// its summary was made from; where all of them hold, at least one if their print is
// another.
func missing(tx *bbolt.Tx, st *state, id record.StumpID, there int, of uint64, hold bool) int {
	n, ok := st.numbers[id.Block]
	if !ok {
		return 0
	}
	p := spotOf(n, id)
	v := tx.Bucket(bucketSummaries).Get(p[:])
	s, ok := unpackSummary(new(due.Unpacker), p, v, st.block(id.Block))
	if !ok {
		return 0
	}
	lost := max(0, s.Events-there)
	if lost == 0 && hold && binary.BigEndian.Uint64(v[len(v)-8-4:]) != of {
		lost = 1
	}
	return lost
}

// Summaries is the summaries of a block's stumps by row, tree and limb,
// together with those of blocks said to be the same. A summary that is damaged
// is made anew from the journal.
func (b *Book) Summaries(block record.ID) ([]due.Summary, error) {
	var out []due.Summary
	err := b.view(func(tx *bbolt.Tx, st *state) error {
		id := st.folded.CanonicalBlock(block)
		n, ok := st.numbers[id]
		if !ok {
			return nil
		}
		settings, packed := st.block(id), summariesOf(tx, numberKey(n))
		sums, there := make([]due.Summary, len(packed)), make([]bool, len(packed))
		err := inParts(len(packed), 512, func(from, to int) error {
			var m maker
			var u due.Unpacker
			for i, s := range packed[from:to] {
				sum, ok := unpackSummary(&u, s.at, s.value, settings)
				if !ok {
					var made due.Changed
					made, _, ok, _ = m.makeSummary(tx, st, s.at.stump(id))
					sum = made.Summary
				}
				sums[from+i], there[from+i] = sum, ok
			}
			return nil
		})
		if out = sums; slices.Contains(there, false) {
			out = nil
			for i, sum := range sums {
				if there[i] {
					out = append(out, sum)
				}
			}
		}
		return err
	})
	return out, err
}

// packedSummary is a summary as it stands in the file, in the memory of that.
type packedSummary struct {
	at    spot
	value []byte
}

// summariesOf are the summaries whose keys begin with prefix.
func summariesOf(tx *bbolt.Tx, prefix []byte) []packedSummary {
	out := make([]packedSummary, 0, 1024)
	for k, v := range rising(tx.Bucket(bucketSummaries), prefix) {
		if len(k) == len(spot{}) {
			out = append(out, packedSummary{spot(k), v})
		}
	}
	return out
}

// EachSummary gives the summaries of all blocks, block by block. It stops at
// the first error of fn, which may use the book.
func (b *Book) EachSummary(fn func(due.Summary) error) error {
	for _, id := range b.state.Load().standing() {
		list, err := b.Summaries(id)
		if err != nil {
			return err
		}
		for _, s := range list {
			if err := fn(s); err != nil {
				return err
			}
		}
	}
	return nil
}
