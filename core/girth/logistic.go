package girth

import (
	"math"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/stat"
)

// curve is a way of growing: the size after so many days, and the days to a
// size, if it is ever reached.
type curve interface {
	size(days float64) float64
	reaches(size float64) (days float64, ok bool)
}

// line grows the same every day.
type line struct{ start, daily float64 }

func (l line) size(days float64) float64 { return l.start + l.daily*days }

func (l line) reaches(size float64) (float64, bool) {
	return (size - l.start) / l.daily, l.daily > 0
}

// logistic grows fastest at the midpoint, in days, and levels off at the
// asymptote; the scale, in days, is how slowly. Draper & Smith, Applied
// Regression Analysis, fit it to the trunks of orange trees.
type logistic struct{ asymptote, midpoint, scale float64 }

func (l logistic) size(days float64) float64 {
	return l.asymptote / (1 + math.Exp((l.midpoint-days)/l.scale))
}

func (l logistic) reaches(size float64) (float64, bool) {
	if size >= l.asymptote {
		return 0, false
	}
	return l.midpoint - l.scale*math.Log(l.asymptote/size-1), true
}

// misses is the sum of squared differences of a curve from what was measured.
func misses(c curve, days, sizes []float64) float64 {
	sum := 0.0
	for i, d := range days {
		sum += (sizes[i] - c.size(d)) * (sizes[i] - c.size(d))
	}
	return sum
}

// worst is by how much a curve misses the reading it misses most, in mm.
func worst(c curve, days, sizes []float64) (miss float64) {
	for i, d := range days {
		miss = max(miss, math.Abs(sizes[i]-c.size(d)))
	}
	return miss
}

// What readings must show before they are said to level off.
const (
	tapeMM     = 2.0   // three readings miss a line by more, root mean square, than for want of a finer tape
	seasonDays = 365.0 // first to last: a winter's rest alone looks like levelling off
)

// fit is the least-squares logistic where it fits, elsewhere the least-squares
// line. Sizes are in mm; at least three different days are needed, in order.
func fit(days, sizes []float64) curve {
	start, daily := stat.LinearRegression(days, sizes, nil, false)
	straight := line{start, daily}
	last := len(days) - 1
	if days[last]-days[0] < seasonDays || len(days) == 3 && misses(straight, days, sizes) <= 3*tapeMM*tapeMM {
		return straight
	}
	l, ok := fitLogistic(days, sizes)
	if ok && bends(straight, l, days, sizes) && levels(straight, l, days, sizes) {
		return l
	}
	return straight
}

// levels tells whether the newest reading lies on the way to the logistic's
// asymptote. A noisy one may lie over it, by no more than the readings miss the
// curve by, root mean square for each to spare; the curve must then miss them
// by less than half of what the line does, so that it is not one of stairs,
// where the stem rested in winter and grew on.
func levels(straight line, l logistic, days, sizes []float64) bool {
	over := sizes[len(sizes)-1] - l.asymptote
	if over < 0 {
		return true
	}
	n := float64(len(sizes))
	offLine, offCurve := misses(straight, days, sizes)/(n-2), misses(l, days, sizes)/max(1, n-3)
	return offCurve < offLine/4 && over <= max(tapeMM, math.Sqrt(offCurve))
}

// bends tells whether a logistic suits the sizes better than a line: by the
// misses for each reading it has to spare, as it takes three readings to
// settle and a line two. Three readings it always meets; there the line has to
// miss them by more than a tape does.
func bends(straight line, l logistic, days, sizes []float64) bool {
	n := float64(len(days))
	off := misses(straight, days, sizes)
	if n == 3 {
		return off > n*tapeMM*tapeMM
	}
	return misses(l, days, sizes)/(n-3) < off/(n-2)
}

// fitLogistic seeks the least-squares logistic from several guesses of the
// asymptote. An asymptote out of all proportion shows no levelling off.
func fitLogistic(days, sizes []float64) (best logistic, ok bool) {
	const proportion = 50
	largest, least := floats.Max(sizes), math.Inf(1)
	limit := proportion * largest
	for _, share := range []float64{1.02, 1.2, 2, 5} {
		guess, grows := guessLogistic(days, sizes, share*largest)
		if !grows {
			continue
		}
		l, found := descend(guess, days, sizes, limit)
		if l.asymptote >= limit {
			return best, ok // the larger guesses run off as well
		}
		if miss := misses(l, days, sizes); found && l.scale > 0 && miss < least {
			best, least, ok = l, miss, true
		}
	}
	return best, ok
}

// guessLogistic is the logistic of a given asymptote, by a straight line
// through the logarithms of asymptote/size - 1.
func guessLogistic(days, sizes []float64, asymptote float64) (l logistic, grows bool) {
	logs := make([]float64, len(sizes))
	for i, s := range sizes {
		logs[i] = math.Log(asymptote/s - 1)
	}
	at0, slope := stat.LinearRegression(days, logs, nil, false)
	return logistic{asymptote, -at0 / slope, -1 / slope}, slope < 0
}

// descend improves a logistic by Levenberg and Marquardt's steps until they
// no longer matter; found is false if they never settle, or run
// off past the limit of the asymptote.
func descend(l logistic, days, sizes []float64, limit float64) (_ logistic, found bool) {
	damping := 1e-3
	miss := misses(l, days, sizes)
	for range 500 {
		if l.asymptote >= limit {
			return l, false
		}
		step, ok := l.step(days, sizes, damping)
		next := logistic{l.asymptote + step[0], l.midpoint + step[1], l.scale + step[2]}
		nextMiss := misses(next, days, sizes)
		small := math.Abs(step[0]) < 1e-10*l.asymptote && math.Abs(step[1]) < 1e-10*(math.Abs(l.midpoint)+l.scale) && math.Abs(step[2]) < 1e-10*l.scale
		switch {
		case ok && small:
			return l, true
		case ok && nextMiss <= miss && next.scale > 0:
			l, miss, damping = next, nextMiss, damping/10
		case damping > 1e12:
			return l, false
		default:
			damping *= 10
		}
	}
	return l, false
}

// step solves the damped normal equations for the change of asymptote,
// midpoint and scale.
func (l logistic) step(days, sizes []float64, damping float64) (step [3]float64, ok bool) {
	var normal [3][3]float64
	var pull [3]float64
	for i, d := range days {
		share := l.size(d) / l.asymptote
		steep := l.asymptote * share * (1 - share) / l.scale
		slopes := [3]float64{share, -steep, -steep * (d - l.midpoint) / l.scale}
		off := sizes[i] - l.size(d)
		for j := range 3 {
			pull[j] += slopes[j] * off
			for k := range j + 1 {
				normal[j][k] += slopes[j] * slopes[k]
			}
		}
	}
	for i := range 3 {
		normal[i][i] *= 1 + damping
	}
	return solve(normal, pull)
}

// solve finds x of m x = b by Cholesky's roots; only the lower half of the
// symmetric m is read. ok is false where m is not positive definite.
func solve(m [3][3]float64, b [3]float64) (x [3]float64, ok bool) {
	var root [3][3]float64
	for i := range 3 {
		for j := range i + 1 {
			sum := m[i][j]
			for k := range j {
				sum -= root[i][k] * root[j][k]
			}
			if i > j {
				root[i][j] = sum / root[j][j]
			} else if sum > 0 {
				root[i][i] = math.Sqrt(sum)
			} else {
				return x, false
			}
		}
	}
	for i := range 3 { // down: root y = b
		x[i] = b[i]
		for k := range i {
			x[i] -= root[i][k] * x[k]
		}
		x[i] /= root[i][i]
	}
	for i := 2; i >= 0; i-- { // up: transposed root x = y
		for k := i + 1; k < 3; k++ {
			x[i] -= root[k][i] * x[k]
		}
		x[i] /= root[i][i]
	}
	return x, !math.IsNaN(x[0] + x[1] + x[2])
}
