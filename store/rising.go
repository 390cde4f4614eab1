package store

import (
	"bytes"
	"fmt"
	"iter"

	"go.etcd.io/bbolt"
)

// rising gives the entries of a bucket whose keys begin with prefix, key by key upwards. A
// key that is not above the one before stands on a page that belongs elsewhere: followed on,
// it might lead back for ever. That is a fault of the pages.
func rising(b *bbolt.Bucket, prefix []byte) iter.Seq2[[]byte, []byte] {
	return func(yield func(k, v []byte) bool) {
		c := b.Cursor()
		var last []byte
		for k, v := c.Seek(prefix); k != nil && bytes.HasPrefix(k, prefix); k, v = c.Next() {
			if last != nil && bytes.Compare(k, last) <= 0 {
				panic(fmt.Sprintf("the key %x stands behind %x", k, last))
			}
			last = k
			if !yield(k, v) {
				return
			}
		}
	}
}
