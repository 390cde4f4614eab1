package store

import (
	"bytes"
	"encoding/binary"
	"maps"
	"math/rand/v2"
	"reflect"

	"go.etcd.io/bbolt"

	"barkslip/core/due"
	"barkslip/core/record"
)

// takeover is the summaries of a book that is joined. One is taken over for a stump whose
// records are the same in both books, of a block whose settings and weather are: made anew it
// would be the same. That spares most of the work of bringing a book up to another.
type takeover struct {
	from   *state
	packed map[spot][]byte
	blocks map[record.ID]uint16 // those that are the same, with their numbers in the other book
}

// toTakeOver is what may be taken over of this book.
func (b *Book) toTakeOver() (*takeover, error) {
	t := &takeover{packed: map[spot][]byte{}}
	err := b.view(func(tx *bbolt.Tx, st *state) error {
		t.from = st
		var room shelf
		for _, s := range summariesOf(tx, nil) {
			t.packed[s.at] = room.copy(s.value)
		}
		return nil
	})
	return t, err
}

// compare finds the blocks that are the same here and there in all that summaries rest on
// beside the records of their stumps.
func (t *takeover) compare(now *state) {
	t.blocks = map[record.ID]uint16{}
	for _, id := range now.standing() {
		n, known := t.from.numbers[id]
		if !known || len(t.from.aliases(id)) != 1 || len(now.aliases(id)) != 1 {
			continue
		}
		here, there := now.block(id), t.from.block(id)
		if reflect.DeepEqual(bearing(here), bearing(there)) && maps.EqualFunc(here.Weather, there.Weather, sameDay) {
			t.blocks[id] = n
		}
	}
}

// of is the summary of a stump as it was made there, under its key here; nil where it must
// be made: the records of its tree are others than those that the print there is of, as they
// are wherever the tree has other limbs.
func (t *takeover) of(tx *bbolt.Tx, now *state, id record.StumpID, u *due.Unpacker) []byte {
	n, same := t.blocks[id.Block]
	if !same {
		return nil
	}
	there, here := spotOf(n, id), spotOf(now.numbers[id.Block], id)
	v := t.packed[there]
	if _, ok := unpackSummary(u, there, v, now.block(id.Block)); !ok {
		return nil
	}
	body := v[:len(v)-8-4]
	var theirs, ours uint64
	var key [keyLen]byte
	for k, v := range rising(tx.Bucket(bucketJournal), here[:treeLen]) {
		if len(k) != keyLen {
			return nil
		}
		copy(key[:], there[:])
		copy(key[len(there):], k[len(here):])
		ours, theirs = ours^printOf(k, v), theirs^printOf(key[:], v)
	}
	if theirs != binary.BigEndian.Uint64(v[len(body):]) {
		return nil
	}
	out := append(append(make([]byte, 0, len(here)+len(v)), here[:]...), body...)
	return checksummed(binary.BigEndian.AppendUint64(out, ours))[len(here):]
}

// proofs is how many summaries are made all the same, to see that those of the other book
// were made as here.
const proofs = 32

// takeOver sets out what may be taken over for stumps. Where some of it, taken at random,
// is not what would be made here, nothing is.
func (c *change) takeOver(list []record.StumpID) {
	if c.other == nil || len(list) == 0 {
		return
	}
	c.other.compare(&c.now)
	var m maker
	var u due.Unpacker
	for range proofs {
		id := list[rand.IntN(len(list))]
		taken := c.other.of(c.tx, &c.now, id, &u)
		if taken == nil {
			continue
		}
		made, of, ok, _ := m.makeSummary(c.tx, &c.now, id)
		if !ok || !bytes.Equal(taken, packSummary(spotOf(c.now.numbers[id.Block], id), made.Summary, of)) {
			c.other = nil
			return
		}
	}
}
