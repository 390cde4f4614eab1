package figure

import (
	"math"
	"strings"
)

// Interval is a share and the bounds it is known within, each 0 to 1.
type Interval struct{ Low, Rate, High float64 }

// Draw draws the interval on a scale from 0 to 100 per cent, in one line of w
// columns, in the shades of bars: the scale as its track with a stop at each
// quarter, the bounds as a bar of half shade, the share itself full on it. An
// interval that is not a number leaves the scale alone.
func (i Interval) Draw(w int, mode Mode) Figure {
	w = min(max(w, 0), widest)
	f := Figure{w: w, h: 1, runes: []rune(strings.Repeat(" ", w)), inks: make([]Ink, w)}
	if w < narrowest {
		return f
	}
	stop := map[Mode]rune{Braille: '┊', ASCII: ':'}[mode]
	place := func(share float64) int { return int(math.Round(min(max(share, 0), 1) * float64(w-1))) }
	put := func(x int, sign rune, ink Ink) { f.runes[x], f.inks[x] = sign, ink }
	for x := range w {
		put(x, Track.Sign(mode), Faint)
	}
	for quarter := 0.0; quarter <= 1; quarter += 0.25 {
		put(place(quarter), stop, Faint)
	}
	if !finite(i.Low, i.Rate, i.High) || i.Low > i.High {
		return f
	}
	for x := place(i.Low); x <= place(i.High); x++ {
		put(x, Half.Sign(mode), Plain)
	}
	put(place(i.Rate), Full.Sign(mode), Accent)
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
