package figure

import "math"

// point is a place on a canvas in dots from its top left corner, x to the
// right and y down. Dots are square in both modes: two to a cell across, four
// down.
type point struct{ x, y float64 }

func (p point) plus(d point, times float64) point {
	return point{p.x + d.x*times, p.y + d.y*times}
}

// cell is the square of the canvas behind one character.
type cell struct {
	dots  uint8 // bit 2*row+column
	ink   Ink
	label rune // 0 where there is none, behind where a wide one covers it
	tint  Ink  // of the label
}

// behind marks the second column of a wide label.
const behind rune = -1

// canvas collects dots and labels. Labels win over dots. Nothing outside the
// clip is drawn.
type canvas struct {
	mode      Mode
	w, h      int
	cells     []cell
	low, high point // the clip, low included, high not
	drawn     int   // how far along its dashes the pen is
	words     []word
}

// newCanvas is a blank canvas of w by h cells; ok is false when that is too
// small to draw on.
func newCanvas(w, h int, mode Mode) (c *canvas, ok bool) {
	w, h = min(max(w, 0), widest), min(max(h, 0), tallest)
	c = &canvas{mode: mode, w: w, h: h, cells: make([]cell, w*h)}
	c.unclip()
	return c, w >= narrowest && h >= lowest
}

func (c *canvas) unclip() { c.low, c.high = point{}, c.size() }

// size is the canvas in dots.
func (c *canvas) size() point { return point{float64(2 * c.w), float64(4 * c.h)} }

// dot marks one dot. Where inks meet in a cell the stronger one stands; a sign
// cannot hold two shapes, so in ASCII it also pushes the weaker dots out.
func (c *canvas) dot(p point, ink Ink) {
	p = p.plus(point{1, 1}, 1e-6) // a sum that should be whole may fall just short
	if !(p.x >= c.low.x && p.y >= c.low.y && p.x < c.high.x && p.y < c.high.y) {
		return
	}
	x, y := int(p.x), int(p.y)
	at := &c.cells[y/4*c.w+x/2]
	switch {
	case at.dots == 0 || rank[ink] > rank[at.ink]:
		if c.mode == ASCII {
			at.dots = 0
		}
		at.ink = ink
	case c.mode == ASCII && ink != at.ink:
		return
	}
	at.dots |= 1 << (2*(y%4) + x%2)
}

// cellAt is the column and line of the cell a point lies in.
func cellAt(p point) (x, y int) {
	p.x, p.y = bounded(p.x), bounded(p.y)
	return int(math.Floor(p.x / 2)), int(math.Floor(p.y / 4))
}

// bounded keeps a coordinate where it can be made an integer.
func bounded(v float64) float64 {
	if math.IsNaN(v) {
		return -1e6
	}
	return min(max(v, -1e6), 1e6)
}

// finish turns the canvas into a figure.
func (c *canvas) finish() Figure {
	f := Figure{w: c.w, h: c.h, runes: make([]rune, len(c.cells)), inks: make([]Ink, len(c.cells)), words: c.words}
	for i, at := range c.cells {
		switch {
		case at.label == behind:
			f.runes[i], f.inks[i] = 0, at.tint
		case at.label != 0:
			f.runes[i], f.inks[i] = at.label, at.tint
		case at.dots == 0:
			f.runes[i] = ' '
		case c.mode == ASCII:
			f.runes[i], f.inks[i] = signs[at.dots], at.ink
		default:
			f.runes[i], f.inks[i] = braille(at.dots), at.ink
		}
	}
	return f
}

// finite is true when every value is a number of a size that can be drawn.
func finite(values ...float64) bool {
	for _, v := range values {
		if math.IsNaN(v) || math.Abs(v) > 1e9 {
			return false
		}
	}
	return true
}
