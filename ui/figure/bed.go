package figure

import (
	"math"

	"barkslip/core/unit"
)

// Bed is the scion in its slot, cut open along it: wood of the stump to the left,
// its bark lifted to the right, the long cut between them against the wood.
type Bed struct {
	Scion               // Nails: from the top of the long cut
	Long  []unit.Length // of each nail
	Flap  unit.Length   // thickness of the lifted bark
	Proud unit.Length   // of the long cut over the top of the stump
	Stage BedStage
}

// BedStage is what is done there.
type BedStage uint8

// The stages.
const (
	SlidingIn   BedStage = iota // the scion half in, its place dotted
	StandsProud                 // in its place, with what shows of the long cut
	Nailed                      // in its place, with its nails
)

// Shares of the long cut: how far a scion that slides in is still out, and how
// much of the stump is drawn under its tip.
const (
	stillOut = 0.45
	underTip = 0.12
)

// woodShown is how much of the stump's wood is drawn, in millimetres: more than
// a nail goes in.
const woodShown = 18

// Draw draws the scion in w columns and h lines.
func (b Bed) Draw(w, h int, mode Mode) Figure {
	c, ok := newCanvas(w, h, mode)
	if !ok || !b.drawable() || !finite(b.Flap.MM(), b.Proud.MM()) || b.Flap < 0 || b.Proud < 0 || b.Proud >= b.LongCut {
		return c.finish()
	}
	out := 0.0
	if b.Stage == SlidingIn {
		out = stillOut * b.LongCut.MM()
	}
	long, stub := b.LongCut.MM(), b.LongCut.MM()*stubShare
	top := b.from(-stub, 0, out)
	right := max(b.from(-stub, b.Thick.MM(), out).x, b.Thick.MM()+b.Flap.MM())
	foot := b.from(long, b.depth(long), 0).y + underTip*long
	free := margins{left: 1, right: 1, bottom: 1}
	if c.w >= bedBeside {
		free.right = 12
	}
	s := c.lay(point{-woodShown, top.y}, point{right, foot}, free)
	c.stump(b, s, foot)
	if b.Stage == SlidingIn {
		c.slab(b, s, 0, pen{ink: Faint, dash: Dotted})
	}
	c.slab(b, s, out, pen{ink: Accent})
	c.bedNails(b, s)
	c.bedWords(b, s, out, foot)
	return c.finish()
}

// bedBeside is the columns from which words stand to the right of the section.
const bedBeside = 30

// depth is how deep the long cut lies, along from its top.
func (b Bed) depth(along float64) float64 { return bench{Scion: b.Scion}.depth(along) }

// from is where a place of the scion lies, along it from the top of the long cut and
// down from its upper side: the long cut stands upright at 0, so far out of its
// place.
func (b Bed) from(along, down, out float64) point {
	slope := math.Atan2((b.Thick - b.Tip).MM(), b.LongCut.MM())
	sin, cos := math.Sincos(slope)
	return point{down*cos - along*sin, along*cos + down*sin - b.Proud.MM() - out}
}

// slab draws the scion, broken off above.
func (c *canvas) slab(b Bed, s sheet, out float64, with pen) {
	long, thick, stub := b.LongCut.MM(), b.Thick.MM(), b.LongCut.MM()*stubShare
	at := func(along, down float64) point { p := b.from(along, down, out); return s.at(p.x, p.y) }
	c.polyline([]point{at(-stub, 0), at(0, 0), at(long, b.depth(long)), at(long-b.Back.MM(), thick), at(-stub, thick)}, with)
	c.line(at(-stub, 0), at(-stub, thick), pen{ink: with.ink, dash: Dotted})
}

// stump draws the wood with its top, and the bark lifted over the scion and whole
// below it.
func (c *canvas) stump(b Bed, s sheet, foot float64) {
	long := b.LongCut.MM()
	c.line(s.at(-woodShown, 0), s.at(0, 0), pen{})
	c.line(s.at(0, 0), s.at(0, foot), pen{})
	c.line(s.at(-woodShown, 0), s.at(-woodShown, foot), pen{ink: Faint, dash: Dotted})
	tip := b.from(long, b.depth(long), 0)
	bend := b.from(long-b.Back.MM(), b.Thick.MM(), 0)
	inner := func(y float64) float64 { // the back of the scion at a height
		up := b.from(0, b.Thick.MM(), 0)
		return bend.x + (bend.y-y)*(up.x-bend.x)/(bend.y-up.y)
	}
	flap := b.Flap.MM()
	c.polyline([]point{s.at(inner(0)+flap, 0), s.at(bend.x+flap, bend.y), s.at(tip.x+flap, tip.y), s.at(tip.x+flap, foot)}, pen{})
	c.line(s.at(inner(0), 0), s.at(inner(0)+flap, 0), pen{})
}

// bedNails draws each nail from the bark through the scion into the wood, as long as
// it is.
func (c *canvas) bedNails(b Bed, s sheet) {
	if b.Stage != Nailed {
		return
	}
	for i := range b.Nails {
		if head, point, ok := b.nail(i); ok {
			c.line(s.at(head.x, head.y), s.at(point.x, point.y), pen{ink: Warn})
			c.line(s.at(head.x, head.y).plus(down, -2), s.at(head.x, head.y).plus(down, 2), pen{ink: Warn})
		}
	}
}

// down is a dot down.
var down = point{y: 1}

// nail is where a nail's head and its point are; it goes in square to the scion's
// length.
func (b Bed) nail(i int) (head, tip point, ok bool) {
	if i >= len(b.Long) || !finite(b.Nails[i].MM(), b.Long[i].MM()) || b.Nails[i] < 0 || b.Nails[i] > b.LongCut {
		return head, tip, false
	}
	along := b.Nails[i].MM()
	outer := bench{Scion: b.Scion}.under(along) + b.Flap.MM()
	return b.from(along, outer, 0), b.from(along, outer-b.Long[i].MM(), 0), true
}
