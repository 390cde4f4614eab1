package stump

import (
	"math"
	"testing"

	"barkslip/core/unit"
	"barkslip/ui/figure"
)

// TestNextTie goes on by the foot from the highest tie, and not over the stake.
func TestNextTie(t *testing.T) {
	for _, c := range []struct {
		ties        []float64
		stake, want float64
	}{
		{nil, 6, 1}, {[]float64{1}, 6, 2}, {[]float64{1, 2.4}, 6, 3},
		{[]float64{5.5}, 6, 6}, {[]float64{6}, 6, 0}, {nil, 0, 0},
	} {
		fig := figure.Shoot{StakeTop: unit.Length(c.stake) * unit.Foot}
		for _, tie := range c.ties {
			fig.Ties = append(fig.Ties, unit.Length(tie)*unit.Foot)
		}
		if got := nextTie(fig); math.Abs(got.MM()-(unit.Length(c.want)*unit.Foot).MM()) > 0.1 {
			t.Errorf("ties %v, stake %v: %v, want %v ft", c.ties, c.stake, got, c.want)
		}
	}
}
