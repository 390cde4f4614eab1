// Package plan is the page of pace and supplies: whether the grafting keeps up
// with the season of slip, and what it takes. It may import core and ui/part with
// its leaves, and no other screen.
package plan

import (
	"fmt"
	"math"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/core/plan"
	"barkslip/core/unit"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// Screen shows how the grafting keeps up with the season, day by day, and what it
// will take.
type Screen struct {
	*part.Page
	x      *part.Session
	pace   plan.Pace
	supply plan.Supply
	wood   []plan.Wood
}

// New is the plan of the session's block.
func New(x *part.Session) *Screen { return &Screen{x: x} }

// Load reckons the plan anew.
func (s *Screen) Load() error {
	site, sums := s.x.Site(), s.x.Summaries(s.x.Block)
	s.pace, s.supply = plan.PaceOf(site, sums, s.x.Time()), plan.SupplyOf(sums)
	s.wood = plan.WoodOf(s.x.Book.Folded(), s.x.Used())
	s.Page = part.NewPage(s.x, "Pace and supplies", site.Name, s.lines)
	return s.x.Trouble()
}

// Key takes a key of the table; else it scrolls the page, or goes back.
func (s *Screen) Key(k tea.KeyMsg) part.Msgs { return part.Press(s.Table(), k, s.Page.Key) }

// Table is the keys of the screen beside those of a page.
func (s *Screen) Table() []part.Row {
	return append([]part.Row{
		{Binding: part.On("n", "next"), Says: "Open the next stump that needs work.", Do: part.Does(part.Next{})},
		{Binding: part.On("P", "paper"), Says: "Paper: the day's sheet, tags, a cutting card.", Do: part.Does(part.Sheets{})},
		{Binding: part.On("/", ""), Says: "Go to a stump: row/tree.", Do: func() part.Msgs { return s.x.AskPlace(0, "") }},
	}, s.x.Common(s.help)...)
}

func (s *Screen) help() part.Msgs { return s.x.Help("pace and supplies", s.Table()) }

func (s *Screen) lines(width int) []paper.Line {
	wide, sys := min(width-4, 96), s.x.Site().Units
	lines := []paper.Line{nil}
	say := func(ink paper.Ink, s string) { lines = append(lines, part.Indent(2, part.Wrapped(ink, s, wide))...) }
	if s.pace.Known {
		say(paper.Strong, paceWords(s.pace))
		lines = append(lines, nil)
		lines = append(lines, days(s.pace, wide, s.x.Plain)...)
	} else {
		say(paper.Strong, "When does bark slip here?")
		say(paper.Plain, "No usual days are known for this latitude. Put the first and last in the block's settings: o, then bark slips from and until.")
	}
	lines = append(lines, nil)
	say(paper.Strong, supplyWords(s.supply, sys))
	if words := woodWords(s.wood, s.supply.Scions, s.x.Site().Variety); words != "" {
		say(paper.Strong, words)
	}
	for _, w := range s.wood {
		if r := w.Lot.Received.What; w.Counted {
			say(paper.Plain, fmt.Sprintf("%s, %s: %s.", r.Name, r.Variety, w.Left.Words()))
		}
	}
	for _, w := range append(s.pace.Work, s.supply.Work) {
		lines = append(append(lines, nil), part.WorkLines(w, sys, wide)...)
	}
	return lines
}

// paceWords is the pace in a sentence or two.
func paceWords(p plan.Pace) string {
	switch {
	case p.Standing+p.Draining == 0:
		return "No stump is left to graft."
	case p.Today < p.Slip.From:
		return fmt.Sprintf("Bark slips from %s to %s. %d a day from then keeps pace with the %d to graft. Cut back %s today.",
			p.Slip.From.Short(), p.Slip.To.Long(), p.Needed, p.Standing+p.Draining, noneOr(p.CutBack))
	}
	return fmt.Sprintf("%d days of slip are left, to %s. %d a day keeps pace with the %d to graft. Cut back %s today.",
		p.Left, p.Slip.To.Short(), p.Needed, p.Standing+p.Draining, noneOr(p.CutBack))
}

func noneOr(n int) string {
	if n == 0 {
		return "none"
	}
	return fmt.Sprint(n)
}

// days draws the coming days: what is grafted of the stumps draining, and
// the free places behind it, all to one scale.
func days(p plan.Pace, width int, plain bool) []paper.Line {
	const label, tail = 14, 28
	most := 1.0
	for _, d := range p.Days {
		most = max(most, math.Round(d.Graft+d.Free))
	}
	scale := float64(width-label-tail) / most
	if scale > 1 {
		scale = float64(int(scale)) // whole characters a stump
	}
	full, free := "█", "░"
	if plain {
		full, free = "#", "."
	}
	lines := []paper.Line{paper.Text(paper.Faint, "  "+full+" grafted of those draining  "+free+" places free")}
	for _, d := range p.Days {
		l := paper.Line{{Text: "  " + d.Day.Weekday().String()[:3] + " " + d.Day.Short(), Ink: paper.Plain}}
		l = l.Pad(label)
		if !d.Open {
			lines = append(lines, l.Add(paper.Faint, "bark does not slip"))
			continue
		}
		done, most := math.Round(d.Graft), math.Round(d.Graft+d.Free) // whole stumps, in the bar as in the words
		grafted := int(done * scale)
		places := int(most*scale) - grafted
		l = l.Add(paper.Growth, strings.Repeat(full, grafted)).Add(paper.Faint, strings.Repeat(free, places))
		words := fmt.Sprintf("%.0f of %.0f", done, most)
		if d.Day == p.Today && p.Grafted > 0 {
			words = fmt.Sprintf("%d grafted already", p.Grafted)
		}
		l = l.Add(paper.Plain, "  "+words)
		if d.Ready > 0 {
			l = l.Add(paper.Faint, fmt.Sprintf(", %d come ready", d.Ready))
		}
		lines = append(lines, l)
	}
	return lines
}

// supplyWords is what is needed, in a sentence.
func supplyWords(s plan.Supply, sys unit.System) string {
	if s.Stumps == 0 {
		return "Nothing more is needed for grafting."
	}
	return fmt.Sprintf("For the %s to graft take %d scions, from %d to %d sticks of %s, %d nails and %d stakes.",
		part.Counted(s.Stumps, "stump"), s.Scions, s.Sticks[0], s.Sticks[1], sys.Length(12*unit.Inch), s.Nails, s.Stakes)
}

// woodWords holds the wood of the variety planned against the scions needed;
// empty where its sticks were not counted.
func woodWords(wood []plan.Wood, needed int, variety string) string {
	least, most, counted := plan.Enough(wood, variety)
	switch {
	case !counted || needed == 0:
		return ""
	case most < needed:
		return fmt.Sprintf("The wood of %s runs out: %d to %d scions are left for the %d needed.", variety, least, most, needed)
	case least < needed:
		return fmt.Sprintf("The wood of %s may run out: %d to %d scions are left for the %d needed.", variety, least, most, needed)
	}
	return fmt.Sprintf("The wood of %s is enough: %d to %d scions are left for the %d needed.", variety, least, most, needed)
}
