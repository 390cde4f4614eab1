package girth

import (
	"cmp"
	"math"
	"slices"
)

// spread places k points with at least the gap so that one of them is as near
// aim as can be: nearer tells whether the first position is nearer aim than
// the second, of one clockwise and one counter-clockwise of it. With that
// point fixed the smallest gap is made as large as can be, and what slack is
// left is shared out. The gap must fit (see holds). The points come in order
// of place, 0 to under round.
func (r ring) spread(k int, gap, aim float64, nearer func(a, b float64) bool) []float64 {
	const loose = 10 * hair // lets a layout that fits exactly fit
	gap = math.Max(0, gap-loose)
	anchor := r.nearest(k, gap, aim, nearer)
	best := largest(gap, r.round/float64(k), func(g float64) bool {
		_, ok := r.walk(anchor, k, g)
		return ok
	})
	points, _ := r.walk(anchor, k, best)
	r.even(points)
	for i, p := range points {
		points[i] = wrap(p, r.round)
	}
	slices.Sort(points)
	return points
}

// nearest is the position nearest aim from which k points with the gap fit.
// Going round, fitting can only begin where the walk arrives from the start of
// a free span, and only end where the walk comes to the end of one; so a
// position that fits is aim itself or lies whole gaps from such an end.
func (r ring) nearest(k int, gap, aim float64, nearer func(a, b float64) bool) float64 {
	places := []float64{aim}
	for _, s := range r.free {
		for q := range k {
			places = append(places, s.from+float64(q)*gap, s.to-float64(q)*gap)
		}
	}
	first := func(way func(p float64) float64) float64 {
		slices.SortFunc(places, func(a, b float64) int { return cmp.Compare(way(a), way(b)) })
		for _, p := range places {
			if r.fitsFrom(p, k, gap-hair) {
				return p
			}
		}
		return r.free[0].from // not reached: the free spans' starts are among the places
	}
	clockwise := first(func(p float64) float64 { return wrap(p-aim, r.round) })
	counter := first(func(p float64) float64 { return wrap(aim-p, r.round) })
	if nearer(counter, clockwise) {
		return counter
	}
	return clockwise
}

// fitsFrom tells whether p is free and starts a walk of k points.
func (r ring) fitsFrom(p float64, k int, gap float64) bool {
	if r.at(p).from > p+hair {
		return false
	}
	_, ok := r.walk(p, k, gap)
	return ok
}

// even moves every point but the first toward the middle of its neighbours, as
// far as its free bark goes, again and again. No step makes the smallest gap
// smaller.
func (r ring) even(points []float64) {
	k := len(points)
	for range 200 {
		for i := 1; i < k; i++ {
			after := points[0] + r.round
			if i+1 < k {
				after = points[i+1]
			}
			bark := r.at(points[i])
			points[i] = clamp((points[i-1]+after)/2, bark.from, bark.to)
		}
	}
}
