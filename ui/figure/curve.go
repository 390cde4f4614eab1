package figure

import "math"

// Curve is one or more series drawn against two axes.
type Curve struct {
	X0, X1, Y0, Y1 float64 // what the axes run over
	XTicks, YTicks []Tick
	YName          string // what the upright axis counts, over it
	Series         []Series
	Bands          []Band
	HLines, VLines []Line
}

// Tick is a marked place on an axis.
type Tick struct {
	At    float64
	Label string
}

// Point is a place on the plane of the axes.
type Point struct{ X, Y float64 }

// Series is one line of the curve, told from the others by its dashes and by
// its name beside it.
type Series struct {
	Name   string
	Points []Point
	Dash   Dash
	Ink    Ink
	Dots   bool // each point is marked, as when it was measured
}

// Line is a line right across: a limit, a time.
type Line struct {
	At    float64
	Label string
	Brief []string // the label where there is no room for all of it, the longest first
	Ink   Ink
	Dash  Dash
}

// Band is a stretch of the upright axis, drawn as a light hatch right across.
type Band struct {
	Y0, Y1 float64
	Label  string
	Ink    Ink
}

// frame is the plane of the axes laid on the canvas.
type frame struct {
	Curve
	low, high point     // in dots
	stands    [][]stand // of each series, column by column
}

// Draw draws the curve in w columns and h lines.
func (v Curve) Draw(w, h int, mode Mode) Figure {
	c, ok := newCanvas(w, h, mode)
	if !ok || !v.drawable() {
		return c.finish()
	}
	f := v.frame(c, 0)
	f.draw(c)
	return c.finish()
}

// axisSays is true in a figure too narrow for words along a line across: what it is
// then stands on the upright axis, at its height.
func (v Curve) axisSays(w int) bool { return w < 34 }

// drawable is false for axes that run over nothing.
func (v Curve) drawable() bool {
	return finite(v.X0, v.X1, v.Y0, v.Y1) && v.X1 > v.X0 && v.Y1 > v.Y0
}

// frame leaves room for the labels of the axes, a line for the name and marks
// above, and the last columns for what stands beside the curve.
func (v Curve) frame(c *canvas, beside int) frame {
	left := 0
	for _, t := range v.YTicks {
		left = max(left, width(t.Label))
	}
	if v.axisSays(c.w) {
		for _, l := range v.HLines {
			left = max(left, width(l.least()))
		}
	}
	left = min(left+1, c.w/3)
	above, below := 1, 1
	if c.h < 6 {
		above, below = 0, 0
	}
	f := frame{
		Curve: v,
		low:   point{float64(2 * left), float64(4 * above)},
		high:  point{float64(2*(c.w-beside)) - 1, float64(4*(c.h-below)) - 1},
	}
	for _, s := range v.Series {
		f.stands = append(f.stands, f.standing(c, s))
	}
	return f
}

// draw draws everything, the labels last and those that matter most first.
func (f frame) draw(c *canvas) {
	f.axes(c)
	c.low, c.high = f.low, point{f.high.x + 1, f.high.y + 1}
	for _, b := range f.Bands {
		f.band(c, b)
	}
	for _, l := range f.VLines {
		x := f.at(Point{l.At, 0}).x
		c.line(point{x, f.low.y}, point{x, f.high.y}, pen{ink: l.Ink, dash: l.Dash})
	}
	for _, l := range f.HLines {
		y := f.at(Point{0, l.At}).y
		c.line(point{f.low.x, y}, point{f.high.x, y}, pen{ink: l.Ink, dash: l.Dash})
	}
	for _, s := range f.Series {
		f.series(c, s)
	}
	c.unclip()
	f.marks(c)
	f.lineLabels(c)
	f.names(c)
}

// at is where a point of the plane lies on the canvas.
func (f frame) at(p Point) point {
	return point{
		f.low.x + (p.X-f.X0)/(f.X1-f.X0)*(f.high.x-f.low.x),
		f.high.y - (p.Y-f.Y0)/(f.Y1-f.Y0)*(f.high.y-f.low.y),
	}
}

// holds is true for a point between the axes' ends.
func (f frame) holds(p Point) bool {
	return p.X >= f.X0 && p.X <= f.X1 && p.Y >= f.Y0 && p.Y <= f.Y1
}

// axes draws the two axes with their ticks; a label that would run into its
// neighbour is left out.
func (f frame) axes(c *canvas) {
	with := pen{ink: Faint}
	corner := point{f.low.x, f.high.y}
	if f.axisSays(c.w) {
		for _, l := range f.HLines {
			_, y := cellAt(f.at(Point{f.X0, l.At}))
			said := fitting(int(f.low.x)/2-1, l.least())
			if x := int(f.low.x)/2 - 1 - width(said); f.holds(Point{f.X0, l.At}) && c.free(x, y, width(said)) {
				c.text(x, y, said, l.Ink)
			}
		}
	}
	c.line(f.low, corner, with)
	c.line(corner, f.high, with)
	for _, t := range f.YTicks {
		if !f.holds(Point{f.X0, t.At}) {
			continue
		}
		at := f.at(Point{f.X0, t.At})
		c.line(at, at.plus(point{x: 1}, 2), with)
		_, y := cellAt(at)
		label := short(t.Label, int(f.low.x)/2-1)
		if x := int(f.low.x)/2 - 1 - width(label); c.free(x, y, width(label)) {
			c.text(x, y, label, Faint)
		}
	}
	line := int(f.high.y)/4 + 1
	for _, t := range f.XTicks {
		if !f.holds(Point{t.At, f.Y0}) {
			continue
		}
		at := f.at(Point{t.At, f.Y0})
		c.line(at, at.plus(point{y: 1}, -2), with)
		x, _ := startOf(at, t.Label)
		if x = min(max(x, 0), c.w-width(t.Label)); c.free(x, line, width(t.Label)) {
			c.text(x, line, t.Label, Faint)
		}
	}
}

// band draws a stretch of the upright axis: dotted edges, and between them,
// where they stand apart, slanting rows of dots.
func (f frame) band(c *canvas, b Band) {
	if !finite(b.Y0, b.Y1) || b.Y0 >= b.Y1 {
		return
	}
	top, bottom := f.at(Point{f.X0, b.Y1}).y, f.at(Point{f.X0, b.Y0}).y
	for _, edge := range []float64{top, bottom} {
		c.line(point{f.low.x, edge}, point{f.high.x, edge}, pen{ink: b.Ink, dash: Dotted})
	}
	if bottom-top < 10 {
		return
	}
	for y := math.Ceil(max(top, f.low.y)); y <= min(bottom, f.high.y); y++ {
		for x := f.low.x; x <= f.high.x; x++ {
			if int(y)%2 == 0 && (int(x)+int(y))%8 == 2 {
				c.dot(point{x, y}, b.Ink)
			}
		}
	}
}

// series draws one series through its points.
func (f frame) series(c *canvas, s Series) {
	through := make([]point, len(s.Points))
	for i, p := range s.Points {
		through[i] = f.at(p)
	}
	c.polyline(through, pen{ink: s.Ink, dash: s.Dash})
}
