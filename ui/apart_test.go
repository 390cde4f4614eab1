package ui

import (
	"strings"
	"testing"

	"barkslip/core/record"
	"barkslip/ui/first"
	"barkslip/ui/part"
)

// marked sees that the first line says made up, in every size.
func (d *driver) marked() {
	d.t.Helper()
	for _, size := range [][2]int{{80, 24}, {120, 40}, {60, 15}} {
		d.size(size[0], size[1])
		if line, _, _ := strings.Cut(d.screen(), "\n"); !strings.Contains(line, "made up") {
			d.t.Errorf("%v: the first line does not say that it is made up: %s", size, line)
		}
	}
	d.size(80, 24)
}

// twoBlocks is a real block of a row of two and another with a tree in common,
// answered on both.
func twoBlocks(t *testing.T, name string) (*driver, record.ID) {
	d := newDriver(t, "2027-05-04 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	other := record.ID{0xff, 1}
	d.did(tree(1, 2), "2027-04-26 09:00", &record.CutBack{Height: inches(42)}, &record.Gashed{Number: 2})
	d.append(record.Event{At: d.now, Hand: "AB", Body: &record.BlockMade{Block: other, Name: name}},
		record.Event{At: d.now, Hand: "AB", Stump: record.StumpID{Block: other, Row: 1, Tree: 2}, Body: &record.StumpAdded{}},
		record.Event{At: d.now, Hand: "AB", Stump: record.StumpID{Block: other, Row: 1, Tree: 2}, Body: &record.CutBack{Height: inches(50)}},
		record.Event{At: d.now, Hand: "AB", Stump: record.StumpID{Block: other, Row: 1, Tree: 3}, Body: &record.CutBack{Height: inches(40)}})
	d.root.x.Reread()
	d.root.do(part.OpenBlock{Block: home})
	return d, other
}

// TestOverlapIsShownBeforeTwoAreOne: blocks of other names become one only after
// what they have in common was shown.
func TestOverlapIsShownBeforeTwoAreOne(t *testing.T) {
	d, _ := twoBlocks(t, "Lane")
	d.press("b")
	d.pickWord("two are one")
	d.pickWord("Lane")
	d.sees("Are Hollow Lane and Lane one block?", "1 stump in common", "2 answers in Hollow Lane", "1 answer in Lane", "1/2: 2 gashes here", "50 in there")
	d.press("enter")
	d.pickWord("not one")
	if n := len(d.book.Folded().List()); n != 2 {
		t.Fatalf("%d blocks", n)
	}
	d.press("b")
	d.pickWord("two are one")
	d.pickWord("Lane")
	d.pickWord("one block")
	d.sees("are one block", "3 stumps")
}

// TestBlocksAreTakenApartAgain: what was said to be one is two again, and one
// again after that.
func TestBlocksAreTakenApartAgain(t *testing.T) {
	d, other := twoBlocks(t, "hollow  lane")
	for range 2 {
		d.press("b")
		d.pickWord("two are one")
		d.pickWord("hollow  lane") // of the same name: at once
		d.sees("are one block", "3 stumps")
		d.press("b")
		d.pickWord("take apart")
		d.sees("Take Hollow Lane apart again?")
		d.pickWord("take apart")
		d.sees("Taken apart", "2 stumps")
		if n := len(d.book.Folded().List()); n != 2 {
			t.Fatalf("%d blocks", n)
		}
		if s, err := d.book.Summaries(other); err != nil || len(s) != 2 {
			t.Fatalf("%d stumps in the other, %v", len(s), err)
		}
	}
}

// TestMadeUpIsNotOneWithReal: a made-up block is never made one with a real one.
func TestMadeUpIsNotOneWithReal(t *testing.T) {
	d, other := twoBlocks(t, "Lane")
	d.append(record.Event{At: d.now, Hand: "AB", Body: &record.BlockSet{Block: other, Setting: "made-up", Value: "yes"}})
	d.root.x.Reread()
	d.press("b")
	for _, item := range d.root.over.(*part.List).Items() {
		if item.Word == "two are one" {
			t.Error("a made-up block is offered to be one with a real one")
		}
	}
	d.pickWord("Lane")
	d.sees("none of it is in a list with real stumps")
	d.marked()
	d.press("b")
	d.pickWord("Hollow Lane")
	d.lacks("made up:")
}

// TestPutAwayAndBroughtBack: a book that holds sample stumps puts them away in one
// act; nothing is erased, and they are seen again.
func TestPutAwayAndBroughtBack(t *testing.T) {
	d := newDriver(t, "2027-05-04 09:00")
	d.plant("Hollow Lane", rows(2, 3)...)
	ended := 0
	d.root.x.OwnDay = func() bool { return ended == 0 } // a book filled before the mark was kept
	d.root.x.EndOwnDay = func() error { ended++; return nil }
	d.marked()
	before := len(d.book.Folded().Blocks)
	d.press("b")
	d.pickWord("put away")
	d.sees("Put Hollow Lane away?", "Nothing is erased")
	d.pickWord("put away")
	if !is[*first.Screen](d) || ended != 1 || len(d.book.Folded().List()) != 0 || len(d.book.Folded().Blocks) != before {
		t.Fatalf("ended %d:\n%s", ended, d.screen())
	}
	d.press("5")
	d.pickWord("Hollow Lane")
	d.sees("6 stumps", "is made up")
	d.marked()
	if n := len(d.book.Folded().List()); n != 1 {
		t.Errorf("%d blocks are listed", n)
	}
}

// TestRealBlockLeavesTheMadeUpApart: a real block begun in a made-up book stands in
// no list with it.
func TestRealBlockLeavesTheMadeUpApart(t *testing.T) {
	d := newDriver(t, "2027-05-04 09:00")
	d.plant("Hollow Lane", rows(2, 3)...)
	ended := 0
	d.root.x.OwnDay = func() bool { return ended == 0 }
	d.root.x.EndOwnDay = func() error { ended++; return nil }
	d.press("b")
	d.pickWord("a new block")
	d.block()
	d.lacks("made up:")
	if l := d.book.Folded().List(); len(l) != 1 || l[0].Name != "Home block" || len(d.book.Folded().Others()) != 1 {
		t.Errorf("%d listed", len(l))
	}
}
