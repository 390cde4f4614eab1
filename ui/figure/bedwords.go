package figure

// bedWords names the parts of the scion in its slot, and says the measure that its
// stage is about, as fully as there is room for.
func (c *canvas) bedWords(b Bed, s sheet, out, foot float64) {
	_, last := cellAt(s.at(0, foot))
	c.scaleBelow(s, min(last+1, c.h-1), b.Sys)
	long := b.LongCut.MM()
	right := [][2]int{{2, 0}, {3, 0}, {1, 0}, {2, -1}, {2, 1}}
	switch b.Stage {
	case SlidingIn:
		p := b.from(long*0.15, b.Thick.MM(), out)
		c.aside(s.at(p.x, p.y), Plain, right, "slide down", "down")
	case StandsProud:
		c.proudWords(b, s)
	case Nailed:
		for i := range b.Nails {
			if head, _, ok := b.nail(i); ok {
				c.aside(s.at(head.x, head.y), Plain, right, "nail "+b.Sys.Length(b.Long[i]), b.Sys.Length(b.Long[i]), "nail")
			}
		}
	}
	tip := b.from(long, b.depth(long), 0)
	flap := b.from(long*0.55, b.Thick.MM()+b.Flap.MM(), 0)
	c.aside(s.at(flap.x, flap.y), Plain, append(right, [2]int{2, 2}, [2]int{2, -2}), "lifted bark", "bark")
	c.aside(s.at(tip.x+b.Flap.MM(), (tip.y+foot)/2), Plain, right, "bark")
	c.aside(s.at(0, long*0.5), Plain, [][2]int{{-3, 0}, {-2, 0}, {-2, 1}, {-2, -1}, {-2, 2}}, "wood")
	top := b.from(-long*stubShare, b.Thick.MM(), out)
	c.aside(s.at(top.x, top.y), Plain, [][2]int{{2, 0}, {2, 1}, {1, 0}, {1, 1}}, "scion")
}

// proudWords draws, left of the scion, how much of the long cut stands over the
// top.
func (c *canvas) proudWords(b Bed, s sheet) {
	top := b.from(0, 0, 0)
	x := s.at(-woodShown/3, 0).x
	c.line(point{x, s.at(0, top.y).y}, point{x, s.at(0, 0).y}, pen{ink: Faint})
	for _, y := range []float64{top.y, 0} {
		c.line(point{x - 2, s.at(0, y).y}, point{x + 2, s.at(0, y).y}, pen{ink: Faint})
	}
	proud := b.Sys.Length(b.Proud)
	c.aside(point{x, s.at(0, top.y/2).y}, Plain, [][2]int{{-2, 0}, {-2, -1}, {-1, -1}, {-2, -2}}, proud+" shows", proud)
}
