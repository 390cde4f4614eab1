package figure

import (
	"math"
	"strings"
	"testing"
	"unicode"

	"pgregory.net/rapid"

	"barkslip/core/unit"
)

// odd draws a value of any size, often none that can be drawn.
func odd(t *rapid.T, name string) float64 {
	return rapid.OneOf(
		rapid.Float64Range(0, 300), rapid.Float64(),
		rapid.SampledFrom([]float64{0, -1, 1e-300, 1e8, 1e300, math.NaN(), math.Inf(1), math.Inf(-1)}),
	).Draw(t, name)
}

func oddLength(t *rapid.T, name string) unit.Length { return unit.Length(odd(t, name)) }

var words = rapid.SampledFrom([]string{"", "1", "12", "torn", "a word far too long for any margin", "枝条", "e\u0301\x1b[31m\n"})

// anyFigure draws one of the figures with any values at all.
func anyFigure(t *rapid.T) drawn {
	sys := unit.System(rapid.IntRange(0, 1).Draw(t, "system"))
	n := rapid.IntRange(0, 5).Draw(t, "n")
	switch rapid.IntRange(0, 5).Draw(t, "figure") {
	case 0:
		top := Top{Across: oddLength(t, "across"), Across2: oddLength(t, "across2"), LongWay: unit.Bearing(odd(t, "way")), Field: oddLength(t, "field"), Sys: sys}
		for range n {
			top.Slots = append(top.Slots, Slot{unit.Bearing(odd(t, "bearing")), words.Draw(t, "label"), State(rapid.IntRange(0, 2).Draw(t, "state"))})
			top.Blocked = append(top.Blocked, Arc{unit.Bearing(odd(t, "bearing")), oddLength(t, "width"), words.Draw(t, "word")})
			top.Shade = bearing(unit.Bearing(odd(t, "shade")))
		}
		return top
	case 1:
		return Scion{Thick: oddLength(t, "thick"), Bark: oddLength(t, "bark"), Pith: oddLength(t, "pith"), LongCut: oddLength(t, "cut"), Tip: oddLength(t, "tip"),
			Back: oddLength(t, "back"), Nails: []unit.Length{oddLength(t, "nail")}, Least: oddLength(t, "least"), Most: oddLength(t, "most"), Sys: sys}
	case 2:
		s := Stick{Length: oddLength(t, "length"), TrimButt: oddLength(t, "trim"), TrimTip: oddLength(t, "trim"), ThickButt: oddLength(t, "thick"),
			ThickTip: oddLength(t, "thick"), Sys: sys}
		for range n {
			s.Nodes = append(s.Nodes, Node{oddLength(t, "at"), n})
			s.Pieces = append(s.Pieces, Piece{oddLength(t, "from"), oddLength(t, "to"), n > 2})
		}
		return s
	case 3:
		v := Curve{X0: odd(t, "x0"), X1: odd(t, "x1"), Y0: odd(t, "y0"), Y1: odd(t, "y1"), YName: words.Draw(t, "name")}
		s := Series{Name: words.Draw(t, "name"), Dots: n > 2}
		for range n {
			s.Points = append(s.Points, Point{odd(t, "x"), odd(t, "y")})
			v.XTicks = append(v.XTicks, Tick{odd(t, "tick"), words.Draw(t, "label")})
			v.YTicks = append(v.YTicks, Tick{odd(t, "tick"), words.Draw(t, "label")})
			v.HLines = append(v.HLines, Line{At: odd(t, "line"), Label: words.Draw(t, "label"), Dash: Dashed})
			v.VLines = append(v.VLines, Line{At: odd(t, "line"), Label: words.Draw(t, "label"), Dash: Dotted})
			v.Bands = append(v.Bands, Band{Y0: odd(t, "low"), Y1: odd(t, "high"), Label: words.Draw(t, "label")})
		}
		v.Series = []Series{s, s}
		return v
	case 4:
		d := Day{Limit: unit.Temperature(odd(t, "limit")), Sys: sys}
		for range n {
			d.Lines = append(d.Lines, DayLine{Name: words.Draw(t, "name"),
				Points: []Reading{{odd(t, "hour"), unit.Temperature(odd(t, "temp"))}, {odd(t, "hour"), unit.Temperature(odd(t, "temp"))}}})
			d.Marks = append(d.Marks, Mark{Hour: odd(t, "hour"), Label: words.Draw(t, "label")})
		}
		return d
	}
	s := Shoot{From: unit.Date(rapid.Int32().Draw(t, "from")), StakeTop: oddLength(t, "stake"), AimLow: oddLength(t, "aim"), AimHigh: oddLength(t, "aim"),
		Next: oddLength(t, "next"),
		Sys:  sys}
	s.To = s.From + unit.Date(rapid.Int32Range(-10, 100000).Draw(t, "days"))
	for range n {
		s.Measured = append(s.Measured, Reached{s.From + unit.Date(n), oddLength(t, "length")})
		s.Forecast = append(s.Forecast, Reached{s.From + unit.Date(2*n), oddLength(t, "length")})
		s.Ties = append(s.Ties, oddLength(t, "tie"))
	}
	return s
}

func TestFiguresKeepToTheirSize(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.IntRange(-3, 130).Draw(t, "w"), rapid.IntRange(-3, 60).Draw(t, "h")
		mode := Mode(rapid.IntRange(0, 1).Draw(t, "mode"))
		f := anyFigure(t).Draw(w, h, mode)
		check(t, f, max(w, 0), max(h, 0))
		if (w < narrowest || h < lowest) && !f.Empty() {
			t.Fatalf("something is drawn in %d by %d", w, h)
		}
	})
}

func TestIntervalsKeepToTheirSize(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := rapid.IntRange(-3, 130).Draw(t, "w")
		check(t, Interval{odd(t, "low"), odd(t, "rate"), odd(t, "high")}.Draw(w, ASCII), max(w, 0), 1)
		check(t, Percents(w), max(w, 0), 1)
	})
}

// check finds lines that are too many, or not exactly as wide as asked.
func check(t *rapid.T, f Figure, w, h int) {
	t.Helper()
	lines := f.Lines()
	if len(lines) != h {
		t.Fatalf("%d lines, want %d", len(lines), h)
	}
	for y, line := range lines {
		if width(line) != w {
			t.Fatalf("line %d is %d wide, want %d: %q", y, width(line), w, line)
		}
		if strings.ContainsFunc(line, unicode.IsControl) {
			t.Fatalf("line %d holds a control character: %q", y, line)
		}
	}
}

func TestASCIIFiguresAreASCII(t *testing.T) {
	for name, s := range samples {
		for _, line := range s.Draw(60, 20, ASCII).Lines() {
			for _, r := range line {
				if r > unicode.MaxASCII {
					t.Errorf("%s holds %q", name, r)
				}
			}
		}
	}
}

func TestAbsurdSizesAreCut(t *testing.T) {
	f := Top{Across: 100}.Draw(math.MaxInt, math.MaxInt, Braille)
	if w, h := f.Size(); w != widest || h != tallest || f.Empty() {
		t.Errorf("%d by %d", w, h)
	}
}

func TestRenderGroupsRunsOfOneInk(t *testing.T) {
	c, _ := newCanvas(8, 4, Braille)
	c.text(0, 0, "ab", Accent)
	c.text(2, 0, "枝", Accent)
	c.text(4, 0, "c", Warn)
	marks := map[Ink]string{Plain: "-", Accent: "A", Warn: "W"}
	got := c.finish().Render(func(i Ink, s string) string { return marks[i] + s + marks[i] })
	if want := "Aab枝AWcW-   -"; got[0] != want {
		t.Errorf("%q, want %q", got[0], want)
	}
	if r, _ := c.finish().Cell(3, 0); r != 0 {
		t.Errorf("second column of a wide character is %q", r)
	}
	if r, _ := c.finish().Cell(8, 0); r != ' ' {
		t.Errorf("outside the figure is %q", r)
	}
}

// The day is told apart without colour: black is solid, white hollow, the air
// dotted, and each carries its name; the limit says what it is.
func TestSeriesCarryTheirNames(t *testing.T) {
	for _, sys := range []unit.System{unit.US, unit.Metric} {
		for _, size := range [][2]int{{34, 12}, {44, 18}, {60, 20}, {100, 30}} {
			text := strings.Join(warmDay(sys).Draw(size[0], size[1], Braille).Lines(), "\n")
			words := []string{"black", "white", "air", "sealed", "by 12:10", "12:00", "harm", sys.Temperature(45)}
			if size[0] >= 44 {
				words = append(words, "sealed 10:30", "white by 12:10")
			}
			if size[0] >= 60 {
				words = append(words, sys.Temperature(45)+": harm begins")
			}
			for _, word := range words {
				if !strings.Contains(text, word) {
					t.Errorf("%v at %v: %q is missing\n%s", sys, size, word, text)
				}
			}
		}
	}
}

// The parts of a scion are named, and so is what stands beside the stake, down to
// the figure beside the answers of the smallest full window.
func TestPartsAreNamed(t *testing.T) {
	for name, words := range map[string][]string{
		"scion":       {"tip", "bark side", "cambium", "nail", "2 1/2 in", "1 in"},
		"scion-thick": {"tip", "bark side", "cambium", "nail", "60 mm", "2 cm"},
		"shoot":       {"stake 6 ft", "tie 3 ft", "50 in", "aim"},
		"top":         {"N", "torn", "4 3/16 in", "1", "[2]", "3", "4"},
	} {
		for _, size := range [][2]int{{26, 12}, {34, 14}, {44, 24}} {
			for _, mode := range []Mode{Braille, ASCII} {
				text := strings.Join(samples[name].Draw(size[0], size[1], mode).Lines(), "\n")
				for _, word := range words {
					if !strings.Contains(text, word) {
						t.Errorf("%s at %v: %q is missing\n%s", name, size, word, text)
					}
				}
			}
		}
	}
}

// The stump with its torn bark and its slots is still there in the least room there
// is for it.
func TestStumpInLittleRoom(t *testing.T) {
	for _, mode := range []Mode{Braille, ASCII} {
		text := strings.Join(samples["top"].Draw(16, 5, mode).Lines(), "\n")
		for _, word := range []string{"N", "torn", "1", "2", "4"} {
			if !strings.Contains(text, word) {
				t.Errorf("%q is missing\n%s", word, text)
			}
		}
	}
}

func BenchmarkDraw(b *testing.B) {
	for name, s := range samples {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				s.Draw(60, 20, Braille).Lines()
			}
		})
	}
}
