package figure

import "barkslip/core/unit"

// Opening is a slot on the side of the stump: the two slits down from its top, as
// far apart as one scion needs.
type Opening struct {
	Across unit.Length // the stump
	Slit   unit.Length // its length
	Least  unit.Length // of the slot's width
	Most   unit.Length
	Sys    unit.System
}

// belowSlit is how much of the stump is drawn under the slits, as a share of them.
const belowSlit = 0.15

// Draw draws the slot in w columns and h lines.
func (o Opening) Draw(w, h int, mode Mode) Figure {
	c, ok := newCanvas(w, h, mode)
	if !ok || !finite(o.Across.MM(), o.Slit.MM(), o.Least.MM(), o.Most.MM()) || o.Across <= 0 || o.Slit <= 0 || o.Least <= 0 || o.Most < o.Least {
		return c.finish()
	}
	half, slit := max(o.Across.MM(), 1.5*o.Most.MM())/2, o.Slit.MM()
	foot := slit * (1 + belowSlit)
	free := margins{top: 1, right: 7, bottom: 1} // to the right the length of the slits
	if c.w >= 40 {
		free.right = 14
	}
	s := c.lay(point{-half, 0}, point{half, foot}, free)
	c.line(s.at(-half, 0), s.at(half, 0), pen{})
	for _, side := range []float64{-1, 1} {
		c.line(s.at(side*half, 0), s.at(side*half, foot), pen{})
		if (o.Most-o.Least).MM()/2*s.scale >= 2 {
			c.line(s.at(side*o.Most.MM()/2, 0), s.at(side*o.Most.MM()/2, slit), pen{ink: Faint, dash: Dotted})
		}
		c.line(s.at(side*o.Least.MM()/2, 0), s.at(side*o.Least.MM()/2, slit), pen{ink: Accent})
	}
	c.openingWords(o, s)
	return c.finish()
}

// openingWords writes the width over the slot, and beside it how long the slits
// are.
func (c *canvas) openingWords(o Opening, s sheet) {
	least, most := o.Sys.Length(o.Least), o.Sys.Length(o.Most)
	over := s.at(0, 0)
	over.y = max(over.y-4, 0)
	c.centred(over, fitting(c.w, "slot "+least+" to "+most+" wide", "slot "+least+" to "+most, least+" to "+most, least), Plain)
	_, foot := cellAt(s.at(0, o.Slit.MM()*(1+belowSlit)).plus(point{y: 1}, 4))
	c.scaleBelow(s, min(foot, c.h-1), o.Sys)

	x := s.at(max(o.Across.MM(), 1.5*o.Most.MM())/2, 0).x + 5
	top, down := s.at(0, 0).y, s.at(0, o.Slit.MM()).y
	c.line(point{x, top}, point{x, down}, pen{ink: Faint})
	for _, y := range []float64{top, down} {
		c.line(point{x - 1.5, y}, point{x + 1.5, y}, pen{ink: Faint})
	}
	slit := o.Sys.Figure(o.Slit)
	c.aside(point{x, (top + down) / 2}, Plain, [][2]int{{2, 0}, {1, 0}}, "slits "+slit, "slit "+slit, slit)
	c.aside(s.at(-o.Most.MM()/2, o.Slit.MM()/2), Faint, [][2]int{{-3, 0}, {-2, 0}}, "bark")
	c.inside(s.at(0, o.Slit.MM()*0.4), "lift", Faint)
}
