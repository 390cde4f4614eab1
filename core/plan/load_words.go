package plan

import (
	"fmt"
	"math"
	"strings"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// LoadLine is one thing to take along, and how much of it.
type LoadLine struct {
	What, Amount string
	Note         string // what is there of it
	Short        bool   // what is there does not do
}

// Lines is the load, a line a thing.
func (l Load) Lines(sys unit.System) (out []LoadLine) {
	add := func(what, amount string) { out = append(out, LoadLine{What: what, Amount: amount}) }
	for _, s := range l.Sticks {
		line := LoadLine{What: "wood", Amount: fmt.Sprintf("%s, %s for %s", named(s.Variety), unit.Count(s.Sticks, "stick"), unit.Count(s.Scions, "scion"))}
		line.Amount += fmt.Sprintf(", %s to %s thick", sys.Exact(s.Least), sys.Exact(s.Most))
		line.Note, line.Short = s.woodWords()
		out = append(out, line)
	}
	for _, n := range l.Nails {
		add("nails", fmt.Sprintf("%d of %s", n.N, nailSize(n.Size, sys)))
	}
	if l.Wrap > 0 {
		add("wrap squares", fmt.Sprint(l.Wrap))
	}
	if l.Sealer > 0 {
		add("sealer", volume(l.Sealer, sys))
	}
	if l.Paint > 0 {
		add("white paint", volume(l.Paint, sys))
	}
	if l.Stakes > 0 {
		add("stakes", fmt.Sprint(l.Stakes))
	}
	if l.Ties > 0 {
		add("tape", fmt.Sprintf("%s for %s", sys.Distance(l.Tape), unit.Count(l.Ties, "tie")))
	}
	if l.Twine > 0 {
		add("twine", sys.Distance(l.Twine))
	}
	return out
}

func named(variety string) string {
	if variety == "" {
		return "variety not recorded"
	}
	return variety
}

// woodWords is what is left of the lots that serve; short says that it does not do.
func (s StickLoad) woodWords() (words string, short bool) {
	if len(s.Wood) == 0 {
		return "no lot of this variety and thickness", true
	}
	var lots []string
	least, counted := 0, true
	for _, w := range s.Wood {
		says := w.Lot + ", sticks not counted"
		if w.Known {
			says = fmt.Sprintf("%s gives %d to %d scions", w.Lot, w.Left.Least, w.Left.Most)
			least += w.Left.Least
		}
		if counted = counted && w.Known; w.Untold {
			says += ", thickness not recorded"
		}
		lots = append(lots, says)
	}
	words = strings.Join(lots, "; ")
	if counted && least < s.Scions {
		return words + fmt.Sprintf(": may be %s short", unit.Count(s.Scions-least, "scion")), true
	}
	return words, false
}

// nailSize is a size of nail as it is sold.
func nailSize(size unit.Length, sys unit.System) string {
	if sys == unit.Metric {
		return fmt.Sprintf("%g mm", math.Round(size.MM()))
	}
	whole, quarters := int(size.Inches()), int(math.Round(size.Inches()*4))%4
	part := []string{"", "1/4", "1/2", "3/4"}[quarters]
	switch {
	case whole == 0:
		return part + " in"
	case part == "":
		return fmt.Sprintf("%d in", whole)
	}
	return fmt.Sprintf("%d %s in", whole, part)
}

// volume is a volume in ml as it is measured out: by the tenth of a litre or the
// fluid ounce, never less than what is needed.
func volume(ml float64, sys unit.System) string {
	const ounce, quart = 29.57, 946.35
	if sys == unit.Metric {
		if ml < 1000 {
			return fmt.Sprintf("%.0f ml", math.Ceil(ml/10)*10)
		}
		return fmt.Sprintf("%.1f l", math.Ceil(ml/100)/10)
	}
	if ml < quart {
		return fmt.Sprintf("%.0f fl oz", math.Ceil(ml/ounce))
	}
	return fmt.Sprintf("%.1f qt", math.Ceil(ml/quart*10)/10)
}

// Worked is how the load was reckoned, and by whose word its rates stand.
func (l Load) Worked() trade.Worked {
	r := l.Rates
	w := trade.Worked{
		Question: "What is to be loaded?",
		Answer:   []trade.Input{{Name: "scions", Value: l.Scions}},
		Formula: "scions by the size of each stump, of the thickness that suits it; sticks = scions / what a stick gives; each nail as long as flap, scion " +
			"and bite, in the next size sold; wrap squares on each scion and over the top; " +
			"sealer and white paint = face and bark to below the slots, times how thick they lie; tape = ties " +
			"times the length of one; twine = two loops of twice the girth and their knots",
		Inputs: []trade.Input{{Name: "stumps to graft", Value: l.Stumps}, {Name: "of known size", Value: l.Measured},
			{Name: "scions a stick", Value: r.PerStick}, {Name: "nails a scion", Value: r.Nails}, {Name: "wrap squares a scion", Value: r.Wrap},
			{Name: "thickness of sealer", Value: r.Sealer}, {Name: "thickness of white paint", Value: r.Paint}, {Name: "stakes a stump", Value: r.Stakes},
			{Name: "ties a stump in its first season", Value: r.Ties}, {Name: "tape for a tie", Value: r.Tape}, {Name: "twine for a knot", Value: r.Knot}},
		Assumed: []string{"nothing is spoiled or lost; take some to spare"},
		Facts: []trade.Fact{trade.ScionSpacing, trade.ScionCap, trade.ThicknessClasses, trade.StickGives, trade.TwoNails, trade.NailsAreSold, trade.WrapSquares,
			trade.WrapTaken, trade.SealerTaken, trade.PaintTaken, trade.StakeTaken, trade.TapeTaken, trade.TwineTaken},
	}
	if l.Across > 0 {
		w.Inputs = append(w.Inputs, trade.Input{Name: "width taken for a stump of unknown size", Value: l.Across})
		w.Facts = append(w.Facts, trade.SizeTaken)
	}
	return w
}

// Thing is one thing to take along as a number of units.
type Thing struct {
	What   string
	Amount int
	Unit   string
}

// Things is the load for a machine: scions, sticks, nails and stakes always, then
// the nails by size and the rest.
func (l Load) Things(sys unit.System) []Thing {
	nails := 0
	for _, n := range l.Nails {
		nails += n.N
	}
	out := []Thing{{"scions", l.Scions, "scion"},
		{"sticks of 12 in", sticks(l.Scions, l.Rates.PerStick), "stick"}, {"nails", nails, "nail"}, {"stakes", l.Stakes, "stake"}}
	for _, n := range l.Nails {
		out = append(out, Thing{"nails of " + nailSize(n.Size, sys), n.N, "nail"})
	}
	return append(out, Thing{"wrap squares", l.Wrap, "square"}, Thing{"sealer", up(l.Sealer), "ml"}, Thing{"white paint", up(l.Paint), "ml"},
		Thing{"tape", up(l.Tape.Metres()), "m"}, Thing{"twine", up(l.Twine.Metres()), "m"})
}

func up(v float64) int { return int(math.Ceil(v)) }
