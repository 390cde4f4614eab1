package figure

import (
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// sideNails draws the nails through the wood, seen from the side.
func (c *canvas) sideNails(b bench) {
	for _, nail := range b.Nails {
		along := nail.MM()
		if !finite(along) || along < 0 || nail > b.LongCut {
			continue
		}
		c.line(b.from(b.side, along, b.depth(along)).plus(point{y: 1}, -1), b.from(b.side, along, b.under(along)).plus(point{y: 1}, 1), pen{})
	}
}

// slotBand draws the narrowest and the widest slot the scion goes in, either
// side of its axis.
func (c *canvas) slotBand(b bench) {
	for _, edge := range []struct {
		wide unit.Length
		dash Dash
	}{{b.Least, Dotted}, {b.Most, Dashed}} {
		if (edge.wide-b.Thick).MM()*b.scale < 6 {
			continue // too close to the wood to be seen apart
		}
		for _, side := range []float64{-0.5, 0.5} {
			down := side * edge.wide.MM()
			c.line(b.from(b.face, 0, down), b.from(b.face, b.LongCut.MM(), down), pen{ink: Faint, dash: edge.dash})
		}
	}
}

// cutFace draws the scion from the side of the long cut: its outline, the
// edge of the cut, the cambium a bark's thickness inside it, the pith.
func (c *canvas) cutFace(b bench) {
	thick, stub := b.Thick.MM(), -b.LongCut.MM()*stubShare
	wood := func(along float64) float64 {
		if b.depth(along) <= thick/2 {
			return thick / 2
		}
		return b.half(b.depth(along), thick)
	}
	c.mirrored(b, stub, wood, pen{})
	c.line(b.from(b.face, stub, -thick/2), b.from(b.face, stub, thick/2), pen{dash: Dotted})
	end := wood(b.LongCut.MM())
	c.line(b.from(b.face, b.LongCut.MM(), -end), b.from(b.face, b.LongCut.MM(), end), pen{})
	c.core(b, b.Thick-2*b.Bark, pen{ink: Accent})
	if b.roomy(c) {
		c.core(b, b.Pith, pen{ink: Faint, dash: Dotted})
	}
	if b.Bark.MM()*b.scale >= 2.5 {
		c.core(b, b.Thick, pen{})
	}
	for _, nail := range b.Nails {
		if finite(nail.MM()) && nail >= 0 && nail <= b.LongCut {
			c.centred(b.from(b.face, nail.MM(), 0), "o", Plain)
		}
	}
}

// core draws where the long cut meets the edge of a core so far across.
func (c *canvas) core(b bench, across unit.Length, with pen) {
	if across > 0 && across <= b.Thick {
		c.mirrored(b, 0, func(along float64) float64 { return b.half(b.depth(along), across.MM()) }, with)
	}
}

// mirrored draws a line at a half width to either side of the face's axis, on
// from a place along it, wherever the half width is not 0.
func (c *canvas) mirrored(b bench, start float64, half func(along float64) float64, with pen) {
	const steps = 160
	run := (b.LongCut.MM() - start) / steps
	for _, side := range []float64{-1, 1} {
		c.lift()
		for i := range steps {
			here, there := start+float64(i)*run, start+float64(i+1)*run
			if half(here) > 0 || half(there) > 0 {
				c.stroke(b.from(b.face, here, side*half(here)), b.from(b.face, there, side*half(there)), with)
			}
		}
	}
}

// scionWords writes the measures, each as fully as there is room for.
func (c *canvas) scionWords(b bench) {
	if c.h < lowScion {
		return
	}
	stub, _ := cellAt(b.from(b.side, -b.LongCut.MM()*stubShare, 0))
	start, top := cellAt(b.side)
	end, _ := cellAt(b.from(b.side, b.LongCut.MM(), 0))
	cut, thick := b.usual(b.LongCut, trade.LongCut), b.Sys.Length(b.Thick)
	over := point{b.side.x, float64(4*(top-1)) + 2}
	c.dimension(over, b.from(over, b.LongCut.MM(), 0), fitting(end-start-3, " long cut "+cut+" ", cut))
	middle := -b.LongCut.MM() * stubShare * 0.45
	c.inside(b.from(b.side, middle, b.Thick.MM()/2), "side", Faint)
	c.inside(b.from(b.face, middle, 0), "face", Faint)
	back := "back cut " + b.usual(b.Back, trade.BackCut)
	if c.h < tallScion {
		after := c.scaleBar(max(stub, 0), c.h-1, b.scale, float64(c.w)/3, b.Sys)
		back = fitting(c.w-after-1, back, "back "+b.usual(b.Back, trade.BackCut))
		c.text(c.w-width(back), c.h-1, back, Plain)
		return
	}
	_, under := cellAt(b.from(b.side, 0, b.Thick.MM()).plus(point{y: 1}, 4))
	back = fitting(end+1-stub, back, b.usual(b.Back, trade.BackCut))
	c.text(end+1-width(back), under, back, Plain)
	c.text(stub, under, fitting(end-stub-width(back), thick+" thick", thick), Plain)
	c.slotWords(b, stub, end)
}

// usual prints a length of the usual size as the trade's figure is told.
func (b bench) usual(l, figure unit.Length) string {
	if l == figure {
		return b.Sys.Figure(l)
	}
	return b.Sys.Length(l)
}

// slotWords writes the slot's width under the face, and the scale below it.
func (c *canvas) slotWords(b bench, stub, end int) {
	_, below := cellAt(b.from(b.face, 0, max(b.Most, b.Thick).MM()/2).plus(point{y: 1}, 4))
	below = min(below, c.h-2)
	if b.Least > 0 {
		least, most := b.Sys.Length(b.Least), b.Sys.Length(b.Most)
		slot := fitting(end+1-stub, "slot "+least+" to "+most, least+" to "+most, least)
		c.text(end+1-width(slot), below, slot, Faint)
	}
	c.scaleBar(max(stub, 0), below+1, b.scale, float64(c.w)*2/3, b.Sys)
}

// fitting is the first of the texts that fits n columns, else nothing.
func fitting(n int, texts ...string) string {
	for _, s := range texts {
		if width(s) <= n {
			return s
		}
	}
	return ""
}
