package ground

import (
	"math"
	"testing"

	"barkslip/core/unit"
)

// vincenty is the direct solution of Vincenty 1975 (Survey Review 23:88), written
// from the paper and apart from the program: lengths in metres, angles in degrees.
func vincenty(lat, lon, az, far, a, f float64) (lat2, lon2 float64) {
	b := a * (1 - f)
	sinA1, cosA1 := math.Sincos(az * math.Pi / 180)
	tanU1 := (1 - f) * math.Tan(lat*math.Pi/180)
	cosU1 := 1 / math.Sqrt(1+tanU1*tanU1)
	sinU1 := tanU1 * cosU1
	s1 := math.Atan2(tanU1, cosA1)
	sinA := cosU1 * sinA1
	cos2A := 1 - sinA*sinA
	u2 := cos2A * (a*a - b*b) / (b * b)
	A := 1 + u2/16384*(4096+u2*(-768+u2*(320-175*u2)))
	B := u2 / 1024 * (256 + u2*(-128+u2*(74-47*u2)))
	s := far / (b * A)
	var cos2m float64
	for range 100 {
		cos2m = math.Cos(2*s1 + s)
		sin, cos := math.Sincos(s)
		ds := B * sin * (cos2m + B/4*(cos*(2*cos2m*cos2m-1)-B/6*cos2m*(4*sin*sin-3)*(4*cos2m*cos2m-3)))
		next := far/(b*A) + ds
		if math.Abs(next-s) < 1e-14 {
			s = next
			break
		}
		s = next
	}
	cos2m = math.Cos(2*s1 + s)
	sin, cos := math.Sincos(s)
	t := sinU1*sin - cosU1*cos*cosA1
	lat2 = math.Atan2(sinU1*cos+cosU1*sin*cosA1, (1-f)*math.Sqrt(sinA*sinA+t*t))
	l := math.Atan2(sin*sinA1, cosU1*cos-sinU1*sin*cosA1)
	C := f / 16 * cos2A * (4 + f*(4-3*cos2A))
	l -= (1 - C) * f * sinA * (s + C*sin*(cos2m+C*cos*(2*cos2m*cos2m-1)))
	return lat2 * 180 / math.Pi, lon + l*180/math.Pi
}

func dms(d, m, s float64) float64 { return d + m/60 + s/3600 }

// TestVincentyMeetsItsPublishedFigures holds the judge itself against the GDA
// technical manual: Flinders Peak to Buninyong, on GRS 80.
func TestVincentyMeetsItsPublishedFigures(t *testing.T) {
	lat, lon := vincenty(-dms(37, 57, 3.72030), dms(144, 25, 29.52440), dms(306, 52, 5.37), 54972.271, 6378137, 1/298.257222101)
	wantLat, wantLon := -dms(37, 39, 10.15610), dms(143, 55, 35.38390)
	if math.Abs(lat-wantLat)*3600 > 2e-4 || math.Abs(lon-wantLon)*3600 > 2e-4 { // a hundredth of a second of bearing is 3 mm there
		t.Errorf("%.9f %.9f, want %.9f %.9f", lat, lon, wantLat, wantLon)
	}
}

// metres is how far two near points are apart, on the sphere of the greater axis.
func metres(lat, lon float64, p Point) float64 {
	east := math.Remainder(p.Lon-lon, 360) * math.Pi / 180 * axis * math.Cos(lat*math.Pi/180)
	return math.Hypot((p.Lat-lat)*math.Pi/180*axis, east)
}

// TestGoMeetsVincenty goes from corners all over the earth, near its poles and at
// 180 degrees among them, as far as blocks go and much farther.
func TestGoMeetsVincenty(t *testing.T) {
	seen := 0
	for _, lat := range []float64{-89, -60, -37.95, -10, 0, 10, 42.7, 60, 80, 89} {
		for _, lon := range []float64{-180, -77.2, 0, 144.4, 179.9999, 180} {
			for az := 0.0; az < 360; az += 15 {
				for far, off := range map[float64]float64{0: 1e-6, 10: 1e-6, 163: 1e-5, 5000: 1e-3, 90_000: 0.05} {
					if math.Abs(lat) > 85 && far > 5000 { // the program gives no map there
						continue
					}
					wantLat, wantLon := vincenty(lat, lon, az, far, axis, flattening)
					got := Point{lat, lon}.Go(unit.Bearing(az), unit.Length(far)*unit.Metre)
					if d := metres(wantLat, wantLon, got); !(d <= off) || got.Lon < -180 || got.Lon > 180 {
						t.Errorf("%g %g, %g degrees, %g m: %v is %g m off %.9f %.9f", lat, lon, az, far, got, d, wantLat, wantLon)
					}
					seen++
				}
			}
		}
	}
	if seen < 5000 {
		t.Errorf("only %d", seen)
	}
}
