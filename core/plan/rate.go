package plan

import (
	"fmt"
	"slices"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/unit"
)

// RateFrom is where the stumps that are grafted a day come from.
type RateFrom string

// The ways to a rate.
const (
	RateAsked   RateFrom = "asked for"
	RateSet     RateFrom = "set for the block"
	RateCounted RateFrom = "counted on the block's own days"
	RateUsual   RateFrom = "assumed until there are days to count"
)

// Rate is how many stumps are grafted a day, and where that comes from.
type Rate struct {
	PerDay int
	From   RateFrom
	Full   []int // stumps grafted on each day at whose end ready ones were left over, fewest first
	Dry    int   // days that ran out of ready stumps: they say nothing of the rate
}

// usualRate is the stumps grafted a day where nothing tells how many.
const usualRate = 10

// slipEarly is how many days before the season of slip grafts still belong to it.
const slipEarly = 30

// RateOf is the stumps grafted a day: the block's setting, else the median of the
// days of this season at whose end ready stumps were left over, on which no more
// could be done, else what is usual.
func RateOf(b *record.Block, sums []due.Summary, on unit.Date) Rate {
	if b.PerDay > 0 {
		return Rate{PerDay: b.PerDay, From: RateSet}
	}
	slip := b.Slip(on)
	set := map[unit.Date]int{}
	for i := range sums {
		if s := &sums[i]; s.Set >= slip.From.Add(-slipEarly) && s.Set < on {
			set[s.Set]++
		}
	}
	r := Rate{PerDay: usualRate, From: RateUsual}
	for day, n := range set {
		if leftOver(sums, day, b.WaitDays()) {
			r.Full = append(r.Full, n)
		} else {
			r.Dry++
		}
	}
	if n := len(r.Full); n > 0 {
		slices.Sort(r.Full)
		r.PerDay, r.From = (r.Full[(n-1)/2]+r.Full[n/2]+1)/2, RateCounted
	}
	return r
}

// leftOver says whether a stump was ready on a day and not grafted by its end.
func leftOver(sums []due.Summary, day unit.Date, wait int) bool {
	for i := range sums {
		s := &sums[i]
		if s.CutBack != 0 && s.CutBack.Add(wait) <= day && (s.Set > day || s.Set == 0 && s.Stage == record.StageDraining) {
			return true
		}
	}
	return false
}

// Words says the rate and where it comes from.
func (r Rate) Words() string {
	says := fmt.Sprintf("%s a day, ", unit.Count(r.PerDay, "stump"))
	switch r.From {
	case RateCounted:
		says += fmt.Sprintf("the middle of %s on which ready stumps were left over.", unit.Count(len(r.Full), "day"))
	case RateUsual:
		says += "assumed: no day yet had ready stumps left over."
	default:
		says += string(r.From) + "."
	}
	switch {
	case r.Dry == 1:
		says += " 1 day ran out of ready stumps and says nothing of the rate."
	case r.Dry > 1:
		says += fmt.Sprintf(" %d days ran out of ready stumps and say nothing of the rate.", r.Dry)
	}
	return says
}
