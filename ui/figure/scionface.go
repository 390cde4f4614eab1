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

// wood is half the width of the wood seen on the face, along from its top.
func (b bench) wood(along float64) float64 {
	if b.depth(along) <= b.Thick.MM()/2 {
		return b.Thick.MM() / 2
	}
	return b.half(b.depth(along), b.Thick.MM())
}

// cutFace draws the scion from the side of the long cut: its outline, the
// edge of the cut, the cambium a bark's thickness inside it, the pith.
func (c *canvas) cutFace(b bench) {
	thick, stub := b.Thick.MM(), -b.LongCut.MM()*stubShare
	c.mirrored(b, stub, b.wood, pen{})
	c.line(b.from(b.face, stub, -thick/2), b.from(b.face, stub, thick/2), pen{dash: Dotted})
	end := b.wood(b.LongCut.MM())
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

// scionWords writes the measures and names the parts, each as fully as there is
// room for.
func (c *canvas) scionWords(b bench) {
	stub, _ := cellAt(b.from(b.side, -b.LongCut.MM()*stubShare, 0))
	start, top := cellAt(b.side)
	end, _ := cellAt(b.from(b.side, b.LongCut.MM(), 0))
	cut, back := b.usual(b.LongCut, trade.LongCut), b.usual(b.Back, trade.BackCut)
	if c.h >= lowScion {
		over := point{b.side.x, float64(4*(top-1)) + 2}
		c.dimension(over, b.from(over, b.LongCut.MM(), 0), fitting(end-start-3, " long cut "+cut+" ", " cut "+cut+" ", cut))
	}
	if c.h >= lowScion && c.h < tallScion {
		after := c.scaleBar(max(stub, 0), c.h-1, b.scale, float64(c.w)/3, b.Sys)
		said := fitting(c.w-after-1, "back cut "+back, "back "+back)
		c.text(c.w-width(said), c.h-1, said, Plain)
	}
	if c.h >= tallScion {
		_, under := cellAt(b.from(b.side, 0, b.Thick.MM()).plus(point{y: 1}, 4))
		said := fitting(end-stub-width("bark side"), "back cut "+back, "back "+back, back)
		c.text(end+1-width(said), under, said, Plain)
		c.text(stub, under, "bark side", Plain)
		c.slotWords(b, stub, end)
	}
	c.partNames(b, c.h < tallScion)
}

// partNames names thickness, tip, cambium and a nail where they are drawn, and the
// bark side where it has no line of its own.
func (c *canvas) partNames(b bench, barkSide bool) {
	stub, _ := cellAt(b.from(b.side, -b.LongCut.MM()*stubShare, 0))
	start, _ := cellAt(b.side)
	thick := b.Sys.Length(b.Thick)
	middle := -b.LongCut.MM() * stubShare * 0.45
	c.inside(b.from(b.side, middle, b.Thick.MM()/2), fitting(start-stub-2, thick+" thick", thick), Plain)
	c.inside(b.from(b.face, middle, 0), fitting(start-stub-2, "face"), Faint)
	if end, y := cellAt(b.from(b.side, b.LongCut.MM(), b.depth(b.LongCut.MM()))); !c.first(end-2, y-1, "tip", Plain, [2]int{}, [2]int{0, -1}) {
		c.first(end-2, y-2, "tip", Plain, [2]int{})
	}
	c.cambiumName(b)
	for _, nail := range b.Nails {
		if along := nail.MM(); finite(along) && along >= 0 && nail <= b.LongCut {
			x, y := cellAt(b.from(b.side, along, (b.depth(along)+b.under(along))/2))
			if c.first(x, y, "nail", Plain, [2]int{1, 0}, [2]int{-4, 0}, [2]int{1, -1}, [2]int{-3, -1}, [2]int{-5, -1}, [2]int{1, 1}) {
				break
			}
			x, y = cellAt(b.from(b.face, along, 0))
			if c.first(x, y, "nail", Plain, [2]int{2, 0}, [2]int{-5, 0}) {
				break
			}
		}
	}
	if barkSide {
		_, back := cellAt(b.from(b.side, 0, b.Thick.MM()))
		c.first(max(start+3, 0), back, "bark side", Plain, [2]int{0, -1}, [2]int{4, -1}, [2]int{8, -1}, [2]int{-2, 1})
	}
}

// first writes s at the first of the steps from a cell that is blank, and says
// whether there was one.
func (c *canvas) first(x, y int, s string, ink Ink, steps ...[2]int) bool {
	for _, step := range steps {
		if at, line := x+step[0], y+step[1]; c.blank(at, line, width(s)) {
			c.text(at, line, s, ink)
			return true
		}
	}
	return false
}

// cambiumName writes the cambium's name into its line on the face, where that runs
// level, and best where it does not share its cells with the edge of the wood.
func (c *canvas) cambiumName(b bench) {
	const name = "cambium"
	core := (b.Thick - 2*b.Bark).MM()
	if core <= 0 {
		return
	}
	for _, alone := range []bool{true, false} {
		for _, side := range []float64{-1, 1} {
			for share := 0.45; share < 0.9; share += 0.05 {
				along := b.LongCut.MM() * share
				x, y := startOf(b.from(b.face, along, side*b.half(b.depth(along), core)), name)
				level := true
				for column := x; column < x+len(name); column++ {
					here := (float64(2*column+1) - b.face.x) / b.scale
					_, line := cellAt(b.from(b.face, here, side*b.half(b.depth(here), core)))
					_, edge := cellAt(b.from(b.face, here, side*b.wood(here)))
					level = level && line == y && !(alone && edge == y)
				}
				if level && c.free(x, y, len(name)) {
					c.text(x, y, name, Accent)
					return
				}
			}
		}
	}
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
