package sample

import (
	"strconv"
	"time"

	"barkslip/core/record"
	"barkslip/core/unit"
)

// lot is one season's wood of one variety.
type lot struct {
	record.LotReceived
	year int
	warm bool // its store was warm for weeks
}

var varieties = [2]string{"Lantern", "Brisk"}

// makeLots has two lots for each season, the newest last.
func (g *ground) makeLots(c *chance) []lot {
	var lots []lot
	for year := g.today.Year() - g.ages; year <= g.today.Year(); year++ {
		for i, variety := range varieties {
			buds := record.Paired
			if variety == "Brisk" && year%3 == 0 {
				buds = record.First
			}
			lots = append(lots, lot{record.LotReceived{
				Lot: c.id(), Name: variety + " " + strconv.Itoa(year), Variety: variety,
				Cut: unit.MakeDate(year, time.February, c.between(8, 24)), Sticks: max(30, g.Stumps/2),
				Thickness: eighths(c.between(3, 4)), Buds: buds, Note: c.one("", "from the lower orchard", "bundles of 20, bagged"),
			}, year, i == 1 && year%2 == 1})
		}
	}
	return lots
}

// lotOf is a season's lot of a variety.
func (g *ground) lotOf(year int, variety string) *lot {
	n := (year - g.today.Year() + g.ages) * len(varieties)
	if variety == varieties[1] {
		n++
	}
	return &g.lots[min(max(n, 0), len(g.lots)-1)]
}

// varietyOf is what the i-th stump is to become: every third row is Brisk.
func (g *ground) varietyOf(i int) string {
	if (i/g.perRow)%3 == 2 {
		return varieties[1]
	}
	return varieties[0]
}
