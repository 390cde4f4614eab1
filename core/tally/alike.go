package tally

import (
	"math"
	"slices"

	"barkslip/core/trade"
)

// Learned is what a record says about the grafts of one stump.
type Learned struct {
	Rates    []float64    `json:"rates"`    // of one graft, lot by lot
	Together float64      `json:"together"` // how alike the grafts of one stump fare, 0 to 1
	Stumps   int          `json:"stumps"`   // with two grafts or more: only these tell
	Enough   bool         `json:"enough"`   // whether the record is long enough to go by
	Work     trade.Worked `json:"because"`
}

// Learn fits to counts of grafts alive, a stump each, how alike the grafts of a
// stump fare. Stumps are given in lots that may differ in their rate of take;
// how alike is one figure for all, by largest likelihood of the beta-binomial
// (Crowder 1978). A lot without a graft has the rate 0.
func Learn(lots ...[]Counts) (Learned, error) {
	var fits []lot
	a := Learned{Rates: []float64{}}
	for _, stumps := range lots {
		for _, c := range stumps {
			if err := c.check("alive", "of"); err != nil {
				return Learned{}, err
			}
			if c.Of > 1 {
				a.Stumps++
			}
		}
		fits = append(fits, gather(stumps))
	}
	if a.Stumps > 0 {
		a.Together = mostLikelyTogether(fits)
	}
	for _, l := range fits {
		rate, _ := l.fit(a.Together)
		a.Rates = append(a.Rates, rate)
	}
	a.Enough = a.Stumps >= trade.StumpsToLearn
	a.Work = trade.Worked{
		Question: "How alike do the grafts of one stump fare?",
		Answer:   []trade.Input{{Name: "how alike, 0 to 1", Value: a.Together}, {Name: "enough to go by", Value: a.Enough}},
		Formula:  "The figure under which the counts seen on the stumps are likeliest, each lot having its own rate.",
		Inputs:   []trade.Input{{Name: "stumps with two grafts or more", Value: a.Stumps}, {Name: "lots", Value: len(lots)}},
		Assumed:  []string{"stumps of a lot differ by chance alone"},
		Facts:    []trade.Fact{trade.GraftsAlike, trade.LearnFrom},
	}
	return a, nil
}

// lot is the stumps of one lot, equal counts put together.
type lot struct {
	counts []Counts
	times  []float64
}

func gather(stumps []Counts) lot {
	sorted := slices.Clone(stumps)
	slices.SortFunc(sorted, func(a, b Counts) int {
		if a.Of != b.Of {
			return a.Of - b.Of
		}
		return a.Alive - b.Alive
	})
	var l lot
	for _, c := range sorted {
		if last := len(l.counts) - 1; last >= 0 && l.counts[last] == c {
			l.times[last]++
			continue
		}
		l.counts, l.times = append(l.counts, c), append(l.times, 1)
	}
	return l
}

// mostLikelyTogether is the likeliest r, 0 where independence is likelier than
// any r between.
func mostLikelyTogether(lots []lot) float64 {
	likelihood := func(r float64) (sum float64) {
		for _, l := range lots {
			_, log := l.fit(r)
			sum += log
		}
		return sum
	}
	r := peak(0, 1-1e-9, likelihood)
	if likelihood(0) >= likelihood(r) {
		return 0
	}
	return r
}

// fit is the likeliest rate of a lot under r and the logarithm of how likely its
// counts are under both.
func (l lot) fit(r float64) (rate, log float64) {
	alive, of := 0.0, 0.0
	for i, c := range l.counts {
		alive += l.times[i] * float64(c.Alive)
		of += l.times[i] * float64(c.Of)
	}
	switch alive {
	case 0:
		return 0, 0
	case of:
		return 1, 0
	}
	rate = peak(0, 1, func(m float64) float64 { return l.log(m, r) })
	return rate, l.log(rate, r)
}

// log is the logarithm of the likelihood, without the part that does not depend
// on m and r.
func (l lot) log(m, r float64) (sum float64) {
	for i, c := range l.counts {
		sum += l.times[i] * (rising(m*(1-r), r, c.Alive) + rising((1-m)*(1-r), r, c.Of-c.Alive) - rising(1-r, r, c.Of))
	}
	return sum
}

// rising is log(x (x+r) (x+2r) ...), n factors of up to n; eight at a time are
// multiplied before the logarithm, too few to run out of range.
func rising(x, r float64, n int) (sum float64) {
	product := 1.0
	for i := range n {
		product *= x + float64(i)*r
		if i%8 == 7 {
			sum, product = sum+math.Log(product), 1
		}
	}
	return sum + math.Log(product)
}

// peak is where f, which rises and then falls, is largest between low and high,
// by golden section to 1e-6 of the span; the ends themselves are not tried.
func peak(low, high float64, f func(float64) float64) float64 {
	const golden = 0.6180339887498949
	x1, x2 := high-golden*(high-low), low+golden*(high-low)
	f1, f2 := f(x1), f(x2)
	for range 30 {
		if f1 < f2 {
			low, x1, f1 = x1, x2, f2
			x2 = low + golden*(high-low)
			f2 = f(x2)
		} else {
			high, x2, f2 = x2, x1, f1
			x1 = high - golden*(high-low)
			f1 = f(x1)
		}
	}
	return (low + high) / 2
}
