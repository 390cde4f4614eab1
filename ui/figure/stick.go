package figure

import (
	"strconv"
	"strings"

	"barkslip/core/unit"
)

// Stick is a stick of scion wood, butt to the left, with its nodes and where
// to cut it. Places are from the butt.
type Stick struct {
	Length    unit.Length
	Nodes     []Node
	Pieces    []Piece
	TrimButt  unit.Length // taken off each end before use
	TrimTip   unit.Length
	ThickButt unit.Length // 0 if not measured
	ThickTip  unit.Length
	Sys       unit.System
}

// Node is a node of the stick and how many buds it carries: 2 a pair, 1 the
// first only, 0 none.
type Node struct {
	At   unit.Length
	Buds int
}

// Piece is one scion out of the stick.
type Piece struct {
	From, To unit.Length
	Paired   bool // all its nodes carry both buds
}

// unmeasured is the thickness drawn when a stick's own is not known.
const unmeasured = 10 * unit.Millimetre

// Draw draws the stick in w columns and h lines.
func (s Stick) Draw(w, h int, mode Mode) Figure {
	c, ok := newCanvas(w, h, mode)
	if !ok || !finite(s.Length.MM(), s.TrimButt.MM(), s.TrimTip.MM(), s.ThickButt.MM(), s.ThickTip.MM()) || s.Length <= 0 {
		return c.finish()
	}
	scale := float64(2*(c.w-2)-1) / s.Length.MM()
	thick := max(s.thickness(0).MM(), s.thickness(1).MM()) * scale
	tall := 4 * max(1, int(thick+6)/4) // the stick's own lines, in dots
	top := max(0, 4*c.h-tall-12) / 8 * 4
	axis := point{2, float64(top+4) + float64(tall)/2}
	c.wood(s, axis, scale)
	c.nodes(s, axis, top/4, scale)
	c.pieces(s, axis, (top+4+tall)/4, scale)
	c.ruler(s, axis, (top+4+tall)/4+1, scale)
	if top > 0 {
		c.text(1, top/4-1, fitting(c.w-1, ": both buds  . first bud only  x none", ": both  . first  x none"), Faint)
	}
	return c.finish()
}

// thickness is the stick's, share of the way from butt to tip.
func (s Stick) thickness(share float64) unit.Length {
	butt, tip := s.ThickButt, s.ThickTip
	if butt <= 0 {
		butt = tip
	}
	if tip <= 0 {
		tip = butt
	}
	if butt <= 0 {
		return unmeasured
	}
	return butt + unit.Length(share)*(tip-butt)
}

// wood draws the stick's outline, each end that is trimmed off dotted.
func (c *canvas) wood(s Stick, axis point, scale float64) {
	at := func(place unit.Length, side float64) point {
		half := max(s.thickness(float64(place/s.Length)).MM()*scale/2, 1)
		return point{axis.x + place.MM()*scale, axis.y + side*half}
	}
	butt, tip := min(max(s.TrimButt, 0), s.Length), s.Length-min(max(s.TrimTip, 0), s.Length)
	for _, side := range []float64{-1, 1} {
		c.line(at(0, side), at(butt, side), pen{ink: Faint, dash: Dotted})
		c.line(at(butt, side), at(tip, side), pen{})
		c.line(at(tip, side), at(s.Length, side), pen{ink: Faint, dash: Dotted})
	}
	for _, place := range []unit.Length{butt, tip} {
		c.line(at(place, -1), at(place, 1), pen{})
	}
	for _, p := range s.Pieces {
		for _, place := range []unit.Length{p.From, p.To} {
			if finite(place.MM()) && place >= 0 && place <= s.Length {
				c.line(at(place, -1), at(place, 1), pen{ink: Accent})
			}
		}
	}
}

// nodes writes each node's buds over its place.
func (c *canvas) nodes(s Stick, axis point, line int, scale float64) {
	for _, n := range s.Nodes {
		if !finite(n.At.MM()) || n.At < 0 || n.At > s.Length {
			continue
		}
		buds := "x"
		switch {
		case n.Buds >= 2:
			buds = ":"
		case n.Buds == 1:
			buds = "."
		}
		x, _ := cellAt(axis.plus(point{x: 1}, n.At.MM()*scale))
		c.text(x, line, buds, Plain)
	}
}

// pieces writes a bracket with its number under each scion; one with a node
// that lacks a bud is drawn with a thinner line.
func (c *canvas) pieces(s Stick, axis point, line int, scale float64) {
	free := 0 // the first column behind the last bracket
	for i, p := range s.Pieces {
		if !finite(p.From.MM(), p.To.MM()) || p.From < 0 || p.To > s.Length || p.From >= p.To {
			continue
		}
		from, _ := cellAt(axis.plus(point{x: 1}, p.From.MM()*scale))
		to, _ := cellAt(axis.plus(point{x: 1}, p.To.MM()*scale))
		if from = max(from, free); to <= from {
			continue
		}
		free = to + 1
		fill := "="
		if !p.Paired {
			fill = "-"
		}
		number := strconv.Itoa(i + 1)
		if width(number) >= to-from {
			number = ""
		}
		inside := max(to-from-1, 0)
		before := min(max((from+to+1-width(number))/2-from-1, 0), inside-width(number))
		c.text(from, line, "["+strings.Repeat(fill, before)+number+strings.Repeat(fill, inside-before-width(number))+"]", Accent)
	}
}

// ruler draws a scale along the stick from its butt.
func (c *canvas) ruler(s Stick, axis point, line int, scale float64) {
	if line >= c.h {
		return
	}
	step := mark{}
	for _, m := range rounds[s.Sys] {
		if step = m; m.long.MM()*scale >= 16 && m.long.MM() >= 20 {
			break
		}
	}
	y := float64(4 * line)
	c.line(point{axis.x, y + 1}, point{axis.x + s.Length.MM()*scale, y + 1}, pen{ink: Faint})
	for place := unit.Length(0); place <= s.Length && step.long.MM()*scale >= 4; place += step.long {
		at := point{axis.x + place.MM()*scale, y}
		c.line(at, at.plus(point{y: 1}, 3), pen{ink: Faint})
		said := round(s.Sys, place)
		if x, _ := startOf(at, said); c.free(max(x, 0), line+1, width(said)) {
			c.text(max(x, 0), line+1, said, Faint)
		}
	}
}
