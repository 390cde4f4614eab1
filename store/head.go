package store

import (
	"bytes"
	"encoding/binary"
	"hash/crc32"
	"time"

	"github.com/cespare/xxhash/v2"

	"barkslip/core/record"
)

// schema is the version of the book's layout. A newer one is refused; an older
// one is converted when the book is opened for writing. Version 1 knew no acts.
const schema = 2

var castagnoli = crc32.MakeTable(crc32.Castagnoli)

// head is what is kept about the journal as a whole:
//
//	events 8, stumps 8, greatest clock 8, newest time 8 (unix seconds) and its
//	offset 4 (seconds), fingerprint 16, CRC-32C 4
type head struct {
	events      uint64
	stumps      uint64
	clock       uint64 // the greatest, but for those beyond furthestClock
	newest      int64
	offset      int32
	fingerprint [16]byte // fingerprint of the journal: exclusive-or of those of all records
}

const headLen = 56

func (h head) pack() []byte {
	p := make([]byte, 0, headLen)
	for _, v := range []uint64{h.events, h.stumps, h.clock, uint64(h.newest)} {
		p = binary.BigEndian.AppendUint64(p, v)
	}
	p = binary.BigEndian.AppendUint32(p, uint32(h.offset))
	return checksummed(append(p, h.fingerprint[:]...))
}

func unpackHead(v []byte) (h head, ok bool) {
	p, ok := verified(v)
	if !ok || len(v) != headLen {
		return h, false
	}
	h.events, h.stumps = binary.BigEndian.Uint64(p), binary.BigEndian.Uint64(p[8:])
	h.clock, h.newest = binary.BigEndian.Uint64(p[16:]), int64(binary.BigEndian.Uint64(p[24:]))
	h.offset = int32(binary.BigEndian.Uint32(p[32:]))
	copy(h.fingerprint[:], p[36:])
	return h, true
}

// add counts a record in.
func (h *head) add(n Entry) {
	h.events++
	h.see(n.clock)
	if h.events == 1 || n.at > h.newest || n.at == h.newest && n.offset > h.offset {
		h.newest, h.offset = n.at, n.offset
	}
	h.turn(n.id, n.packed)
}

// furthestClock is the greatest clock that others are counted on from: one beyond it is
// no count of answers, and would leave no clock for the next.
const furthestClock = 1 << 62

// aheadMost is how far the clock of an event from outside may be ahead of the book's own.
const aheadMost = 1 << 40

// see takes a clock into the greatest.
func (h *head) see(clock uint64) {
	if clock <= furthestClock {
		h.clock = max(h.clock, clock)
	}
}

// turn takes a record into the fingerprint, or out of it again: its id with its
// checksum laid over the first four bytes.
func (h *head) turn(id record.ID, packed []byte) {
	for i, x := range id {
		h.fingerprint[i] ^= x
	}
	if len(packed) >= 4 {
		for i, x := range packed[len(packed)-4:] {
			h.fingerprint[i] ^= x
		}
	}
}

func (h head) newestTime() time.Time {
	if h.events == 0 {
		return time.Time{}
	}
	return time.Unix(h.newest, 0).In(time.FixedZone("", int(h.offset)))
}

// prints tell whether what is read whole is whole: each is the exclusive-or of an XXH64
// over key and value of every entry.
type prints struct {
	sums uint64 // the summaries
	base uint64 // what else all answers rest on, see basePrint
	last uint64 // no print, but the number of the change that wrote them: bbolt counts changes too
}

// printOf is what one entry gives to a print.
func printOf(key, value []byte) uint64 {
	var d xxhash.Digest
	d.Reset()
	_, _ = d.Write(key) // never fails
	_, _ = d.Write(value)
	return d.Sum64()
}

// stamp says which journal and which rules the summaries were made from, and their
// prints: version 4, events 8, fingerprint 16, prints 8 and 8, number of the change 8, CRC-32C 4.
func (h head) stamp(version uint32, of prints) []byte {
	p := binary.BigEndian.AppendUint32(nil, version)
	p = binary.BigEndian.AppendUint64(p, h.events)
	p = append(p, h.fingerprint[:]...)
	p = binary.BigEndian.AppendUint64(p, of.sums)
	p = binary.BigEndian.AppendUint64(p, of.base)
	return checksummed(binary.BigEndian.AppendUint64(p, of.last))
}

const stampLen = 56

// stamped are the prints of a stamp, where it is that of the head and of these rules.
func (h head) stamped(v []byte, version uint32) (of prints, ok bool) {
	if len(v) != stampLen {
		return of, false
	}
	of = prints{binary.BigEndian.Uint64(v[28:]), binary.BigEndian.Uint64(v[36:]), binary.BigEndian.Uint64(v[44:])}
	return of, bytes.Equal(v, h.stamp(version, of))
}

// checksummed appends the checksum of p.
func checksummed(p []byte) []byte {
	return binary.BigEndian.AppendUint32(p, crc32.Checksum(p, castagnoli))
}

func verified(v []byte) ([]byte, bool) {
	if len(v) < 4 {
		return nil, false
	}
	p, sum := v[:len(v)-4], binary.BigEndian.Uint32(v[len(v)-4:])
	return p, crc32.Checksum(p, castagnoli) == sum
}
