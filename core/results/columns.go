package results

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/unit"
)

// Columns is the grafts of one block or several, a column each for what they are
// grouped by, decoded once: grouping then goes through numbers alone. The grafts
// of one stump stand together.
type Columns struct {
	stumps []record.StumpID // of the grafts, in the order of the list; a trunk beside its limbs is its own
	stump  []int32          // a graft each: its place in stumps
	season []int16
	of     [keys]column
	cause  column
	flags  []uint8
	pushed []int16 // days from the scion to the first sight of a push, -1 before
	seen   []int16 // days it was followed
}

// column is what one key says of each graft, as places among the labels.
type column struct {
	codes  []int32
	labels []label
	places map[string]int32
	order  []int32 // the labels in order
}

// label is the name of a group, and its place in the order of groups where that is
// not the name's; math.MaxInt stands last.
type label struct {
	name string
	rank int
}

const (
	known = 1 << iota
	took
	stands
	dead
)

// Of is the columns of one block.
func Of(book *record.Book, b *record.Block, sums []due.Summary) *Columns {
	c := &Columns{}
	c.Add(book, b, sums)
	return c
}

// Add takes in the grafts of a block. Names are cleaned for the terminal.
func (c *Columns) Add(book *record.Book, b *record.Block, sums []due.Summary) {
	r := reader{Columns: c, book: book, lots: map[record.ID]lotCodes{}, days: map[unit.Date]dayCodes{}, hands: map[string]int32{}, varieties: map[string]int32{}, causes: map[string]int32{}, block: b}
	n := 0
	for i := range sums {
		n += sums[i].Rows.Count()
	}
	c.grow(n, len(sums))
	for i := range sums {
		r.stump(&sums[i])
	}
	for k := range c.of {
		c.of[k].sort()
	}
	c.cause.sort()
}

// grow makes room for so many grafts more, on so many stumps.
func (c *Columns) grow(grafts, stumps int) {
	c.stumps, c.stump, c.season = slices.Grow(c.stumps, stumps), slices.Grow(c.stump, grafts), slices.Grow(c.season, grafts)
	c.flags, c.pushed, c.seen = slices.Grow(c.flags, grafts), slices.Grow(c.pushed, grafts), slices.Grow(c.seen, grafts)
	for k := range c.of {
		c.of[k].codes = slices.Grow(c.of[k].codes, grafts)
	}
	c.cause.codes = slices.Grow(c.cause.codes, grafts)
}

// Grafts is how many there are.
func (c *Columns) Grafts() int { return len(c.stump) }

// Seasons lists the seasons in which scions were set, the newest first.
func (c *Columns) Seasons() (out []int) {
	seen := map[int16]bool{}
	for i, s := range c.season {
		if i == 0 || s != c.season[i-1] {
			seen[s] = true
		}
	}
	for s := range seen {
		out = append(out, int(s))
	}
	slices.SortFunc(out, func(a, b int) int { return b - a })
	return out
}

// place is the code of a label, given at its first use.
func (c *column) place(name string, rank int) int32 {
	at, have := c.places[name]
	if !have {
		if c.places == nil {
			c.places = map[string]int32{}
		}
		at = int32(len(c.labels))
		c.labels, c.places[name] = append(c.labels, label{name, rank}), at
	}
	return at
}

func (c *column) sort() {
	c.order = c.order[:0]
	for i := range c.labels {
		c.order = append(c.order, int32(i))
	}
	slices.SortFunc(c.order, func(x, y int32) int {
		a, b := c.labels[x], c.labels[y]
		return cmp.Or(cmp.Compare(a.rank, b.rank), cmp.Compare(a.name, b.name))
	})
}

// reader decodes the rows of summaries into columns.
type reader struct {
	*Columns
	book             *record.Book
	block            *record.Block
	lots             map[record.ID]lotCodes
	days             map[unit.Date]dayCodes
	hands, varieties map[string]int32
	causes           map[string]int32
	lastDay          unit.Date // of the graft before, whose codes those below are
	lastOf           dayCodes
	lastLot          record.ID
	lastCodes        lotCodes
	small            [5][256]int32 // codes, one more than they are, of keys that have few; 0 for not given yet
}

// lotCodes is the code of a lot, and of its variety for scions that tell none.
type lotCodes struct{ lot, variety int32 }

// dayCodes is what follows from the day of a scion.
type dayCodes struct {
	season int16
	week   int32
}

func (r *reader) stump(s *due.Summary) {
	row := int32(-1)
	for g := range s.Grafts {
		if row < 0 {
			row = r.of[Row].place(strconv.Itoa(int(s.ID.Row)), int(s.ID.Row))
		}
		id := s.ID
		if g.Trunk {
			id = id.Trunk()
		}
		if n := len(r.stumps); n == 0 || r.stumps[n-1] != id {
			r.stumps = append(r.stumps, id)
		}
		r.graft(g)
		r.put(Row, row)
	}
}

func (r *reader) put(k Key, code int32) { r.of[k].codes = append(r.of[k].codes, code) }

func (r *reader) graft(g *due.GraftRow) {
	day, lot := r.day(g.Set), r.lot(g.Lot)
	r.Columns.stump = append(r.Columns.stump, int32(len(r.stumps)-1))
	r.season = append(r.season, day.season)
	r.put(Week, day.week)
	r.put(Lot, lot.lot)
	if len(g.Variety) == 0 {
		r.put(Variety, lot.variety)
	} else {
		r.put(Variety, named(&r.of[Variety], r.varieties, g.Variety, func(s string) string { return s }))
	}
	r.put(Hand, named(&r.of[Hand], r.hands, g.Hand, func(s string) string { return r.book.Canonical("hand", s) }))
	r.put(Bleeding, r.few(3, Bleeding, slices.Index(record.Bleedings, g.Bleeding)+1, func() (string, int) { return bleeding(g.Bleeding) }))
	r.put(Waited, r.few(0, Waited, min(max(g.Waited+1, 0), 255), func() (string, int) { return waited(g.Waited) }))
	r.put(Cover, r.few(4, Cover, slices.Index(record.Covers, g.Cover)+1, func() (string, int) { return cover(g.Cover) }))
	r.put(Advice, r.few(1, Advice, flag(g.Against), func() (string, int) { return advice(g.Against) }))
	r.put(Thickness, r.few(2, Thickness, g.Thick+1, func() (string, int) { return thickness(g.Thick) }))
	cause := int32(-1)
	if g.Dead {
		cause = named(&r.cause, r.causes, g.Cause, func(s string) string { return s })
	}
	r.cause.codes = append(r.cause.codes, cause)
	r.flags = append(r.flags, uint8(flag(g.Known)*known|flag(g.Took)*took|flag(g.Standing)*stands|flag(g.Dead)*dead))
	r.pushed, r.seen = append(r.pushed, days(g.Pushed)), append(r.seen, days(g.Seen))
}

func flag(on bool) int {
	if on {
		return 1
	}
	return 0
}

func days(n int) int16 { return int16(min(n, math.MaxInt16)) }

// orUnknown is a name as it is shown, with its rank: what is not told stands last.
func orUnknown(name string) (string, int) {
	if name = record.Clean(name); name == "" || name == Unknown {
		return Unknown, math.MaxInt
	}
	return name, 0
}

// named is the code of a text, looked up once for each.
func named(c *column, seen map[string]int32, text []byte, goesOn func(string) string) int32 {
	if at, have := seen[string(text)]; have {
		return at
	}
	at := c.place(orUnknown(goesOn(string(text))))
	seen[string(text)] = at
	return at
}

// few is the code of a key that has few values, by the value's number.
func (r *reader) few(table int, k Key, n int, label func() (string, int)) int32 {
	at := &r.small[table][n]
	if *at == 0 {
		*at = r.of[k].place(label()) + 1
	}
	return *at - 1
}

func (r *reader) lot(id record.ID) lotCodes {
	if id == r.lastLot && id != record.None {
		return r.lastCodes
	}
	at, have := r.lots[id]
	if !have {
		name, variety := "", ""
		if l := r.book.LotOf(id); l != nil {
			name, variety = l.Received.What.Name, l.Received.What.Variety
		}
		at = lotCodes{lot: r.of[Lot].place(orUnknown(name)), variety: r.of[Variety].place(orUnknown(variety))}
		r.lots[id] = at
	}
	r.lastLot, r.lastCodes = id, at
	return at
}

func (r *reader) day(d unit.Date) dayCodes {
	if d == r.lastDay && d != 0 {
		return r.lastOf
	}
	at, have := r.days[d]
	if !have {
		y, m, day := d.Parts()
		year, week := time.Date(y, m, day, 0, 0, 0, 0, time.UTC).ISOWeek()
		at = dayCodes{season: int16(r.block.SeasonOf(d)), week: r.of[Week].place(fmt.Sprintf("%04d-W%02d", year, week), 0)}
		r.days[d] = at
	}
	r.lastDay, r.lastOf = d, at
	return at
}

func bleeding(b record.Bleeding) (string, int) {
	if b == "" {
		return orUnknown("")
	}
	return string(b), slices.Index(record.Bleedings, b)
}

// noCover is the group of what was not sealed.
const noCover = "none"

func cover(c record.Cover) (string, int) {
	if c == "" {
		return noCover, len(record.Covers)
	}
	return string(c), slices.Index(record.Covers, c)
}

// waited is the group of so many days from cutting back to the first scion.
func waited(n int) (string, int) {
	switch {
	case n < 0:
		return orUnknown("")
	case n < 7:
		return "under 7", 0
	case n <= 10:
		return strconv.Itoa(n), n
	case n <= 14:
		return "11 to 14", 11
	}
	return "15 and more", 15
}

func advice(against bool) (string, int) {
	if against {
		return "against", 1
	}
	return "with", 0
}

// thickness is the group of so many sixteenths of an inch, in mm.
func thickness(n int) (string, int) {
	if n < 0 {
		return orUnknown("")
	}
	return strconv.FormatFloat(math.Round(float64(n)*sixteenthMM*10000)/10000, 'f', -1, 64), n
}

// sixteenthMM is 1/16 in.
const sixteenthMM = 25.4 / 16
