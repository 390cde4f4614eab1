package girth

import (
	"cmp"
	"math"
	"slices"
)

// span is a stretch of bark in mm clockwise; to is not under from and may lie
// past the end of the round.
type span struct{ from, to float64 }

// ring is a closed line, round mm long, of which only the free spans may carry
// points. The spans are apart, in order of from, each from in 0 to under round.
type ring struct {
	round float64
	free  []span
}

// hair is the rounding allowed when positions, in mm, are compared.
const hair = 1e-9

// newRing takes the blocked spans away from a ring. Their ends stay free. No
// free span is left when they cover the round.
func newRing(round float64, blocked []span) ring {
	r := ring{round: round}
	if len(blocked) == 0 {
		r.free = []span{{0, round}}
		return r
	}
	blocked = slices.Clone(blocked)
	for i, b := range blocked {
		if b.to-b.from >= round {
			return r
		}
		from := wrap(b.from, round)
		blocked[i] = span{from, from + b.to - b.from}
	}
	slices.SortFunc(blocked, func(a, b span) int { return cmp.Compare(a.from, b.from) })
	reach := blocked[0].to
	for _, b := range blocked {
		reach = math.Max(reach, b.to-round)
	}
	for _, b := range blocked[1:] {
		r.spare(reach, b.from)
		reach = math.Max(reach, b.to)
	}
	r.spare(reach, blocked[0].from+round)
	slices.SortFunc(r.free, func(a, b span) int { return cmp.Compare(a.from, b.from) })
	return r
}

// spare notes the stretch as free, if there is one.
func (r *ring) spare(from, to float64) {
	if to >= from {
		start := wrap(from, r.round)
		r.free = append(r.free, span{start, start + to - from})
	}
}

// at is the free span that holds p or, failing that, the next one clockwise,
// moved by whole rounds to where p is.
func (r ring) at(p float64) span {
	turns := math.Floor(p/r.round) * r.round
	x := p - turns
	i, _ := slices.BinarySearchFunc(r.free, x, func(s span, x float64) int { return cmp.Compare(s.from, x) })
	for _, j := range []int{i - 1, i} { // the last span that starts before x, then the first after
		s, shift := r.free[(j+len(r.free))%len(r.free)], turns
		if j < 0 {
			shift -= r.round
		} else if j == len(r.free) {
			shift += r.round
		}
		if x+turns <= s.to+shift+hair {
			return span{s.from + shift, s.to + shift}
		}
	}
	return span{p, p} // not reached: the span after x never ends before it
}

// next is the first free position at or after p.
func (r ring) next(p float64) float64 { return math.Max(p, r.at(p).from) }

// walk places k points clockwise from start, which must be free, each as soon
// as gap allows; it reports whether the gap back to start is kept too. For a
// given start no other layout of that gap succeeds where this one fails.
func (r ring) walk(start float64, k int, gap float64) ([]float64, bool) {
	points := []float64{start}
	for len(points) < k {
		points = append(points, r.next(points[len(points)-1]+gap))
	}
	return points, points[k-1]+gap <= start+r.round+hair
}

// holds tells whether k points with the gap fit. Any layout can be turned
// counter-clockwise until a point meets the start of its free span, so those
// starts are the only ones to try.
func (r ring) holds(k int, gap float64) bool {
	return slices.ContainsFunc(r.free, func(s span) bool {
		_, ok := r.walk(s.from, k, gap)
		return ok
	})
}

// widest is the largest smallest gap of k points, all the way round.
func (r ring) widest(k int) float64 {
	return largest(0, r.round/float64(k), func(gap float64) bool { return r.holds(k, gap) })
}

// largest is the largest gap from least to most that fits, where least does
// and a smaller gap always fits where a larger one does.
func largest(least, most float64, fits func(gap float64) bool) float64 {
	if fits(most) {
		return most
	}
	for range 60 {
		if middle := (least + most) / 2; fits(middle) {
			least = middle
		} else {
			most = middle
		}
	}
	return least
}
