package sheet

import (
	"fmt"
	"math"
	"time"

	"barkslip/core/scion"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// cardThick are the three thicknesses of scion that the card shows.
var cardThick = [...]unit.Length{unit.Inch * 5 / 16, unit.Inch * 7 / 16, unit.Inch * 5 / 8}

// slitLong is how long the slit is drawn, by the fact of it.
const slitLong = 76.0

// soldUS and soldMetric are the lengths in which nails are sold.
var (
	soldUS     = []unit.Length{unit.Inch * 3 / 4, unit.Inch, unit.Inch * 5 / 4, unit.Inch * 3 / 2}
	soldMetric = []unit.Length{20 * unit.Millimetre, 25 * unit.Millimetre, 30 * unit.Millimetre, 40 * unit.Millimetre}
)

// sold is the next longer nail that is sold, the longest where none is.
func sold(l unit.Length, sys unit.System) unit.Length {
	sizes := soldUS
	if sys == unit.Metric {
		sizes = soldMetric
	}
	for _, s := range sizes {
		if s >= l {
			return s
		}
	}
	return sizes[len(sizes)-1]
}

// Where the parts of the card stand, in mm from the top.
const (
	cardTop   = 46.0 // of the scions
	cardLong  = 62.0 // of the long cuts
	cardWords = 152.0
	cardFacts = 197.0
	cardRuler = 236.0
)

// CardPages is the cutting card: one page at true size.
func CardPages(sys unit.System, font Font, made time.Time) (Doc, error) {
	doc := Doc{Title: "Cutting card", Made: made, Size: SizeFor(sys), Pages: make([]Page, 1)}
	c := cardPen{Page: &doc.Pages[0], font: font, sys: sys, right: doc.Size.Wide - margin}
	c.text(margin, 24, "Cutting card", 22, true, false)
	c.Texts = append(c.Texts, Text{X: c.right, Y: 24, Words: "true size, where the ruler below measures right", Points: bodyPoints, Side: FromRight, Faint: true})
	c.line(margin, 29, c.right, 29, firm, false)
	if err := c.scions(); err != nil {
		return doc, err
	}
	c.facts()
	c.ruler()
	return doc, nil
}

// cardPen draws the card.
type cardPen struct {
	*Page
	font  Font
	sys   unit.System
	right float64
}

func (c *cardPen) text(x, y float64, words string, points float64, bold, faint bool) {
	c.Texts = append(c.Texts, Text{X: x, Y: y, Words: words, Points: points, Bold: bold, Faint: faint})
}

func (c *cardPen) middle(x, y float64, words string) {
	c.Texts = append(c.Texts, Text{X: x, Y: y, Words: words, Points: 7.5, Faint: true, Side: Middle})
}

func (c *cardPen) line(x1, y1, x2, y2, thick float64, dashed bool) {
	c.Lines = append(c.Lines, Line{X1: x1, Y1: y1, X2: x2, Y2: y2, Thick: thick, Dashed: dashed})
}

// scions draws the three thicknesses, with the room that is left shared among
// their parts.
func (c *cardPen) scions() error {
	const each = 3 // side, face and slot
	answers, room := make([]scion.Answer, len(cardThick)), c.right-margin
	for i, thick := range cardThick {
		a, err := scion.Cuts(scion.Defaults(thick))
		if err != nil {
			return err
		}
		answers[i], room = a, room-2*thick.MM()-a.Slot.Most.MM()
	}
	gap, x := room/float64(each*len(cardThick)), margin
	for i, thick := range cardThick {
		c.scion(x, gap, scion.Defaults(thick), answers[i])
		x += 2*thick.MM() + answers[i].Slot.Most.MM() + each*gap
	}
	return nil
}

// scion draws one thickness: from the side, from the face, its slot and nails.
func (c *cardPen) scion(x, gap float64, cut scion.Cut, a scion.Answer) {
	c.text(x, 38, c.sys.Length(cut.Thick)+" scion", 13, true, false)
	thick := cut.Thick.MM()
	c.side(x+3, cut, a)
	c.face(x+3+thick+gap+thick/2, cut, a)
	c.slot(x+3+2*thick+2*gap+a.Slot.Most.MM()/2, a)
	y := cardWords
	for _, words := range []string{
		"long cut " + c.both(cut.LongCut), "back cut " + c.both(cut.Back),
		"slot " + c.sys.Length(a.Slot.Least) + " to " + c.sys.Length(a.Slot.Most) + " wide",
	} {
		c.text(x, y, words, 8.5, false, false)
		y += 4.4
	}
	for i, nail := range a.Nails {
		y += 5.5
		length := sold(nail.Length, c.sys)
		c.text(x, y, []string{"upper", "lower"}[i]+" nail "+c.sys.Length(nail.Length)+", sold "+c.sys.Length(length), 8.5, false, false)
		y += 3
		c.line(x, y, x+length.MM(), y, firm, false)
		c.line(x, y-1.1, x, y+1.1, firm, false)
	}
}

// both is a length in both systems, the block's own first.
func (c *cardPen) both(l unit.Length) string {
	in, mm := unit.US.Length(l), fmt.Sprintf("%.4g mm", l.MM())
	if c.sys == unit.Metric {
		return mm + " (" + in + ")"
	}
	return in + " (" + mm + ")"
}

// side draws a scion from the side, its long cut to the left, and the long cut's
// length beside it.
func (c *cardPen) side(x float64, cut scion.Cut, a scion.Answer) {
	thick, end := cut.Thick.MM(), cardLong+cut.LongCut.MM()
	tip := x + (cut.Thick - cut.Tip).MM()
	c.Shapes = append(c.Shapes, Shape{Thick: thin, Filled: true, Shade: 0.08, Points: []Point{
		{x, cardTop}, {x + thick, cardTop}, {x + thick, end - cut.Back.MM()}, {tip, end}, {x, cardLong}}})
	c.line(x, cardLong, tip, end, firm, false)
	c.line(x+thick, end-cut.Back.MM(), tip, end, firm, false)
	c.line(x-2, cardLong, x-2, end, hairline, false) // the length, along the axis
	c.line(x-3, cardLong, x-1, cardLong, hairline, false)
	c.line(x-3, end, x-1, end, hairline, false)
	for _, nail := range a.Nails {
		y := cardLong + nail.FromTop.MM()
		from := x + (cut.Thick-cut.Tip).MM()*nail.FromTop.MM()/cut.LongCut.MM()
		c.line(from-2, y, from+nail.Thickness.MM()+2, y, hairline, true)
	}
	c.middle(x+thick/2, 44, "side")
}

// face draws the same scion seen on its long cut, the cambium dashed, with the
// places of the nails.
func (c *cardPen) face(x float64, cut scion.Cut, a scion.Answer) {
	radius, wood := cut.Thick.MM()/2, (cut.Thick/2 - cut.Bark).MM()
	half := func(down, of float64) float64 { // of the cut's width, at a distance down from its top
		depth := (cut.Thick - cut.Tip).MM() * down / cut.LongCut.MM()
		return math.Sqrt(math.Max(0, of*of-(radius-depth)*(radius-depth)))
	}
	outline := func(of func(down float64) float64, from float64) (left, right []Point) {
		for i := 0.0; i <= 120; i++ {
			down := from + (cut.LongCut.MM()-from)*i/120
			left = append(left, Point{x - of(down), cardLong + down})
			right = append([]Point{{x + of(down), cardLong + down}}, right...)
		}
		return left, right
	}
	whole := func(down float64) float64 { // of the scion behind the cut
		if (cut.Thick-cut.Tip).MM()*down/cut.LongCut.MM() < radius {
			return radius
		}
		return half(down, radius)
	}
	left, right := outline(whole, -(cardLong - cardTop))
	c.Shapes = append(c.Shapes, Shape{Thick: thin, Filled: true, Shade: 0.08, Points: append(left, right...)})
	left, right = outline(func(d float64) float64 { return half(d, radius) }, 0)
	c.Shapes = append(c.Shapes, Shape{Thick: firm, Filled: true, Points: append(left, right...)})
	left, right = outline(func(d float64) float64 { return half(d, wood) }, 0)
	for _, edge := range [][]Point{left, right} {
		for i := 1; i < len(edge); i += 2 {
			if math.Abs(edge[i].X-x) > 0 && math.Abs(edge[i-1].X-x) > 0 {
				c.line(edge[i-1].X, edge[i-1].Y, edge[i].X, edge[i].Y, hairline, false)
			}
		}
	}
	for _, nail := range a.Nails {
		c.Shapes = append(c.Shapes, Shape{Points: circle(x, cardLong+nail.FromTop.MM(), 0.6), Filled: true, Shade: 1})
	}
	c.middle(x, 44, "face")
}

// slot draws the slot at its least width, with its most dashed; it begins at the
// stump's top, over which a little of the face stands.
func (c *cardPen) slot(x float64, a scion.Answer) {
	top := cardLong + trade.Proud.MM()
	least, most := a.Slot.Least.MM()/2, a.Slot.Most.MM()/2
	c.line(x-most-1.5, top, x+most+1.5, top, firm, false)
	for _, side := range []float64{-1, 1} {
		c.line(x+side*least, top, x+side*least, top+slitLong, thin, false)
		c.line(x+side*most, top, x+side*most, top+slitLong, hairline, true)
	}
	c.middle(x, top-2, "top of the stump")
	c.middle(x, 44, "slot")
}

// facts says by whose word the figures stand.
func (c *cardPen) facts() {
	y := cardFacts
	for _, f := range []trade.Fact{trade.LongCutLength, trade.BackCutTip, trade.SlotSpare, trade.Slit, trade.TwoNails, trade.LittleProud} {
		for _, line := range wrap(c.font, f.Says+" ("+f.Cite()+")", 7.5, c.right-margin) {
			c.text(margin, y, line, 7.5, false, true)
			y += 3.4
		}
	}
}

// ruler draws a line to measure, 100 mm below and 4 in above.
func (c *cardPen) ruler() {
	y := cardRuler + 10
	const says = "This line is 100 mm long below, 4 in above. If it measures otherwise, print again at 100 %, not fitted to the page."
	c.text(margin, cardRuler-3, says, 8.5, false, false)
	for _, scale := range []struct {
		long, step  float64
		every, half int
		up          float64
		named       string
	}{{100, 1, 10, 5, 1, "mm"}, {4 * unit.Inch.MM(), unit.Inch.MM() / 8, 8, 4, -1, "in"}} {
		at := y + scale.up*1.2
		c.line(margin, at, margin+scale.long, at, thin, false)
		for i := 0; float64(i)*scale.step <= scale.long+0.001; i++ {
			x, tick := margin+float64(i)*scale.step, 1.6
			switch {
			case i%scale.every == 0:
				tick = 4
				words := fmt.Sprint(i)
				if scale.named == "in" {
					words = fmt.Sprint(i / scale.every)
				}
				c.middle(x, at+scale.up*(tick+1.2)+math.Max(0, scale.up)*2, words)
			case i%scale.half == 0:
				tick = 2.6
			}
			c.line(x, at, x, at+scale.up*tick, hairline, false)
		}
		c.text(margin+scale.long+5, at+scale.up*3, scale.named, 8, false, true)
	}
}

// circle is a circle as an outline of straight lines.
func circle(x, y, radius float64) (out []Point) {
	const sides = 32
	for i := range sides {
		turn := 2 * math.Pi * float64(i) / sides
		out = append(out, Point{x + radius*math.Cos(turn), y + radius*math.Sin(turn)})
	}
	return out
}
