package core

import (
	"errors"

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
}

// Kind is lot-received.
func (*LotReceived) Kind() string { return "lot-received" }

func (b *LotReceived) fields(f fields) {
	f.id("lot", &b.Lot)
	f.text("name", &b.Name)
	f.text("variety", &b.Variety)
	f.date("cut", &b.Cut)
	f.number("sticks", &b.Sticks)
	f.length("thickness", &b.Thickness)
	word(f, "buds", &b.Buds)
	f.text("note", &b.Note)
}

func (b *LotReceived) question() string { return "lot/" + b.Lot.String() }

func (b *LotReceived) check() error {
	if b.Lot == None || b.Name == "" {
		return errors.New("lot-received needs a lot and a name")
	}
	return oneOf("buds", b.Buds, true, Paired, First)
}

func (b *LotReceived) applyBook(book *Book, e Event) { book.lot(b.Lot).Received = standing(e, *b) }
