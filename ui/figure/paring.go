package figure

import "barkslip/core/trade"

// Paring is one of the two cuts of a scion as it is made, from the side, the tip
// to the right: what comes off is dotted. The long cut is seen whole, the back cut
// near, with the bark that it goes through.
type Paring struct {
	Scion
	AtBack bool // the back cut
}

// nearBack is how much of the scion is drawn at its tip, in lengths of the back cut.
const nearBack = 2.4

// Draw draws the cut in w columns and h lines.
func (p Paring) Draw(w, h int, mode Mode) Figure {
	c, ok := newCanvas(w, h, mode)
	if !ok || !p.drawable() || p.AtBack && p.Back <= 0 {
		return c.finish()
	}
	if p.AtBack {
		c.backCut(p)
	} else {
		c.longCut(p)
	}
	return c.finish()
}

// around are the lines above and below a cut for its words.
func (c *canvas) around() margins {
	if c.h < 6 {
		return margins{top: 1, bottom: 1}
	}
	return margins{top: 1, bottom: 2}
}

func (c *canvas) longCut(p Paring) {
	cut, thick, stub := p.LongCut.MM(), p.Thick.MM(), -p.LongCut.MM()*stubShare
	b := bench{Scion: p.Scion}
	deep := b.depth(cut)
	free := c.around()
	s := c.lay(point{stub, 0}, point{cut, thick}, free)
	c.line(s.at(stub, 0), s.at(0, 0), pen{})
	c.line(s.at(stub, 0), s.at(stub, thick), pen{dash: Dotted})
	c.line(s.at(stub, thick), s.at(cut, thick), pen{})
	c.line(s.at(cut, deep), s.at(cut, thick), pen{})
	c.line(s.at(0, 0), s.at(cut, 0), pen{ink: Faint, dash: Dotted})
	c.line(s.at(cut, 0), s.at(cut, deep), pen{ink: Faint, dash: Dotted})
	c.line(s.at(0, 0), s.at(cut, deep), pen{ink: Accent})

	long := b.usual(p.LongCut, trade.LongCut)
	_, top := cellAt(s.at(0, 0))
	over := point{s.at(0, 0).x, float64(4*(top-1)) + 2}
	start, _ := cellAt(s.at(0, 0))
	end, _ := cellAt(s.at(cut, 0))
	c.dimension(over, point{s.at(cut, 0).x, over.y}, fitting(end-start-3, " long cut "+long+" ", " cut "+long+" ", long))
	_, under := cellAt(s.at(0, thick).plus(point{y: 1}, 4))
	c.scaleBelow(s, under+1, p.Sys)
	left := p.Sys.Length(p.Tip)
	c.aside(point{float64(2 * end), float64(4 * under)}, Plain, [][2]int{{-1, 0}}, left+" left at the tip", left+" at the tip", left)
	c.inside(s.at(stub*0.45, thick/2), fitting(start-1, p.Sys.Length(p.Thick)+" thick", p.Sys.Length(p.Thick)), Plain)
	c.inside(s.at(cut*0.72, deep*0.28), "comes off", Faint)
	c.inside(s.at(cut*0.3, thick*0.65), "scion", Faint)
}

func (c *canvas) backCut(p Paring) {
	b := bench{Scion: p.Scion}
	cut, thick, back, bark := p.LongCut.MM(), p.Thick.MM(), p.Back.MM(), p.Bark.MM()
	from := max(cut-nearBack*back, 0)
	begin := cut - back
	tip := b.depth(cut)
	s := c.lay(point{from, b.depth(from)}, point{cut, thick}, c.around())
	c.line(s.at(from, b.depth(from)), s.at(cut, tip), pen{})
	c.line(s.at(from, b.depth(from)), s.at(from, thick), pen{dash: Dotted})
	c.line(s.at(from, thick), s.at(begin, thick), pen{})
	c.line(s.at(begin, thick), s.at(cut, thick), pen{ink: Faint, dash: Dotted})
	c.line(s.at(cut, tip), s.at(cut, thick), pen{ink: Faint, dash: Dotted})
	if bark > 0 && bark < thick {
		meets := min(begin+back*min(bark/max(p.Tip.MM(), 1e-9), 1), cut)
		c.line(s.at(from, thick-bark), s.at(meets, thick-bark), pen{ink: Growth, dash: Dashed})
	}
	c.line(s.at(begin, thick), s.at(cut, tip), pen{ink: Accent})

	long := b.usual(p.Back, trade.BackCut)
	x0, under := cellAt(s.at(begin, thick).plus(point{y: 1}, 4))
	x1, _ := cellAt(s.at(cut, thick))
	below := point{s.at(begin, thick).x, float64(4*under) + 2}
	if said := fitting(x1-x0-3, " back cut "+long+" ", " back "+long+" ", long); said != "" {
		c.dimension(below, point{s.at(cut, 0).x, below.y}, said)
	} else {
		c.aside(point{float64(2 * x1), below.y}, Plain, [][2]int{{-1, 0}}, "back cut "+long, long)
	}
	c.scaleBelow(s, under+1, p.Sys)
	edge := s.at(from+(begin-from)*0.15, thick-bark)
	c.aside(edge, Growth, [][2]int{{1, -1}, {1, -2}, {3, -1}, {1, 0}}, "cambium")
	c.aside(s.at(from, thick), Plain, [][2]int{{0, 1}, {1, 1}}, "bark side", "bark")
	c.aside(s.at((from+cut)/2, b.depth((from+cut)/2)), Plain, [][2]int{{1, -1}, {2, -1}, {3, -2}}, "long cut")
	c.aside(s.at(cut, tip), Plain, [][2]int{{-1, -1}, {-1, -2}}, "tip")
}
