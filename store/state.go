package store

import (
	"bytes"
	"encoding/binary"
	"maps"
	"slices"
	"time"

	"go.etcd.io/bbolt"

	"barkslip/core/due"
	"barkslip/core/record"
)

// The buckets of the book's file, and the keys of the bucket meta.
var (
	bucketMeta      = []byte("meta")
	bucketBlocks    = []byte("blocks")
	bucketJournal   = []byte("journal")
	bucketSummaries = []byte("summaries")

	keySchema = []byte("schema")
	keyHead   = []byte("head")
	keyStamp  = []byte("summaries")
	keyApart  = []byte("apart")
)

// state is what is held in memory beside the file. It is never changed; a
// writer replaces it.
type state struct {
	head    head
	numbers map[record.ID]uint16
	blocks  map[uint16]record.ID
	folded  *record.Book
	prints  prints        // of what is kept; see fresh
	based   bool          // false where blocks were numbered since prints.base was made
	apart   time.Duration // see Book.Apart
}

// numbered is the state with one more block numbered.
func (st state) numbered(id record.ID, n uint16) state {
	st.numbers, st.blocks = maps.Clone(st.numbers), maps.Clone(st.blocks)
	st.numbers[id], st.blocks[n] = n, id
	st.based = false
	return st
}

// canonical is the stump under the block that its block goes on as.
func (st *state) canonical(id record.StumpID) record.StumpID {
	if id != record.NoStump {
		id.Block = st.folded.CanonicalBlock(id.Block)
	}
	return id
}

// spots is where the records of a stump stand: one for each block that goes on
// as its block.
func (st *state) spots(id record.StumpID) []spot {
	if id == record.NoStump {
		return []spot{general}
	}
	var out []spot
	for _, n := range st.aliases(id.Block) {
		out = append(out, spotOf(n, id))
	}
	return out
}

// tree is where the records of all limbs of a stump's tree stand, and those of its
// trunk: the beginnings of their keys.
func (st *state) tree(id record.StumpID) (out [][]byte) {
	for _, p := range st.spots(id) {
		out = append(out, p[:treeLen])
	}
	return out
}

// aliases is the numbers of all blocks that go on as the same block.
func (st *state) aliases(block record.ID) []uint16 {
	block = st.folded.CanonicalBlock(block)
	var out []uint16
	for id, n := range st.numbers {
		if st.folded.CanonicalBlock(id) == block {
			out = append(out, n)
		}
	}
	return out
}

// standing is the blocks that go on and have stumps, by id.
func (st *state) standing() []record.ID {
	var out []record.ID
	for id := range st.numbers {
		out = append(out, st.folded.CanonicalBlock(id))
	}
	slices.SortFunc(out, record.ID.Compare)
	return slices.Compact(out)
}

// stumpsOf is the stumps in the journal of a block and of those that are the
// same, each once, by row, tree and limb.
func stumpsOf(tx *bbolt.Tx, st *state, block record.ID) []record.StumpID {
	var out []record.StumpID
	for _, n := range st.aliases(block) {
		cursor, prefix := tx.Bucket(bucketJournal).Cursor(), numberKey(n)
		k, _ := cursor.Seek(prefix)
		for k != nil && bytes.HasPrefix(k, prefix) {
			p, _, _, ok := splitKey(k)
			if !ok {
				k, _ = cursor.Next()
				continue
			}
			out = append(out, p.stump(block))
			next := p.after()
			if k, _ = cursor.Seek(next); bytes.Compare(k, next) < 0 {
				break // the end, or damaged keys out of order that lead back
			}
		}
	}
	slices.SortFunc(out, record.StumpID.Compare)
	return slices.Compact(out)
}

// limbsOf is the stumps in the journal of a stump's tree, each once, in order.
func limbsOf(tx *bbolt.Tx, st *state, id record.StumpID) (out []record.StumpID) {
	cursor := tx.Bucket(bucketJournal).Cursor()
	for _, prefix := range st.tree(id) {
		k, _ := cursor.Seek(prefix)
		for k != nil && bytes.HasPrefix(k, prefix) {
			p, _, _, ok := splitKey(k)
			if !ok {
				k, _ = cursor.Next()
				continue
			}
			out = append(out, p.stump(id.Block))
			next := p.after()
			if k, _ = cursor.Seek(next); bytes.Compare(k, next) < 0 {
				break // the end, or damaged keys out of order that lead back
			}
		}
	}
	slices.SortFunc(out, record.StumpID.Compare)
	return slices.Compact(out)
}

// block is a block's settings; one that was never made has those of a new one.
func (st *state) block(id record.ID) *record.Block {
	if known := st.folded.Blocks[id]; known != nil {
		return known
	}
	made := record.Event{ID: id, Clock: 1, Body: &record.BlockMade{Block: id, Name: "block " + id.String()[:6]}}
	return record.FoldBook([]record.Event{made}, utcOnly).Blocks[id]
}

// loadState reads the state from the file.
func loadState(tx *bbolt.Tx, path string, zones record.Zones) (*state, error) {
	if err := checkSchema(tx, path); err != nil {
		return nil, err
	}
	st := &state{numbers: map[record.ID]uint16{}, blocks: map[uint16]record.ID{}}
	st.head, _ = unpackHead(tx.Bucket(bucketMeta).Get(keyHead)) // one that does not hold is no fresh one either
	for k, v := range rising(tx.Bucket(bucketBlocks), nil) {
		if len(k) == 16 && len(v) == 2 {
			n := binary.BigEndian.Uint16(v)
			st.numbers[record.ID(k)], st.blocks[n] = n, record.ID(k)
		}
	}
	st.folded, st.apart = foldGeneral(tx, st, zones), readApart(tx)
	return st, nil
}

func checkSchema(tx *bbolt.Tx, path string) error {
	meta := tx.Bucket(bucketMeta)
	if meta == nil {
		return problem(ErrNotABook, nil, "%s is not a book of this program; choose another file", path)
	}
	if len(meta.Get(keySchema)) != 4 {
		return problem(ErrNotABook, nil, "%s is not a book of this program; choose another file", path)
	}
	if n := schemaOf(tx); n > schema {
		return problem(ErrNewer, nil, "the book %s was written by a newer version of this program (layout %d, this one knows %d); open it with that version",
			path, n, schema)
	}
	for _, name := range [][]byte{bucketBlocks, bucketJournal, bucketSummaries} {
		if tx.Bucket(name) == nil {
			return problem(ErrDamaged, nil, "the book %s is damaged: its %s is missing; bring it back from a copy", path, name)
		}
	}
	return nil
}

// foldGeneral folds the events about no stump; records that do not hold are
// left out.
func foldGeneral(tx *bbolt.Tx, st *state, zones record.Zones) (book *record.Book) {
	events, _, _ := gather(tx, st, general)
	folding(record.NoStump, func() { book = record.FoldBook(events, zones) })
	return book
}

// fresh says whether the head is what the file keeps, whether the summaries were made
// from this journal by these rules, and with which prints.
func fresh(tx *bbolt.Tx, h head) (of prints, ok bool) {
	meta := tx.Bucket(bucketMeta)
	of, ok = h.stamped(meta.Get(keyStamp), due.SummaryVersion)
	return of, ok && bytes.Equal(meta.Get(keyHead), h.pack())
}

// sumsPrint is the print of the summaries as they stand.
func sumsPrint(tx *bbolt.Tx) (of uint64) {
	for k, v := range rising(tx.Bucket(bucketSummaries), nil) {
		of ^= printOf(k, v)
	}
	return of
}

// basePrint is the print of the layout's version, the book's own day, the blocks' numbers
// and the records about no stump.
func basePrint(tx *bbolt.Tx) (of uint64) {
	for k, v := range rising(tx.Bucket(bucketBlocks), nil) {
		of ^= printOf(k, v)
	}
	for k, v := range rising(tx.Bucket(bucketJournal), general[:]) {
		of ^= printOf(k, v)
	}
	meta := tx.Bucket(bucketMeta)
	for _, k := range [][]byte{keySchema, keyApart} {
		of ^= printOf(k, meta.Get(k))
	}
	return of
}
