package girth

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"barkslip/core/unit"
)

func drawOval(t *rapid.T) Oval {
	return Oval{
		Across:  unit.Length(rapid.Float64Range(10, 1016).Draw(t, "across")),
		Across2: unit.Length(rapid.Float64Range(10, 1016).Draw(t, "across2")),
		LongWay: unit.Bearing(rapid.Float64Range(0, 360).Draw(t, "long way")),
	}
}

// Measured with a chain of short chords, the girth and the way along the bark
// are what the elliptic integrals say.
func TestBarkMeasuredByChords(t *testing.T) {
	const chords = 20000
	for _, o := range []Oval{{100, 0, 0}, {106.7, 86.4, 30}, {86.4, 106.7, 200}, {400, 20, 90}} {
		a, b := o.halves()
		sum := 0.0
		for i := range chords {
			t0, t1 := float64(i)/chords*2*math.Pi, float64(i+1)/chords*2*math.Pi
			if i%997 == 0 {
				if got := o.arc(t0); math.Abs(got-sum) > 1e-5*a {
					t.Errorf("%v: along %v at %v, chords say %v", o, got, t0, sum)
				}
			}
			sum += math.Hypot(a*(math.Cos(t1)-math.Cos(t0)), b*(math.Sin(t1)-math.Sin(t0)))
		}
		if got := o.Girth().MM(); math.Abs(got-sum) > 1e-5*a {
			t.Errorf("%v: girth %v, chords say %v", o, got, sum)
		}
	}
}

func TestBearingAndAlongUndoEachOther(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := drawOval(t)
		girth := o.Girth().MM()
		along := rapid.Float64Range(0, 0.999999).Draw(t, "part") * girth
		back := o.Along(o.Bearing(unit.Length(along))).MM()
		if off := math.Abs(back - along); math.Min(off, girth-off) > 1e-6 {
			t.Fatalf("%v mm came back as %v", along, back)
		}
	})
}

// The point's bearing is its direction from the centre, and it lies on the oval.
func TestPointLiesWhereItsBearingSays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := drawOval(t)
		along := unit.Length(rapid.Float64Range(-1, 2).Draw(t, "turns")) * o.Girth()
		east, north := o.At(along)
		bearing := unit.Bearing(math.Atan2(east.MM(), north.MM()) * 180 / math.Pi)
		if bearing.From(o.Bearing(along)) > 1e-6 {
			t.Fatalf("point at %v, bearing says %v", bearing.Normal(), o.Bearing(along))
		}
		a, b := o.halves()
		sin, cos := math.Sincos(o.LongWay.Deg() * math.Pi / 180)
		long := (east.MM()*sin + north.MM()*cos) / a
		short := (east.MM()*cos - north.MM()*sin) / b
		if math.Abs(long*long+short*short-1) > 1e-9 {
			t.Fatalf("(%v, %v) is not on the oval", east, north)
		}
	})
}

func TestEndsOfTheDiameters(t *testing.T) {
	o := Oval{Across: 80, Across2: 100, LongWay: 30}
	for quarter, want := range []unit.Bearing{30, 120, 210, 300} {
		along := o.Girth() * unit.Length(quarter) / 4
		if got := o.Bearing(along); got.From(want) > 1e-9 {
			t.Errorf("quarter %d lies at %v, want %v", quarter, got, want)
		}
		if got := o.Along(want); math.Abs(float64(got-along)) > 1e-9 {
			t.Errorf("%v is %v along, want %v", want, got, along)
		}
	}
	if east, north := o.At(0); math.Abs(east.MM()-25) > 1e-9 || math.Abs(north.MM()-25*math.Sqrt(3)) > 1e-9 {
		t.Errorf("the long end is at %v east, %v north", east, north)
	}
}
