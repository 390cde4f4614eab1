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
		if f.holds(Point{f.X0, l.At}) && !f.axisSays(c.w) {
			y := f.at(Point{f.X0, l.At}).y
			f.across(c, l.texts(), y, []float64{-3, 3, 0}, l.Ink)
		}
	}
	for _, b := range f.Bands {
		if finite(b.Y0, b.Y1) {
			f.across(c, []string{b.Label}, f.at(Point{f.X0, (b.Y0 + b.Y1) / 2}).y, []float64{0, 3, -3}, b.Ink)
		}
	}
}

// texts are a line's label and its brief forms.
func (l Line) texts() []string { return append([]string{l.Label}, l.Brief...) }

// least is the briefest that can be said of a line.
func (l Line) least() string { return l.texts()[len(l.Brief)] }

// upright writes the label of a line up the curve over its head where that is
// free, else right or left of it in the lines below; in brief where there is no
// room for all of it.
func (f frame) upright(c *canvas, l Line) {
	x, _ := cellAt(f.at(Point{l.At, f.Y0}))
	top := int(f.low.y) / 4
	for _, best := range []bool{true, false} {
		for _, s := range l.texts() {
			n := width(s)
			starts := f.overhead(l, x, n)
			if best {
				starts = starts[:1]
			}
			for _, start := range starts {
				if top > 0 && start >= int(f.low.x)/2 && c.free(start, 0, n) {
					c.text(start, 0, s, l.Ink)
					return
				}
			}
		}
	}
	for _, s := range l.texts() {
		n := width(s)
		for y := top; y < int(f.high.y)/4; y++ {
			for _, start := range []int{x + 1, x - n} {
				if start >= int(f.low.x)/2+1 && c.clear(start, y, n) {
					c.text(start, y, s, l.Ink)
					return
				}
			}
		}
	}
}

// overhead is where a label of n columns over the line at column x may start, the
// best first: about its middle, but turned away from a line close by; in any case
// it stands over its line.
func (f frame) overhead(l Line, x, n int) []int {
	middle, endsHere, startsHere := x-n/2, x-n+1, x
	for _, other := range f.VLines {
		at, _ := cellAt(f.at(Point{other.At, f.Y0}))
		switch {
		case other.At > l.At && at-x < n:
			return []int{endsHere, middle, startsHere}
		case other.At < l.At && x-at < n:
			return []int{startsHere, middle, endsHere}
		}
	}
	return []int{middle, startsHere, endsHere}
}

// across writes a label along a height, as far right as there is a clear place at
// one of the steps from it, failing that at the right or over its own line; in
// brief where there is no room for all of it. It never hides a series.
func (f frame) across(c *canvas, texts []string, height float64, steps []float64, ink Ink) {
	open := func(x, y, n int) bool {
		for i := range f.stands {
			if covered(f.stands[i], x-1, y, n+2) > 0 {
				return false
			}
		}
		return c.free(x, y, n)
	}
	for _, s := range texts {
		n := width(s)
		for _, good := range []func(x, y, n int) bool{c.clear, open} {
			for start := int(f.high.x)/2 - n; start > int(f.low.x)/2+1; start-- {
				for _, step := range steps {
					_, y := cellAt(point{0, height + step})
					if y >= int(f.low.y)/4 && y <= int(f.high.y)/4 && good(start, y, n) {
						c.text(start, y, s, ink)
						return
					}
				}
			}
		}
	}
}

// A stand is what a series takes up of each column: its least and greatest height
// there, in dots; not a number beyond its ends.
type stand struct{ top, bottom float64 }

// away is how far, in dots, a height lies from the series.
func (s stand) away(height float64) float64 {
	if math.IsNaN(s.top) {
		return math.Inf(1)
	}
	return max(s.top-height, height-s.bottom, 0)
}

// names writes each series' name on or right beside its own line, and nearer to
// it than to any other; a name that has no such place is left out.
func (f frame) names(c *canvas) {
	for i, s := range f.Series {
		n, best, bestX, bestY := width(s.Name), math.Inf(-1), 0, 0
		for x := int(f.low.x)/2 + 1; n > 0 && x+n <= int(f.high.x)/2+1; x++ {
			top, bottom := lines(f.stands[i][max(x-2, 0):min(x+n+2, c.w)])
			for y := max(top-1, int(f.low.y)/4); y <= min(bottom+1, int(f.high.y)/4); y++ {
				if worth := f.worth(c, i, x, y, n); worth > best && c.free(x, y, n) {
					best, bestX, bestY = worth, x, y
				}
			}
		}
		if !math.IsInf(best, -1) {
			c.text(bestX, bestY, s.Name, s.Ink)
		}
	}
}

// lines are the first and the last line a series touches.
func lines(stands []stand) (first, last int) {
	first, last = tallest, -1
	for _, s := range stands {
		if !math.IsNaN(s.top) {
			_, top := cellAt(point{0, s.top})
			_, bottom := cellAt(point{0, s.bottom})
			first, last = min(first, top), max(last, bottom)
		}
	}
	return first, last
}

// worth is how well a name of n columns stands at a cell: right beside its own line
// best, on it where it runs level; impossible away from it, over another, or nearer
// to another.
func (f frame) worth(c *canvas, own, x, y, n int) float64 {
	const touching, far, inline = 4, 12, 4 // dots; inline is what writing over the line costs
	mine, on := near(f.stands[own], x, y, n, touching), covered(f.stands[own], x, y, n)
	if mine > touching {
		return math.Inf(-1)
	}
	worth, clearance := -mine/2, mine+3
	if on > 0 {
		for column := x - 1; column < x+n+1; column++ {
			if column < 0 || column >= c.w || !(f.stands[own][column].away(float64(4*y+2)) <= touching+2) {
				return math.Inf(-1) // the line would be lost behind it
			}
		}
		worth, clearance = -inline, 1
	}
	for i := range f.stands {
		if i == own {
			continue
		}
		other := near(f.stands[i], x, y, n, far)
		if other <= clearance || covered(f.stands[i], x-1, y, n+2) > 0 {
			return math.Inf(-1)
		}
		worth += min(other, far) / 3
	}
	for _, at := range c.cells[y*c.w+x : y*c.w+x+n] {
		switch {
		case at.dots != 0 && at.ink == Faint:
			worth--
		case at.dots != 0 && on == 0:
			worth -= 3
		}
	}
	return worth
}

// near is how far, in dots, the cells of a name lie from a series; it looks no
// further than so many dots to each side.
func near(stands []stand, x, y, n, far int) float64 {
	beside, least := far/2+1, math.Inf(1)
	for column := max(x-beside, 0); column < min(x+n+beside, len(stands)); column++ {
		across := float64(2 * max(x-column-1, column-x-n, 0))
		down := max(stands[column].top-float64(4*y+4), float64(4*y)-stands[column].bottom, 0)
		if !math.IsNaN(down) {
			least = min(least, math.Hypot(across, down))
		}
	}
	return least
}

// covered counts the columns in which a name at a cell would hide a series.
func covered(stands []stand, x, y, n int) (columns int) {
	for column := x; column < x+n; column++ {
		if covers(stands, column, y) {
			columns++
		}
	}
	return columns
}

// covers is true where a series runs through a cell.
func covers(stands []stand, x, y int) bool {
	return x >= 0 && x < len(stands) && stands[x].away(float64(4*y+2)) <= 2
}

// standing is where a series stands in every column.
func (f frame) standing(c *canvas, s Series) []stand {
	all := make([]stand, c.w)
	nib := 0.0
	if s.Dash == Filled || s.Dash == Hollow {
		nib = 1
	}
	for column := range all {
		left, right := f.along(float64(2*column)), f.along(float64(2*column+2))
		at := stand{math.Inf(1), math.Inf(-1)}
		for i := 1; i < len(s.Points); i++ {
			p, q := s.Points[i-1], s.Points[i]
			if p.X > q.X {
				continue
			}
			for _, x := range []float64{max(left, p.X), min(right, q.X)} {
				if x < p.X || x > q.X || x < left || x > right || !finite(p.Y, q.Y) {
					continue
				}
				for _, y := range ends(p, q, x) {
					height := f.at(Point{x, y}).y
					at = stand{min(at.top, height-nib), max(at.bottom, height+nib)}
				}
			}
		}
		if at.top > at.bottom {
			at = stand{math.NaN(), math.NaN()}
		}
		all[column] = at
	}
	return all
}

// ends are the heights from p to q at x: both where that is a step straight up.
func ends(p, q Point, x float64) []float64 {
	if p.X == q.X {
		return []float64{p.Y, q.Y}
	}
	return []float64{p.Y + (x-p.X)/(q.X-p.X)*(q.Y-p.Y)}
}

// along is the place of the plane at a column of dots.
func (f frame) along(x float64) float64 {
	return f.X0 + (x-f.low.x)/(f.high.x-f.low.x)*(f.X1-f.X0)
}
