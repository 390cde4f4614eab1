package plan

import (
	"barkslip/core/due"
	"barkslip/core/tally"
)

// OddsOf learns the odds from the grafts of a block: one rate, and how alike the
// grafts of one grafting of a stump fare.
func OddsOf(sums []due.Summary) tally.Odds {
	var counts []tally.Counts
	alive, of := 0, 0
	for i := range sums {
		for _, c := range graftings(&sums[i]) {
			counts = append(counts, c)
			alive, of = alive+c.Alive, of+c.Of
		}
	}
	o := tally.UsualOdds()
	learned, err := tally.Learn(counts)
	if err != nil || !learned.Enough || alive == 0 || alive == of {
		return o
	}
	return tally.Odds{
		PerBud: tally.PerBud(float64(alive)/float64(of), tally.BudsUsual), Together: learned.Together,
		Learned: true, Stumps: learned.Stumps, Grafts: of,
	}
}

// graftings is how many grafts took of those known, for each grafting of a stump
// of which some are known.
func graftings(s *due.Summary) (out []tally.Counts) {
	type grafting struct {
		trunk   bool
		attempt int
	}
	var last grafting
	for g := range s.Grafts {
		if !g.Known {
			continue
		}
		if at := (grafting{g.Trunk, g.Attempt}); len(out) == 0 || at != last {
			out, last = append(out, tally.Counts{}), at
		}
		c := &out[len(out)-1]
		c.Of++
		if g.Took {
			c.Alive++
		}
	}
	return out
}
