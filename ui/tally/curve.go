package tally

import (
	"fmt"

	"barkslip/core/results"
	"barkslip/core/tally"
	"barkslip/core/trade"
	"barkslip/ui/figure"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// curve shows how long it took from graft to push: of the two groups picked, else
// of what is under the cursor.
func (s *Screen) curve() part.Msgs {
	of := []*results.Group{s.here()}
	if a, b, ok := s.pair(); ok {
		of = []*results.Group{a, b}
	}
	var curves []tally.Curve
	var names []string
	var works []trade.Worked
	for _, g := range of {
		one := g
		if g == &s.tally.Total {
			one = nil
		}
		c := s.cols.Curve(&s.tally, one)
		if c.Work.Question += ": " + s.name(g); len(c.Steps) > 0 {
			curves, names = append(curves, c), append(names, s.name(g))
		}
		works = append(works, c.Work)
	}
	lines := func(width int) []paper.Line {
		out := s.drawCurves(curves, names, width)
		for _, w := range works {
			out = append(append(out, nil), part.WorkLines(w, s.x.Site().Units, s.x.Measure(width-4))...)
		}
		return out
	}
	return part.Msgs{part.Read{Page: part.NewPage(s.x, "From graft to push", s.of(), lines)}}
}

// drawCurves draws the share that has pushed as the days go by, and says when half
// of them had.
func (s *Screen) drawCurves(curves []tally.Curve, names []string, width int) []paper.Line {
	if len(curves) == 0 {
		return []paper.Line{nil, paper.Text(paper.Strong, "  None was seen pushing yet.")}
	}
	last := 1.0
	for _, c := range curves {
		last = max(last, c.Steps[len(c.Steps)-1].At)
	}
	v := figure.Curve{X1: last, Y1: 1, YName: "pushed, of 100 grafts"}
	for _, share := range []float64{0, 0.5, 1} {
		v.YTicks = append(v.YTicks, figure.Tick{At: share, Label: fmt.Sprintf("%.0f", 100*share)})
	}
	for day := 0.0; day <= last; day += 7 {
		v.XTicks = append(v.XTicks, figure.Tick{At: day, Label: fmt.Sprintf("%.0f d", day)})
	}
	var out []paper.Line
	for i, c := range curves {
		points, pushed := []figure.Point{{}}, 0.0
		for _, step := range c.Steps {
			points = append(points, figure.Point{X: step.At, Y: pushed}, figure.Point{X: step.At, Y: 1 - step.Still})
			pushed = 1 - step.Still
		}
		dash := []figure.Dash{figure.Solid, figure.Dashed}[i]
		v.Series = append(v.Series, figure.Series{Name: names[i], Points: append(points, figure.Point{X: last, Y: pushed}), Dash: dash, Ink: figure.Growth})
		words := fmt.Sprintf("%s: half had not pushed by the last visit.", names[i])
		if days, reached := c.Median(); reached {
			words = fmt.Sprintf("%s: half had been seen pushing %.0f days after the scion was set.", names[i], days)
		}
		out = append(out, part.Indent(2, part.Wrapped(paper.Strong, words, width-4))...)
	}
	drawn := s.x.Inked(v.Draw(min(width-4, 96), max(6, min(s.x.BodyHeight()-len(out)-2, 16)), s.x.Mode()))
	return append(append([]paper.Line{nil}, out...), part.Indent(2, drawn)...)
}
