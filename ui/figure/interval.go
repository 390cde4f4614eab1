package figure

import (
	"math"
	"strings"
)

// Bars, whatever they tell, are of one style: a thin line as long as there is
// room, heavy as far as the number goes.
const (
	thin   = iota // what is not reached
	notch         // a quarter of the scale
	heavy         // what is reached, or what an interval covers
	half          // heavy to its middle
	stands        // the share itself
)

var barSigns = map[Mode][]rune{Braille: []rune("─┼━╾╋"), ASCII: []rune("-+==O")}

// blankLine is a figure of one blank line of w columns.
func blankLine(w int) Figure {
	w = min(max(w, 0), widest)
	return Figure{w: w, h: 1, runes: []rune(strings.Repeat(" ", w)), inks: make([]Ink, w)}
}

// Interval is a share and the bounds it is known within, each 0 to 1.
type Interval struct{ Low, Rate, High float64 }

// Draw draws the interval on a scale from 0 to 100 per cent, in one line of w
// columns: the scale thin with a notch at each quarter, heavy between the bounds,
// the share itself as a cross on it. An interval that is not a number leaves the
// scale alone.
func (i Interval) Draw(w int, mode Mode) Figure {
	f := blankLine(w)
	if f.w < narrowest {
		return f
	}
	place := func(share float64) int { return int(math.Round(min(max(share, 0), 1) * float64(f.w-1))) }
	put := func(x, sign int, ink Ink) { f.runes[x], f.inks[x] = barSigns[mode][sign], ink }
	for x := range f.w {
		put(x, thin, Faint)
	}
	for quarter := 0.0; quarter <= 1; quarter += 0.25 {
		put(place(quarter), notch, Faint)
	}
	if !finite(i.Low, i.Rate, i.High) || i.Low > i.High {
		return f
	}
	for x := place(i.Low); x <= place(i.High); x++ {
		put(x, heavy, Plain)
	}
	put(place(i.Rate), stands, Accent)
	return f
}

// Bar is a share, 0 to 1, of the line it is drawn in, plain.
type Bar struct {
	Share float64
	Open  bool // the rest of the line is drawn too, thin
}

// Draw draws the bar in one line of w columns, to half a column; a share above 0
// is never nothing.
func (b Bar) Draw(w int, mode Mode) Figure {
	f := blankLine(w)
	if b.Open {
		for x := range f.w {
			f.runes[x], f.inks[x] = barSigns[mode][thin], Faint
		}
	}
	if !finite(b.Share) || b.Share <= 0 {
		return f
	}
	halves := min(max(int(math.Round(b.Share*float64(2*f.w))), 1), 2*f.w)
	if mode == ASCII {
		halves += halves % 2
	}
	for x := range halves / 2 {
		f.runes[x], f.inks[x] = barSigns[mode][heavy], Plain
	}
	if x := halves / 2; halves%2 == 1 {
		if f.runes[x], f.inks[x] = barSigns[mode][half], Plain; !b.Open {
			f.runes[x] = '╸'
		}
	}
	return f
}

// Percents is the line under intervals of w columns that says what their scale
// runs over.
func Percents(w int) Figure {
	c, _ := newCanvas(w, 1, ASCII)
	if c.w < narrowest {
		return c.finish()
	}
	c.text(0, 0, "0", Faint)
	c.text((c.w-1)/2-1, 0, "50%", Faint)
	if c.w >= 12 {
		c.text(c.w-4, 0, "100%", Faint)
	}
	return c.finish()
}
