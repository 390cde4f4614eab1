package record

import (
	"cmp"
	"slices"
	"time"

	"barkslip/core/unit"
	"barkslip/core/weather"
)

// MonthDay is a day that comes round each year.
type MonthDay struct {
	Month time.Month
	Day   int
}

// In is the day in a year.
func (m MonthDay) In(year int) unit.Date { return unit.MakeDate(year, m.Month, m.Day) }

// Block is a piece of ground with its stumps in rows, and its settings.
type Block struct {
	ID          ID
	Name        string
	Made        time.Time
	Units       unit.System
	Placed      bool // latitude and longitude were given
	Lat, Lon    float64
	Altitude    Measure
	ZoneName    string
	Zone        *time.Location // never nil
	Species     string         // of the stock
	Variety     string         // planned
	GraftHeight Measure        // wanted
	Browse      Measure        // height to which animals browse
	Frosty      bool
	Earwigs     bool
	RowSpacing  Measure
	TreeSpacing Measure
	Lay         Lay
	SlipFrom    MonthDay
	SlipTo      MonthDay
	Wait        int // days from cutting back to grafting, 0 for the usual
	PerDay      int // stumps that the crew grafts a day, 0 if not said
	PinchUntil  MonthDay
	MadeUp      bool // nothing in it is real
	Away        bool // put away: in no list until it is brought back
	Weather     map[unit.Date]Said[DayWeather]
	Off         DaysOff
	Hands       []string // of the crew, as set
	Load        LoadRates
	Given       map[unit.Date][]Said[WorkGiven] // all that stand, see GivenOn
}

// Day is the block's calendar day of an instant.
func (b *Block) Day(t time.Time) unit.Date { return unit.DateOf(t.In(b.Zone)) }

// Place is where the block lies, for sums of sun and heat.
func (b *Block) Place() weather.Place {
	return weather.Place{Lat: b.Lat, Lon: b.Lon, Altitude: b.Altitude.Length, Zone: b.Zone}
}

func (b *Block) made(name string, at time.Time) { b.Name, b.Made = name, at }

// Lot is a lot of scion wood.
type Lot struct {
	ID       ID
	Received *Said[LotReceived]
	Readings []Said[StoreRead]
	Held     *Said[LotHeld]
}

// Book is what is known apart from single stumps, the general part of the
// journal: blocks, lots, hands and weather.
type Book struct {
	Blocks map[ID]*Block
	Lots   map[ID]*Lot
	sames  map[string]map[string]string // what -> name -> the name it goes on as
	names  map[ID]bool                  // blocks a block-made event stands for
	joined []Said[Same]                 // what was said to be one, in order

	answers map[string][]ID
}

// joins is a body that says that two names are one.
type joins interface{ join(b *Book, e Event) }

// Zones finds a time zone by name.
type Zones func(name string) (*time.Location, error)

// FoldBook folds the events about no single stump. The order in which they are
// given, and repetition, make no difference.
func FoldBook(events []Event, zones Zones) *Book {
	b := &Book{Blocks: map[ID]*Block{}, Lots: map[ID]*Lot{}, sames: map[string]map[string]string{}, names: map[ID]bool{}, answers: map[string][]ID{}}
	live := Live(events)
	for _, e := range live {
		if body, ok := e.Body.(joins); ok {
			body.join(b, e)
		}
	}
	for _, e := range live { // standing answers, in order
		if body, ok := e.Body.(onBook); ok && e.Question() != "" {
			body.applyBook(b, e)
			b.answers[e.Question()] = append(b.answers[e.Question()], e.ID)
		}
	}
	for _, e := range byTime(live) { // what was seen, by its time
		if body, ok := e.Body.(onBook); ok && e.Question() == "" {
			body.applyBook(b, e)
		}
	}
	for _, block := range b.Blocks {
		block.Zone = time.UTC
		if z, err := zones(block.ZoneName); err == nil && block.ZoneName != "" {
			block.Zone = z
		}
	}
	return b
}

func (b *Book) block(id ID) *Block {
	if b.Blocks[id] == nil {
		b.Blocks[id] = &Block{ID: id, Name: "block " + id.String()[:6], Zone: time.UTC,
			Weather: map[unit.Date]Said[DayWeather]{}, PinchUntil: MonthDay{time.August, 15}}
	}
	return b.Blocks[id]
}

func (b *Book) lot(id ID) *Lot {
	if b.Lots[id] == nil {
		b.Lots[id] = &Lot{ID: id}
	}
	return b.Lots[id]
}

// join makes two names one: each chain ends at the least of its names, so that
// the order of joining makes no difference.
func (b *Book) join(what, x, y string) {
	if b.sames[what] == nil {
		b.sames[what] = map[string]string{}
	}
	x, y = b.Canonical(what, x), b.Canonical(what, y)
	if x != y {
		b.sames[what][max(x, y)] = min(x, y)
	}
}

// Canonical is the name a block, lot or hand goes on as.
func (b *Book) Canonical(what, name string) string {
	for b.sames[what][name] != "" {
		name = b.sames[what][name]
	}
	return name
}

// CanonicalBlock is the block that a block goes on as.
func (b *Book) CanonicalBlock(id ID) ID {
	if len(b.sames["block"]) == 0 {
		return id
	}
	out, err := ParseID(b.Canonical("block", id.String()))
	if err != nil {
		return id
	}
	return out
}

// Known says whether a block was ever made in this book.
func (b *Book) Known(id ID) bool { return b.names[id] }

// List is the blocks that are worked, by name, then id: those that go on and are
// not put away, and of these the real ones alone where there are any. Made-up
// stumps never stand in a list with real ones.
func (b *Book) List() []*Block {
	listed, _ := b.parted()
	return listed
}

// Others is the blocks that go on and are in no list: those put away, and beside
// real ones those made up.
func (b *Book) Others() []*Block {
	_, others := b.parted()
	return others
}

// AllMadeUp is the settings that mark as made up what is listed and is not marked.
func (b *Book) AllMadeUp() (out []Body) {
	for _, block := range b.List() {
		if !block.MadeUp {
			out = append(out, &BlockSet{Block: block.ID, Setting: "made-up", Value: "yes"})
		}
	}
	return out
}

func (b *Book) parted() (listed, others []*Block) {
	var all []*Block
	real := false
	for id, block := range b.Blocks {
		if b.CanonicalBlock(id) == id {
			all = append(all, block)
			real = real || !block.Away && !block.MadeUp
		}
	}
	slices.SortFunc(all, func(x, y *Block) int { return cmp.Or(cmp.Compare(x.Name, y.Name), x.ID.Compare(y.ID)) })
	for _, block := range all {
		if block.Away || real && block.MadeUp {
			others = append(others, block)
		} else {
			listed = append(listed, block)
		}
	}
	return listed, others
}

// Joined is what was said to make one of a block and others, in order; taking
// these back takes the blocks apart again.
func (b *Book) Joined(block ID) (out []Said[Same]) {
	for _, s := range b.joined {
		if one, err := ParseID(s.What.A); err == nil && s.What.What == "block" && b.CanonicalBlock(one) == b.CanonicalBlock(block) {
			out = append(out, s)
		}
	}
	return out
}

// LotList is the lots that go on, newest first.
func (b *Book) LotList() []*Lot {
	var out []*Lot
	for id, lot := range b.Lots {
		if lot.Received != nil && b.Canonical("lot", id.String()) == id.String() {
			out = append(out, lot)
		}
	}
	slices.SortFunc(out, func(x, y *Lot) int {
		return cmp.Or(y.Received.At.Compare(x.Received.At), x.ID.Compare(y.ID))
	})
	return out
}

// LotOf is the lot that a lot goes on as, nil if it was never received.
func (b *Book) LotOf(id ID) *Lot {
	if same, err := ParseID(b.Canonical("lot", id.String())); err == nil {
		id = same
	}
	if l := b.Lots[id]; l != nil && l.Received != nil {
		return l
	}
	return nil
}

// Answers is the ids of the standing answers to a question about a block, a lot
// or the weather.
func (b *Book) Answers(question string) []ID { return b.answers[question] }

// Settings is the block as it was set, for comparing: without its weather and
// what is remembered of it. The zone stands in its name.
func (b *Block) Settings() Block {
	out := *b
	out.Zone, out.Weather, out.Given = nil, nil, nil
	return out
}

// Shade is the bearing of the stump's shade side: north-north-east in the
// north, mirrored in the south.
func (b *Block) Shade() unit.Bearing {
	if b.South() {
		return 180 - 22.5
	}
	return 22.5
}
