package store

import (
	"encoding/binary"
	"hash/crc32"
	"time"

	"barkslip/core/record"
)

// schema is the version of the book's layout. A newer one is refused.
const schema = 1

var castagnoli = crc32.MakeTable(crc32.Castagnoli)

// head is what is kept about the journal as a whole:
//
//	events 8, stumps 8, greatest clock 8, newest time 8 (unix seconds) and its
//	offset 4 (seconds), mark 16, CRC-32C 4
type head struct {
	events uint64
	stumps uint64
	clock  uint64
	newest int64
	offset int32
	mark   [16]byte // exclusive-or of the marks of all records
}

const headLen = 56

func (h head) pack() []byte {
	p := make([]byte, 0, headLen)
	for _, v := range []uint64{h.events, h.stumps, h.clock, uint64(h.newest)} {
		p = binary.BigEndian.AppendUint64(p, v)
	}
	p = binary.BigEndian.AppendUint32(p, uint32(h.offset))
	return sealed(append(p, h.mark[:]...))
}

func unpackHead(v []byte) (h head, ok bool) {
	p, ok := unsealed(v)
	if !ok || len(v) != headLen {
		return h, false
	}
	h.events, h.stumps = binary.BigEndian.Uint64(p), binary.BigEndian.Uint64(p[8:])
	h.clock, h.newest = binary.BigEndian.Uint64(p[16:]), int64(binary.BigEndian.Uint64(p[24:]))
	h.offset = int32(binary.BigEndian.Uint32(p[32:]))
	copy(h.mark[:], p[36:])
	return h, true
}

// add counts a record in.
func (h *head) add(e record.Event, packed []byte) {
	h.events++
	h.clock = max(h.clock, e.Clock)
	at, offset := e.At.Unix(), 0
	_, offset = e.At.Zone()
	if h.events == 1 || at > h.newest || at == h.newest && int32(offset) > h.offset {
		h.newest, h.offset = at, int32(offset)
	}
	h.turn(e.ID, packed)
}

// turn takes a record into the mark, or out of it again: its id with its
// checksum laid over the first four bytes.
func (h *head) turn(id record.ID, packed []byte) {
	for i, x := range id {
		h.mark[i] ^= x
	}
	if len(packed) >= 4 {
		for i, x := range packed[len(packed)-4:] {
			h.mark[i] ^= x
		}
	}
}

func (h head) newestTime() time.Time {
	if h.events == 0 {
		return time.Time{}
	}
	return time.Unix(h.newest, 0).In(time.FixedZone("", int(h.offset)))
}

// tie says which journal and which rules the summaries were made from:
// version 4, events 8, mark 16, CRC-32C 4.
func (h head) tie(version uint32) []byte {
	p := binary.BigEndian.AppendUint32(nil, version)
	p = binary.BigEndian.AppendUint64(p, h.events)
	return sealed(append(p, h.mark[:]...))
}

// sealed appends the checksum of p.
func sealed(p []byte) []byte {
	return binary.BigEndian.AppendUint32(p, crc32.Checksum(p, castagnoli))
}

func unsealed(v []byte) ([]byte, bool) {
	if len(v) < 4 {
		return nil, false
	}
	p, sum := v[:len(v)-4], binary.BigEndian.Uint32(v[len(v)-4:])
	return p, crc32.Checksum(p, castagnoli) == sum
}
