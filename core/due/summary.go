package due

import (
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
const SummaryVersion = 16

// Summary is what the screens of many stumps need of one, in a fixed layout:
//
//	stage 1, flags 1, scions 1, count of dues 1, events 4, last clock 8,
//	across 4 (float32 mm), newest 8 (unix seconds), grafts taken 1, grafts of
//	which that is known 1, day cut back 4, day set 4, lots used 1, length of the grafts 4,
//	last touched 8 (unix seconds), length of the hand 1, then for each due
//	kind 1, hint and whether it is yearly 1, opens 8, by 8, since 8, ends 8 (0: never)
//
// for each lot its id 16, the scions it gave 2, of these waiting 1, growing 1 and
// dead 1, what is done about them 1 and the clock of that answer 8, then the
// hand that worked it last, and the rows of the grafts
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
	Used    []LotUse  // by lot, in all its graftings
	Touched time.Time // the latest time of anything put down, what takes back included
	Hand    string    // that worked it last, "" where nobody did
	Rows    GraftRows
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
		Scions: len(a.Grafts), Taken: taken, Known: known, Events: events, Clock: s.Last.Clock, Across: s.Across(),
		Newest: s.Newest, Dues: Of(s, b), Used: used(s, b),
	}
	out.Rows = graftsOf(s, b, out.Used)
	out.Touched, out.Hand = touched(s), workedBy(s)
	if a.CutBack != nil {
		out.CutBack = b.Day(a.CutBack.At)
	}
	if set := a.SetAt(); !set.IsZero() {
		out.Set = b.Day(set)
	}
	return out
}

// touched is the latest time of any event of the stump, those that do not stand
// and those that take others back included; its trunk's go with the first limb.
func touched(s *record.Stump) (last time.Time) {
	all := s.All
	if s.TellsTrunk() {
		all = slices.Concat(all, s.Trunk.All)
	}
	for _, e := range all {
		if e.At.After(last) {
			last = e.At
		}
	}
	return last
}

// workedBy is the hand of the latest thing done or seen at the stump itself; to
// put it into the list is no work on it.
func workedBy(s *record.Stump) (hand string) {
	var last time.Time
	for _, e := range s.Live {
		if _, added := e.Body.(*record.StumpAdded); !added && !s.Elsewhere(e.ID) && !e.At.Before(last) {
			last, hand = e.At, e.Hand
		}
	}
	return hand[:min(len(hand), mostHand)]
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
	summaryHead = 52
	summaryDue  = 34
	summaryLot  = 30
	yearlyBit   = 1 << 7
	mostHand    = 255
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
	dst = binary.BigEndian.AppendUint64(dst, uint64(s.Touched.Unix()))
	dst = append(dst, byte(len(s.Hand)))
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
		dst = packLot(dst, u)
	}
	return append(append(dst, s.Hand...), s.Rows...)
}

// Unpacker reads summary after summary. What is of several lengths in them stands in pieces
// of memory that they share. One is for one goroutine.
type Unpacker struct {
	dues  []Due
	used  []LotUse
	rows  []byte
	hands map[string]string
	ahead int // for how many summaries a piece is made
}

const mostAhead = 64

// piece is n things of what is left of a shared piece of memory, or of a new one.
func piece[T any](of *[]T, n, ahead int) []T {
	if len(*of) < n {
		*of = make([]T, n*ahead)
	}
	out := (*of)[:n:n]
	*of = (*of)[n:]
	return out
}

// Unpack reads the fixed layout; ok is false if it is not whole. Times are in the zone
// given.
func (u *Unpacker) Unpack(packed []byte, id record.StumpID, zone *time.Location) (s Summary, ok bool) {
	u.ahead = min(2*u.ahead+1, mostAhead)
	if len(packed) < summaryHead || int(packed[0]) >= len(record.Stages()) {
		return s, false
	}
	lots := summaryHead + int(packed[3])*summaryDue
	hand := lots + int(packed[38])*summaryLot
	grafts := hand + int(packed[51])
	if len(packed) < grafts || uint64(len(packed)) != uint64(grafts)+uint64(binary.BigEndian.Uint32(packed[39:])) ||
		!GraftRows(packed[grafts:]).whole(int(packed[38])) {
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
		s.Dues = piece(&u.dues, int(packed[3]), u.ahead)
	}
	for i := range s.Dues {
		p := packed[summaryHead+i*summaryDue:]
		if byKind[p[0]] == nil {
			return s, false
		}
		s.Dues[i] = Due{Stump: id, Kind: Kind(p[0]), Opens: unix(p[2:], zone), By: unix(p[10:], zone), Since: unix(p[18:], zone),
			Hint: p[1] &^ yearlyBit, Yearly: p[1]&yearlyBit != 0}
		if binary.BigEndian.Uint64(p[26:]) != 0 {
			s.Dues[i].Ends = unix(p[26:], zone)
		}
	}
	s.Touched, s.Hand = unix(packed[43:], zone), u.hand(packed[hand:grafts])
	if packed[38] > 0 {
		s.Used = piece(&u.used, int(packed[38]), u.ahead)
	}
	for i := range s.Used {
		s.Used[i] = unpackLot(packed[lots+i*summaryLot:])
	}
	if grafts < len(packed) {
		s.Rows = piece(&u.rows, len(packed)-grafts, u.ahead)
		copy(s.Rows, packed[grafts:])
	}
	return s, true
}

// hand is a hand, as it was met before.
func (u *Unpacker) hand(name []byte) string {
	known, ok := u.hands[string(name)]
	if ok {
		return known
	}
	if u.hands == nil {
		u.hands = map[string]string{}
	}
	made := string(name)
	u.hands[made] = made
	return made
}

func unix(p []byte, zone *time.Location) time.Time {
	return time.Unix(int64(binary.BigEndian.Uint64(p)), 0).In(zone)
}
