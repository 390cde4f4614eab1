package store

import (
	"slices"

	"go.etcd.io/bbolt"
)

// fill takes in the ids of the journal.
func (s *idSet) fill(tx *bbolt.Tx, st *state) error {
	s.more = map[uint64]bool{}
	s.sorted = make([]uint64, 0, min(st.head.events, 1<<26))
	c := tx.Bucket(bucketJournal).Cursor()
	for k, _ := c.First(); k != nil; k, _ = c.Next() {
		if _, _, id, ok := splitKey(k); ok {
			s.sorted = append(s.sorted, half(id))
		}
	}
	slices.Sort(s.sorted)
	return nil
}
