package plan

import (
	"barkslip/core/due"
	"barkslip/core/tally"
)

// OddsOf learns the odds from the stumps of a block.
func OddsOf(sums []due.Summary) tally.Odds {
	var counts []tally.Counts
	alive, of := 0, 0
	for _, s := range sums {
		if s.Known > 0 {
			counts = append(counts, tally.Counts{Alive: s.Taken, Of: s.Known})
			alive, of = alive+s.Taken, of+s.Known
		}
	}
	o := tally.UsualOdds()
	learned, err := tally.Learn(counts)
	if err != nil || !learned.Enough || alive == 0 || alive == of {
		return o
	}
	return tally.Odds{PerBud: tally.PerBud(float64(alive)/float64(of), tally.BudsUsual), Together: learned.Together, Learned: true, Stumps: learned.Stumps}
}
