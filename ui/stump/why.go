package stump

import (
	"slices"

	"barkslip/core/trade"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// why shows how the numbers of the question came about: formula in words, what
// went in, what was assumed, and by whose word; and what the step rests on.
func (s *Screen) why() part.Msgs {
	lines := func(width int) []paper.Line { return s.whyLines(s.x.Measure(width - 4)) }
	return part.Msgs{part.Read{Page: part.NewPage(s.x, "Why", s.asked.Question, lines)}}
}

func (s *Screen) whyLines(wide int) []paper.Line {
	lines := []paper.Line{nil}
	add := func(label string, ink paper.Ink, says string) {
		lines = append(lines, part.Indent(2, part.Under(label, paper.Faint, ink, says, wide))...)
	}
	for _, w := range s.asked.Work {
		lines = append(append(lines, part.WorkLines(w, s.x.Site().Units, wide)...), nil)
	}
	lines = append(lines, paper.Text(paper.Strong, "  What this step rests on"))
	for _, p := range [][2]string{{"Look for", s.asked.Step.LookFor}, {"Why     ", s.asked.Step.Why}, {"If not  ", s.asked.Step.NotRight}} {
		if p[1] != "" {
			add(p[0], paper.Plain, p[1])
		}
	}
	for _, f := range s.asked.Step.Facts {
		add("Fact    ", paper.Plain, f.Says+" ("+f.Cite()+")")
	}
	lines = append(lines, nil)
	for _, c := range append(slices.Clone(s.asked.Step.Cautions), trade.AidsOnly) {
		add("Caution ", paper.Warn, c.Says)
	}
	return lines
}
