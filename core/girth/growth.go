package girth

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Shoot is the length of a shoot as measured on a day.
type Shoot struct {
	On   unit.Date
	Long unit.Length
}

// lastMeasures is how many of the newest measures tell the growth: shoots
// speed up and slow down, so older ones mislead.
const lastMeasures = 3

// Reaches forecasts the day a shoot reaches a length: the day of the first
// measure that does, else on from the newest measure at the growth of the last
// three, or two, a day. There is no forecast with fewer than two days measured,
// without growth, or when it would take over a year.
func Reaches(shoots []Shoot, long unit.Length) (unit.Date, bool) {
	shoots = slices.Clone(shoots)
	slices.SortStableFunc(shoots, func(a, b Shoot) int { return cmp.Compare(a.On, b.On) })
	for _, s := range shoots {
		if s.Long >= long-sliver {
			return s.On, true
		}
	}
	if len(shoots) < 2 {
		return 0, false
	}
	var days, mm []float64
	for _, s := range shoots[max(0, len(shoots)-lastMeasures):] {
		days = append(days, float64(s.On-shoots[0].On))
		mm = append(mm, s.Long.MM())
	}
	_, daily := stat.LinearRegression(days, mm, nil, false)
	newest := shoots[len(shoots)-1]
	wait := math.Ceil((long-newest.Long).MM()/daily - hair)
	if !(daily > 0 && wait <= 366) {
		return 0, false
	}
	return newest.On.Add(int(wait)), true
}

// NextFoot forecasts the day a shoot has grown by another trade.TieEvery since
// it was from long, which is when the next tie goes on.
func NextFoot(shoots []Shoot, from unit.Length) (unit.Date, bool) {
	return Reaches(shoots, from+trade.TieEvery)
}
