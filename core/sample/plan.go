// Package sample makes up a block with a lived-in history: Hollow Lane, whose
// name, varieties and hands exist nowhere else. The same plan gives the same
// events, id for id.
package sample

import (
	"cmp"
	"iter"
	"slices"
	"time"

	"barkslip/core/record"
)

// Plan says how large the block is and how far back its history goes.
type Plan struct {
	Stumps  int            // 240 if 0
	Seasons int            // full seasons behind most of the block, 1 if 0
	Seed    uint64         // another seed gives another history
	Zone    *time.Location // of America/New_York, where the block lies
	Now     time.Time      // the block is told up to here; see Today
}

// The sizes at which the plan changes its ways.
const (
	usualStumps = 240
	rowOf       = 20
	longRowOf   = 200   // trees to a row of a large block
	largeBlock  = 4_000 // stumps above which rows are long and clocks run stump by stump
	usualToday  = 20    // of May
)

func (p Plan) withDefaults() Plan {
	if p.Stumps <= 0 {
		p.Stumps = usualStumps
	}
	p.Seasons = max(p.Seasons, 1)
	if p.Zone == nil {
		p.Zone = time.UTC
	}
	p.Now = Today(p)
	return p
}

// Today is the instant up to which the history is told: the plan's own, if it
// falls in the grafting season in working hours, else mid-morning of 20 May of
// its year.
func Today(p Plan) time.Time {
	if p.Zone == nil {
		p.Zone = time.UTC
	}
	now := p.Now.In(p.Zone).Truncate(time.Minute)
	season := now.Month() == time.May && now.Day() >= 10 || now.Month() == time.June && now.Day() <= 10
	if season && now.Hour() >= 9 && now.Hour() < 18 {
		return now
	}
	return time.Date(now.Year(), time.May, usualToday, 10, 40, 0, 0, p.Zone)
}

// Events yields the history: what is about the block first, then stump by
// stump, each stump's in its own order. Clocks are unique.
func Events(p Plan) iter.Seq[record.Event] {
	p = p.withDefaults()
	if p.Stumps > largeBlock {
		return copied(p, livesOfTheirOwn).stumpByStump
	}
	return layOut(p).inTimeOrder
}

// stumpByStump gives clocks in the order of telling, which needs no memory.
func (g *ground) stumpByStump(yield func(record.Event) bool) {
	clock := uint64(0)
	for said := range g.tell {
		for _, s := range said {
			clock++
			s.event.Clock = clock
			if !yield(s.event) {
				return
			}
		}
	}
}

// inTimeOrder gives clocks as one laptop in the field would have, across all
// stumps by the time of writing.
func (g *ground) inTimeOrder(yield func(record.Event) bool) {
	var all []entry
	for said := range g.tell {
		all = append(all, said...)
	}
	order := make([]int, len(all))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(all[a].written, all[b].written) })
	for clock, i := range order {
		all[i].event.Clock = uint64(clock + 1)
	}
	for _, s := range all {
		if !yield(s.event) {
			return
		}
	}
}

// entry is an event with the second at which it was written down.
type entry struct {
	written int64
	event   record.Event
}

// tell gives the entries about the block, then those of each stump. The slice
// is used again for the next.
func (g *ground) tell(yield func([]entry) bool) {
	l := &life{ground: g}
	if g.of != nil {
		l.ground = g.of
	}
	l.tellBlock(l)
	if !yield(l.told()) {
		return
	}
	for i := range g.Stumps {
		if g.of == nil {
			l.begin(i)
			l.live()
		} else {
			g.copies(l, i)
		}
		if !yield(l.told()) {
			return
		}
	}
}
