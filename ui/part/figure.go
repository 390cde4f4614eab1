package part

import (
	"barkslip/ui/figure"
	"barkslip/ui/paper"
)

// inkOf maps the figures' inks to the screen's.
var inkOf = map[figure.Ink]paper.Ink{
	figure.Plain: paper.Plain, figure.Accent: paper.Accent, figure.Warn: paper.Warn, figure.Growth: paper.Growth, figure.Faint: paper.Faint,
}

// Inked turns a figure into lines of the screen.
func Inked(f figure.Figure) []paper.Line {
	w, h := f.Size()
	out := make([]paper.Line, h)
	for y := range h {
		var run []rune
		ink := figure.Plain
		flush := func() {
			if len(run) > 0 {
				out[y] = out[y].Add(inkOf[ink], string(run))
			}
			run = run[:0]
		}
		for x := range w {
			r, i := f.Cell(x, y)
			if i != ink {
				flush()
				ink = i
			}
			if r != 0 {
				run = append(run, r)
			}
		}
		flush()
	}
	return out
}
