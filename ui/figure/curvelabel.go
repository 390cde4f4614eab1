package figure

import "math"

// marks writes a sign on every measured point.
func (f frame) marks(c *canvas) {
	for _, s := range f.Series {
		for _, p := range s.Points {
			if s.Dots && f.holds(p) {
				x, y := cellAt(f.at(p))
				c.text(x, y, "o", s.Ink)
			}
		}
	}
}

// lineLabels writes the axis's name, then beside each line across what it is.
func (f frame) lineLabels(c *canvas) {
	top := int(f.low.y) / 4
	if top > 0 {
		c.text(0, 0, f.YName, Faint)
	}
	for _, l := range f.VLines {
		if f.holds(Point{l.At, f.Y0}) {
			f.upright(c, l)
		}
	}
	for _, l := range f.HLines {
		if f.holds(Point{f.X0, l.At}) {
			y := f.at(Point{f.X0, l.At}).y
			f.across(c, l.Label, y, []float64{-3, 3, 0}, l.Ink)
		}
	}
	for _, b := range f.Bands {
		if finite(b.Y0, b.Y1) {
			f.across(c, b.Label, f.at(Point{f.X0, (b.Y0 + b.Y1) / 2}).y, []float64{0, 3, -3}, b.Ink)
		}
	}
}

// upright writes the label of a line up the curve over its head where that is
// free, else right or left of it in the lines below.
func (f frame) upright(c *canvas, l Line) {
	x, _ := cellAt(f.at(Point{l.At, f.Y0}))
	top, n := int(f.low.y)/4, width(l.Label)
	if start := f.overhead(c, l, x, n); top > 0 && c.free(start, 0, n) {
		c.text(start, 0, l.Label, l.Ink)
		return
	}
	for _, good := range []func(x, y, n int) bool{c.clear, c.free} {
		for y := top; y < int(f.high.y)/4; y++ {
			for _, start := range []int{x + 2, x - 1 - n} {
				if good(start, y, n) {
					c.text(start, y, l.Label, l.Ink)
					return
				}
			}
		}
	}
}

// overhead is where a label of n columns over the line at column x starts:
// about its middle, or turned away from a line close by.
func (f frame) overhead(c *canvas, l Line, x, n int) int {
	start := x - n/2
	for _, other := range f.VLines {
		at, _ := cellAt(f.at(Point{other.At, f.Y0}))
		switch {
		case other.At > l.At && at-x < n:
			start = x - n + 1
		case other.At < l.At && x-at < n:
			start = x
		}
	}
	return min(max(start, int(f.low.x)/2), c.w-n)
}

// across writes a label at the right end of a height, failing that at the left
// one, at the first clear one of the steps from it.
func (f frame) across(c *canvas, label string, height float64, steps []float64, ink Ink) {
	n := width(label)
	right, left := int(f.high.x)/2-n, int(f.low.x)/2+2
	for _, good := range []func(x, y, n int) bool{c.clear, c.free} {
		for _, start := range []int{right, left} {
			for _, step := range steps {
				_, y := cellAt(point{0, height + step})
				if y >= int(f.low.y)/4 && y <= int(f.high.y)/4 && good(start, y, n) {
					c.text(start, y, label, ink)
					return
				}
			}
		}
	}
}

// names writes each series' name beside it, where it is near its own line and
// far from the others.
func (f frame) names(c *canvas) {
	heights := make([][]float64, len(f.Series))
	for i, s := range f.Series {
		heights[i] = f.heights(c, s)
	}
	for i, s := range f.Series {
		f.name(c, heights, i, s)
	}
}

// name writes the name of series i at the best place, over its own line where
// there is none clear of it.
func (f frame) name(c *canvas, heights [][]float64, i int, s Series) {
	const covering = 6
	n := width(s.Name)
	best, bestX, bestY := math.Inf(-1), 0, 0
	for x := int(f.low.x)/2 + 1; n > 0 && x+n <= int(f.high.x)/2+1; x++ {
		for y := int(f.low.y) / 4; y < int(f.high.y)/4; y++ {
			worth := f.worth(c, heights, i, x, y, n)
			if worth <= best || !c.free(x, y, n) {
				continue
			}
			if !c.clear(x, y, n) {
				worth -= covering
			}
			if worth > best {
				best, bestX, bestY = worth, x, y
			}
		}
	}
	if !math.IsInf(best, -1) {
		c.text(bestX, bestY, s.Name, s.Ink)
	}
}

// worth is how well a name of n columns stands at a cell: the nearer its own
// line the better, poorly where another is as near; impossible far from its own.
func (f frame) worth(c *canvas, heights [][]float64, own, x, y, n int) float64 {
	const reach, clearance = 12, 5 // dots
	near := func(i int) float64 {
		least := math.Inf(1)
		for _, column := range []int{max(x-2, 0), x + n/2, min(x+n+1, c.w-1)} {
			if away := math.Abs(heights[i][column] - float64(4*y+2)); away < least {
				least = away
			}
		}
		return least
	}
	mine := near(own)
	if mine > reach {
		return math.Inf(-1)
	}
	worth := -mine
	for i := range heights {
		if i == own {
			continue
		}
		other := near(i)
		worth += min(other, reach)
		if other < mine+clearance {
			worth -= 2 * reach
		}
	}
	for _, at := range c.cells[y*c.w+x : y*c.w+x+n] {
		if at.dots != 0 { // a band or another line would be hidden
			worth--
		}
	}
	return worth
}

// heights is where a series stands, in dots, in the middle of every column;
// not a number beyond its ends.
func (f frame) heights(c *canvas, s Series) []float64 {
	all := make([]float64, c.w)
	for column := range all {
		x := f.X0 + (float64(2*column+1)-f.low.x)/(f.high.x-f.low.x)*(f.X1-f.X0)
		all[column] = math.NaN()
		for i := 1; i < len(s.Points); i++ {
			p, q := s.Points[i-1], s.Points[i]
			if p.X <= x && x <= q.X && p.X < q.X {
				all[column] = f.at(Point{x, p.Y + (x-p.X)/(q.X-p.X)*(q.Y-p.Y)}).y
				break
			}
		}
	}
	return all
}
