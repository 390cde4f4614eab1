package weather

import (
	"math"
	"time"
)

// Sun is where the sun stands for one place at one instant, in degrees.
type Sun struct {
	Zenith         float64       // from straight up, as seen through the air that bends the light
	TrueZenith     float64       // from straight up, without air
	Azimuth        float64       // clockwise from north, 0 to under 360
	Declination    float64       // north positive
	RightAscension float64       // 0 to under 360
	EquationOfTime time.Duration // by how much a sundial is ahead of the mean sun
}

// cosZenith is the share of the beam that a level surface takes, 0 at night.
func (s Sun) cosZenith() float64 { return math.Max(0, cosd(s.Zenith)) }

// The turning earth trails the even time of astronomy by about this much in the
// first half of this century; a minute moves the sun by 0.0007 degrees.
const clockTrails = 70 * time.Second

// SunAt is the sun's position by the short series of Meeus, Astronomical
// Algorithms, 2nd ed., within 0.01 degrees for a few centuries around 2000. The
// 0.002 degrees by which the sun differs between the earth's centre and its face
// are left out.
func SunAt(p Place, t time.Time) Sun {
	a := apparent(centuries(t.Add(clockTrails)))
	sidereal := greenwich(centuries(t)) + a.nutation*cosd(a.obliquity)
	hour := turn(sidereal + p.Lon - a.ascension)
	alt := asind(sind(p.Lat)*sind(a.declination) + cosd(p.Lat)*cosd(a.declination)*cosd(hour))
	return Sun{
		Zenith:         90 - alt - refraction(alt, p.Altitude.Metres()),
		TrueZenith:     90 - alt,
		Azimuth:        turn(180 + atan2d(sind(hour), cosd(hour)*sind(p.Lat)-tand(a.declination)*cosd(p.Lat))),
		Declination:    a.declination,
		RightAscension: a.ascension,
		EquationOfTime: a.equation,
	}
}

// apparentSun is the sun among the stars, seen from the earth's centre.
type apparentSun struct {
	ascension, declination float64 // degrees
	nutation, obliquity    float64 // degrees
	equation               time.Duration
}

// apparent is the sun c Julian centuries after noon of 1 January 2000: Meeus,
// chapter 25 (low accuracy) and equation 28.1.
func apparent(c float64) apparentSun {
	mean := 280.46646 + 36000.76983*c + 0.0003032*c*c
	anomaly := 357.52911 + 35999.05029*c - 0.0001537*c*c
	centre := (1.914602-0.004817*c-0.000014*c*c)*sind(anomaly) +
		(0.019993-0.000101*c)*sind(2*anomaly) + 0.000289*sind(3*anomaly)
	node := 125.04 - 1934.136*c
	nutation := -0.00478 * sind(node)
	longitude := mean + centre - 0.00569 + nutation
	obliquity := 23.4392911 - 0.0130042*c - 1.64e-7*c*c + 5.04e-7*c*c*c + 0.00256*cosd(node)

	ascension := turn(atan2d(cosd(obliquity)*sind(longitude), cosd(longitude)))
	ahead := mean - 0.0057183 - ascension + nutation*cosd(obliquity)
	return apparentSun{
		ascension:   ascension,
		declination: asind(sind(obliquity) * sind(longitude)),
		nutation:    nutation,
		obliquity:   obliquity,
		equation:    time.Duration(math.Remainder(ahead, 360) * 4 * float64(time.Minute)),
	}
}

// greenwich is the mean sidereal time at Greenwich in degrees: Meeus 12.4.
func greenwich(c float64) float64 {
	return 280.46061837 + 360.98564736629*36525*c + 0.000387933*c*c - c*c*c/38710000
}

// refraction is by how much the air lifts a sun at a true altitude in degrees,
// for 10 C and the pressure of the height in metres: Saemundsson, Meeus 16.4.
// It is none once the sun's upper edge is out of sight.
func refraction(alt, metres float64) float64 {
	if alt < -sunUnder+0.26667 {
		return 0
	}
	return math.Exp(-metres/scaleHeight) * 1.02 / 60 / tand(alt+10.3/(alt+5.11))
}

// centuries counts Julian centuries from noon of 1 January 2000.
func centuries(t time.Time) float64 {
	const noon2000 = 946728000
	return (float64(t.Unix()-noon2000) + float64(t.Nanosecond())/1e9) / 86400 / 36525
}

func sind(d float64) float64      { return math.Sin(d * math.Pi / 180) }
func cosd(d float64) float64      { return math.Cos(d * math.Pi / 180) }
func tand(d float64) float64      { return math.Tan(d * math.Pi / 180) }
func asind(x float64) float64     { return math.Asin(min(1, max(-1, x))) * 180 / math.Pi }
func atan2d(y, x float64) float64 { return math.Atan2(y, x) * 180 / math.Pi }

// turn brings an angle to 0 to under 360 degrees.
func turn(d float64) float64 {
	if d = math.Mod(d, 360); d < 0 {
		d += 360
	}
	return d
}
