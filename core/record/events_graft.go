package record

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"barkslip/core/scion"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// StumpMeasured is the face measured both ways.
type StumpMeasured struct {
	Across      Measure      // the longer diameter
	Across2     Measure      // at right angles to it; 0 for a round stump
	LongWay     unit.Bearing // of the longer diameter
	LongWaySaid bool         // LongWay was given, not assumed
}

// Kind is measured.
func (*StumpMeasured) Kind() string { return "measured" }

// Say is the answer in a few words.
func (b *StumpMeasured) Say(sys unit.System) string {
	if b.Across2.Given() {
		return "measured " + sys.Beside(b.Across.Length, trade.StumpLimits...) + " by " + sys.Beside(b.Across2.Length, trade.StumpLimits...)
	}
	return "measured " + sys.Beside(b.Across.Length, trade.StumpLimits...)
}

func (b *StumpMeasured) fields(f fields) {
	f.length("across", &b.Across)
	f.length("across2", &b.Across2)
	f.bearing("long_way_deg", &b.LongWay)
	f.flag("long_way_said", &b.LongWaySaid)
}

func (*StumpMeasured) question() string { return "measured" }

func (b *StumpMeasured) check() error {
	if b.Across.Length <= 0 {
		return errors.New("measured needs across")
	}
	return nil
}

func (b *StumpMeasured) apply(_ *Stump, a *Attempt, e Event) { a.Measured = standing(e, *b) }

// doneAnew: before its scions the face is measured again, so that its slots are
// asked again.
func (*StumpMeasured) doneAnew(a *Attempt) bool { return len(a.Grafts) == 0 }

// Slot is where one scion goes, as a bearing from the stump's centre.
type Slot struct{ Bearing unit.Bearing }

// SlotsMarked is the slots marked on the face, clockwise, numbered from 1.
// Without slots it is the plan so far: how many are asked for, and where the
// bark can take none.
type SlotsMarked struct {
	Slots   []Slot
	Blocked []Arc
	Asked   int // how many were asked for; 0 for as many as the girth gives
}

// Kind is slots-marked.
func (*SlotsMarked) Kind() string { return "slots-marked" }

// Say is the answer in a few words.
func (b *SlotsMarked) Say(sys unit.System) string {
	if len(b.Slots) > 0 {
		return unit.Count(len(b.Slots), "slot")
	}
	var words []string
	if b.Asked > 0 {
		words = append(words, unit.Count(b.Asked, "slot")+" asked for")
	}
	for _, arc := range b.Blocked {
		words = append(words, fmt.Sprintf("%s at %s blocked", sys.Length(arc.Width.Length), arc.Bearing.Words()))
	}
	if len(words) == 0 {
		return "no bark blocked"
	}
	return strings.Join(words, ", ")
}

func (b *SlotsMarked) fields(f fields) {
	listOf(f, "slots", &b.Slots, func(s *Slot, f fields) { f.bearing("bearing_deg", &s.Bearing) })
	arcs(f, "blocked", &b.Blocked)
	f.number("asked", &b.Asked)
}

func (*SlotsMarked) question() string { return "slots" }

func (b *SlotsMarked) check() error {
	if len(b.Slots) > 24 || b.Asked < 0 || b.Asked > 24 {
		return errors.New("slots-marked takes at most 24 slots")
	}
	return nil
}

func (b *SlotsMarked) apply(_ *Stump, a *Attempt, e Event) { a.Slots = standing(e, *b) }

// WoodChosen is the scion wood taken for a stump.
type WoodChosen struct {
	Lot       ID     // None if of no recorded lot
	Variety   string // as on the label
	Thickness Measure
	Nodes     []Node  // of each scion, lowest first
	LongCut   Measure // of each scion; 0 for the usual length
	Pieces    []Piece // cut from one stick, where that was reckoned
	Slot      int     // of the one scion it is for, from 1; 0 for every scion of the stump
}

// Piece is one scion cut from a stick.
type Piece struct {
	From, To  Measure // from the butt of the stick
	Thickness Measure
	Nodes     []Node
}

func (p *Piece) fields(f fields) {
	f.length("from", &p.From)
	f.length("to", &p.To)
	f.length("thickness", &p.Thickness)
	nodes(f, &p.Nodes)
}

// Node is one node of a scion.
type Node struct{ Buds Buds }

// Kind is wood-chosen.
func (*WoodChosen) Kind() string { return "wood-chosen" }

// Say is the answer in a few words.
func (b *WoodChosen) Say(sys unit.System) string {
	words := "wood " + b.Variety
	if b.Slot > 0 {
		words = fmt.Sprintf("wood of scion %d %s", b.Slot, b.Variety)
	}
	if b.Thickness.Given() {
		words += ", " + sys.Exact(b.Thickness.Length)
	}
	if len(b.Pieces) > 0 {
		return words + fmt.Sprintf(", %d from a stick cut at %s", len(b.Pieces), CutPlaces(b.Pieces, sys))
	}
	if len(b.Nodes) > 0 {
		words += ", " + budWords(b.Nodes)
	}
	return words
}

func (b *WoodChosen) fields(f fields) {
	f.id("lot", &b.Lot)
	f.text("variety", &b.Variety)
	f.length("thickness", &b.Thickness)
	nodes(f, &b.Nodes)
	f.length("long_cut", &b.LongCut)
	listOf(f, "pieces", &b.Pieces, (*Piece).fields)
	f.number("slot", &b.Slot)
}

func nodes(f fields, v *[]Node) {
	listOf(f, "nodes", v, func(n *Node, f fields) { word(f, "buds", &n.Buds) })
}

func checkNodes(nodes []Node) error {
	for _, n := range nodes {
		if err := oneOf("buds", n.Buds, false, Paired, First, NoBud); err != nil {
			return err
		}
	}
	return nil
}

func (b *WoodChosen) question() string {
	if b.Slot > 0 {
		return fmt.Sprint("wood/", b.Slot)
	}
	return "wood"
}

func (b *WoodChosen) check() error {
	if b.Slot < 0 || b.Slot > 24 {
		return errors.New("wood-chosen takes a slot of 1 to 24")
	}
	for _, p := range b.Pieces {
		if err := checkNodes(p.Nodes); err != nil {
			return err
		}
	}
	return checkNodes(b.Nodes)
}

func (b *WoodChosen) apply(_ *Stump, a *Attempt, e Event) {
	if b.Slot == 0 {
		a.Wood = standing(e, *b)
		return
	}
	a.WoodOf = slices.DeleteFunc(a.WoodOf, func(w Said[WoodChosen]) bool { return w.What.Slot == b.Slot })
	a.WoodOf = append(a.WoodOf, said(e, *b))
}

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

// Say is the answer in a few words.
func (b *ScionSet) Say(sys unit.System) string {
	words := fmt.Sprintf("scion %d set", b.Slot)
	if wrong := b.Checks.Wrong(); len(wrong) > 0 {
		words += ", " + strings.Join(wrong, ", ")
	}
	switch {
	case b.Split == SplitUnmeasured:
		words += ", split ran on"
	case b.Split.Given():
		words += ", split ran " + sys.Length(b.Split.Length)
	}
	return words
}

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

func (*ScionSet) cause(a *Attempt) cause { return a.wasCutBack() }

// fare: a scion set is not dead yet.
func (*ScionSet) begins(c *course) bool { return c.ended() }

func (b *ScionSet) fare(c *course) { c.grafts[b.Slot] = NoChange }

// oneDeed: a scion is set once; said anew it is told more exactly, as how far
// its split ran.
func (*ScionSet) oneDeed() {}

// doneAnew: after the scion of its slot broke another one is set, which is of
// its own time.
func (b *ScionSet) doneAnew(a *Attempt) bool { return a.Graft(b.Slot) == nil && a.BrokeIn(b.Slot) > 0 }

func (*ScionSet) followed(*Attempt) bool { return true }

// SplitUnmeasured is a split that ran on, nobody said yet how far.
var SplitUnmeasured = Measure{Typed: "not measured"}

// Wrong is the things that were seen not to be right, as they are.
func (k Checks) Wrong() (out []string) {
	for i, good := range []bool{k.WayUp, k.LongCut, k.BackCut, k.SlotEasy, k.Nails, k.Proud} {
		if !good {
			out = append(out, wrongWords[i])
		}
	}
	return out
}

// Cut is how each scion of this wood is cut.
func (b WoodChosen) Cut() scion.Cut {
	cut := scion.Defaults(b.Thickness.Length)
	if b.LongCut.Given() {
		cut.LongCut = b.LongCut.Length
	}
	return cut
}

// CheckWords are the six things seen on every scion, in the order in which they
// are done.
var CheckWords = [...]string{
	"buds up, second bud below the first", "the long cut is flat", "the back cut shows cambium at the tip",
	"it went in easily", "two nails hold it", "a little face shows above",
}

// wrongWords are the same six where they are not right.
var wrongWords = [len(CheckWords)]string{
	"not the right way up", "long cut not flat", "back cut shows no cambium",
	"slot tight", "not held by two nails", "no face shows above",
}

// SlotEmpty is a slot that takes no scion: it was marked and stays empty.
type SlotEmpty struct{ Slot int } // from 1

// Kind is slot-empty.
func (*SlotEmpty) Kind() string { return "slot-empty" }

// Say is the answer in a few words.
func (b *SlotEmpty) Say(unit.System) string { return fmt.Sprintf("slot %d stays empty", b.Slot) }

func (b *SlotEmpty) fields(f fields) { f.number("slot", &b.Slot) }

// question is that of the scion of the slot: one set there later takes its place.
func (b *SlotEmpty) question() string { return fmt.Sprint("scion/", b.Slot) }

func (b *SlotEmpty) check() error {
	if b.Slot < 1 || b.Slot > 24 {
		return errors.New("slot-empty needs a slot of 1 to 24")
	}
	return nil
}

func (b *SlotEmpty) apply(_ *Stump, a *Attempt, e Event) { a.Empty = append(a.Empty, said(e, *b)) }

// onGrafts: a slot is said to stay empty while the grafting goes on.
func (*SlotEmpty) onGrafts(a *Attempt, at time.Time) error {
	if lost := a.LostAt(); a.GivenUp != nil || a.Untied != nil || !lost.IsZero() && !at.Before(lost) {
		return errors.New("that grafting is over: cut it back again before you record its slots")
	}
	return nil
}
