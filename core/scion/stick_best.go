package scion

// worth is what pieces are judged by, the first number that differs deciding;
// more is better. The worth of several pieces is the sum.
type worth [3]float64

// piece is a possible cut of a stick, from and to in one unit along it.
type piece struct {
	from, to float64
	worth    worth
}

// hair is how far two places may differ and still count as the same, in mm: it
// swallows the rounding of inches into millimetres.
const hair = 1e-6

// best picks pieces that do not overlap and are worth most together, in order;
// where several sets are worth the same, the one nearer the start. Pieces are
// given in order of their ends. It is weighted interval scheduling (Kleinberg &
// Tardos, Algorithm Design, 6.1), exact.
func best(pieces []piece) (chosen []int) {
	total := make([]worth, len(pieces)+1) // total[i]: the best of the first i pieces
	before := make([]int, len(pieces))    // how many pieces end before piece i starts
	for i, p := range pieces {
		for before[i] = i; before[i] > 0 && pieces[before[i]-1].to > p.from+hair; {
			before[i]--
		}
		total[i+1] = total[i]
		if with := total[before[i]].plus(p.worth); with.over(total[i]) {
			total[i+1] = with
		}
	}
	for i := len(pieces); i > 0; {
		if total[i] == total[i-1] {
			i--
			continue
		}
		chosen = append([]int{i - 1}, chosen...)
		i = before[i-1]
	}
	return chosen
}

func (w worth) plus(v worth) worth { return worth{w[0] + v[0], w[1] + v[1], w[2] + v[2]} }

// over says whether w is better than v by more than a hair.
func (w worth) over(v worth) bool {
	for i := range w {
		if d := w[i] - v[i]; d > hair || d < -hair {
			return d > 0
		}
	}
	return false
}
