package tally

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"

	"barkslip/core/trade"
)

// Clusters sums counts by stump, as far as their design effect needs them: m
// grafts known and y taken on each of k stumps.
type Clusters struct {
	K, M, Y    int64 // stumps with a known graft, sum of m, sum of y
	MM, MY, YY int64 // sums of the squares and products
}

// Add takes in one stump; one without a known graft changes nothing.
func (c *Clusters) Add(taken, known int64) {
	if known == 0 {
		return
	}
	c.K, c.M, c.Y = c.K+1, c.M+known, c.Y+taken
	c.MM, c.MY, c.YY = c.MM+known*known, c.MY+known*taken, c.YY+taken*taken
}

// Design is the design effect: how many times the variance of the rate is that of
// as many independent grafts. v = k/(k-1) sum (y - p m)^2 / n^2, d = n v / (p(1-p)),
// never under 1, and 1 for a single stump and for all alive or all dead.
// Cochran 1977, ch. 3; Rao & Scott 1992, Biometrics 48:577.
func (c Clusters) Design() float64 {
	if c.K < 2 || c.Y == 0 || c.Y == c.M {
		return 1
	}
	k, n, y := float64(c.K), float64(c.M), float64(c.Y)
	p := y / n
	spread := float64(c.YY) - 2*p*float64(c.MY) + p*p*float64(c.MM)
	return max(1, k/(k-1)*spread/n/(p*(1-p)))
}

// Effective is the counts divided by the design effect: as many independent
// grafts as would say as much.
func (c Clusters) Effective() Share {
	d := c.Design()
	return Share{Alive: float64(c.Y) / d, Of: float64(c.M) / d}
}

// Share is counts that need not be whole.
type Share struct{ Alive, Of float64 }

// Rate is the share alive, 0 to 1; of none it is 0.
func (s Share) Rate() float64 {
	if s.Of == 0 {
		return 0
	}
	return s.Alive / s.Of
}

// Wilson is the 95 % interval of the rate, as of counts.
func (s Share) Wilson() Interval {
	if s.Of == 0 {
		return Interval{Low: 0, High: 1}
	}
	n, p, z := s.Of, s.Rate(), trade.Z95
	scale := 1 + z*z/n
	centre := (p + z*z/(2*n)) / scale
	half := z * math.Sqrt(p*(1-p)/n+z*z/(4*n*n)) / scale
	i := Interval{Low: max(0, centre-half), High: min(1, centre+half)}
	if s.Alive == 0 {
		i.Low = 0
	}
	if s.Alive == s.Of {
		i.High = 1
	}
	return i
}

// Less is the 95 % interval of this rate less another, as Difference.
func (s Share) Less(o Share) Interval {
	p, q := s.Rate(), o.Rate()
	i, j := s.Wilson(), o.Wilson()
	return Interval{
		Low:  max(-1, p-q-math.Hypot(p-i.Low, j.High-q)),
		High: min(1, p-q+math.Hypot(i.High-p, q-j.Low)),
	}
}

// Alike is the test whether groups differ by more than chance explains.
type Alike struct {
	Chi2    float64 `json:"chi2"`
	Freedom int     `json:"df"`
	P       float64 `json:"p"`
}

// AlikeOf is chi-square over the groups of which some are known, on their
// effective counts: the sum of n (p - P)^2 / (P(1-P)), P being the rate of all of
// them together. Nil for fewer than two.
func AlikeOf(groups []Share) *Alike {
	all, filled := Share{}, 0
	for _, g := range groups {
		if g.Of > 0 {
			all.Alive, all.Of, filled = all.Alive+g.Alive, all.Of+g.Of, filled+1
		}
	}
	if filled < 2 {
		return nil
	}
	a, p := Alike{Freedom: filled - 1, P: 1}, all.Rate()
	if spread := p * (1 - p); all.Alive > 0 && spread > rounding {
		for _, g := range groups {
			if g.Of > 0 {
				off := g.Rate() - p
				a.Chi2 += g.Of * off * off / spread
			}
		}
		a.P = distuv.ChiSquared{K: float64(a.Freedom)}.Survival(a.Chi2)
	}
	return &a
}

// Pair is how one group fares against another.
type Pair struct {
	Difference float64 // of the rates
	Interval           // of that, 95 %
	P          float64 // the chance of such a difference if both fare alike
	Exact      bool    // by the exact test, the grafts of a stump faring each for itself; else adjusted for the stumps
	Enough     bool    // some outcome with these counts could have told the two apart
}

// Compare compares two groups. Where the grafts of no stump fared alike the test
// is Fisher's, else chi-square on the effective counts. A group of which none is
// known makes Enough false.
func Compare(a, b Clusters) Pair {
	x, y := a.Effective(), b.Effective()
	pair := Pair{Difference: x.Rate() - y.Rate(), Interval: x.Less(y), P: 1}
	if a.M == 0 || b.M == 0 {
		return pair
	}
	counts := func(c Clusters) Counts { return Counts{Alive: int(c.Y), Of: int(c.M)} }
	whole := func(s Share) Counts { return Counts{Alive: int(s.Alive + rounding), Of: int(s.Of + rounding)} }
	if a.Design() == 1 && b.Design() == 1 {
		pair.Exact, pair.P, pair.Enough = true, Fisher(counts(a), counts(b)), Enough(counts(a), counts(b))
		return pair
	}
	pair.P = AlikeOf([]Share{x, y}).P
	pair.Enough = Enough(whole(x), whole(y))
	return pair
}

// TooFew says whether an interval is too wide to say anything: more than half of
// what there is, as of three grafts whatever became of them.
func (i Interval) TooFew() bool { return i.High-i.Low > trade.WidestTold }
