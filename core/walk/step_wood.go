package walk

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"barkslip/core/record"
	"barkslip/core/scion"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

func askWood(c *Case, a *Ask) {
	planned := c.Variety()
	a.Question = "Which wood?"
	a.Because = "Go by the label, not by memory."
	if planned != "" {
		a.Question = fmt.Sprintf("Which wood for %s?", planned)
	}
	key := 1
	if w := c.Before.Wood; w != nil {
		a.Because = fmt.Sprintf("As used on %s.", c.Before.Stump.Place())
		a.choose("1", "as before", c.woodWords(*w), w)
		a.Warn = c.woodWarn(*w)
		if a.Warn == "" {
			a.Likely = "1"
		}
		key = 2
	}
	now, folded := c.lots()
	for _, lot := range now {
		if key > 7 {
			break
		}
		ch, sound := c.lotChoice(strconv.Itoa(key), lot)
		if a.Likely == "" && sound && c.planned(lot.Received.What.Variety) {
			a.Likely = ch.Key
		}
		a.choice(ch)
		key++
	}
	if len(folded) > 0 {
		a.choice(c.foldedLots("8", folded))
	}
	other := &Entry{Asks: "variety", Likely: planned, Text: true, Read: c.readVariety}
	a.choice(Choice{Key: "9", Word: "other wood", Meaning: "type the variety on the label", Entry: other})
	a.choice(Choice{Key: "0", Word: "a new lot", Meaning: "came in: record it, then Esc", Lots: true})
	if c.again && c.A.Wood != nil {
		c.keepWood(a, other)
	}
}

// readVariety reads a label. Corrected, it is the same wood under another name.
func (c *Case) readVariety(text string) ([]record.Body, error) {
	text = strings.TrimSpace(record.Clean(text))
	if text == "" {
		return nil, &unit.Error{Given: text, Accepted: "the variety on the label"}
	}
	w := record.WoodChosen{}
	if c.again {
		w = c.wood()
	}
	w.Variety, w.Lot = text, record.ID{}
	return []record.Body{&w}, nil
}

// keepWood makes the wood that was chosen the likely answer, whole as it is.
func (c *Case) keepWood(a *Ask, other *Entry) {
	old := c.wood()
	a.Likely = "9"
	other.startFrom(old.Variety, &old)
	for i, ch := range a.Choices {
		if len(ch.Bodies) == 0 {
			continue
		}
		if w := ch.Bodies[0].(*record.WoodChosen); old.Lot != (record.ID{}) && w.Lot == old.Lot {
			a.Likely, a.Choices[i].Bodies = ch.Key, []record.Body{&old}
		}
	}
}

// planned says whether a variety is the one planned for the stump.
func (c *Case) planned(variety string) bool {
	return c.Variety() != "" && strings.EqualFold(c.Variety(), variety)
}

// lots are the lots to choose from: this season's, of the planned variety first.
// Those held, and of seasons past, are folded away while there are others.
func (c *Case) lots() (now, folded []*record.Lot) {
	for _, l := range c.Book.LotList() {
		if l.InUse(c.B, c.Now) {
			now = append(now, l)
		} else {
			folded = append(folded, l)
		}
	}
	if len(now) == 0 {
		now, folded = folded, nil
	}
	other := func(l *record.Lot) int {
		if c.planned(l.Received.What.Variety) {
			return 0
		}
		return 1
	}
	slices.SortStableFunc(now, func(x, y *record.Lot) int { return other(x) - other(y) })
	return now, folded
}

// lotChoice takes the wood of a lot; sound is false where something speaks
// against it here.
func (c *Case) lotChoice(key string, lot *record.Lot) (ch Choice, sound bool) {
	r := lot.Received.What
	w := &record.WoodChosen{Lot: lot.ID, Variety: r.Variety, Thickness: r.Thickness}
	doubts := lot.Doubts(c.B, c.B.Day(c.Now))
	if word, _ := c.unfit(*w); word != "" {
		doubts = append(doubts, c.length(r.Thickness.Length)+", "+word+" for this stump")
	}
	words := append([]string{r.Variety}, doubts...)
	left, counted := c.Book.LeftOf(lot.ID, c.Used)
	if counted {
		words = append(words, left.Words())
	}
	sound = len(doubts) == 0 && (!counted || left.Most > 0)
	return Choice{Key: key, Word: r.Name, Meaning: strings.Join(words, ", "), Bodies: []record.Body{w}}, sound
}

// foldedLots is one choice for the lots held and those of past years.
func (c *Case) foldedLots(key string, lots []*record.Lot) Choice {
	which := &Doubt{Says: "These lots are held, or from past years."}
	for i, lot := range lots[:min(len(lots), 9)] {
		ch, _ := c.lotChoice(strconv.Itoa(i+1), lot)
		which.Ways = append(which.Ways, ch)
	}
	return Choice{Key: key, Word: "put away", Meaning: unit.Count(len(lots), "lot") + " held or from past years", Doubt: which}
}

// runsOut warns of a lot that may not last for the stump.
func (c *Case) runsOut(w record.WoodChosen) string {
	left, counted := c.Book.LeftOf(w.Lot, c.Used)
	needed := c.A.Marked() - len(c.A.Grafts) - len(c.A.Empty)
	switch {
	case !counted || needed <= 0 || left.Least >= needed:
		return ""
	case left.Most == 0:
		return fmt.Sprintf("%s is %s.", c.Book.LotOf(w.Lot).Received.What.Name, left.Words())
	}
	return fmt.Sprintf("%s may not last: %s, and this stump needs %d.", c.Book.LotOf(w.Lot).Received.What.Name, left.Words(), needed)
}

// otherVariety warns of wood that is not of the planned variety.
func (c *Case) otherVariety(variety string) string {
	planned := c.Variety()
	if planned == "" || variety == "" || strings.EqualFold(planned, variety) {
		return ""
	}
	return fmt.Sprintf("OTHER VARIETY: this wood is %s, the stump is planned for %s.", variety, planned)
}

func (c *Case) woodWords(w record.WoodChosen) string {
	words := []string{w.Variety}
	if w.Thickness.Given() {
		words = append(words, c.length(w.Thickness.Length))
	}
	if n := len(w.Nodes); n > 0 {
		words = append(words, fmt.Sprintf("%d nodes", n))
	}
	return strings.Join(words, ", ")
}

func doneWood(c *Case) answer {
	if c.A.Wood == nil {
		return open
	}
	return told(c.A.Wood.What.Variety)
}

func (c *Case) wood() record.WoodChosen {
	if c.A.Wood == nil {
		return record.WoodChosen{}
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
	a.Because = fmt.Sprintf("A stump %s across wants wood %s to %s thick. Type a second number for a long cut other than %s.",
		c.across(c.Found.Across), c.length(class.Least), c.length(class.Most), c.B.Units.Figure(trade.LongCut))
	a.Warn = c.woodWarn(c.wood())
	a.Entry = &Entry{Asks: "thickness", Likely: c.length((class.Least + class.Most) / 2), Read: c.readThickness}
	if old := c.wood(); c.again && old.Thickness.Given() {
		a.Entry.startFrom(c.exact(old.Thickness, old.LongCut), &old)
		if old.LongCut.Given() {
			a.Because += fmt.Sprintf(" Type a thickness alone to keep the long cut of %s.", c.exact(old.LongCut))
		}
	}
}

// readThickness reads the thickness of the scions, and their long cut where it
// is not the usual one.
func (c *Case) readThickness(text string) ([]record.Body, error) {
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
	return []record.Body{&w}, nil
}

// The thinnest and thickest wood that is taken for a scion.
const (
	thinnest = 3 * unit.Millimetre
	thickest = 2 * unit.Inch
)

func thick(m record.Measure, sys unit.System) error {
	if m.Length < thinnest || m.Length > thickest {
		return &unit.Error{Given: m.Typed, Accepted: fmt.Sprintf("from %s to %s", sys.Length(thinnest), sys.Length(thickest))}
	}
	return nil
}

// ReadThickness reads how thick wood is, from 3 mm to 2 in; a bare number is in
// the units given.
func ReadThickness(text string, sys unit.System) (record.Measure, error) {
	m, err := record.ReadMeasure(text, sys.Bare())
	if err != nil {
		return record.Measure{}, err
	}
	return m, thick(m, sys)
}

func doneThick(c *Case) answer {
	if c.A.Wood == nil || !c.A.Wood.What.Thickness.Given() {
		return open
	}
	return told(c.length(c.A.Wood.What.Thickness.Length))
}

// budSets are the usual sets of nodes on a scion.
var budSets = []struct {
	word, meaning string
	nodes         []record.Node
}{
	{"two, both paired", "four chances", []record.Node{{Buds: record.Paired}, {Buds: record.Paired}}},
	{"two, first buds only", "two chances", []record.Node{{Buds: record.First}, {Buds: record.First}}},
	{"two, one of them paired", "three chances", []record.Node{{Buds: record.Paired}, {Buds: record.First}}},
	{"one, paired", "two chances", []record.Node{{Buds: record.Paired}}},
	{"one, first bud only", "one chance", []record.Node{{Buds: record.First}}},
	{"three, all paired", "six chances", []record.Node{{Buds: record.Paired}, {Buds: record.Paired}, {Buds: record.Paired}}},
}

func askNodes(c *Case, a *Ask) {
	old := c.wood()
	a.Question = "How many nodes on each scion?"
	a.Because = "Two nodes with a second bud under each first one are four chances."
	a.Warn = c.woodWarn(old)
	a.Likely = "1"
	for i, set := range budSets {
		w := old
		w.Nodes, w.Pieces = set.nodes, nil
		a.choose(strconv.Itoa(i+1), set.word, set.meaning, &w)
		if c.again && slices.Equal(old.Nodes, set.nodes) {
			a.Likely = a.Choices[i].Key
		}
	}
	a.choice(Choice{Key: "7", Word: "from a stick", Meaning: "type its nodes", Entry: c.stickEntry()})
	if n := len(old.Pieces); n > 0 {
		a.Because = fmt.Sprintf("The stick is cut from the butt at %s.%s", record.CutPlaces(old.Pieces, c.B.Units), c.moreSticks())
		a.choose("8", "as cut", unit.Count(n, "scion"), &old)
		a.Likely = "8"
	}
	chance, odds := c.chance(c.A.Marked(), false)
	a.Because += " " + chance
	a.Work = []trade.Worked{odds}
}

func doneNodes(c *Case) answer {
	if n := len(c.wood().Pieces); n > 0 {
		return told(fmt.Sprintf("%d from stick", n))
	}
	if c.A.Wood == nil || len(c.A.Wood.What.Nodes) == 0 {
		return open
	}
	return told(fmt.Sprintf("%d, %d buds", len(c.A.Wood.What.Nodes), c.buds()))
}

// woodWarn is what to mind about wood chosen for the stump: first of all
// another variety than the one planned, then its thickness, then what is left.
func (c *Case) woodWarn(w record.WoodChosen) string {
	return strings.Join(slices.DeleteFunc([]string{c.labelWarn(w), c.Unfit(w), c.runsOut(w)}, func(s string) bool { return s == "" }), " ")
}

// labelWarn is what speaks against wood by its label or its lot.
func (c *Case) labelWarn(w record.WoodChosen) string {
	if other := c.otherVariety(w.Variety); other != "" {
		return other
	}
	if l := c.Book.LotOf(w.Lot); l != nil {
		if doubts := l.Doubts(c.B, c.B.Day(c.Now)); len(doubts) > 0 {
			return strings.Join(doubts, ". ") + "."
		}
	}
	return ""
}

// singleBudded says whether nodes have first buds alone.
func singleBudded(nodes []record.Node) bool {
	for _, n := range nodes {
		if n.Buds == record.Paired {
			return false
		}
	}
	return len(nodes) > 0
}
