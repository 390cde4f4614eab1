package unit

import "testing"

// Figures of the trade are round in both systems.
func TestFiguresAreRound(t *testing.T) {
	for l, want := range map[Length][2]string{18 * Inch: {"18 in", "45 cm"}, 6 * Inch: {"6 in", "15 cm"}, 2.5 * Inch: {"2 1/2 in", "6.5 cm"},
		2 * Inch: {"2 in", "5 cm"}, 30 * Inch: {"30 in", "75 cm"}, Inch / 2: {"1/2 in", "13 mm"}} {
		if us, metric := US.Figure(l), Metric.Figure(l); us != want[0] || metric != want[1] {
			t.Errorf("%v: %s, %s", l, us, metric)
		}
	}
}
