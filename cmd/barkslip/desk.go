package main

import (
	"errors"
	"path/filepath"
	"strings"
	"sync/atomic"

	"barkslip/core/sample"
	"barkslip/store"
	"barkslip/ui"
)

// desk is the books that the screens go between: the one that was opened, and the
// made-up one beside it once it was asked for.
type desk struct {
	*app
	own    *store.Book
	madeUp *store.Book
	prefs  ui.Prefs
	plain  bool
	meter  *meter // has the user's own book meet its crew; nil where that is made up

	notCopied atomic.Pointer[error] // why the day's copy beside the book was not made
}

// close closes what is open.
func (d *desk) close() error {
	if d.meter != nil {
		d.meter.close()
	}
	if d.madeUp == nil {
		return d.own.Close()
	}
	return errors.Join(d.madeUp.Close(), d.own.Close())
}

// atOwn wires the screens to the book that was opened.
func (d *desk) atOwn() (ui.Options, error) {
	o := d.screenOptions(d.own, d.prefs, d.plain)
	o.Sample, o.Copies = d.atMadeUp, d.copies
	if d.meter == nil && meets(d.own) {
		d.meter = newMeter(d.own, d.prefs.Crew)
	}
	if d.meter != nil {
		o.Meeting = d.meter
	}
	return o, nil
}

// atMadeUp wires the screens to the made-up book beside it, made where there is
// none.
func (d *desk) atMadeUp() (ui.Options, error) {
	if d.madeUp == nil {
		book, err := d.openMadeUp()
		if err != nil {
			return ui.Options{}, err
		}
		d.madeUp = book
	}
	o := d.screenOptions(d.madeUp, d.prefs, d.plain)
	o.Own = d.atOwn
	return o, nil
}

func (d *desk) openMadeUp() (*store.Book, error) {
	path := besideBook(d.own.Path())
	err := store.CreateFilled(path, store.Options{}, func(book *store.Book) error { return d.fillSample(book, sample.Plan{Seed: 1}) })
	if err != nil && !errors.Is(err, store.ErrExists) {
		return nil, err
	}
	return store.Open(path, store.Options{})
}

// besideBook is the file of the made-up book that belongs to a book.
func besideBook(path string) string {
	ext := filepath.Ext(path)
	return strings.TrimSuffix(path, ext) + "-made-up" + ext
}
