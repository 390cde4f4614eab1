package due

import (
	"encoding/binary"
	"math"
	"slices"
	"time"

	"barkslip/core/record"
	"barkslip/core/unit"
)

// GraftRow is one graft as the results count it: one scion set in one slot, with
// what may have made it take or die, and how it fared.
type GraftRow struct {
	Set      unit.Date // day of the scion, in the block's days
	Trunk    bool      // it was set on the trunk of a tree that has limbs
	Attempt  int       // of the stump, from 0
	Slot     int
	Lot      record.ID // None if of no recorded lot
	Variety  []byte    // as on the scion, empty where not told
	Hand     []byte    // of the scion set
	Cause    []byte    // of death, empty where it lives or none was told
	Bleeding record.Bleeding
	Cover    record.Cover // "" while it is not sealed
	Against  bool         // against advice
	Waited   int          // days from cutting back to the first scion, -1 where it was not cut back
	Thick    int          // sixteenths of an inch, rounded down; -1 where not told

	Known, Took, Standing, Dead bool

	Pushed int // days to the visit that first saw it push or grow, -1 before
	Seen   int // days it was followed: to its death, else to the last visit that told of it
}

// GraftRows are the grafts of one stump, packed: texts, each with its length before
// it, behind their number; then a row of fixed length a graft:
//
//	day 4, flags 1, attempt 1, slot 1, lot 1 (place among the lots used, 255 none),
//	variety 1, hand 1, cause 1 (places among the texts), bleeding 1, cover 1 (places
//	among the words, 0 none), thickness 1 (255 none), waited 2, pushed 2, seen 2
//	(days; 65535 none)
//
// They are read only where results are counted.
type GraftRows []byte

const (
	graftRow  = 20
	noByte    = math.MaxUint8
	noDays    = math.MaxUint16
	sixteenth = unit.Inch / 16
	// hair is how far a thickness may fall short of a sixteenth that it was typed as.
	hair = 1e-6
)

const (
	rowTrunk = 1 << iota
	rowAgainst
	rowKnown
	rowTook
	rowStands
	rowDead
)

// graftsOf packs the grafts of a stump whose lots used are given, and with them
// those of its trunk where it tells of it.
func graftsOf(s *record.Stump, b *record.Block, lots []LotUse) GraftRows {
	p := graftPacker{block: b, lots: lots}
	p.stump(s, false)
	if s.TellsTrunk() {
		p.stump(s.Trunk, true)
	}
	if len(p.rows) == 0 {
		return nil
	}
	out := []byte{byte(len(p.texts))}
	for _, text := range p.texts {
		out = append(append(out, byte(len(text))), text...)
	}
	return append(out, p.rows...)
}

type graftPacker struct {
	block *record.Block
	lots  []LotUse
	texts []string
	rows  []byte
}

func (p *graftPacker) stump(s *record.Stump, trunk bool) {
	for n, a := range s.Attempts {
		cut := slices.ContainsFunc(s.Attempts[n+1:], func(later *record.Attempt) bool { return later.CutBack != nil || len(later.FreshCuts) > 0 })
		for _, g := range a.Grafts {
			p.graft(a, g, n, cut, trunk)
		}
	}
}

// graft packs one graft; cutAway says that a later grafting cut it off.
func (p *graftPacker) graft(a *record.Attempt, g *record.Graft, attempt int, cutAway, trunk bool) {
	o, set := a.OutcomeOf(g, p.block), p.block.Day(g.Set.At)
	flags := byte(0)
	for i, on := range []bool{trunk, len(a.Against) > 0, o.Known, o.Took, o.Standing && !cutAway, !o.Died.IsZero()} {
		if on {
			flags |= 1 << i
		}
	}
	first := a.FirstSet()
	p.rows = binary.BigEndian.AppendUint32(p.rows, uint32(set))
	p.rows = append(p.rows, flags, byte(min(attempt, noByte)), byte(g.Slot), p.lot(g.Set.What.Lot),
		p.text(g.Set.What.Variety), p.text(g.Set.Hand), p.text(o.Cause))
	p.rows = append(p.rows, byte(1+slices.Index(record.Bleedings, a.BleedingBefore(first))), 0, thickness(g.Set.What.Thickness))
	if a.Sealed != nil {
		p.rows[len(p.rows)-2] = byte(1 + slices.Index(record.Covers, a.Sealed.What.Cover))
	}
	waited, seen := noDays, o.Died
	if a.CutBack != nil {
		waited = p.days(p.block.Day(a.CutBack.At), first.At)
	}
	if seen.IsZero() {
		seen = g.Seen
	}
	for _, days := range []int{waited, p.days(set, a.FirstGrew(g)), p.days(set, seen)} {
		p.rows = binary.BigEndian.AppendUint16(p.rows, uint16(days))
	}
}

// days is how many there are from a day to a time, noDays for no time.
func (p *graftPacker) days(from unit.Date, to time.Time) int {
	if to.IsZero() {
		return noDays
	}
	return min(max(int(p.block.Day(to)-from), 0), noDays-1)
}

func (p *graftPacker) lot(id record.ID) byte {
	for i, u := range p.lots[:min(len(p.lots), noByte)] {
		if u.Lot == id {
			return byte(i)
		}
	}
	return noByte
}

// text is the place of a text among those of the stump, noByte for none.
func (p *graftPacker) text(s string) byte {
	if s == "" {
		return noByte
	}
	if len(s) > noByte {
		s = s[:noByte]
	}
	at := slices.Index(p.texts, s)
	if at < 0 && len(p.texts) < noByte {
		p.texts, at = append(p.texts, s), len(p.texts)
	}
	return byte(at) // -1 is noByte
}

func thickness(m record.Measure) byte {
	if m.Length <= 0 {
		return noByte
	}
	return byte(min(int(float64(m.Length/sixteenth)+hair), noByte-1))
}

// Grafts are the rows of the summary's grafts, one by one. The row, and the texts
// in it, are good until the next is asked for.
func (s *Summary) Grafts(yield func(*GraftRow) bool) {
	if len(s.Rows) == 0 {
		return
	}
	var texts [noByte + 1][]byte
	n, p := int(s.Rows[0]), []byte(s.Rows[1:])
	for i := range n {
		end := 1 + int(p[0])
		texts[i], p = p[1:end], p[end:]
	}
	var row GraftRow
	for ; len(p) >= graftRow; p = p[graftRow:] {
		row.take(p, s.Used)
		row.Variety, row.Hand, row.Cause = texts[p[8]], texts[p[9]], texts[p[10]]
		if !yield(&row) {
			return
		}
	}
}

// Count is how many grafts there are.
func (g GraftRows) Count() int {
	if len(g) == 0 {
		return 0
	}
	p := g[1:]
	for range g[0] {
		p = p[1+int(p[0]):]
	}
	return len(p) / graftRow
}

// take reads the fixed part of a row.
func (r *GraftRow) take(p []byte, lots []LotUse) {
	r.Set, r.Attempt, r.Slot = unit.Date(binary.BigEndian.Uint32(p)), int(p[5]), int(p[6])
	r.Trunk, r.Against, r.Known = p[4]&rowTrunk != 0, p[4]&rowAgainst != 0, p[4]&rowKnown != 0
	r.Took, r.Standing, r.Dead = p[4]&rowTook != 0, p[4]&rowStands != 0, p[4]&rowDead != 0
	r.Lot = record.None
	if p[7] != noByte {
		r.Lot = lots[p[7]].Lot
	}
	r.Bleeding, r.Cover, r.Thick = "", "", int(p[13])
	if p[11] > 0 {
		r.Bleeding = record.Bleedings[p[11]-1]
	}
	if p[12] > 0 {
		r.Cover = record.Covers[p[12]-1]
	}
	if p[13] == noByte {
		r.Thick = -1
	}
	r.Waited, r.Pushed, r.Seen = daysAt(p[14:], -1), daysAt(p[16:], -1), daysAt(p[18:], 0)
}

func daysAt(p []byte, none int) int {
	if n := int(binary.BigEndian.Uint16(p)); n != noDays {
		return n
	}
	return none
}

// whole says whether packed rows can be read to their end: the texts are there,
// and each row names only what there is.
func (g GraftRows) whole(lots int) bool {
	if len(g) == 0 {
		return true
	}
	n, p := int(g[0]), g[1:]
	for range n {
		if len(p) == 0 || len(p) < 1+int(p[0]) {
			return false
		}
		p = p[1+int(p[0]):]
	}
	if len(p)%graftRow != 0 {
		return false
	}
	within := func(at byte, n int) bool { return at == noByte || int(at) < n }
	for ; len(p) > 0; p = p[graftRow:] {
		if !within(p[7], lots) || !within(p[8], n) || !within(p[9], n) || !within(p[10], n) ||
			int(p[11]) > len(record.Bleedings) || int(p[12]) > len(record.Covers) {
			return false
		}
	}
	return true
}
