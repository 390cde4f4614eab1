// Package ground reckons where points of a block lie on the earth.
package ground

import (
	"math"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// The ellipsoid of WGS 84: its greater half axis in metres, and its flattening.
const (
	axis       = 6378137.0
	flattening = 1 / 298.257223563
)

// Point is a place on the ellipsoid of WGS 84, in degrees: north and east are
// above nought, and a longitude lies from -180 up to 180.
type Point struct{ Lat, Lon float64 }

// Facts is by whose word a point is where it is said to be.
var Facts = []trade.Fact{trade.Earth, trade.ShortGeodesic}

// Go is the point that lies so far from p along the geodesic that leaves p at a
// bearing from true north, by Bowring's solution: a few millimetres off at 100 km.
func (p Point) Go(bearing unit.Bearing, far unit.Length) Point {
	const second = flattening * (2 - flattening) / ((1 - flattening) * (1 - flattening)) // e'^2
	sinLat, cosLat := math.Sincos(radians(p.Lat))
	sinAz, cosAz := math.Sincos(radians(bearing.Deg()))
	a := math.Sqrt(1 + second*math.Pow(cosLat, 4))
	b := math.Sqrt(1 + second*cosLat*cosLat)
	sinArc, cosArc := math.Sincos(far.Metres() * b * b / (axis * math.Sqrt(1+second)))
	turn := math.Atan2(a*sinArc*sinAz, b*cosLat*cosArc-sinArc*sinLat*cosAz)
	d := math.Asin(sinArc*(cosAz-sinLat*sinAz*math.Tan(turn/2)/a)) / 2
	lat := radians(p.Lat) + 2*d*(b-1.5*second*d*math.Sin(2*radians(p.Lat)+4.0/3*b*d))
	return Point{degrees(lat), within180(p.Lon + degrees(turn/a))}
}

// within180 is a longitude brought into -180 to 180.
func within180(lon float64) float64 {
	if lon > 180 || lon < -180 {
		lon = math.Mod(math.Mod(lon+180, 360)+360, 360) - 180
	}
	return lon
}

func radians(deg float64) float64 { return deg * math.Pi / 180 }
func degrees(rad float64) float64 { return rad * 180 / math.Pi }
