package figure

import (
	"math"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Top is a stump seen from above, north up.
type Top struct {
	Across  unit.Length  // the longer diameter
	Across2 unit.Length  // at right angles to it; 0 for a round stump
	LongWay unit.Bearing // of the longer diameter
	Slots   []Slot
	Blocked []Arc
	Shade   *unit.Bearing // middle of the shaded side; nil where it does not matter
	Field   unit.Length   // draws a stump smaller than this at the scale of one this size; 0 fills the figure
	Assumed bool          // the size is not known: it is said what it is drawn as
	Sys     unit.System
}

// Slot is a place in the bark for one scion.
type Slot struct {
	Bearing unit.Bearing // from the stump's centre
	Label   string
	State   State
}

// State is how far a slot is.
type State uint8

// The states: a thin mark, a bold one, and a bold one with its label in
// brackets.
const (
	Planned State = iota
	Set
	InHand
)

// Arc is a stretch of bark that can carry no slot.
type Arc struct {
	Bearing unit.Bearing // of its middle, from the stump's centre
	Width   unit.Length  // along the bark
	Word    string       // what is wrong with it: torn
}

// shadeSpread is how far the shade is drawn to each side of its middle, in
// degrees.
const shadeSpread = 60

// oval is the stump on the canvas: diameters in dots, angles in radians.
type oval struct {
	centre      point
	long, short float64 // half of each diameter
	way         float64 // bearing of the long one
	scale       float64 // dots to the millimetre
}

// Draw draws the stump in w columns and h lines.
func (t Top) Draw(w, h int, mode Mode) Figure {
	c, ok := newCanvas(w, h, mode)
	if t.Across2 == 0 {
		t.Across2 = t.Across
	}
	if !ok || !finite(t.Across.MM(), t.Across2.MM(), t.LongWay.Deg(), t.Field.MM()) || min(t.Across, t.Across2) <= 0 {
		return c.finish()
	}
	o := t.place(c)
	if t.Shade != nil && finite(t.Shade.Deg()) {
		c.shade(o, *t.Shade)
	}
	if !t.Assumed {
		c.dimension(o.at(t.LongWay, 0.93), o.at(t.LongWay+180, 0.93), "")
	}
	for _, a := range t.Blocked {
		c.blocked(o, a)
	}
	c.ring(o, 1, pen{})
	for _, s := range t.Slots {
		c.slot(o, s)
	}
	t.words(c, o)
	return c.finish()
}

// place fits the oval between the lines kept for north, scale and labels.
func (t Top) place(c *canvas) oval {
	above, below := 1, 1
	if c.h >= scaledTop {
		below = 2
	}
	side := 4
	if c.w < 24 {
		side = 3
	}
	for _, a := range t.Blocked {
		side = max(side, min(width(a.Word)+2, c.w/4))
	}
	side = min(side, c.w/4)
	way := t.LongWay.Normal().Deg() * math.Pi / 180
	long, short := t.Across.MM()/2, t.Across2.MM()/2
	wide := math.Hypot(long*math.Sin(way), short*math.Cos(way))
	tall := math.Hypot(long*math.Cos(way), short*math.Sin(way))
	grow := max(1, t.Field.MM()/2/max(wide, tall))
	roomX, roomY := float64(2*(c.w-2*side)-4), float64(4*(c.h-above-below)-4)
	scale := min(roomX/(2*wide*grow), roomY/(2*tall*grow))
	centre := point{float64(c.w), float64(4*above) + float64(4*(c.h-above-below))/2}
	return oval{centre: centre, long: long * scale, short: short * scale, way: way, scale: scale}
}

// at is the point of the oval in a direction, times of the way out to the bark.
func (o oval) at(b unit.Bearing, times float64) point {
	return o.centre.plus(towards(b), o.reach(b)*times)
}

// towards is a step of one dot in a direction, north up.
func towards(b unit.Bearing) point {
	sin, cos := math.Sincos(b.Normal().Deg() * math.Pi / 180)
	return point{sin, -cos}
}

// reach is how far the bark lies from the centre in a direction.
func (o oval) reach(b unit.Bearing) float64 {
	sin, cos := math.Sincos(b.Normal().Deg()*math.Pi/180 - o.way)
	return o.long * o.short / math.Hypot(o.short*cos, o.long*sin)
}

// ring draws the oval, times its size.
func (c *canvas) ring(o oval, times float64, with pen) {
	through := make([]point, 0, 181)
	for b := 0; b <= 360; b += 2 {
		through = append(through, o.at(unit.Bearing(b), times))
	}
	c.polyline(through, with)
}

// scaledTop is the least height, in lines, of a stump that has a line for its scale.
const scaledTop = 7

// northSigns show which way is north, in a corner, where no slot's number comes.
var northSigns = map[Mode]string{Braille: "↑N", ASCII: "^N"}

// words writes north, the labels, the long diameter and the scale.
func (t Top) words(c *canvas, o oval) {
	west, _ := cellAt(o.centre.plus(point{x: -1}, max(o.long, t.Field.MM()/2*o.scale)))
	left := max(west-7, 1) // of what stands in the corners
	c.text(left, 0, northSigns[c.mode], Plain)
	size := t.Sys.Length(t.Across)
	if unit.Crosses(size, t.Across, trade.StumpLimits...) {
		size = t.Sys.Beside(t.Across, trade.StumpLimits...)
	}
	x, y := startOf(o.centre, size)
	inside := !t.Assumed && t.Across.MM()*o.scale > 2*float64(width(size)) && c.h > scaledTop && c.free(x, y, width(size))
	if inside {
		c.centred(o.centre, size, Plain)
	}
	if t.Shade != nil && finite(t.Shade.Deg()) && c.w >= 50 {
		c.inside(o.at(*t.Shade, 0.66), "shade", Faint)
	}
	for _, s := range t.Slots {
		label, ink := s.Label, Plain
		if s.State == InHand {
			label, ink = "["+label+"]", Accent
		}
		c.outward(o.at(s.Bearing, 1).plus(towards(s.Bearing), 3), towards(s.Bearing), short(label, c.w/4), ink)
	}
	for _, a := range t.Blocked {
		c.outward(o.at(a.Bearing, 1).plus(towards(a.Bearing), 3), towards(a.Bearing), short(a.Word, c.w/4), Warn)
	}
	after := 0
	if c.h >= scaledTop {
		after = c.scaleBar(left, c.h-1, o.scale, float64(c.w)*2/3, t.Sys)
	}
	if !inside {
		said := fitting(c.w-after-3, size+" across", size)
		if t.Assumed {
			said = fitting(c.w-after-3, "not measured, drawn as "+size, "drawn as "+size, "as "+size)
		}
		if x := max(after+2, left); c.clear(x, c.h-1, width(said)) {
			c.text(x, c.h-1, said, Plain)
		}
	}
}
