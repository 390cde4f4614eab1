package core

import "errors"

// LotHeld is a lot taken out of use, or let back into it.
type LotHeld struct {
	Lot  ID
	Held bool
	Why  string
}

// Kind is lot-held.
func (*LotHeld) Kind() string { return "lot-held" }

func (b *LotHeld) fields(f fields) {
	f.id("lot", &b.Lot)
	f.flag("held", &b.Held)
	f.text("why", &b.Why)
}

func (b *LotHeld) question() string { return "lot/" + b.Lot.String() + "/held" }

func (b *LotHeld) check() error {
	if b.Lot == None {
		return errors.New("lot-held needs a lot")
	}
	return nil
}

func (b *LotHeld) applyBook(book *Book, e Event) { book.lot(b.Lot).Held = standing(e, *b) }
