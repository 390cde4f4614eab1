package core

import "errors"

// StoreRead is the temperature read where a lot is kept.
type StoreRead struct {
	Lot  ID
	Temp Degrees
}

// Kind is store-read.
func (*StoreRead) Kind() string { return "store-read" }

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
	l := book.lot(b.Lot)
	l.Readings = append(l.Readings, said(e, *b))
}
