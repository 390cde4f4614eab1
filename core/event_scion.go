package core

import (
	"errors"
	"fmt"
)

// Checks are the six things seen on every scion; true is as it should be.
type Checks struct {
	WayUp    bool // buds point up, second bud below the first
	LongCut  bool // the long cut is flat
	BackCut  bool // the back cut shows cambium
	SlotEasy bool // it went in without force
	Nails    bool // two nails hold it
	Proud    bool // a little face shows above the stump
}

// AllGood is all six as they should be.
var AllGood = Checks{true, true, true, true, true, true}

func (c *Checks) fields(f fields) {
	f.flag("way_up", &c.WayUp)
	f.flag("long_cut_flat", &c.LongCut)
	f.flag("back_cut_shows_cambium", &c.BackCut)
	f.flag("slot_easy", &c.SlotEasy)
	f.flag("two_nails", &c.Nails)
	f.flag("little_proud", &c.Proud)
}

// ScionSet is one scion set in one slot, with what was seen.
type ScionSet struct {
	Slot      int // from 1
	Lot       ID
	Variety   string
	Thickness Measure
	Nodes     []Node
	Checks    Checks
	Split     Measure // how far the split ran below the slot; 0 if it did not
}

// Kind is scion-set.
func (*ScionSet) Kind() string { return "scion-set" }

func (b *ScionSet) fields(f fields) {
	f.number("slot", &b.Slot)
	f.id("lot", &b.Lot)
	f.text("variety", &b.Variety)
	f.length("thickness", &b.Thickness)
	nodes(f, &b.Nodes)
	b.Checks.fields(f)
	f.length("split", &b.Split)
}

func (b *ScionSet) question() string { return fmt.Sprint("scion/", b.Slot) }

func (b *ScionSet) check() error {
	if b.Slot < 1 || b.Slot > 24 {
		return errors.New("scion-set needs a slot of 1 to 24")
	}
	return checkNodes(b.Nodes)
}

func (b *ScionSet) apply(_ *Stump, a *Attempt, e Event) { a.scion(b.Slot).Set = standing(e, *b) }
