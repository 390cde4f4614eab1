package ui

import (
	"fmt"
	"math"
	"strings"

	"barkslip/core/plan"
	"barkslip/core/unit"
	"barkslip/ui/paper"
)

// paceWord is the pace beside the field, while bark slips and work is left.
func (b *blockScreen) paceWord() string {
	p := b.count().pace
	switch {
	case !p.Known || p.Standing+p.Draining == 0 || p.Today < p.Slip.From.Add(-paceAhead):
		return ""
	case p.Today < p.Slip.From && p.CutBack == 0:
		return "slips from " + p.Slip.From.Short()
	case p.Today < p.Slip.From:
		return fmt.Sprintf("slips %s, cut back %d", p.Slip.From.Short(), p.CutBack)
	case p.Standing > 0 && b.x.width < fullWidth:
		return fmt.Sprintf("slip %d d, cut back %d", p.Left, p.CutBack)
	case p.Standing > 0:
		return fmt.Sprintf("slip %d d left, cut back %d", p.Left, p.CutBack)
	}
	return fmt.Sprintf("slip %d d left, %d a day", p.Left, p.Needed)
}

// paceAhead is how many days before bark slips the pace is shown beside the
// field: cutting back begins then.
const paceAhead = 14

// pace shows how the grafting keeps up with the season, day by day, and what it
// will take.
func (b *blockScreen) pace() {
	site := b.x.site()
	p, supply := plan.PaceOf(site, b.sums, b.x.now()), plan.SupplyOf(b.sums)
	b.r.page = &page{r: b.r, title: "Pace and supplies", where: site.Name, make: func(width int) []paper.Line {
		wide := min(width-4, 96)
		lines := []paper.Line{nil}
		say := func(ink paper.Ink, s string) { lines = append(lines, indent(2, wrapped(ink, s, wide))...) }
		if !p.Known {
			say(paper.Strong, "When does bark slip here?")
			say(paper.Plain, "No usual days are known for this latitude. Put the first and last in the block's settings: o, then bark slips from and until.")
		} else {
			say(paper.Strong, paceWords(p))
			lines = append(lines, nil)
			lines = append(lines, b.paceDays(p, wide)...)
		}
		lines = append(lines, nil)
		say(paper.Strong, supplyWords(supply, site.Units))
		for _, w := range append(p.Work, supply.Work) {
			lines = append(append(lines, nil), b.r.workLines(w, wide)...)
		}
		return lines
	}}
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

// paceDays draws the coming days: what is grafted of the stumps draining, and
// the free places behind it, all to one scale.
func (b *blockScreen) paceDays(p plan.Pace, width int) []paper.Line {
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
	if b.x.Plain {
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
		counted(s.Stumps, "stump"), s.Scions, s.Sticks[0], s.Sticks[1], sys.Length(12*unit.Inch), s.Nails, s.Stakes)
}
