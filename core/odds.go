package core

import (
	"fmt"
	"math"

	"barkslip/core/tally"
	"barkslip/core/trade"
)

// Odds is the chance of a bud and how alike the scions of a stump fare, learned
// from the block's own record when it has enough.
type Odds struct {
	PerBud   float64
	Together float64
	Learned  bool
	Stumps   int // it was learned from
}

// Take is how many grafts of the stump took, of how many it is known, over all
// its attempts: grafting again wipes out no loss.
func (s *Stump) Take(b *Block) (taken, known int) {
	for _, a := range s.Attempts {
		t, k := a.Take(b)
		taken, known = taken+t, known+k
	}
	return taken, known
}

// Take is how many grafts of the attempt took, of how many it is known: taken
// is alive and growing 30 of the block's days after the first push, as seen on
// the graft itself.
func (a *Attempt) Take(b *Block) (taken, known int) {
	push := a.FirstPush()
	if push.IsZero() && !a.AllDead() && a.Failed == nil {
		return 0, 0
	}
	for _, g := range a.Grafts {
		switch {
		case g.State == Dead || a.Failed != nil:
			known++
		case (g.State == Growing || g.State == Pushing) && b.Day(g.Seen) >= b.Day(push).Add(trade.TakenDays):
			taken, known = taken+1, known+1
		}
	}
	return taken, known
}

// OddsOf learns the odds from the stumps of a block.
func OddsOf(sums []Summary) Odds {
	var counts []tally.Counts
	alive, of := 0, 0
	for _, s := range sums {
		if s.Known > 0 {
			counts = append(counts, tally.Counts{Alive: s.Taken, Of: s.Known})
			alive, of = alive+s.Taken, of+s.Known
		}
	}
	o := Odds{PerBud: trade.ChanceOfBud, Together: trade.GraftsTogether}
	learned, err := tally.Learn(counts)
	if err != nil || !learned.Enough || alive == 0 || alive == of {
		return o
	}
	return Odds{PerBud: tally.PerBud(float64(alive)/float64(of), budsUsual), Together: learned.Together, Learned: true, Stumps: learned.Stumps}
}

// budsUsual is the buds of two paired nodes.
const budsUsual = 4

// buds on each scion, as chosen for this stump or the one before.
func (c *Case) buds() int {
	nodes := c.wood().Nodes
	if len(nodes) == 0 && c.Before.Wood != nil {
		nodes = c.Before.Wood.Nodes
	}
	n := 0
	for _, node := range nodes {
		n += map[Buds]int{Paired: 2, First: 1}[node.Buds]
	}
	if n == 0 {
		return budsUsual
	}
	return n
}

// chance works out what the buds and scions give, and, where there is room for
// it, what one scion more would add.
func (c *Case) chance(scions int, room bool) (words string, work trade.Worked) {
	o := c.Odds
	if o.PerBud == 0 {
		o = OddsOf(nil)
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
	words = fmt.Sprintf("Chance it takes: %s in 100", percent(now.Stump))
	if room {
		words += ", one scion more " + percent(more.Stump)
		work.Answer = append(work.Answer, trade.Input{Name: "with one scion more", Value: more.Stump})
	}
	if o.Learned {
		work.Assumed = append(work.Assumed, fmt.Sprintf("chance and likeness learned from %d stumps of this block", o.Stumps))
		return words + ".", work
	}
	work.Assumed = append(work.Assumed, fmt.Sprintf("the chance of a bud, %g, and the likeness, %g, until this block has a record of its own", o.PerBud, o.Together))
	work.Facts = append(work.Facts, trade.BudChance)
	return words + "; assumed, no record yet.", work
}

func percent(p float64) string {
	if p > 0.99 {
		return fmt.Sprintf("%.1f", math.Floor(p*1000)/10)
	}
	return fmt.Sprintf("%.0f", p*100)
}
