package core

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"barkslip/core/scion"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

func askWood(c *Case, a *Ask) {
	planned := c.Variety()
	a.Question = "Which wood?"
	a.Because = "The label decides, not the memory."
	if planned != "" {
		a.Question = fmt.Sprintf("Which wood for %s?", planned)
	}
	key := 1
	if w := c.Before.Wood; w != nil {
		a.Because = fmt.Sprintf("As on %s.", c.Before.Stump.Place())
		a.choose("1", "as before", c.woodWords(*w), w)
		a.Warn = c.woodWarn(*w)
		if a.Warn == "" {
			a.Likely = "1"
		}
		key = 2
	}
	for _, lot := range c.lots() {
		if key > 8 {
			break
		}
		r := lot.Received.What
		doubts := lot.Doubts(c.B, c.B.Day(c.Now))
		meaning := strings.Join(append([]string{r.Variety}, doubts...), ", ")
		if a.Likely == "" && len(doubts) == 0 && c.planned(r.Variety) {
			a.Likely = strconv.Itoa(key)
		}
		a.choose(strconv.Itoa(key), r.Name, meaning, &WoodChosen{Lot: lot.ID, Variety: r.Variety, Thickness: r.Thickness})
		key++
	}
	a.choice(Choice{Key: "9", Word: "other wood", Meaning: "type the variety on the label", Entry: &Entry{Asks: "variety", Likely: planned, Text: true, Read: func(text string) ([]Body, error) {
		text = strings.TrimSpace(Clean(text))
		if text == "" {
			return nil, &unit.Error{Given: text, Accepted: "the variety on the label"}
		}
		return []Body{&WoodChosen{Variety: text}}, nil
	}}})
}

// planned says whether a variety is the one planned for the stump.
func (c *Case) planned(variety string) bool {
	return c.Variety() != "" && strings.EqualFold(c.Variety(), variety)
}

// lots are the lots to choose from: of the planned variety first, those held
// last.
func (c *Case) lots() []*Lot {
	lots := c.Book.LotList()
	rank := func(l *Lot) int {
		switch {
		case l.Held != nil && l.Held.What.Held:
			return 2
		case c.planned(l.Received.What.Variety):
			return 0
		}
		return 1
	}
	slices.SortStableFunc(lots, func(x, y *Lot) int { return rank(x) - rank(y) })
	return lots
}

// otherVariety warns of wood that is not of the planned variety.
func (c *Case) otherVariety(variety string) string {
	planned := c.Variety()
	if planned == "" || variety == "" || strings.EqualFold(planned, variety) {
		return ""
	}
	return fmt.Sprintf("OTHER VARIETY: this wood is %s, the stump is planned for %s.", variety, planned)
}

func (c *Case) woodWords(w WoodChosen) string {
	words := []string{w.Variety}
	if w.Thickness.Given() {
		words = append(words, c.length(w.Thickness.Length))
	}
	if n := len(w.Nodes); n > 0 {
		words = append(words, fmt.Sprintf("%d nodes", n))
	}
	return strings.Join(words, ", ")
}

func budWords(nodes []Node) string {
	paired, buds := 0, 0
	for _, n := range nodes {
		switch n.Buds {
		case Paired:
			paired, buds = paired+1, buds+2
		case First:
			buds++
		}
	}
	return fmt.Sprintf("%d nodes, %d buds", len(nodes), buds)
}

func doneWood(c *Case) string {
	if c.A.Wood == nil {
		return ""
	}
	return c.A.Wood.What.Variety
}

func (c *Case) wood() WoodChosen {
	if c.A.Wood == nil {
		return WoodChosen{}
	}
	return c.A.Wood.What
}

func askThick(c *Case, a *Ask) {
	class, err := scion.Fit(scion.Wood{Across: c.Found.Across})
	if err != nil {
		class.Least, class.Most = 3*unit.Inch/8, 7*unit.Inch/16
	}
	a.Work = []trade.Worked{class.Work}
	a.Question = "How thick are the scions?"
	a.Because = fmt.Sprintf("A stump %s across takes wood of %s to %s. A second number is the long cut, if it is not %s.",
		c.length(c.Found.Across), c.length(class.Least), c.length(class.Most), c.length(trade.LongCut))
	a.Warn = c.woodWarn(c.wood())
	a.Entry = &Entry{Asks: "thickness", Likely: c.length((class.Least + class.Most) / 2), Read: c.readThickness}
}

// readThickness reads the thickness of the scions, and their long cut where it
// is not the usual one.
func (c *Case) readThickness(text string) ([]Body, error) {
	parts, err := c.readLengths(text, 2, 6*unit.Inch)
	if err != nil {
		return nil, err
	}
	w := c.wood()
	w.Thickness = parts[0]
	if len(parts) == 2 {
		w.LongCut = parts[1]
	}
	if err := thick(w.Thickness, c.B.Units); err != nil {
		return nil, err
	}
	if _, err := scion.Cuts(w.Cut()); err != nil {
		return nil, err
	}
	return []Body{&w}, nil
}

// The thinnest and thickest wood that is taken for a scion.
const (
	thinnest = 3 * unit.Millimetre
	thickest = 2 * unit.Inch
)

func thick(m Measure, sys unit.System) error {
	if m.Length < thinnest || m.Length > thickest {
		return &unit.Error{Given: m.Typed, Accepted: fmt.Sprintf("from %s to %s", sys.Length(thinnest), sys.Length(thickest))}
	}
	return nil
}

// ReadThickness reads how thick wood is, from 3 mm to 2 in; a bare number is in
// the units given.
func ReadThickness(text string, sys unit.System) (Measure, error) {
	m, err := ReadMeasure(text, sys.Bare())
	if err != nil {
		return Measure{}, err
	}
	return m, thick(m, sys)
}

// Cut is how each scion of this wood is cut.
func (b WoodChosen) Cut() scion.Cut {
	cut := scion.Defaults(b.Thickness.Length)
	if b.LongCut.Given() {
		cut.LongCut = b.LongCut.Length
	}
	return cut
}

func doneThick(c *Case) string {
	if c.A.Wood == nil || !c.A.Wood.What.Thickness.Given() {
		return ""
	}
	return c.length(c.A.Wood.What.Thickness.Length)
}

// budSets are the usual sets of nodes on a scion.
var budSets = []struct {
	word, meaning string
	nodes         []Node
}{
	{"two, both paired", "four chances", []Node{{Paired}, {Paired}}},
	{"two, first buds only", "two chances", []Node{{First}, {First}}},
	{"two, one of them paired", "three chances", []Node{{Paired}, {First}}},
	{"one, paired", "two chances", []Node{{Paired}}},
	{"one, first bud only", "one chance", []Node{{First}}},
	{"three, all paired", "six chances", []Node{{Paired}, {Paired}, {Paired}}},
}

func askNodes(c *Case, a *Ask) {
	a.Question = "How many nodes on each scion?"
	a.Because = "Two nodes with a second bud under each first one are four chances."
	a.Warn = c.woodWarn(c.wood())
	for i, set := range budSets {
		w := c.wood()
		w.Nodes = set.nodes
		a.choose(strconv.Itoa(i+1), set.word, set.meaning, &w)
	}
	a.choice(Choice{Key: "7", Word: "from a stick", Meaning: "type its nodes", Entry: c.stickEntry()})
	a.Likely = "1"
	chance, odds := c.chance(c.A.Marked())
	a.Because += " " + chance
	a.Work = []trade.Worked{odds}
}

func doneNodes(c *Case) string {
	if n := len(c.wood().Pieces); n > 0 {
		return fmt.Sprintf("%d from a stick", n)
	}
	if c.A.Wood == nil || len(c.A.Wood.What.Nodes) == 0 {
		return ""
	}
	return fmt.Sprintf("%d, %d buds", len(c.A.Wood.What.Nodes), c.buds())
}

// nextSlot is the first slot without a scion, from 1; 0 if all have one.
func (c *Case) nextSlot() int {
	for n := 1; n <= c.A.Marked(); n++ {
		if !c.isSet(n) {
			return n
		}
	}
	return 0
}

func (c *Case) isSet(slot int) bool {
	for _, g := range c.A.Grafts {
		if g.Slot == slot {
			return true
		}
	}
	return false
}

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
func (c *Case) woodFor(slot int) WoodChosen {
	w := c.wood()
	if slot <= len(w.Pieces) {
		p := w.Pieces[slot-1]
		w.Nodes = p.Nodes
		if p.Thickness.Given() {
			w.Thickness = p.Thickness
		}
	}
	return w
}

// checkItems are the six things seen on every scion, in the order in which
// they are done.
var checkItems = []CheckItem{
	{"buds up, second bud below the first", "Turn it round; recut if the cut is at the wrong end."},
	{"the long cut is flat", "Recut it in one stroke with a keen blade."},
	{"the back cut shows cambium at the tip", "Recut the back: it matters most."},
	{"it went in easily", "Widen the slot; forcing lifts the bark beside it."},
	{"two nails hold it", "Nail it high and near the tip, none through the feather edge."},
	{"a little face shows above", "Lift it about 1/4 in; do not drive it fully down."},
}

func askScion(c *Case, a *Ask) {
	n := c.Slot()
	if n == 0 {
		a.Question, a.Because = "Mark the slots first.", "Each scion belongs to a slot."
		a.choice(Choice{Key: "1", Word: "slots", Go: StepSlots})
		return
	}
	w := c.woodFor(n)
	a.Question = fmt.Sprintf("Scion %d of %d, at %s. All six good?", n, c.A.Marked(), c.A.Slots.What.Slots[n-1].Bearing.Words())
	a.Warn = c.woodWarn(w)
	if a.Warn == "" && singleBudded(w.Nodes) {
		a.Warn = "Single-budded wood: second best, not refused."
	}
	if short := len(c.wood().Pieces); a.Warn == "" && short > 0 && n > short {
		a.Warn = fmt.Sprintf("The stick gave %d scions; this one is cut from other wood.", short)
	}
	c.cutWords(a, w)
	a.Checks = &CheckList{Items: checkItems, Record: func(good []bool) []Body {
		checks := Checks{good[0], good[1], good[2], good[3], good[4], good[5]}
		return []Body{&ScionSet{Slot: n, Lot: w.Lot, Variety: w.Variety, Thickness: w.Thickness, Nodes: w.Nodes, Checks: checks}}
	}}
}

// cutWords gives slot width and nails of the scion in hand.
func (c *Case) cutWords(a *Ask, w WoodChosen) {
	if !w.Thickness.Given() {
		a.Because = "See each thing before you say so."
		return
	}
	cut, err := scion.Cuts(w.Cut())
	if err != nil {
		a.Because = err.Error()
		return
	}
	a.Because = fmt.Sprintf("%s thick: slot %s to %s wide, nails %s and %s long.", c.length(w.Thickness.Length),
		c.length(cut.Slot.Least), c.length(cut.Slot.Most), c.length(cut.Nails[0].Length), c.length(cut.Nails[1].Length))
	a.Work = []trade.Worked{cut.Work}
}

func doneScions(c *Case) string {
	if !c.A.AllSet() {
		return ""
	}
	bad := 0
	for _, g := range c.A.Grafts {
		if g.Set.What.Checks != AllGood {
			bad++
		}
	}
	if bad > 0 {
		return fmt.Sprintf("%d set, %d not", len(c.A.Grafts), bad)
	}
	return fmt.Sprintf("%d set", len(c.A.Grafts))
}
