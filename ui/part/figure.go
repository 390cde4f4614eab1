package part

import (
	"barkslip/ui/figure"
	"barkslip/ui/paper"
)

// inkOf maps the figures' inks to the screen's.
var inkOf = map[figure.Ink]paper.Ink{
	figure.Plain: paper.Plain, figure.Accent: paper.Accent, figure.Warn: paper.Warn, figure.Growth: paper.Growth, figure.Faint: paper.Faint,
}

// Inked turns a figure into lines of the screen. What is black is drawn as dark as
// the ground allows and what is white as bright: on a dark ground that is faint and
// strong, on a light one strong and, hollow, the ground itself. Nothing is drawn in a
// session told in words.
func (x *Session) Inked(f figure.Figure) []paper.Line {
	if x.spoken {
		return nil
	}
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

// Bar is a bar of stretches in so many columns at the most, which the amount most
// takes; see figure.Bar.
func Bar(columns int, most float64, stretches ...figure.Stretch) paper.Line {
	return inked(figure.Bar{Most: most, Stretches: stretches}.Draw(columns), func(i figure.Ink) paper.Ink { return inkOf[i] })[0]
}

// Shaded is a stretch of a bar in one of the shades.
func (o Options) Shaded(of int, shade figure.Shade, ink figure.Ink) figure.Stretch {
	return figure.Stretch{Of: float64(of), Sign: shade.Sign(o.Mode()), Ink: ink}
}
