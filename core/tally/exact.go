package tally

import "barkslip/core/trade"

// margins are the totals of a table of two rows, alive and dead: how many were
// judged in each row, and how many are alive in both together.
type margins struct{ first, second, alive int }

func marginsOf(a, b Counts) margins {
	return margins{first: a.Of, second: b.Of, alive: a.Alive + b.Alive}
}

// least and most alive the first row can hold.
func (m margins) least() int { return max(0, m.alive-m.second) }
func (m margins) most() int  { return min(m.first, m.alive) }

// step is how much likelier it is that the first row holds k+1 alive than k.
func (m margins) step(k int) float64 {
	return float64(m.first-k) * float64(m.alive-k) / (float64(k+1) * float64(m.second-m.alive+k+1))
}

// vanishing is where numbers begin to lose their digits; what is less likely
// than this against the likeliest counts as 0.
const vanishing = 1e-290

// each visits the possible numbers alive in the first row, outwards from the
// likeliest, with how likely each is against that one; it leaves out what is
// too unlikely to be a number.
func (m margins) each(visit func(k int, weight float64)) {
	mode := int((float64(m.first) + 1) * (float64(m.alive) + 1) / (float64(m.first+m.second) + 2))
	mode = min(max(mode, m.least()), m.most())
	visit(mode, 1)
	for k, w := mode, 1.0; k < m.most(); k++ {
		if w *= m.step(k); w < vanishing {
			break
		}
		visit(k+1, w)
	}
	for k, w := mode, 1.0; k > m.least(); k-- {
		if w /= m.step(k - 1); w < vanishing {
			break
		}
		visit(k-1, w)
	}
}

// alike is how near two chances are still taken as equal.
const alike = 1 + 1e-7

// atMost is the chance of all tables no likelier than the one whose first row
// holds k alive.
func (m margins) atMost(k int) float64 {
	var seen, all, unlikely float64
	m.each(func(j int, w float64) {
		if j == k {
			seen = w
		}
	})
	m.each(func(_ int, w float64) {
		all += w
		if w <= seen*alike {
			unlikely += w
		}
	})
	return min(1, unlikely/all)
}

// Fisher is the two-sided exact chance of a difference as large as that between
// a and b if both fared alike: all tables with the same totals that are no
// likelier, to a relative 1e-7 (Freeman and Halton 1951).
func Fisher(a, b Counts) float64 { return marginsOf(a, b).atMost(a.Alive) }

// Enough says whether any table with the totals of a and b could come under
// 5 %; where not, no outcome could have told the two apart.
func Enough(a, b Counts) bool {
	m := marginsOf(a, b)
	return min(m.atMost(m.least()), m.atMost(m.most())) < trade.ProofAt
}

// FisherMore is the one-sided exact chance that the first row holds as many
// alive as a, or more, if both fared alike.
func FisherMore(a, b Counts) float64 {
	var all, more float64
	marginsOf(a, b).each(func(k int, w float64) {
		all += w
		if k >= a.Alive {
			more += w
		}
	})
	return min(1, more/all)
}
