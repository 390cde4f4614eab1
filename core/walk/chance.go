package walk

import (
	"fmt"
	"math"

	"barkslip/core/record"
	"barkslip/core/tally"
	"barkslip/core/trade"
)

// buds on each scion, as chosen for this stump or the one before.
func (c *Case) buds() int {
	nodes := c.wood().Nodes
	if len(nodes) == 0 && c.Before.Wood != nil {
		nodes = c.Before.Wood.Nodes
	}
	n := 0
	for _, node := range nodes {
		n += map[record.Buds]int{record.Paired: 2, record.First: 1}[node.Buds]
	}
	if n == 0 {
		return tally.BudsUsual
	}
	return n
}

// chance works out what the buds and scions give, and, where there is room for
// it, what one scion more would add.
func (c *Case) chance(scions int, room bool) (words string, work trade.Worked) {
	o := c.Odds
	if o.PerBud == 0 {
		o = tally.UsualOdds()
	}
	now, err := tally.Chance(o.PerBud, c.buds(), scions, o.Together)
	if err != nil {
		return "", trade.Worked{}
	}
	more, err := tally.Chance(o.PerBud, c.buds(), scions+1, o.Together)
	if err != nil {
		return "", trade.Worked{}
	}
	work = now.Work
	words = fmt.Sprintf("It takes in %s of 100 cases", percent(now.Stump))
	if room {
		words += ", with one more scion in " + percent(more.Stump)
		work.Answer = append(work.Answer, trade.Input{Name: "with one more scion", Value: more.Stump})
	}
	if o.Learned {
		work.Assumed = append(work.Assumed, fmt.Sprintf(
			"the chance of a bud, and how alike the grafts of a stump fare (%.2f), come from %d grafts on %d stumps of this block", o.Together, o.Grafts, o.Stumps))
		return fmt.Sprintf("%s, by %d grafts of this block.", words, o.Grafts), work
	}
	work.Assumed = append(work.Assumed, fmt.Sprintf(
		"until this block has a record of its own, the chance of a bud is %g and the grafts of a stump fare alike by %g", o.PerBud, o.Together))
	work.Facts = append(work.Facts, trade.BudChance)
	return words + "; assumed until this block has a record.", work
}

func percent(p float64) string {
	if p > 0.99 {
		return fmt.Sprintf("%.1f", math.Floor(p*1000)/10)
	}
	return fmt.Sprintf("%.0f", p*100)
}
