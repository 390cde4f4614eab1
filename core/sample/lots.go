package sample

import (
	"fmt"
	"time"

	"barkslip/core/record"
	"barkslip/core/unit"
)

// lot is one season's wood of one variety from one source.
type lot struct {
	record.LotReceived
	year  int
	warm  bool           // its store was warm for weeks
	thick record.Measure // of its sticks, put down with it or not
}

var varieties = [2]string{"Lantern", "Brisk"}

// sources are the lots of one season: most of the wood is of the first variety
// and comes from two places. Each season the store of one of the lots was warm.
var sources = [3]struct{ variety, name, from string }{
	{varieties[0], "Lantern %d lower", "from the lower orchard"},
	{varieties[0], "Lantern %d house", "from the two trees at the house"},
	{varieties[1], "Brisk %d", "bundles of five, bagged"},
}

// makeLots has the lots of each season, the newest last.
func (g *ground) makeLots(c *chance) {
	for year := g.today.Year() - g.ages; year <= g.today.Year(); year++ {
		for i, from := range sources {
			buds := record.Paired
			if i == 2 && year%3 == 0 {
				buds = record.First
			}
			l := lot{record.LotReceived{
				Lot: c.id(), Name: fmt.Sprintf(from.name, year), Variety: from.variety, Note: from.from,
				Cut: unit.MakeDate(year, time.February, c.between(8, 24)), Buds: buds,
			}, year, year%len(sources) == i, eighths(c.between(3, 4))}
			if i != 1 {
				l.Thickness = l.thick
			}
			g.lots = append(g.lots, l)
		}
	}
	stumps := map[*lot]int{}
	for i := range g.Stumps {
		stumps[g.lotFor(g.graftDay(i).Year(), i)]++
	}
	for l, n := range stumps {
		l.Sticks = bundle * ((n*scionsEach/perStick + n/10 + spare + bundle - 1) / bundle)
	}
}

// How much wood is got: in bundles, for so many scions to a stump and to a stick,
// and some to spare for those grafted again.
const (
	bundle     = 5
	scionsEach = 3
	perStick   = 3
	spare      = 6
)

// lotFor is the lot from which the i-th stump is grafted in a season: each row
// takes its three one behind the other.
func (g *ground) lotFor(year, i int) *lot {
	season := min(max(year-g.today.Year()+g.ages, 0), g.ages)
	return &g.lots[season*len(sources)+i%g.perRow*len(sources)/g.perRow]
}
