package record

import (
	"encoding/binary"
	"encoding/json"
	"errors"
	"fmt"
	"hash/crc32"
	"math"
	"strings"
	"time"

	"barkslip/core/unit"
)

// The packed form of an event, as the book keeps it:
//
//	uvarint kind (0: foreign)   varint seconds since 1970   varint offset in minutes
//	hand, length first          uvarint count of replaced ids, 16 bytes each
//	fields: tag byte (place in the kind's order, from 1) and value; 0 ends
//	act, 16 bytes, if the event has one: a record of version 1 is one without
//	CRC-32C, 4 bytes, over stump, clock, id and all the above
//
// Id, clock and stump stand in the key beside it.

var castagnoli = crc32.MakeTable(crc32.Castagnoli)

// ErrDamaged is a record whose checksum does not hold.
var ErrDamaged = errors.New("the record is damaged: its checksum does not hold")

// Pack appends the packed form of e to dst.
func Pack(dst []byte, e Event) []byte { return new(Packer).Pack(dst, e) }

// Packer packs event after event in the same memory. One is for one goroutine.
type Packer struct {
	fields packWriter
	key    eventKey
}

// Pack appends the packed form of e to dst.
func (p *Packer) Pack(dst []byte, e Event) []byte {
	start := len(dst)
	kind := kindCode(e.Body)
	dst = binary.AppendUvarint(dst, kind)
	dst = binary.AppendVarint(dst, e.At.Unix())
	_, offset := e.At.Zone()
	dst = binary.AppendVarint(dst, int64(offset/60))
	dst = appendString(dst, e.Hand)
	dst = binary.AppendUvarint(dst, uint64(len(e.Replaces)))
	for _, id := range e.Replaces {
		dst = append(dst, id[:]...)
	}
	p.fields = packWriter{buf: dst}
	e.Body.fields(&p.fields)
	dst, p.fields.buf = append(p.fields.buf, 0), nil
	if e.Act != None {
		dst = append(dst, e.Act[:]...)
	}
	return binary.BigEndian.AppendUint32(dst, p.key.sum(e, dst[start:]))
}

// eventKey is what an event's checksum goes over before the packed form: stump, clock, id.
type eventKey [45]byte

func (k *eventKey) sum(e Event, packed []byte) uint32 {
	copy(k[:], e.Stump.Block[:])
	binary.BigEndian.PutUint16(k[16:], e.Stump.Row)
	binary.BigEndian.PutUint16(k[18:], e.Stump.Tree)
	k[20] = e.Stump.Limb
	binary.BigEndian.PutUint64(k[21:], e.Clock)
	copy(k[29:], e.ID[:])
	return crc32.Update(crc32.Checksum(k[:], castagnoli), castagnoli, packed)
}

// Unpack reads the packed form; id, clock and stump come from the key.
func Unpack(packed []byte, stump StumpID, clock uint64, id ID) (Event, error) {
	return new(Unpacker).Unpack(packed, stump, clock, id)
}

// Unpacker unpacks event after event in the same memory. One is for one goroutine.
type Unpacker struct {
	fields packReader
	key    eventKey
}

// Unpack reads the packed form; id, clock and stump come from the key.
func (u *Unpacker) Unpack(packed []byte, stump StumpID, clock uint64, id ID) (Event, error) {
	e := Event{ID: id, Clock: clock, Stump: stump}
	if len(packed) < 5 {
		return e, ErrDamaged
	}
	body, tail := packed[:len(packed)-4], packed[len(packed)-4:]
	if u.key.sum(e, body) != binary.BigEndian.Uint32(tail) {
		return e, ErrDamaged
	}
	u.fields = packReader{buf: body}
	r := &u.fields
	kind := r.uvarint()
	at := time.Unix(r.varint(), 0)
	e.At = at.In(offsetZone(int(r.varint())))
	e.Hand = r.string()
	n := r.uvarint()
	if n > uint64(len(body)/16) {
		return e, ErrDamaged
	}
	for range n {
		var id ID
		copy(id[:], r.take(16))
		e.Replaces = append(e.Replaces, id)
	}
	e.Body = newBody(kind)
	if e.Body == nil {
		return e, fmt.Errorf("the record is of kind %d, which this version does not know: %w", kind, ErrDamaged)
	}
	r.next()
	e.Body.fields(r)
	if !r.bad && len(r.buf) == len(e.Act) {
		copy(e.Act[:], r.take(len(e.Act)))
	}
	if r.bad || r.tag != 0 || len(r.buf) > 0 {
		return e, ErrDamaged
	}
	return e, nil
}

var offsets = func() (zones [2*24*4 + 1]*time.Location) {
	for i := range zones {
		minutes := (i - 24*4) * 15
		zones[i] = time.FixedZone("", minutes*60)
	}
	return zones
}()

// offsetZone is a zone of so many minutes; the usual ones are made once.
func offsetZone(minutes int) *time.Location {
	if minutes%15 == 0 && minutes >= -24*60 && minutes <= 24*60 {
		return offsets[minutes/15+24*4]
	}
	return time.FixedZone("", minutes*60)
}

func appendString(dst []byte, s string) []byte {
	dst = binary.AppendUvarint(dst, uint64(len(s)))
	return append(dst, s...)
}

// packWriter writes fields behind their tags.
type packWriter struct {
	buf []byte
	tag byte
}

func (w *packWriter) put(zero bool) bool {
	w.tag++
	if !zero {
		w.buf = append(w.buf, w.tag)
	}
	return !zero
}

func (w *packWriter) float(v float64) {
	w.buf = binary.BigEndian.AppendUint64(w.buf, math.Float64bits(v))
}

func (w *packWriter) text(_ string, v *string) {
	if w.put(*v == "") {
		w.buf = appendString(w.buf, *v)
	}
}

func (w *packWriter) number(_ string, v *int) {
	if w.put(*v == 0) {
		w.buf = binary.AppendVarint(w.buf, int64(*v))
	}
}

func (w *packWriter) real(_ string, v *float64) {
	if w.put(*v == 0) {
		w.float(*v)
	}
}

func (w *packWriter) flag(_ string, v *bool) { w.put(!*v) }

func (w *packWriter) length(_ string, v *Measure) {
	if w.put(!v.Given()) {
		w.float(v.MM())
		w.buf = appendString(w.buf, v.Typed)
	}
}

func (w *packWriter) degrees(_ string, v *Degrees) {
	if w.put(!v.Given()) {
		w.float(v.C())
		w.buf = appendString(w.buf, v.Typed)
	}
}

func (w *packWriter) bearing(_ string, v *unit.Bearing) {
	if w.put(*v == 0) {
		w.float(v.Deg())
	}
}

func (w *packWriter) date(_ string, v *unit.Date) {
	if w.put(*v == 0) {
		w.buf = binary.AppendVarint(w.buf, int64(*v))
	}
}

func (w *packWriter) id(_ string, v *ID) {
	if w.put(*v == None) {
		w.buf = append(w.buf, v[:]...)
	}
}

func (w *packWriter) list(_ string, n int, _ func(int), each func(int, fields)) {
	if !w.put(n == 0) {
		return
	}
	w.buf = binary.AppendUvarint(w.buf, uint64(n))
	outer := w.tag
	for i := range n {
		w.tag = 0
		each(i, w)
		w.buf = append(w.buf, 0)
	}
	w.tag = outer
}

// packReader reads what packWriter wrote. tag is the field that stands next,
// 0 at the end; at is the field being visited.
type packReader struct {
	buf []byte
	tag byte
	at  byte
	bad bool
}

func (r *packReader) take(n int) []byte {
	if n < 0 || n > len(r.buf) {
		r.bad, r.buf = true, nil
		return make([]byte, max(0, min(n, 16)))
	}
	out := r.buf[:n]
	r.buf = r.buf[n:]
	return out
}

func (r *packReader) uvarint() uint64 {
	v, n := binary.Uvarint(r.buf)
	if n <= 0 {
		r.bad, r.buf = true, nil
		return 0
	}
	r.buf = r.buf[n:]
	return v
}

func (r *packReader) varint() int64 {
	v, n := binary.Varint(r.buf)
	if n <= 0 {
		r.bad, r.buf = true, nil
		return 0
	}
	r.buf = r.buf[n:]
	return v
}

func (r *packReader) string() string {
	n := r.uvarint()
	if n > uint64(len(r.buf)) {
		r.bad, r.buf = true, nil
		return ""
	}
	return string(r.take(int(n)))
}

func (r *packReader) float() float64 {
	b := r.take(8)
	if len(b) < 8 {
		return 0
	}
	return math.Float64frombits(binary.BigEndian.Uint64(b))
}

func (r *packReader) next() { r.tag = r.take(1)[0] }

// here says whether the field being visited is the one that stands next.
func (r *packReader) here() bool {
	r.at++
	return !r.bad && r.tag == r.at
}

func (r *packReader) text(_ string, v *string) {
	if r.here() {
		*v = r.string()
		r.next()
	}
}

func (r *packReader) number(_ string, v *int) {
	if r.here() {
		*v = int(r.varint())
		r.next()
	}
}

func (r *packReader) real(_ string, v *float64) {
	if r.here() {
		*v = r.float()
		r.next()
	}
}

func (r *packReader) flag(_ string, v *bool) {
	if r.here() {
		*v = true
		r.next()
	}
}

func (r *packReader) length(_ string, v *Measure) {
	if r.here() {
		v.Length = unit.Length(r.float())
		v.Typed = r.string()
		r.next()
	}
}

func (r *packReader) degrees(_ string, v *Degrees) {
	if r.here() {
		v.Temperature = unit.Temperature(r.float())
		v.Typed = r.string()
		r.next()
	}
}

func (r *packReader) bearing(_ string, v *unit.Bearing) {
	if r.here() {
		*v = unit.Bearing(r.float())
		r.next()
	}
}

func (r *packReader) date(_ string, v *unit.Date) {
	if r.here() {
		*v = unit.Date(r.varint())
		r.next()
	}
}

func (r *packReader) id(_ string, v *ID) {
	if r.here() {
		copy(v[:], r.take(16))
		r.next()
	}
}

func (r *packReader) list(_ string, _ int, grow func(int), each func(int, fields)) {
	if !r.here() {
		return
	}
	n := r.uvarint()
	if n > uint64(len(r.buf)) { // each item takes a byte at least
		r.bad, r.tag = true, 0
		return
	}
	grow(int(n))
	outer := r.at
	for i := range int(n) {
		r.at = 0
		r.next()
		each(i, r)
		if r.tag != 0 {
			r.bad = true
		}
	}
	r.at = outer
	r.next()
}

// Foreign is an event of a kind or version this program does not know. It is
// kept and passed on unchanged; of what it says only its act is understood.
type Foreign struct {
	Name string
	V    int
	Raw  json.RawMessage // the body's fields as one JSON object
}

// Kind is the unknown kind's name.
func (f *Foreign) Kind() string { return f.Name }

// Say is the unknown kind's name.
func (f *Foreign) Say(unit.System) string { return strings.ReplaceAll(f.Name, "-", " ") }

func (f *Foreign) fields(v fields) {
	raw := string(f.Raw)
	v.text("kind", &f.Name)
	v.number("v", &f.V)
	v.text("raw", &raw)
	f.Raw = json.RawMessage(raw)
}
