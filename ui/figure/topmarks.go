package figure

import (
	"math"

	"barkslip/core/unit"
)

// slot draws one slot as a mark across the bark.
func (c *canvas) slot(o oval, s Slot) {
	if !finite(s.Bearing.Deg()) {
		return
	}
	ink := Plain
	if s.State == InHand {
		ink = Accent
	}
	bark := o.reach(s.Bearing)
	from, to := o.at(s.Bearing, max(0.75, 1-8/bark)), o.at(s.Bearing, 1+1.5/bark)
	if c.mode == ASCII {
		sign := 'o'
		if s.State != Planned {
			sign = '*'
		}
		for _, p := range []point{o.at(s.Bearing, max(0.5, 1-4/bark)), o.at(s.Bearing, 1)} {
			c.centred(p.plus(point{1, 0}, 0.01), string(sign), ink)
		}
		return
	}
	if s.State == Planned {
		c.line(from, to, pen{ink: ink})
		return
	}
	c.bar(from, to, ink)
}

// blocked draws a stretch of bark as a hatched band; the bark's width is
// walked off to each side of its middle.
func (c *canvas) blocked(o oval, a Arc) {
	if !finite(a.Bearing.Deg(), a.Width.MM()) || a.Width <= 0 {
		return
	}
	half := min(a.Width.MM()*o.scale/2, math.Pi*o.long)
	for _, turn := range []unit.Bearing{-0.5, 0.5} {
		b, walked := a.Bearing, 0.0
		for steps := 0; walked < half && steps < 360; steps++ {
			c.hatch(o, b)
			last := o.at(b, 1)
			b += turn
			next := o.at(b, 1)
			walked += math.Hypot(next.x-last.x, next.y-last.y)
		}
	}
}

// hatch draws the band of blocked bark in one direction, as a chequer of dots.
func (c *canvas) hatch(o oval, b unit.Bearing) {
	bark := o.reach(b)
	for in := -1.0; in < min(6, bark/2); in++ {
		p := o.at(b, 1-in/bark)
		if c.mode == ASCII {
			x, y := cellAt(p)
			c.text(x, y, ":", Warn)
			continue
		}
		if int(p.x)%2 == int(p.y)%2 {
			c.dot(p, Warn)
		}
	}
}

// shade draws sparse dots over the face on its shaded side.
func (c *canvas) shade(o oval, middle unit.Bearing) {
	for x := max(0, int(o.centre.x-o.long)); x < int(min(o.centre.x+o.long, c.size().x)); x++ {
		for y := max(0, int(o.centre.y-o.long)); y < int(min(o.centre.y+o.long, c.size().y)); y++ {
			if y%4 != 2 || x%4 != y/4%2*2 {
				continue
			}
			dx, dy := float64(x)-o.centre.x, float64(y)-o.centre.y
			b := unit.Bearing(math.Atan2(dx, -dy) * 180 / math.Pi)
			out := math.Hypot(dx, dy) / o.reach(b)
			if out > 0.45 && out < 0.88 && b.From(middle) <= shadeSpread {
				c.dot(point{float64(x), float64(y)}, Faint)
			}
		}
	}
}
