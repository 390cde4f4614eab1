package unit

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Figures of the trade are round in both systems.
func TestFiguresAreRound(t *testing.T) {
	for l, want := range map[Length][2]string{18 * Inch: {"18 in", "45 cm"}, 6 * Inch: {"6 in", "15 cm"}, 2.5 * Inch: {"2 1/2 in", "6.5 cm"},
		2 * Inch: {"2 in", "5 cm"}, 30 * Inch: {"30 in", "75 cm"}, Inch / 2: {"1/2 in", "13 mm"}} {
		if us, metric := US.Figure(l), Metric.Figure(l); us != want[0] || metric != want[1] {
			t.Errorf("%v: %s, %s", l, us, metric)
		}
	}
}

// A figure is reckoned with by the number that people are told.
func TestFigureIsWhatIsReckonedWith(t *testing.T) {
	for l := 2 * Inch; l < 60*Inch; l += Inch / 2 {
		for _, sys := range []System{US, Metric} {
			told, err := ParseLength(sys.Figure(l), 0)
			if err != nil || side(told-sys.Round(l)) != 0 {
				t.Errorf("%s is told for %v, %v reckoned with: %v", sys.Figure(l), l, sys.Round(l), err)
			}
		}
	}
}

// A length is never printed on or over a limit it is not on.
func TestBesideALimit(t *testing.T) {
	for _, c := range []struct {
		sys  System
		l    Length
		want string
	}{
		{US, 6 * Inch, "6 in"}, {US, 6.001 * Inch, "6.001 in"}, {US, 5.9999 * Inch, "5.9999 in"}, {US, 6.004 * Inch, "6.004 in"}, {US, 6.25 * Inch, "6 1/4 in"},
		{US, 3.4 * Inch, "3.4 in"}, {Metric, 152.45, "152.45 mm"}, {Metric, 152, "152 mm"}, {Metric, 153, "153 mm"}, {Metric, 90, "90 mm"},
	} {
		if got := c.sys.Beside(c.l, Inch, 6*Inch); got != c.want {
			t.Errorf("%v: %q, want %q", c.l, got, c.want)
		}
	}
}

func TestBesideKeepsItsSide(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		limit := Length(rapid.IntRange(1, 20).Draw(t, "inches")) * Inch
		l := limit + Length(rapid.Float64Range(-0.3, 0.3).Draw(t, "off"))
		for _, sys := range []System{US, Metric} {
			if math.Abs(float64(l-limit)) > 1e-4 && Crosses(sys.Beside(l, limit), l, limit) {
				t.Fatalf("%v beside %v is printed %s", l, limit, sys.Beside(l, limit))
			}
		}
	})
}
