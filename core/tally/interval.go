package tally

import (
	"math"

	"barkslip/core/trade"
)

// Interval is a 95 % interval.
type Interval struct {
	Low, High float64
}

// Wilson is the 95 % interval of a rate, within 0 to 1; of none judged it is all
// of that. Wilson 1927, J. Amer. Statist. Assoc. 22:209.
func Wilson(c Counts) Interval {
	if c.Of == 0 {
		return Interval{Low: 0, High: 1}
	}
	n, p, z := float64(c.Of), c.Rate(), trade.Z95
	scale := 1 + z*z/n
	centre := (p + z*z/(2*n)) / scale
	half := z * math.Sqrt(p*(1-p)/n+z*z/(4*n*n)) / scale
	i := Interval{Low: max(0, centre-half), High: min(1, centre+half)}
	if c.Alive == 0 {
		i.Low = 0
	}
	if c.Alive == c.Of {
		i.High = 1
	}
	return i
}

// Difference is the 95 % interval of one rate less another, within -1 to 1, by
// squaring and adding. Newcombe 1998, Statistics in Medicine 17:873, method 10.
func Difference(a, b Counts) Interval {
	p, q := a.Rate(), b.Rate()
	i, j := Wilson(a), Wilson(b)
	return Interval{
		Low:  max(-1, p-q-math.Hypot(p-i.Low, j.High-q)),
		High: min(1, p-q+math.Hypot(i.High-p, q-j.Low)),
	}
}
