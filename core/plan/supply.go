package plan

import (
	"fmt"
	"math"

	"barkslip/core/due"
	"barkslip/core/girth"
	"barkslip/core/record"
	"barkslip/core/trade"
)

// Supply is what is still needed to graft a block.
type Supply struct {
	Stumps   int // standing or draining, large enough to be grafted
	Measured int // of them, those whose size is known
	Scions   int
	Sticks   [2]int // of 12 in, from the least to the most
	Nails    int
	Stakes   int // one a stump
	Work     trade.Worked
}

// fewestSizes is how many sizes must be known for the rest to go by them.
const fewestSizes = 5

// SupplyOf works out what the stumps that are not grafted yet will take. A
// stump of unknown size counts as the mean of those known, or as three scions
// where too few are.
func SupplyOf(sums []due.Summary) Supply {
	var s Supply
	each := float64(trade.ScionsUsual)
	for _, sum := range sums {
		small := sum.Across > 0 && sum.Across < trade.LeastAcross
		if sum.Stage != record.StageStanding && sum.Stage != record.StageDraining || small {
			continue
		}
		s.Stumps++
		if c, err := girth.Scions(sum.Across, 0); err == nil && sum.Across > 0 {
			s.Measured, s.Scions = s.Measured+1, s.Scions+c.Scions
		}
	}
	if s.Measured >= fewestSizes {
		each = float64(s.Scions) / float64(s.Measured)
	}
	s.Scions += int(math.Ceil(each * float64(s.Stumps-s.Measured)))
	s.Sticks = [2]int{sticks(s.Scions, trade.GraftsPerStickMost), sticks(s.Scions, trade.GraftsPerStick)}
	s.Nails, s.Stakes = s.Scions*trade.NailsPerScion, s.Stumps
	s.Work = trade.Worked{
		Question: "What the stumps not yet grafted will take",
		Answer: []trade.Input{{Name: "scions", Value: s.Scions}, {Name: "sticks of 12 in", Value: fmt.Sprintf("%d to %d", s.Sticks[0], s.Sticks[1])},
			{Name: "nails", Value: s.Nails}, {Name: "stakes", Value: s.Stakes}},
		Formula: "scions by the size of each stump; sticks = scions / 4 to scions / 3; two nails a scion; a stake a stump",
		Inputs:  []trade.Input{{Name: "stumps not grafted", Value: s.Stumps}, {Name: "of known size", Value: s.Measured}},
		Assumed: []string{fmt.Sprintf("%.1f scions on a stump of unknown size", each), "nothing spoils; take some over"},
		Facts:   []trade.Fact{trade.ScionSpacing, trade.ScionCap, trade.StickGives, trade.TwoNails},
	}
	return s
}

func sticks(n, each int) int { return (n + each - 1) / each }
