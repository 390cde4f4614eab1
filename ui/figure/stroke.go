package figure

import "math"

// Dash is the pattern of a line, so that lines are told apart without colour.
type Dash uint8

// The patterns.
const (
	Solid Dash = iota
	Dashed
	Dotted
	Filled // three dots thick
	Hollow // as thick, open inside
)

// lengths are the dots drawn and left out in turn.
func (d Dash) lengths() (on, off int) {
	switch d {
	case Dashed:
		return 5, 4
	case Dotted:
		return 1, 3
	}
	return 1, 0
}

// pen is what a line is drawn with.
type pen struct {
	ink  Ink
	dash Dash
}

// line draws from p to q, starting its dashes anew.
func (c *canvas) line(p, q point, with pen) {
	c.lift()
	c.stroke(p, q, with)
}

// lift starts the dashes anew.
func (c *canvas) lift() { c.drawn = 0 }

// polyline draws through the points; a point that is not a number breaks it.
func (c *canvas) polyline(through []point, with pen) {
	if with.dash == Filled || with.dash == Hollow {
		c.thick(through, with)
		return
	}
	c.lift()
	for i := 1; i < len(through); i++ {
		c.stroke(through[i-1], through[i], with)
	}
}

// thick draws through the points with a nib three dots across; a hollow line is
// left open along its middle.
func (c *canvas) thick(through []point, with pen) {
	type place struct{ x, y int }
	var path []place
	inside := map[place]bool{}
	for i := 1; i < len(through); i++ {
		p, q, seen := c.clip(through[i-1], through[i])
		if !seen {
			continue
		}
		steps := max(1, int(math.Ceil(max(math.Abs(q.x-p.x), math.Abs(q.y-p.y)))))
		for n := range steps + 1 {
			share := float64(n) / float64(steps)
			at := place{int(math.Floor(p.x + (q.x-p.x)*share)), int(math.Floor(p.y + (q.y-p.y)*share))}
			if !inside[at] {
				path, inside[at] = append(path, at), true
			}
		}
	}
	for _, at := range path {
		for _, dx := range []int{-1, 0, 1} {
			for _, dy := range []int{-1, 0, 1} {
				if dot := (place{at.x + dx, at.y + dy}); with.dash == Filled || !inside[dot] {
					c.dot(point{float64(dot.x), float64(dot.y)}, with.ink)
				}
			}
		}
	}
}

// stroke draws from p to q, going on with the dashes where they were.
func (c *canvas) stroke(p, q point, with pen) {
	p, q, seen := c.clip(p, q)
	if !seen {
		return
	}
	on, off := with.dash.lengths()
	steps := max(1, int(math.Ceil(max(math.Abs(q.x-p.x), math.Abs(q.y-p.y)))))
	along := point{(q.x - p.x) / float64(steps), (q.y - p.y) / float64(steps)}
	// The last dot is left to the next stroke, lest a dash count it twice.
	for i := range steps {
		if c.drawn%(on+off) < on {
			c.dot(p.plus(along, float64(i)), with.ink)
		}
		c.drawn++
	}
	if off == 0 {
		c.dot(q, with.ink)
	}
}

// clip shortens p to q to what lies in the clip (Liang and Barsky 1984), so
// that no line, however long, costs more than the canvas.
func (c *canvas) clip(p, q point) (from, to point, seen bool) {
	if !finite(p.x, p.y, q.x, q.y) {
		return p, q, false
	}
	const inside = 1e-5
	d := point{q.x - p.x, q.y - p.y}
	first, last := 0.0, 1.0
	for _, edge := range [4][2]float64{
		{-d.x, p.x - c.low.x}, {d.x, c.high.x - inside - p.x},
		{-d.y, p.y - c.low.y}, {d.y, c.high.y - inside - p.y},
	} {
		slope, room := edge[0], edge[1]
		switch {
		case slope == 0 && room < 0:
			return p, q, false
		case slope < 0:
			first = max(first, room/slope)
		case slope > 0:
			last = min(last, room/slope)
		}
	}
	return p.plus(d, first), p.plus(d, last), first <= last
}

// bar draws a line about three dots thick.
func (c *canvas) bar(p, q point, ink Ink) {
	across := point{q.y - p.y, p.x - q.x}
	long := math.Hypot(across.x, across.y)
	if long == 0 || !finite(long) {
		return
	}
	for _, aside := range []float64{-0.9, 0, 0.9} {
		c.line(p.plus(across, aside/long), q.plus(across, aside/long), pen{ink: ink})
	}
}
