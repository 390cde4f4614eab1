package store

import (
	"encoding/binary"
	"slices"

	"go.etcd.io/bbolt"

	"barkslip/core/record"
)

// idSet holds the first halves of ids: being random, they tell ids apart all
// but surely, at half the room.
type idSet struct {
	sorted []uint64
	more   map[uint64]bool
}

func half(id record.ID) uint64 { return binary.BigEndian.Uint64(id[:]) }

func (s *idSet) add(id record.ID) { s.more[half(id)] = true }

func (s *idSet) has(id record.ID) bool {
	if s.more[half(id)] {
		return true
	}
	_, in := slices.BinarySearch(s.sorted, half(id))
	return in
}

// fill takes in the ids of the journal.
func (s *idSet) fill(tx *bbolt.Tx, st *state) error {
	s.more = map[uint64]bool{}
	s.sorted = make([]uint64, 0, min(st.head.events, 1<<26))
	for k := range rising(tx.Bucket(bucketJournal), nil) {
		if _, _, id, ok := splitKey(k); ok {
			s.sorted = append(s.sorted, half(id))
		}
	}
	slices.Sort(s.sorted)
	return nil
}
