package main

import (
	"barkslip/core/tally"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// mostCounted is the most grafts a count may hold.
const mostCounted = 1_000_000

var chanceSum = sum{
	name: "chance", short: "The chance of a scion and of a stump",
	example: "barkslip reckon chance --per-bud 0.5 --buds 4 --scions 3 --together 0.2",
	options: []option{
		{name: "per-bud", value: "SHARE", says: "chance that one bud grows, 0 to 1", need: true},
		{name: "buds", value: "N", says: "buds on a scion", need: true},
		{name: "scions", value: "N", says: "scions on the stump", need: true},
		{name: "together", value: "SHARE", says: "how alike the scions of a stump fare, 0 to 1 (intraclass correlation)", usual: 0.0},
	},
	work: func(g *given, _ unit.System) (any, trade.Worked, error) {
		perBud, buds, scions, together := g.decimal("per-bud", 0, 1), g.whole("buds", 1, 100), g.whole("scions", 1, 1000), g.decimal("together", 0, 1)
		if g.err != nil {
			return nil, trade.Worked{}, g.err
		}
		answer, err := tally.Chance(perBud, buds, scions, together)
		return answer, answer.Work, err
	},
}

var takeSum = sum{
	name: "take", short: "How many took, and how sure that is",
	example: "barkslip reckon take --alive 81 --of 263\nbarkslip reckon take --alive 56 --of 70 --against 48/80",
	options: []option{
		{name: "alive", value: "N", says: "grafts that took", need: true},
		{name: "of", value: "N", says: "grafts judged", need: true},
		{name: "against", value: "ALIVE/OF", says: "others to compare with"},
	},
	work: func(g *given, _ unit.System) (any, trade.Worked, error) {
		alive, of := g.whole("alive", 0, mostCounted), g.whole("of", 1, mostCounted)
		against := read(g, "against", parseCounts)
		if g.err != nil {
			return nil, trade.Worked{}, g.err
		}
		answer, err := tally.Take(alive, of, against)
		return answer, answer.Work, err
	},
}

// parseCounts reads ALIVE/OF.
func parseCounts(s string) (*tally.Counts, error) {
	counts, err := tally.ParseCounts(s)
	if err == nil && (counts.Alive < 0 || counts.Of < 1 || counts.Alive > counts.Of || counts.Of > mostCounted) {
		err = &unit.Error{Given: s, Accepted: "alive/of such as 48/80, no more alive than judged"}
	}
	return &counts, err
}
