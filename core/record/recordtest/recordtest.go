// Package recordtest writes the records that tests are made from: journals as
// a person with a laptop leaves them, in the block and on the stump of the tests.
package recordtest

import (
	"fmt"
	"slices"
	"time"
	_ "time/tzdata"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"barkslip/core/record"
	"barkslip/core/unit"
)

// The block and the stump of the tests, and their zones.
var (
	TheBlock = record.ID{0xb1}
	Stump417 = record.StumpID{Block: TheBlock, Row: 4, Tree: 17, Limb: 0}
	NewYork  = ZoneOf("America/New_York")
	Auckland = ZoneOf("Pacific/Auckland")
	EDT      = time.FixedZone("", -4*3600)
)

// ZoneOf is a time zone by name.
func ZoneOf(name string) *time.Location {
	z, err := time.LoadLocation(name)
	if err != nil {
		panic(err)
	}
	return z
}

// UTC finds no zone but UTC.
func UTC(string) (*time.Location, error) { return time.UTC, nil }

// May is an instant of May 2027 on the summer time of New York.
func May(day, hour, minute int) time.Time { return time.Date(2027, 5, day, hour, minute, 0, 0, EDT) }

// MayDay is a day of May 2027.
func MayDay(day int) unit.Date { return unit.MakeDate(2027, 5, day) }

// DayOf reads a date that is known to be one.
func DayOf(text string) unit.Date {
	d, err := unit.ParseDate(text)
	if err != nil {
		panic(err)
	}
	return d
}

// Inches is a length as measured.
func Inches(n float64) record.Measure { return record.Measured(unit.Length(n)*unit.Inch, unit.US) }

// Northern is a block with mild winters and no earwigs.
func Northern() *record.Block { return &record.Block{ID: TheBlock, Zone: NewYork, Lat: 42.7} }

// Southern is a block half a year away.
func Southern() *record.Block { return &record.Block{ID: TheBlock, Zone: Auckland, Lat: -43.5} }

// Frosty puts a block into frost country.
func Frosty(b *record.Block) *record.Block { b.Frosty = true; return b }

// WithEarwigs gives a block earwigs.
func WithEarwigs(b *record.Block) *record.Block { b.Earwigs = true; return b }

// Visit is a visit with the states of grafts 1, 2, ...
func Visit(states ...record.GraftState) *record.Visited {
	v := &record.Visited{}
	for i, s := range states {
		v.Found = append(v.Found, record.Finding{Slot: i + 1, State: s})
	}
	return v
}

// Laptop is one journal being written: the clock runs on from the newest event
// it knows.
type Laptop struct {
	Hand   string
	Stump  record.StumpID // that it writes of
	IDs    *int
	Events []record.Event
}

// NewLaptop is an empty journal of a hand.
func NewLaptop(hand string) *Laptop { return &Laptop{Hand: hand, Stump: Stump417, IDs: new(int)} }

// Apart is a copy that goes on by itself; the ids stay apart as well.
func (l *Laptop) Apart(hand string) *Laptop {
	return &Laptop{hand, l.Stump, l.IDs, slices.Clone(l.Events)}
}

// Say puts an event into the journal as it stands, without an act: for odd
// histories that nobody could answer, and those of version 1.
func (l *Laptop) Say(at time.Time, body record.Body, replaces ...record.ID) record.Event {
	e := record.Event{At: at, Body: body, Replaces: replaces}
	if record.OfStump(body) {
		e.Stump = l.Stump
	}
	return l.keep(e)
}

// At is the same journal, written at a limb of the tree; 0 is the trunk.
func (l *Laptop) At(limb uint8) *Laptop {
	l.Stump.Limb = limb
	return l
}

// Give answers as a person does: it is decided by the record what the answer
// becomes, and all of it is one act.
func (l *Laptop) Give(g record.Given) ([]record.Event, error) {
	g.Hand = l.Hand
	events, err := l.Fold().Answer(g)
	if err != nil {
		return nil, err
	}
	return l.Append(events...), nil
}

// TakeBack takes back what Undo takes back next on the stump; ok is false if
// there is nothing.
func (l *Laptop) TakeBack(at time.Time) (taken []record.Event, ok bool) {
	s := l.Fold()
	e, ok := s.Undoable()
	if !ok {
		return nil, false
	}
	taken = s.Act(e)
	l.Append(record.Undo(taken, at, l.Hand)...)
	return taken, true
}

// PutBack puts back what was taken back last; ok is false if there is nothing.
func (l *Laptop) PutBack(at time.Time) (restored []record.Event, ok bool) {
	taken, restored := l.Fold().Redoable()
	l.Append(record.Undo(taken, at, l.Hand)...)
	return restored, len(taken) > 0
}

// Append puts events into the journal as the book does: they get ids, clocks and
// the hand, and those without an act are one act.
func (l *Laptop) Append(events ...record.Event) []record.Event {
	act := l.newID(0xac)
	out := make([]record.Event, len(events))
	for i, e := range events {
		if e.Act == record.None {
			e.Act = act
		}
		out[i] = l.keep(e)
	}
	return out
}

func (l *Laptop) keep(e record.Event) record.Event {
	e.ID, e.Hand, e.Clock = l.newID(0xe0), l.Hand, 1
	for _, known := range l.Events {
		e.Clock = max(e.Clock, known.Clock+1)
	}
	l.Events = append(l.Events, e)
	return e
}

func (l *Laptop) newID(kind byte) record.ID {
	*l.IDs++
	return record.ID{kind, byte(*l.IDs >> 8), byte(*l.IDs), l.Hand[0]}
}

// Fold is the record of the stump, from the events of its tree.
func (l *Laptop) Fold() *record.Stump {
	var tree []record.Event
	for _, e := range l.Events {
		if e.Stump.Trunk() == l.Stump.Trunk() {
			tree = append(tree, e)
		}
	}
	return record.Fold(l.Stump, tree)
}

// Diff is how two records differ in what they say, whatever the journals they
// were folded from; "" where they do not.
func Diff(a, b *record.Stump) string {
	return cmp.Diff(said(a), said(b), cmpopts.IgnoreUnexported(record.Stump{}, record.Clash{}))
}

func said(s *record.Stump) *record.Stump {
	return &record.Stump{ID: s.ID, Added: s.Added, Notes: s.Notes, Attempts: s.Attempts, Clashes: s.Clashes, Newest: s.Newest}
}

// Diary writes answers by date and clock of a block.
type Diary struct {
	*Laptop
	B    *record.Block
	Bare bool // an answer that the record refuses is put down as it stands, as a join may bring it
}

// DiaryOn is an empty diary of a block's stump.
func DiaryOn(b *record.Block) *Diary { return &Diary{Laptop: NewLaptop("AB"), B: b} }

// On gives answers, a minute apart, each an act of its own. An answer that the
// record refuses is a fault of the test: Say writes odd histories.
func (d *Diary) On(date string, hour, minute int, bodies ...record.Body) *Diary {
	for i, body := range bodies {
		at := DayOf(date).At(hour, minute+i, d.B.Zone)
		switch _, err := d.Give(record.Given{Bodies: []record.Body{body}, At: at, Zone: d.B.Zone}); {
		case err != nil && d.Bare:
			d.Say(at, body)
		case err != nil:
			panic(fmt.Sprintf("%s on %s: %v", body.Kind(), date, err))
		}
	}
	return d
}

// Odd puts answers down as they stand, a minute apart, whatever the record says
// to them.
func (d *Diary) Odd(date string, hour, minute int, bodies ...record.Body) *Diary {
	for i, body := range bodies {
		d.Say(DayOf(date).At(hour, minute+i, d.B.Zone), body)
	}
	return d
}

// Grafted is a stump cut back on one day and grafted with two scions on another.
func (d *Diary) Grafted(cut, set string, cover record.Cover) *Diary {
	d.On(cut, 9, 0, &record.NurseJudged{Limbs: 2, Leaf: "some"}, &record.CutBack{Height: Inches(36)}, &record.Gashed{Number: 2})
	d.On(set, 10, 0, &record.ScionSet{Slot: 1, Checks: record.AllGood}, &record.ScionSet{Slot: 2, Checks: record.AllGood})
	return d.On(set, 10, 40, &record.Sealed{Cover: cover}).On(set, 13, 10, &record.PaintedWhite{})
}

// BlockEDT is a block on a fixed offset with a browse height and no place.
func BlockEDT() *record.Block {
	return &record.Block{ID: TheBlock, Zone: EDT, Browse: record.Measure{Length: 6 * unit.Foot, Typed: "6ft"}}
}
