package walk

import (
	"fmt"
	"slices"
	"strings"

	"barkslip/core/record"
	"barkslip/core/scion"
	"barkslip/core/unit"
)

// StepSplit is asked where a slit ran on.
const StepSplit StepID = "split"

// nextSlot is the first slot without a scion, from 1; 0 if all have one.
func (c *Case) nextSlot() int {
	for n := 1; n <= c.A.Marked(); n++ {
		if !c.settled(n) {
			return n
		}
	}
	return 0
}

// settled says whether a slot has its scion or stays empty; not all of them can.
func (c *Case) settled(slot int) bool { return len(c.A.Grafts) > 0 && c.A.SlotTold(slot) }

// Slot is the slot in hand: the one asked for now, 0 outside the scion step.
func (c *Case) Slot() int {
	n := c.nextSlot()
	if n == 0 && c.again {
		return c.A.Marked()
	}
	return n
}

// woodFor is the wood of the scion for a slot: its own piece of the stick where
// one was cut.
func (c *Case) woodFor(slot int) record.WoodChosen {
	for _, own := range c.A.WoodOf {
		if own.What.Slot == slot {
			return own.What
		}
	}
	w := c.wood()
	if slot <= len(w.Pieces) && c.A.BrokeIn(slot) == 0 {
		p := w.Pieces[slot-1]
		w.Nodes = p.Nodes
		if p.Thickness.Given() {
			w.Thickness = p.Thickness
		}
	}
	return w
}

// checkItems are the six things seen on every scion, in the order in which
// they are done, and its slit.
func (c *Case) checkItems() []CheckItem {
	return []CheckItem{
		{Word: record.CheckWords[0], If: "Turn it round; recut if the cut is at the wrong end."},
		{Word: record.CheckWords[1], If: "Recut it in one stroke with a keen blade."},
		{Word: record.CheckWords[2], If: "Recut the back: it matters most."},
		{Word: record.CheckWords[3], If: "Widen the slot; forcing lifts the bark beside it."},
		{Word: record.CheckWords[4], If: "Nail it high and near the tip, none through the feather edge."},
		{Word: record.CheckWords[5], If: "Lift it about " + c.eg("1/4 in", "6 mm") + "; do not drive it fully down."},
		{Word: "the slit stops where it was cut", If: "Type how far it ran, and seal below its end."},
	}
}

func askScion(c *Case, a *Ask) {
	n := c.Slot()
	if n == 0 {
		a.Question, a.Because = "Mark the slots first.", "Each scion belongs to a slot."
		a.choice(Choice{Key: "1", Word: "slots", Go: StepSlots})
		return
	}
	w := c.woodFor(n)
	a.Question = fmt.Sprintf("Scion %d of %d, at %s. All good?", n, c.A.Marked(), c.A.Slots.What.Slots[n-1].Bearing.Words())
	a.Warn = c.woodWarn(w)
	if a.Warn == "" && singleBudded(w.Nodes) {
		a.Warn = "Single-budded wood: second best, not refused."
	}
	if given := len(c.wood().Pieces); a.Warn == "" && w.Slot == 0 && given > 0 && n > given {
		a.Warn = fmt.Sprintf("The stick gave %s; this one is cut from other wood.", unit.Count(given, "scion"))
	}
	c.cutWords(a, w)
	from := ""
	if pieces := c.wood().Pieces; n <= len(pieces) && w.Slot == 0 && c.A.BrokeIn(n) == 0 {
		from = fmt.Sprintf("Cut it %s from the butt.%s", record.CutPlaces(pieces[n-1:n], c.B.Units), c.moreSticks())
	}
	a.choice(c.otherWood(n))
	if ch, ok := c.broke("0"); ok {
		a.choice(ch)
	}
	if len(c.A.Grafts) > 0 && c.A.Graft(n) == nil {
		a.choose("9", "stays empty", "no scion goes into this slot", &record.SlotEmpty{Slot: n})
	}
	told := c.A.SeenOf(n)
	if c.Coach && !c.again {
		c.askEach(a, n, w, told)
		if a.Hand.Hand == HandWayUp { // the piece is taken in hand
			a.Because = joined(from, a.Because)
		}
		return
	}
	a.Because = joined(from, a.Because)
	items := c.checkItems()
	for i := range items {
		good, seen := told[i+1]
		items[i].Not = seen && !good
	}
	a.Checks = &CheckList{Items: items, Record: func(good []bool) []record.Body { return []record.Body{setScion(n, w, good)} }}
}

// setScion is a scion set with what was seen on it.
func setScion(slot int, w record.WoodChosen, good []bool) *record.ScionSet {
	b := &record.ScionSet{Slot: slot, Lot: w.Lot, Variety: w.Variety, Thickness: w.Thickness, Nodes: w.Nodes,
		Checks: record.Checks{WayUp: good[0], LongCut: good[1], BackCut: good[2], SlotEasy: good[3], Nails: good[4], Proud: good[5]}}
	if !good[6] {
		b.Split = record.SplitUnmeasured
	}
	return b
}

// askEach leads through the scion in hand, a thing at a time; none is taken as
// seen. With the last of them the scion is set.
func (c *Case) askEach(a *Ask, slot int, w record.WoodChosen, told map[int]bool) {
	good := make([]bool, record.SlitItem)
	var left []Hand
	place := len(handOrder)
	for i := len(handOrder); i > 0; i-- {
		hand := handOrder[i-1]
		g, seen := told[int(hand)]
		if good[hand-1] = g; !seen {
			left, place = append(left, hand), i
		}
	}
	hand := handOrder[place-1] // the last where all were told, and the wood or the slot changed since
	h := c.handwork(hand, slot, w)
	a.Hand = h
	a.Question = fmt.Sprintf("Scion %d of %d, %d of %d, %s: %s", slot, c.A.Marked(), place, len(handOrder), h.Name, h.asks)
	if h.does != "" {
		a.Because = h.does
	}
	saying := func(seen ...record.ScionSeen) (bodies []record.Body) {
		all := slices.Clone(good)
		for _, s := range seen {
			s.Slot = slot
			all[s.Item-1] = s.Good
			bodies = append(bodies, &s)
		}
		if len(left) <= 1 {
			bodies = append(bodies, setScion(slot, w, all))
		}
		return bodies
	}
	item := int(hand)
	answers := []Choice{
		{Key: "1", Word: "yes", Meaning: "seen", Bodies: saying(record.ScionSeen{Item: item, Good: true})},
		{Key: "2", Word: "no", Meaning: "record it as it is", Bodies: saying(record.ScionSeen{Item: item})},
	}
	if hand == HandSlideIn && good[HandSlot-1] {
		answers = append(answers, Choice{Key: "3", Word: "split", Meaning: "in easily, but the slit ran on",
			Bodies: saying(record.ScionSeen{Item: item, Good: true}, record.ScionSeen{Item: int(HandSlot)})})
	}
	a.Choices = append(answers, a.Choices...)
}

// cutWords gives slot width and nails of the scion in hand.
func (c *Case) cutWords(a *Ask, w record.WoodChosen) {
	if !w.Thickness.Given() {
		a.Because = "Look at each before you answer."
		return
	}
	cut, err := scion.Cuts(w.Cut())
	if err != nil {
		a.Because = err.Error()
		return
	}
	a.Because = fmt.Sprintf("%s thick: slot %s to %s wide, nails %s and %s long.", c.length(w.Thickness.Length),
		c.length(cut.Slot.Least), c.length(cut.Slot.Most), c.length(cut.Nails[0].Length), c.length(cut.Nails[1].Length))
	a.Work = append(a.Work, cut.Work)
}

func doneScions(c *Case) answer {
	if !c.A.AllSet() {
		return open
	}
	bad := 0
	for _, g := range c.A.Grafts {
		if g.Set.What.Checks != record.AllGood {
			bad++
		}
	}
	if bad > 0 {
		return told(fmt.Sprintf("%d set, %d to mend", len(c.A.Grafts), bad))
	}
	return told(fmt.Sprintf("%d set", len(c.A.Grafts)))
}

// split is the last scion whose slit ran on; open asks for one that was not
// measured yet. nil if there is none.
func (c *Case) split(open bool) (found *record.ScionSet) {
	for _, g := range c.A.Grafts {
		if s := g.Set.What; s.Split.Given() && (!open || s.Split == record.SplitUnmeasured) {
			found = &s
		}
	}
	return found
}

func askSplit(c *Case, a *Ask) {
	set := c.split(!c.again)
	if set == nil {
		a.Question, a.Because = "No slit ran on.", "The scions step records it, after the six checks."
		a.choice(Choice{Key: "1", Word: "scions", Go: StepScion})
		return
	}
	a.Question = fmt.Sprintf("How far did the split at slot %d run below the slot?", set.Slot)
	a.Because = "Sealer goes on to below its end. Type 0 if it did not run on."
	a.Entry = &Entry{Asks: "length of the split", Read: func(text string) ([]record.Body, error) { return c.readSplit(*set, text) }}
	if c.again && set.Split != record.SplitUnmeasured {
		a.Entry.startFrom(c.exact(set.Split), set)
	}
}

// readSplit reads how far a split ran, at most down to the ground.
func (c *Case) readSplit(set record.ScionSet, text string) ([]record.Body, error) {
	set.Split = record.Measure{}
	if strings.TrimSpace(text) == "0" {
		return []record.Body{&set}, nil
	}
	ground, _ := c.plannedHeight()
	m, err := c.readLength(text, 0, max(ground, unit.Foot))
	set.Split = m
	return []record.Body{&set}, err
}

func doneSplit(c *Case) answer {
	var words []string
	for _, g := range c.A.Grafts {
		if s := g.Set.What.Split; s.Given() && s != record.SplitUnmeasured {
			words = append(words, fmt.Sprintf("slot %d: %s", g.Slot, c.length(s.Length)))
		}
	}
	if c.split(true) != nil {
		return open
	}
	return told(strings.Join(words, ", "))
}
