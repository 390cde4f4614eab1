package part

import (
	"strings"

	"barkslip/ui/figure"
	"barkslip/ui/paper"
)

// inkOf maps the figures' inks to the screen's.
var inkOf = map[figure.Ink]paper.Ink{
	figure.Plain: paper.Plain, figure.Accent: paper.Accent, figure.Warn: paper.Warn, figure.Growth: paper.Growth, figure.Faint: paper.Faint,
}

// Inked turns a figure into lines of the screen. What is black is drawn as dark as
// the ground allows and what is white as bright: on a dark ground that is faint and
// strong, on a light one strong and, hollow, the ground itself.
func (x *Session) Inked(f figure.Figure) []paper.Line {
	black, white := paper.Strong, paper.Plain
	if x.Theme.Name == "dark" {
		black, white = paper.Faint, paper.Strong
	}
	return inked(f, func(i figure.Ink) paper.Ink {
		switch i {
		case figure.Black:
			return black
		case figure.White:
			return white
		}
		return inkOf[i]
	})
}

func inked(f figure.Figure, inkOf func(figure.Ink) paper.Ink) []paper.Line {
	w, h := f.Size()
	out := make([]paper.Line, h)
	for y := range h {
		var run []rune
		ink := figure.Plain
		flush := func() {
			if len(run) > 0 {
				out[y] = out[y].Add(inkOf(ink), string(run))
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

// Bar is a share, 0 to 1, of w columns as a bar, in the one style of all bars;
// with open the rest of the columns is a thin line.
func (x *Session) Bar(ink paper.Ink, share float64, w int, open bool) paper.Line {
	drawn := figure.Bar{Share: share, Open: open}.Draw(w, x.Mode())
	line := inked(drawn, func(i figure.Ink) paper.Ink {
		if i == figure.Plain {
			return ink
		}
		return inkOf[i]
	})[0]
	if n := len(line); n > 0 && !open {
		line[n-1].Text = strings.TrimRight(line[n-1].Text, " ")
	}
	return line
}
