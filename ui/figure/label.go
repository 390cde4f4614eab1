package figure

import (
	"math"
	"unicode"
)

// text writes s from a cell to the right, over any dots, cut at the edge.
func (c *canvas) text(x, y int, s string, ink Ink) {
	if y < 0 || y >= c.h || s == "" {
		return
	}
	c.words = append(c.words, word{x, y, s})
	for _, r := range s {
		n := columns.RuneWidth(r)
		if n == 0 || unicode.IsControl(r) {
			continue
		}
		if x >= 0 && x+n <= c.w {
			c.put(x, y, n, r, ink)
		}
		x += n
	}
}

// put writes one character n columns wide; a wide one it falls on is taken away.
func (c *canvas) put(x, y, n int, r rune, ink Ink) {
	row := c.cells[y*c.w : (y+1)*c.w]
	if row[x].label == behind {
		row[x-1].label = ' '
	}
	if end := x + n; end < c.w && row[end].label == behind {
		row[end].label = ' '
	}
	row[x].label, row[x].tint = r, ink
	if n == 2 {
		row[x+1].label, row[x+1].tint = behind, ink
	}
}

// free is true when n columns from a cell lie on the canvas and carry no
// label, nor touch one.
func (c *canvas) free(x, y, n int) bool {
	if x < 0 || y < 0 || y >= c.h || x+n > c.w {
		return false
	}
	for i := max(x-1, 0); i < min(x+n+1, c.w); i++ {
		if c.cells[y*c.w+i].label != 0 {
			return false
		}
	}
	return true
}

// clear is free, and neither over nor beside dots but faint ones.
func (c *canvas) clear(x, y, n int) bool {
	if !c.free(x, y, n) {
		return false
	}
	for _, at := range c.cells[y*c.w+max(x-1, 0) : y*c.w+min(x+n+1, c.w)] {
		if at.dots != 0 && at.ink != Faint {
			return false
		}
	}
	return true
}

// blank is free, and over no dots at all.
func (c *canvas) blank(x, y, n int) bool {
	if !c.free(x, y, n) {
		return false
	}
	for _, at := range c.cells[y*c.w+x : y*c.w+x+n] {
		if at.dots != 0 {
			return false
		}
	}
	return true
}

// centred writes s with its middle at p.
func (c *canvas) centred(p point, s string, ink Ink) {
	x, y := startOf(p, s)
	c.text(x, y, s, ink)
}

// startOf is the cell where s starts that has its middle at p.
func startOf(p point, s string) (x, y int) {
	_, y = cellAt(p)
	x = int(math.Round(bounded(p.x)/2 - float64(width(s))/2))
	return x, y
}

// inside writes s with its middle at p if the place is clear.
func (c *canvas) inside(p point, s string, ink Ink) {
	if x, y := startOf(p, s); c.clear(x, y, width(s)) {
		c.text(x, y, s, ink)
	}
}

// outward writes s at the first clear place from p on along dir, failing that
// at the first free one; it says whether there was any.
func (c *canvas) outward(p, dir point, s string, ink Ink) bool {
	const reach = 24 // dots
	for _, good := range []func(x, y, n int) bool{c.clear, c.free} {
		for t := range reach {
			x, y := startOf(p.plus(dir, float64(t)), s)
			if good(x, y, width(s)) {
				c.text(x, y, s, ink)
				return true
			}
		}
	}
	return false
}
