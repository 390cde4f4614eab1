package figure

import (
	"math"
	"os"
	"slices"
	"strings"
	"testing"
)

// sizes are those a figure is drawn in, from the smallest to the largest of a
// window: all small ones, and of the larger ones some, with BARKSLIP_SLOW many.
func sizes(each func(w, h int)) {
	slow := os.Getenv("BARKSLIP_SLOW") != ""
	for w := 20; w <= 120; w++ {
		for h := 6; h <= 40; h++ {
			if small := w <= 36 && h <= 14 && (w+h)%2 == 0; small || slow && (w+2*h)%9 == 0 || (7*w+3*h)%47 == 0 {
				each(w, h)
			}
		}
	}
}

// No text may lie over another, nor run into it.
func TestLabelsKeepApart(t *testing.T) {
	for name, s := range samples {
		sizes(func(w, h int) {
			words := s.Draw(w, h, Mode((w+h)%2)).words
			slices.SortFunc(words, func(p, q word) int { return 1000*(p.y-q.y) + p.x - q.x })
			for i := 1; i < len(words); i++ {
				p, q := words[i-1], words[i]
				if marks := len(p.text) == 1 && len(q.text) == 1; marks {
					continue // parts of the drawing, which may meet
				}
				if p.y == q.y && q.x < p.x+width(p.text) {
					t.Fatalf("%s at %d by %d: %q at %d runs into %q at %d\n%s", name, w, h, p.text, p.x, q.text, q.x,
						strings.Join(s.Draw(w, h, Mode((w+h)%2)).Lines(), "\n"))
				}
			}
		})
	}
}

// plane is a curve laid on a figure of a size, reckoned apart from the drawing.
type plane struct {
	Curve
	low, high point
}

// away is how far, in dots, a series runs from the cells of a word.
func (p plane) away(s Series, at word) float64 {
	least := math.Inf(1)
	for i := 1; i < len(s.Points); i++ {
		a, b := s.Points[i-1], s.Points[i]
		for step := range 33 {
			share := float64(step) / 32
			x, y := a.X+(b.X-a.X)*share, a.Y+(b.Y-a.Y)*share
			if x < p.X0 || x > p.X1 || y < p.Y0 || y > p.Y1 {
				continue
			}
			dot := point{p.low.x + (x-p.X0)/(p.X1-p.X0)*(p.high.x-p.low.x), p.high.y - (y-p.Y0)/(p.Y1-p.Y0)*(p.high.y-p.low.y)}
			dx := max(float64(2*at.x)-dot.x, dot.x-float64(2*(at.x+width(at.text))), 0)
			dy := max(float64(4*at.y)-dot.y, dot.y-float64(4*at.y+4), 0)
			least = min(least, math.Hypot(dx, dy))
		}
	}
	return least
}

// A name stands on its own line or right beside it, and nearer to it than to any
// other; what is said of a line across, or of one up, stands at it.
func TestLabelsStayOnTheirCurves(t *testing.T) {
	curves := map[string]func(w int) Curve{
		"day": func(w int) Curve { return samples["day"].(Day).curve(w) }, "day-metric": func(w int) Curve { return samples["day-metric"].(Day).curve(w) },
		"callus": func(int) Curve { return samples["callus"].(Curve) },
	}
	for name, curve := range curves {
		sizes(func(w, h int) {
			v, words := curve(w), samples[name].Draw(w, h, Braille).words
			c, _ := newCanvas(w, h, Braille)
			laid := v.frame(c, 0)
			p := plane{v, laid.low, laid.high}
			for i, s := range v.Series {
				at, found := find(words, s.Name)
				if !found {
					if w >= 26 && h >= 10 && s.Dash != Dotted {
						t.Fatalf("%s at %d by %d: %q has no name\n%s", name, w, h, s.Name, strings.Join(samples[name].Draw(w, h, Braille).Lines(), "\n"))
					}
					continue
				}
				mine := p.away(s, at)
				if mine > 5 {
					t.Fatalf("%s at %d by %d: %q stands %.1f dots from its line", name, w, h, s.Name, mine)
				}
				for k, other := range v.Series {
					if k != i && p.away(other, at) <= mine {
						t.Fatalf("%s at %d by %d: %q stands %.1f dots from its line, %.1f from %q\n%s", name, w, h, s.Name, mine, p.away(other, at), other.Name,
							strings.Join(samples[name].Draw(w, h, Braille).Lines(), "\n"))
					}
				}
			}
			for _, l := range v.HLines {
				at, found := find(words, l.texts()...)
				y := p.high.y - (l.At-p.Y0)/(p.Y1-p.Y0)*(p.high.y-p.low.y)
				if found && math.Abs(float64(4*at.y+2)-y) > 7 || !found && w >= 24 && h >= 8 {
					t.Fatalf("%s at %d by %d: %q is not at its height (%v)\n%s", name, w, h, l.Label, found, strings.Join(samples[name].Draw(w, h, Braille).Lines(), "\n"))
				}
			}
			for _, l := range v.VLines {
				at, found := find(words, l.texts()...)
				x := (p.low.x + (l.At-p.X0)/(p.X1-p.X0)*(p.high.x-p.low.x)) / 2
				if found && (x < float64(at.x)-1 || x > float64(at.x+width(at.text))+1) {
					t.Fatalf("%s at %d by %d: %q does not stand at its time", name, w, h, at.text)
				}
			}
		})
	}
}

// What is said beside the stake stands at its height.
func TestStakeWordsStandAtTheirHeight(t *testing.T) {
	sizes(func(w, h int) {
		for _, said := range []struct {
			text string
			feet float64
		}{{"stake 6 ft", 6}, {"tie 3 ft", 3}, {"tie 1 ft", 1}, {"next tie 4 ft", 4}} {
			f := samples["shoot"].Draw(w, h, Braille)
			at, found := find(f.words, said.text)
			if !found {
				continue
			}
			zero, _ := find(f.words, "0")
			ten, tall := find(f.words, "10")
			if !tall || zero.text == "" {
				continue
			}
			want := float64(zero.y) + said.feet/10*float64(ten.y-zero.y)
			if math.Abs(float64(at.y)-want) > 1.2 {
				t.Fatalf("%d by %d: %q stands at line %d, want %.1f\n%s", w, h, said.text, at.y, want, strings.Join(f.Lines(), "\n"))
			}
		}
	})
}

// find is the first word that is one of the texts.
func find(words []word, texts ...string) (word, bool) {
	for _, s := range texts {
		if i := slices.IndexFunc(words, func(w word) bool { return w.text == s }); i >= 0 {
			return words[i], true
		}
	}
	return word{}, false
}
