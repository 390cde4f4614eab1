// Package girth reckons with the outline of a stump: its girth, how many
// scions it takes, where their slots go, and how girth and shoots grow on.
package girth

import (
	"math"

	"gonum.org/v1/gonum/mathext"

	"barkslip/core/unit"
)

// Oval is the outline of a stump cut straight across, from two diameters
// measured at right angles.
type Oval struct {
	Across  unit.Length  // above 0
	Across2 unit.Length  // at right angles to Across; 0 for a round stump
	LongWay unit.Bearing // of the longer diameter
}

// halves are the long and the short half-diameter in mm.
func (o Oval) halves() (a, b float64) {
	a, b = o.Across.MM()/2, o.Across2.MM()/2
	if b == 0 {
		b = a
	}
	return math.Max(a, b), math.Min(a, b)
}

// flattening is the parameter m of the elliptic integrals, 0 for a circle.
func flattening(a, b float64) float64 { return (a - b) * (a + b) / (a * a) }

// Longest is the longer diameter.
func (o Oval) Longest() unit.Length { return max(o.Across, o.Across2) }

// Girth is the length once round the bark: 4aE(m) with the complete elliptic
// integral of the second kind (Carlson 1994), to the last digits of a float.
func (o Oval) Girth() unit.Length {
	a, b := o.halves()
	return unit.Length(4 * a * mathext.CompleteE(flattening(a, b)))
}

// At is the point that lies along millimetres clockwise round the bark from
// the end of the long diameter at LongWay, as distances east and north of the
// centre. Any along is taken, also below 0 and over the girth.
func (o Oval) At(along unit.Length) (east, north unit.Length) {
	a, b := o.halves()
	right, forth := math.Sincos(o.turn(along))
	sin, cos := math.Sincos(o.LongWay.Deg() * math.Pi / 180)
	return unit.Length(a*forth*sin + b*right*cos), unit.Length(a*forth*cos - b*right*sin)
}

// Bearing is the direction from the centre to the point at along.
func (o Oval) Bearing(along unit.Length) unit.Bearing {
	a, b := o.halves()
	t := o.turn(along)
	off := math.Atan2(b*math.Sin(t), a*math.Cos(t)) * 180 / math.Pi
	return (o.LongWay + unit.Bearing(off)).Normal()
}

// Along is the way clockwise round the bark, from the end of the long diameter
// at LongWay to the point in the direction to, 0 to under the girth.
func (o Oval) Along(to unit.Bearing) unit.Length {
	a, b := o.halves()
	off := (to - o.LongWay).Normal().Deg() * math.Pi / 180
	t := math.Atan2(a*math.Sin(off), b*math.Cos(off))
	if t < 0 {
		t += 2 * math.Pi
	}
	return unit.Length(wrap(o.arc(t), o.Girth().MM()))
}

// arc is the bark in mm from the end of the long diameter to the point
// (a cos t, b sin t), t from 0 to 2 pi, summed quarter by quarter.
func (o Oval) arc(t float64) float64 {
	a, b := o.halves()
	m, quarter := flattening(a, b), o.Girth().MM()/4
	n := math.Min(math.Floor(t/(math.Pi/2)), 3)
	rest := clamp(t-n*math.Pi/2, 0, math.Pi/2)
	if int(n)%2 == 0 { // from a long end
		return (n+1)*quarter - a*mathext.EllipticE(math.Pi/2-rest, m)
	}
	return n*quarter + a*mathext.EllipticE(rest, m)
}

// turn is the t, 0 to 2 pi, whose arc is along: Newton's steps, kept within
// bounds by halving.
func (o Oval) turn(along unit.Length) float64 {
	a, b := o.halves()
	girth := o.Girth().MM()
	want := wrap(along.MM(), girth)
	low := math.Floor(want/girth*4) * math.Pi / 2
	high := low + math.Pi/2
	t := want / girth * 2 * math.Pi
	for range 60 {
		miss := o.arc(t) - want
		if math.Abs(miss) < 1e-12*girth {
			break
		}
		if miss > 0 {
			high = t
		} else {
			low = t
		}
		t -= miss / math.Hypot(a*math.Sin(t), b*math.Cos(t))
		if !(t > low && t < high) {
			t = (low + high) / 2
		}
	}
	return t
}

// wrap brings x into 0 to under round; a hair short of the round is 0.
func wrap(x, round float64) float64 {
	x = math.Mod(x, round)
	if x < 0 {
		x += round
	}
	if x >= round-hair {
		return 0
	}
	return x
}

func clamp(x, low, high float64) float64 { return math.Max(low, math.Min(high, x)) }
