package store

import (
	"encoding/binary"
	"time"

	"go.etcd.io/bbolt"
)

// mostApart is how far a book's day may be from the computer's.
const mostApart = 100 * 366 * 24 * time.Hour

// Apart is how far the book's clock is ahead of the computer's. It is nought,
// but in a made-up book, whose day begins with its making, whatever the date.
// It belongs to the file: an export does not carry it.
func (b *Book) Apart() time.Duration { return b.state.Load().apart }

// SetApart gives the book a clock of its own, ahead of the computer's by so
// many whole seconds, at most 100 years either way.
func (b *Book) SetApart(ahead time.Duration) error {
	if ahead = ahead.Truncate(time.Second); ahead.Abs() > mostApart {
		return problem(ErrRefused, nil, "a book's clock can be 100 years from the computer's, not more")
	}
	b.writing.Lock()
	defer b.writing.Unlock()
	return b.write(0.5, false, func(c *change) error {
		c.now.apart = ahead
		p := binary.BigEndian.AppendUint64(nil, uint64(ahead/time.Second))
		c.now.based = false
		return c.tx.Bucket(bucketMeta).Put(keyApart, checksummed(p))
	})
}

// readApart is nought where nothing stands or what stands does not hold.
func readApart(tx *bbolt.Tx) time.Duration {
	p, ok := verified(tx.Bucket(bucketMeta).Get(keyApart))
	if !ok || len(p) != 8 {
		return 0
	}
	ahead := int64(binary.BigEndian.Uint64(p))
	if most := int64(mostApart / time.Second); ahead > most || ahead < -most {
		return 0
	}
	return time.Duration(ahead) * time.Second
}
