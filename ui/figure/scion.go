package figure

import (
	"math"

	"barkslip/core/unit"
)

// Scion is one scion with its cuts, lying with its tip to the right: the side
// above, the face of the long cut below. It is a cylinder; lengths run along
// its axis from the top of the long cut.
type Scion struct {
	Thick   unit.Length // across
	Bark    unit.Length // its thickness; the cambium lies under it
	Pith    unit.Length // across; 0 if not known
	LongCut unit.Length
	Tip     unit.Length // of the thickness left at the end
	Back    unit.Length // of the back cut
	Nails   []unit.Length
	Least   unit.Length // of the slot's width; 0 leaves the slot out
	Most    unit.Length
	Sys     unit.System
}

// stubShare is how much of the scion above the long cut is drawn, as a share
// of the cut.
const stubShare = 0.22

// Below these heights, in lines, a scion carries no measures, or only the first
// of them.
const (
	lowScion  = 8
	tallScion = 11
)

// bench is a scion laid out: dots to the millimetre, and where the top of the
// long cut lies in each view.
type bench struct {
	Scion
	scale      float64
	side, face point // the upper edge of the side view; the axis of the face view
}

// Draw draws the scion in w columns and h lines.
func (s Scion) Draw(w, h int, mode Mode) Figure {
	c, ok := newCanvas(w, h, mode)
	if !ok || !s.drawable() {
		return c.finish()
	}
	b := s.lay(c)
	c.outline(b)
	c.sideNails(b)
	c.slotBand(b)
	c.cutFace(b)
	c.scionWords(b)
	return c.finish()
}

// drawable is false for a scion that has no shape, or one far from it.
func (s Scion) drawable() bool {
	return finite(s.Thick.MM(), s.Bark.MM(), s.Pith.MM(), s.LongCut.MM(), s.Tip.MM(), s.Back.MM(), s.Least.MM(), s.Most.MM()) &&
		s.Thick > 0 && s.LongCut > 0 && s.Tip >= 0 && s.Tip < s.Thick && s.Back >= 0 && s.Bark >= 0
}

// lay finds the scale at which both views fit, and stacks them: a line for the
// long cut's length, the side, a line for the back cut, the face, and two lines
// for slot and scale.
func (s Scion) lay(c *canvas) bench {
	above, between, below := 1, 1, 2
	switch {
	case c.h < lowScion:
		above, between, below = 0, 0, 0
	case c.h < tallScion:
		between, below = 0, 1
	}
	wide := max(s.Thick, s.Most).MM()
	roomX, roomY := float64(2*(c.w-2)), float64(4*(c.h-above-between-below)-8)
	scale := min(roomX/(s.LongCut.MM()*(1+stubShare)), max(roomY, 4)/(s.Thick.MM()+wide))
	lines := func(long float64) int { return int(math.Ceil((long*scale + 2) / 4)) }
	spare := max(0, c.h-above-between-below-lines(s.Thick.MM())-lines(wide)) / 2
	start := float64(c.w) + s.LongCut.MM()*scale*(stubShare-1)/2
	side := point{start, float64(4*(spare+above)) + 1}
	face := point{start, float64(4*(spare+above+lines(s.Thick.MM())+between)) + 1 + wide*scale/2}
	return bench{Scion: s, scale: scale, side: side, face: face}
}

// from is a point along and down from a place, in millimetres.
func (b bench) from(p point, along, down float64) point {
	return point{p.x + along*b.scale, p.y + down*b.scale}
}

// roomy is true when the scion is drawn large enough for what lies inside it.
func (b bench) roomy(c *canvas) bool {
	if c.mode == ASCII {
		return b.Thick.MM()*b.scale >= 18
	}
	return b.Thick.MM()*b.scale >= 12
}

// depth is how deep the long cut lies, along from its top.
func (b bench) depth(along float64) float64 {
	return along * (b.Thick - b.Tip).MM() / b.LongCut.MM()
}

// under is how deep the wood goes there: the back, or the back cut.
func (b bench) under(along float64) float64 {
	start := (b.LongCut - b.Back).MM()
	if along <= start || b.Back == 0 {
		return b.Thick.MM()
	}
	return b.Thick.MM() - (along-start)/b.Back.MM()*b.Tip.MM()
}

// half is half the width, at a depth in the scion, of a core so far across; 0
// outside it.
func (b bench) half(depth, across float64) float64 {
	aside := b.Thick.MM()/2 - depth
	if square := across*across/4 - aside*aside; square > 0 {
		return math.Sqrt(square)
	}
	return 0
}

// outline draws the side: the cut bold, the rest of the wood thin, broken off
// at the left.
func (c *canvas) outline(b bench) {
	cut, thick, stub := b.LongCut.MM(), b.Thick.MM(), -b.LongCut.MM()*stubShare
	at := func(along, down float64) point { return b.from(b.side, along, down) }
	c.line(at(stub, 0), at(0, 0), pen{})
	c.line(at(stub, 0), at(stub, thick), pen{dash: Dotted})
	c.line(at(stub, thick), at(cut-b.Back.MM(), thick), pen{})
	c.polyline([]point{at(cut-b.Back.MM(), thick), at(cut, b.depth(cut))}, pen{ink: Accent})
	c.polyline([]point{at(0, 0), at(cut, b.depth(cut))}, pen{ink: Accent})
	if b.Pith > 0 && b.Pith < b.Thick && b.roomy(c) {
		for _, edge := range []float64{thick/2 - b.Pith.MM()/2, thick/2 + b.Pith.MM()/2} {
			meets := min(edge/b.depth(1), cut)
			c.line(at(stub, edge), at(meets, edge), pen{ink: Faint, dash: Dotted})
		}
	}
}
