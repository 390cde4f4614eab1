package store

import (
	"encoding/binary"

	"barkslip/core/record"
)

// spot is where a stump's records begin: block number, row, tree, limb. The
// spot of number 0 holds the events about no stump.
type spot [7]byte

const keyLen = len(spot{}) + 8 + 16

var general spot

func spotOf(number uint16, s record.StumpID) (p spot) {
	binary.BigEndian.PutUint16(p[0:], number)
	binary.BigEndian.PutUint16(p[2:], s.Row)
	binary.BigEndian.PutUint16(p[4:], s.Tree)
	p[6] = s.Limb
	return p
}

func (p spot) number() uint16 { return binary.BigEndian.Uint16(p[:]) }

func (p spot) stump(block record.ID) record.StumpID {
	return record.StumpID{Block: block, Row: binary.BigEndian.Uint16(p[2:]), Tree: binary.BigEndian.Uint16(p[4:]), Limb: p[6]}
}

// whole is the spot as a number, in the order of spots.
func (p spot) whole() (n uint64) {
	for _, b := range p {
		n = n<<8 | uint64(b)
	}
	return n
}

// treeLen is how much of a spot is the tree's: all limbs of one tree stand behind
// one another.
const treeLen = len(spot{}) - 1

// after is the first possible key behind the spot's own.
func (p spot) after() []byte {
	for i := len(p) - 1; i >= 0; i-- {
		p[i]++
		if p[i] != 0 {
			break
		}
	}
	return p[:]
}

// recordKey is the key of an event in the journal: spot, clock, id.
func recordKey(p spot, clock uint64, id record.ID) []byte {
	key := make([]byte, 0, keyLen)
	key = append(key, p[:]...)
	key = binary.BigEndian.AppendUint64(key, clock)
	return append(key, id[:]...)
}

// splitKey takes a journal key apart; ok is false if it is of another length.
func splitKey(key []byte) (p spot, clock uint64, id record.ID, ok bool) {
	if len(key) != keyLen {
		return p, 0, id, false
	}
	copy(p[:], key)
	copy(id[:], key[15:])
	return p, binary.BigEndian.Uint64(key[7:]), id, true
}

func numberKey(n uint16) []byte { return binary.BigEndian.AppendUint16(nil, n) }
