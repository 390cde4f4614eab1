package sample

import (
	"encoding/binary"

	"barkslip/core/record"
)

// chance is a stream of made-up chance: splitmix64 of G. Steele, D. Lea and
// C. Flood, 2014. It is seeded, so that it falls the same way each time.
type chance uint64

func seeded(seed, stream uint64) chance {
	c := chance(seed*0x9e3779b97f4a7c15 + stream)
	c.next()
	c = chance(c.next() ^ stream)
	return c
}

func (c *chance) next() uint64 {
	*c += 0x9e3779b97f4a7c15
	z := uint64(*c)
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// real is from 0 to under 1.
func (c *chance) real() float64 { return float64(c.next()>>11) / (1 << 53) }

// between is a whole number from low to high, both of them included.
func (c *chance) between(low, high int) int { return low + int(c.next()%uint64(high-low+1)) }

// odds is true with probability p.
func (c *chance) odds(p float64) bool { return c.real() < p }

// one is one of the words.
func (c *chance) one(words ...string) string { return words[c.next()%uint64(len(words))] }

// id is a new id.
func (c *chance) id() (id record.ID) {
	binary.BigEndian.PutUint64(id[:8], c.next())
	binary.BigEndian.PutUint64(id[8:], c.next()|1)
	return id
}
