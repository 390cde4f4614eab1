package weather

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Two independent formulas of the clear sky tell about the same while the sun is
// well up.
func TestClearSkyAgreesWithHaurwitz(t *testing.T) {
	for zenith := 0.0; zenith <= 70; zenith += 5 {
		got, other := ineichen(solarConstant, zenith, airMass(zenith, 0), haze, 0).Level, Haurwitz(zenith)
		if math.Abs(got-other) > 0.1*other {
			t.Errorf("zenith %v: %v and %v W/m2", zenith, got, other)
		}
	}
}

// Kasten & Young 1989 at the horizon and straight up: about 38 and 1.
func TestAirMass(t *testing.T) {
	if up, flat := airMass(0, 0), airMass(90, 0); math.Abs(up-1) > 0.001 || math.Abs(flat-38) > 0.5 {
		t.Errorf("air mass %v overhead, %v at the horizon", up, flat)
	}
}

func TestSunlightIsPossible(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, d := somewhere(t, 90), someDate(t)
		at := d.In(p.Zone).Add(span(rapid.Float64Range(0, 24).Draw(t, "hour")))
		clear, zenith := light(p, at, outside(d.YearDay()), 0)
		oktas := rapid.Float64Range(0, 8).Draw(t, "oktas")
		cloudy, _ := light(p, at, outside(d.YearDay()), oktas)
		for _, s := range []Sunlight{clear, cloudy} {
			if !(s.Level >= 0 && s.Diffuse >= 0 && s.Diffuse <= s.Level+1e-9 && s.Beam >= -1e-9 && s.Beam <= solarConstant*1.04) {
				t.Fatalf("zenith %v, %v oktas: %+v", zenith, oktas, s)
			}
		}
		if cloudy.Level > clear.Level+1e-9 || cloudy.Beam > clear.Beam+1e-9 {
			t.Fatalf("zenith %v: %+v clear, %+v under %v oktas", zenith, clear, cloudy, oktas)
		}
	})
}

// The means over a cylinder against sums over many narrow upright strips.
func TestCylinderMeans(t *testing.T) {
	s, zenith, strips := Sunlight{Beam: 800}, 55.0, 3600
	sum := 0.0
	for i := range strips {
		sum += 800 * sind(zenith) * math.Max(0, cosd(float64(i)*360/float64(strips)))
	}
	if all, half := sum/float64(strips), sum/float64(strips/2); math.Abs(s.round(zenith)-all) > 0.01 || math.Abs(s.sunnyHalf(zenith)-half) > 0.01 {
		t.Errorf("%v round and %v on the sunny half, want %v and %v", s.round(zenith), s.sunnyHalf(zenith), all, half)
	}
}
