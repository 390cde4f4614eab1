package record

import (
	"errors"
	"strings"

	"barkslip/core/unit"
)

// LotReceived is a lot of scion wood come in.
type LotReceived struct {
	Lot       ID
	Name      string
	Variety   string
	Cut       unit.Date // when the wood was cut, 0 if unknown
	Sticks    int
	Thickness Measure
	Buds      Buds // paired or first only, as most of it is
	Note      string
	Source    string // the tree or place that it was cut from
	Kept      string // where and how it is kept
	Health    string // what is known of the health of the trees it came from
	Permit    string // paper under which it was moved, as its number
}

// Kind is lot-received.
func (*LotReceived) Kind() string { return "lot-received" }

// Say is the answer in a few words.
func (b *LotReceived) Say(_ unit.System) string {
	return strings.ReplaceAll(b.Kind(), "-", " ")
}

func (b *LotReceived) fields(f fields) {
	f.id("lot", &b.Lot)
	f.text("name", &b.Name)
	f.text("variety", &b.Variety)
	f.date("cut", &b.Cut)
	f.number("sticks", &b.Sticks)
	f.length("thickness", &b.Thickness)
	word(f, "buds", &b.Buds)
	f.text("note", &b.Note)
	f.text("source", &b.Source)
	f.text("kept", &b.Kept)
	f.text("health", &b.Health)
	f.text("permit", &b.Permit)
}

func (b *LotReceived) question() string { return "lot/" + b.Lot.String() }

func (b *LotReceived) check() error {
	if b.Lot == None || b.Name == "" {
		return errors.New("lot-received needs a lot and a name")
	}
	return oneOf("buds", b.Buds, true, Paired, First)
}

func (b *LotReceived) applyBook(book *Book, e Event) { book.lot(b.Lot).Received = standing(e, *b) }

// StoreRead is the temperature read where a lot is kept.
type StoreRead struct {
	Lot  ID
	Temp Degrees
}

// Kind is store-read.
func (*StoreRead) Kind() string { return "store-read" }

// Say is the answer in a few words.
func (b *StoreRead) Say(_ unit.System) string {
	return strings.ReplaceAll(b.Kind(), "-", " ")
}

func (b *StoreRead) fields(f fields) {
	f.id("lot", &b.Lot)
	f.degrees("temp", &b.Temp)
}

func (b *StoreRead) check() error {
	if b.Lot == None || !b.Temp.Given() {
		return errors.New("store-read needs a lot and a temperature")
	}
	return nil
}

func (b *StoreRead) applyBook(book *Book, e Event) {
	l, reading := book.lot(b.Lot), said(e, *b)
	l.Readings = append(l.Readings, reading)
	if goesOn := book.LotOf(b.Lot); goesOn != nil && goesOn != l {
		goesOn.Readings = append(goesOn.Readings, reading)
	}
}

// LotHeld is a lot taken out of use, or let back into it.
type LotHeld struct {
	Lot  ID
	Held bool
	Why  string
	Left bool // only the wood that is left is held: the scions set of it are not in doubt
}

// Kind is lot-held.
func (*LotHeld) Kind() string { return "lot-held" }

// Say is the answer in a few words.
func (b *LotHeld) Say(_ unit.System) string {
	return strings.ReplaceAll(b.Kind(), "-", " ")
}

func (b *LotHeld) fields(f fields) {
	f.id("lot", &b.Lot)
	f.flag("held", &b.Held)
	f.text("why", &b.Why)
	f.flag("left", &b.Left)
}

func (b *LotHeld) question() string { return "lot/" + b.Lot.String() + "/held" }

func (b *LotHeld) check() error {
	if b.Lot == None {
		return errors.New("lot-held needs a lot")
	}
	return nil
}

func (b *LotHeld) applyBook(book *Book, e Event) { book.lot(b.Lot).Held = standing(e, *b) }
