package scion

import (
	"math"

	"gonum.org/v1/gonum/mathext"
)

// slope is a flat cut that sinks `depth` into a cylinder while it runs `run`
// along the cylinder's axis, both in mm and over 0.
type slope struct{ run, depth float64 }

// stretch is the length of the cut face over its depth, 1 or more: by this much
// the circle of the cross-section is drawn out into an oval.
func (s slope) stretch() float64 { return math.Hypot(s.run, s.depth) / s.depth }

// area is the face of the cut in mm² on a cylinder of the given radius that it
// enters at the surface: k r² (t - sin t cos t).
func (s slope) area(radius float64) float64 {
	t := reach(radius, s.depth)
	return s.stretch() * radius * radius * (t - math.Sin(t)*math.Cos(t))
}

// edges is the length in mm of both lines along which the cut crosses an inner
// cylinder whose surface lies `skin` under the outer one; 0 where the cut does
// not reach it. It is the integral of √((k r sin u)² + (r cos u)²) from 0 to t,
// twice, written with Legendre's E of parameter m = 1 - 1/k² (Carlson 1994).
func (s slope) edges(radius, skin float64) float64 {
	if s.depth <= skin {
		return 0
	}
	k := s.stretch()
	m := 1 - 1/(k*k)
	t := reach(radius, s.depth-skin)
	return 2 * k * radius * (mathext.EllipticE(math.Pi/2, m) - mathext.EllipticE(math.Pi/2-t, m))
}

// reach is the angle t = acos(1 - depth/radius) that a cut of that depth opens
// in a circle, 0 to π; deeper than the diameter is the whole circle.
func reach(radius, depth float64) float64 {
	return 2 * math.Asin(math.Sqrt(min(1, depth/(2*radius))))
}
