package girth

import (
	"errors"
	"math"
	"strings"
	"testing"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

func TestScionsBySize(t *testing.T) {
	for _, c := range []struct {
		across, across2 unit.Length
		want            int
	}{
		{1 * unit.Inch, 0, 2}, {2 * unit.Inch, 0, 2}, {3 * unit.Inch, 0, 3},
		{4 * unit.Inch, 0, 4}, // common practice: four at about 4 in across
		{200 / math.Pi, 0, 3}, // a girth of 2.5 spacings: half rounds up
		{199.9 / math.Pi, 0, 2},
		{6 * unit.Inch, 0, 4}, {6 * unit.Inch, 5 * unit.Inch, 4}, {5 * unit.Inch, 6 * unit.Inch, 4},
		{6.01 * unit.Inch, 0, 6}, {4 * unit.Inch, 6.1 * unit.Inch, 5}, {40 * unit.Inch, 0, 6},
	} {
		got, err := Scions(c.across, c.across2)
		if err != nil || got.Scions != c.want {
			t.Errorf("%v by %v takes %d (%v), want %d", c.across, c.across2, got.Scions, err, c.want)
		}
		if math.Abs(float64(got.Spacing)*float64(got.Scions)-float64(got.Girth)) > 1e-9 {
			t.Errorf("%d scions %v apart do not go round %v", got.Scions, got.Spacing, got.Girth)
		}
		if len(got.Work.Facts) == 0 || len(got.Work.Inputs) == 0 || got.Work.Formula == "" {
			t.Errorf("%v: no working", c.across)
		}
	}
}

func TestWidthsNoStumpHas(t *testing.T) {
	nan, inf := unit.Length(math.NaN()), unit.Length(math.Inf(1))
	for _, c := range []struct {
		across, across2 unit.Length
		option          string
	}{
		{0, 0, "across"}, {-1, 0, "across"}, {nan, 0, "across"}, {inf, 0, "across"}, {41 * unit.Inch, 0, "across"},
		{100, -1, "across2"}, {100, nan, "across2"}, {100, inf, "across2"}, {100, 1017, "across2"},
	} {
		_, err := Scions(c.across, c.across2)
		var cannot *trade.Impossible
		if !errors.As(err, &cannot) || cannot.Option != c.option {
			t.Errorf("%v by %v: %v, want a refusal of %s", c.across, c.across2, err, c.option)
		}
		_, err = Slots(SlotPlan{Across: c.across, Across2: c.across2})
		if !errors.As(err, &cannot) || cannot.Option != c.option {
			t.Errorf("slots on %v by %v: %v, want a refusal of %s", c.across, c.across2, err, c.option)
		}
	}
}

// The size shown does not contradict the count: just over the limit of a wide
// stump it is shown over it.
func TestSizeShownBesideTheLimit(t *testing.T) {
	for across, want := range map[unit.Length]string{6 * unit.Inch: "across: 6 in", 6.001 * unit.Inch: "across: 6.001 in"} {
		c, err := Scions(across, 0)
		if err != nil {
			t.Fatal(err)
		}
		if text := strings.Join(c.Work.Lines(unit.US), "\n"); !strings.Contains(text, "  "+want+"\n") {
			t.Errorf("%d scions, %q missing:\n%s", c.Scions, want, text)
		}
	}
}
