package figure

import "math"

// Shade is how heavy a stretch of a bar is drawn: stretches are told apart by it
// without colour.
type Shade uint8

// The shades, from what is counted to the scale beneath it.
const (
	Full  Shade = iota // what is counted
	Half               // what belongs to it: the bounds of a share, what is not late
	Light              // what may belong to it
	Track              // the scale, where nothing is
)

var shades = map[Mode][]rune{Braille: []rune("▆━╌·"), ASCII: []rune("#=-.")}

// Sign is the character of the shade.
func (s Shade) Sign(mode Mode) rune { return shades[mode][s] }

// Stretch is a part of a bar: an amount, the character it is drawn in, its ink.
type Stretch struct {
	Of   float64
	Sign rune
	Ink  Ink
}

// Bar is amounts end to end, on a scale on which Most takes the whole width. All
// bars of the program are drawn by it: work, stages, pace, losses, wood.
type Bar struct {
	Most      float64
	Stretches []Stretch
}

// Draw draws the bar in one line, as wide as its amounts come to and at most w
// columns. An amount above nought has a column at least while there is one left.
func (b Bar) Draw(w int) Figure {
	w = min(max(w, 0), widest)
	f := Figure{h: 1}
	if !finite(b.Most) || b.Most <= 0 {
		return f
	}
	sum := 0.0
	for i, s := range b.Stretches {
		if !finite(s.Of) || s.Of <= 0 {
			continue
		}
		sum += s.Of
		to := max(int(math.Round(min(sum/b.Most, 1)*float64(w))), f.w+1)
		for to = min(to, w-b.behind(i)); f.w < to; f.w++ {
			f.runes, f.inks = append(f.runes, s.Sign), append(f.inks, s.Ink)
		}
	}
	return f
}

// behind is how many amounts above nought stand behind one.
func (b Bar) behind(at int) (n int) {
	for _, s := range b.Stretches[at+1:] {
		if finite(s.Of) && s.Of > 0 {
			n++
		}
	}
	return n
}
