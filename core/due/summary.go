package due

import (
	"bytes"
	"encoding/binary"
	"math"
	"slices"
	"time"

	"barkslip/core/record"
	"barkslip/core/unit"
)

// SummaryVersion is the version of the summary's layout and of the rules that
// fill it. Raise it whenever either changes: summaries are then made anew from
// the journal.
const SummaryVersion = 12

// Summary is what the screens of many stumps need of one, in a fixed layout:
//
//	stage 1, flags 1, scions 1, count of dues 1, events 4, last clock 8,
//	across 4 (float32 mm), newest 8 (unix seconds), grafts taken 1, grafts of
//	which that is known 1, day cut back 4, day set 4, lots used 1, length of the grafts 4, then for each due
//	kind 1, hint and whether it is yearly 1, opens 8, by 8, since 8, ends 8 (0: never)
//
// and for each lot its id 16 and the scions it gave 2, and the rows of the grafts
type Summary struct {
	ID      record.StumpID
	Stage   record.Stage
	Clash   bool // answers disagree
	Noted   bool // a note stands on it
	Against bool // grafted against advice
	Scions  int
	Taken   int    // grafts that took
	Known   int    // grafts of which it is known whether they took
	Events  int    // in the journal
	Clock   uint64 // of its newest event
	Across  unit.Length
	Newest  time.Time
	CutBack unit.Date // of the present attempt, 0 if it is not
	Set     unit.Date // of its last scion
	Dues    []Due
	Used    []LotUse // by lot, in all its graftings
	Rows    GraftRows
}

// LotUse is how many scions of a lot a stump took, those that broke included.
type LotUse struct {
	Lot    record.ID
	Scions int
}

// used is the wood of recorded lots that a stump took, in order of the lots; what
// its trunk took goes with the first of the limbs.
func used(s *record.Stump) (out []LotUse) {
	all := s.Used()
	if s.TellsTrunk() {
		for lot, n := range s.Trunk.Used() {
			all[lot] += n
		}
	}
	for lot, n := range all {
		if lot != record.None {
			out = append(out, LotUse{lot, n})
		}
	}
	slices.SortFunc(out, func(x, y LotUse) int { return x.Lot.Compare(y.Lot) })
	return out
}

// Summarize makes the summary of a stump; events is how many the journal has.
func Summarize(s *record.Stump, b *record.Block, events int) Summary {
	a := s.Now()
	taken, known := s.Take(b)
	if s.TellsTrunk() {
		t, k := s.Trunk.Take(b)
		taken, known = taken+t, known+k
	}
	out := Summary{
		ID: s.ID, Stage: s.Stage(), Clash: len(s.Clashes) > 0, Noted: len(s.Notes) > 0, Against: len(a.Against) > 0,
		Scions: len(a.Grafts), Taken: taken, Known: known, Events: events, Clock: s.Last.Clock, Across: s.Across(), Newest: s.Newest, Dues: Of(s, b), Used: used(s),
	}
	out.Rows = graftsOf(s, b, out.Used)
	if a.CutBack != nil {
		out.CutBack = b.Day(a.CutBack.At)
	}
	if set := a.SetAt(); !set.IsZero() {
		out.Set = b.Day(set)
	}
	return out
}

// Find is where a stump stands among summaries that are in order of the list;
// found is false where it does not.
func Find(sums []Summary, id record.StumpID) (at int, found bool) {
	return slices.BinarySearchFunc(sums, id, func(s Summary, id record.StumpID) int { return s.ID.Compare(id) })
}

// Open says whether some work can be done on the stump at now.
func (s Summary) Open(now time.Time) bool {
	return slices.ContainsFunc(s.Dues, func(d Due) bool { return d.On(now).Open(now) })
}

// Late says whether some work should have been done on it before now.
func (s Summary) Late(now time.Time) bool {
	return slices.ContainsFunc(s.Dues, func(d Due) bool { return d.On(now).Late(now) })
}

const (
	summaryHead = 43
	summaryDue  = 34
	summaryLot  = 18
	yearlyBit   = 1 << 7
)

// PackSummary appends the fixed layout to dst.
func PackSummary(dst []byte, s Summary) []byte {
	flags := byte(0)
	for i, on := range []bool{s.Clash, s.Noted, s.Against} {
		if on {
			flags |= 1 << i
		}
	}
	dues := s.Dues[:min(len(s.Dues), 255)]
	dst = append(dst, byte(s.Stage), flags, byte(min(s.Scions, 255)), byte(len(dues)))
	dst = binary.BigEndian.AppendUint32(dst, uint32(s.Events))
	dst = binary.BigEndian.AppendUint64(dst, s.Clock)
	dst = binary.BigEndian.AppendUint32(dst, math.Float32bits(float32(s.Across)))
	dst = binary.BigEndian.AppendUint64(dst, uint64(s.Newest.Unix()))
	dst = append(dst, byte(min(s.Taken, 255)), byte(min(s.Known, 255)))
	dst = binary.BigEndian.AppendUint32(dst, uint32(s.CutBack))
	dst = binary.BigEndian.AppendUint32(dst, uint32(s.Set))
	lots := s.Used[:min(len(s.Used), 255)]
	dst = append(dst, byte(len(lots)))
	dst = binary.BigEndian.AppendUint32(dst, uint32(len(s.Rows)))
	for _, d := range dues {
		hint := d.Hint
		if d.Yearly {
			hint |= yearlyBit
		}
		dst = append(dst, byte(d.Kind), hint)
		for _, t := range []time.Time{d.Opens, d.By, d.Since} {
			dst = binary.BigEndian.AppendUint64(dst, uint64(t.Unix()))
		}
		ends := int64(0)
		if !d.Ends.IsZero() {
			ends = d.Ends.Unix()
		}
		dst = binary.BigEndian.AppendUint64(dst, uint64(ends))
	}
	for _, u := range lots {
		dst = append(dst, u.Lot[:]...)
		dst = binary.BigEndian.AppendUint16(dst, uint16(min(u.Scions, math.MaxUint16)))
	}
	return append(dst, s.Rows...)
}

// UnpackSummary reads the fixed layout; ok is false if it is not whole. Times
// are in the zone given.
func UnpackSummary(packed []byte, id record.StumpID, zone *time.Location) (s Summary, ok bool) {
	if len(packed) < summaryHead || int(packed[0]) >= len(record.Stages()) {
		return s, false
	}
	lots := summaryHead + int(packed[3])*summaryDue
	grafts := lots + int(packed[38])*summaryLot
	if uint64(len(packed)) != uint64(grafts)+uint64(binary.BigEndian.Uint32(packed[39:])) || !GraftRows(packed[grafts:]).whole(int(packed[38])) {
		return s, false
	}
	s = Summary{
		ID: id, Stage: record.Stage(packed[0]), Clash: packed[1]&1 != 0, Noted: packed[1]&2 != 0, Against: packed[1]&4 != 0, Scions: int(packed[2]),
		Events: int(binary.BigEndian.Uint32(packed[4:])), Clock: binary.BigEndian.Uint64(packed[8:]),
		Across: unit.Length(math.Float32frombits(binary.BigEndian.Uint32(packed[16:]))), Newest: unix(packed[20:], zone),
		Taken: int(packed[28]), Known: int(packed[29]),
		CutBack: unit.Date(binary.BigEndian.Uint32(packed[30:])), Set: unit.Date(binary.BigEndian.Uint32(packed[34:])),
	}
	if packed[3] > 0 {
		s.Dues = make([]Due, packed[3])
	}
	for i := range s.Dues {
		p := packed[summaryHead+i*summaryDue:]
		if byKind[p[0]] == nil {
			return s, false
		}
		s.Dues[i] = Due{Stump: id, Kind: Kind(p[0]), Opens: unix(p[2:], zone), By: unix(p[10:], zone), Since: unix(p[18:], zone), Hint: p[1] &^ yearlyBit, Yearly: p[1]&yearlyBit != 0}
		if binary.BigEndian.Uint64(p[26:]) != 0 {
			s.Dues[i].Ends = unix(p[26:], zone)
		}
	}
	for p := packed[lots:grafts]; len(p) > 0; p = p[summaryLot:] {
		s.Used = append(s.Used, LotUse{record.ID(p[:16]), int(binary.BigEndian.Uint16(p[16:]))})
	}
	if grafts < len(packed) {
		s.Rows = bytes.Clone(packed[grafts:])
	}
	return s, true
}

func unix(p []byte, zone *time.Location) time.Time {
	return time.Unix(int64(binary.BigEndian.Uint64(p)), 0).In(zone)
}
