package main_test

import (
	"os"
	"path/filepath"

	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/store"
)

// blockName is the block of these tests.
const blockName = "Hollow Lane"

// planting puts work of earlier days into a book that is not open.
type planting struct {
	w     *world
	book  *store.Book
	block record.ID
}

// plant makes the book with a block of so many rows and trees for Lantern, and
// whatever was done on it before.
func (w *world) plant(rows, trees int, before func(p *planting)) {
	w.t.Helper()
	if err := os.MkdirAll(filepath.Dir(w.book()), 0o700); err != nil {
		w.t.Fatal(err)
	}
	book, err := store.Create(w.book(), store.Options{})
	if err != nil {
		w.t.Fatal(err)
	}
	p := &planting{w: w, book: book}
	if p.block, err = book.NewID(); err != nil {
		w.t.Fatal(err)
	}
	made := on("2027-03-01 08:00")
	events := []record.Event{{At: made, Body: &record.BlockMade{Block: p.block, Name: blockName}}}
	for _, s := range [][2]string{{"zone", zone.String()}, {"units", "us"}, {"variety", "Lantern"}, {"graft-height", "36in"}} {
		events = append(events, record.Event{At: made, Body: &record.BlockSet{Block: p.block, Setting: s[0], Value: s[1]}})
	}
	for r := range rows {
		for t := range trees {
			events = append(events, record.Event{At: made, Stump: p.stump(r+1, t+1), Body: &record.StumpAdded{Across: inches(3.4), Stock: "black walnut"}})
		}
	}
	p.append(events...)
	if before != nil {
		before(p)
	}
	if err := book.Close(); err != nil {
		w.t.Fatal(err)
	}
}

func (p *planting) stump(row, tree int) record.StumpID {
	return record.StumpID{Block: p.block, Row: uint16(row), Tree: uint16(tree)}
}

func (p *planting) append(events ...record.Event) {
	p.w.t.Helper()
	if _, err := p.book.Append(events...); err != nil {
		p.w.t.Fatal(err)
	}
}

// did records work on a stump.
func (p *planting) did(row, tree int, at string, bodies ...record.Body) {
	p.w.t.Helper()
	for _, b := range bodies {
		p.append(record.Event{At: on(at), Hand: "RK", Stump: p.stump(row, tree), Body: b})
	}
}

func inches(n float64) record.Measure {
	return record.Measured(unit.Length(n)*unit.Inch, unit.US)
}

// cutBack is a stump cut back and gashed on a day.
func (p *planting) cutBack(row, tree int, at string) {
	p.w.t.Helper()
	p.did(row, tree, at,
		&record.NurseJudged{Limbs: 2, Nearest: inches(24), Leaf: "some"},
		&record.CutBack{Height: inches(42)}, &record.Gashed{Number: 2, Depth: inches(0.5)})
}

// faced is a stump with a fresh face that was dry: ready to be measured.
func (p *planting) faced(row, tree int, day string) {
	p.w.t.Helper()
	p.did(row, tree, day+" 08:00", &record.Looked{Bleeding: record.Dry}, &record.Looked{Slip: record.SlipsClean}, &record.Gashed{Number: 2, Depth: inches(0.5)})
	p.did(row, tree, day+" 08:10", &record.FreshCut{Height: inches(36)})
	p.did(row, tree, day+" 08:30", &record.Looked{Bleeding: record.Dry})
}

// wood is what the stumps of these tests are grafted with.
var wood = record.WoodChosen{Variety: "Lantern", Thickness: inches(0.4375), Nodes: []record.Node{{Buds: record.Paired}, {Buds: record.Paired}}}

// grafted is a stump with three slots and so many scions set in them; with
// three it is ready to be sealed.
func (p *planting) grafted(row, tree int, day string, scions int) {
	p.w.t.Helper()
	p.faced(row, tree, day)
	chosen := wood
	p.did(row, tree, day+" 08:40", &record.StumpMeasured{Across: inches(3.4)},
		&record.SlotsMarked{Slots: []record.Slot{{Bearing: 22}, {Bearing: 142}, {Bearing: 262}}}, &chosen)
	for slot := 1; slot <= scions; slot++ {
		p.did(row, tree, day+" 09:00", &record.ScionSet{Slot: slot, Variety: wood.Variety, Thickness: wood.Thickness, Nodes: wood.Nodes, Checks: record.AllGood})
	}
}
