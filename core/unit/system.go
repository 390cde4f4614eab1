package unit

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// System is the pair of unit systems a block may be kept in.
type System uint8

// The systems of units.
const (
	US     System = iota // inches, feet, °F, mph
	Metric               // millimetres, centimetres, metres, °C, m/s
)

// ParseSystem reads us or metric.
func ParseSystem(s string) (System, error) {
	switch strings.ToLower(strings.TrimSpace(s)) {
	case "us", "inches", "inch", "in":
		return US, nil
	case "metric", "cm", "mm":
		return Metric, nil
	}
	return US, &Error{Given: s, Accepted: "us or metric"}
}

func (s System) String() string {
	if s == Metric {
		return "metric"
	}
	return "us"
}

// Bare is the unit a number without one has on screens: inches or centimetres.
func (s System) Bare() Length {
	if s == Metric {
		return Centimetre
	}
	return Inch
}

// BareTemperature is 'F' or 'C'.
func (s System) BareTemperature() byte {
	if s == Metric {
		return 'C'
	}
	return 'F'
}

// BareSpeed is a mile an hour or a metre a second.
func (s System) BareSpeed() Speed {
	if s == Metric {
		return 1
	}
	return MileAnHour
}

// Length prints a length as people of the system say it: 3 5/8 in, 7 ft, or
// 92 mm, 1.07 m. Inches are rounded to the nearest 1/16 under 8 in, to 1/8
// under 24 in, to 1/2 above.
func (s System) Length(l Length) string {
	if l < 0 {
		return "-" + s.Length(-l)
	}
	if s == Metric {
		switch {
		case l < 10:
			return trim(l.MM(), 1) + " mm"
		case l < 1000:
			return trim(l.MM(), 0) + " mm"
		}
		return trim(l.Metres(), 2) + " m"
	}
	in := l.Inches()
	switch {
	case in < 8:
		return fraction(in, 16) + " in"
	case in < 24:
		return fraction(in, 8) + " in"
	case in < 120:
		return fraction(in, 2) + " in"
	}
	return trim(in/12, 1) + " ft"
}

// Distance prints a walking distance: 120 yd or 110 m.
func (s System) Distance(l Length) string {
	if s == Metric {
		return trim(l.Metres(), 0) + " m"
	}
	return trim(float64(l/(3*Foot)), 0) + " yd"
}

// Temperature prints 88 F or 31 C.
func (s System) Temperature(t Temperature) string {
	if s == Metric {
		return trim(t.C(), 0) + " C"
	}
	return trim(t.F(), 0) + " F"
}

// Speed prints 5 mph or 2 m/s.
func (s System) Speed(v Speed) string {
	if s == Metric {
		return trim(v.MS(), 1) + " m/s"
	}
	return trim(float64(v/MileAnHour), 0) + " mph"
}

// Area prints 0.45 sq in or 293 mm2.
func (s System) Area(a Area) string {
	if s == Metric {
		return trim(float64(a), 0) + " mm2"
	}
	return trim(float64(a)/float64(Inch*Inch), 2) + " sq in"
}

// Show prints any quantity of this package in the system; other values print
// as fmt would, floats with up to three decimals.
func (s System) Show(v any) string {
	switch v := v.(type) {
	case Length:
		return s.Exact(v)
	case Area:
		return s.Area(v)
	case Temperature:
		return s.Temperature(v)
	case Speed:
		return s.Speed(v)
	case Bearing:
		return v.Words()
	case Angle:
		return trim(v.Deg(), 1) + "°"
	case Warmth:
		if s == Metric {
			return trim(v.K(), 1) + " C"
		}
		return trim(v.K()*9/5, 1) + " F"
	case Date:
		return v.Long()
	case float64:
		return trim(v, 4)
	}
	return fmt.Sprint(v)
}

// Exact prints a length that is no sixteenth of an inch as a decimal, so that
// what went into a sum stands as it was given.
func (s System) Exact(l Length) string {
	in := l.Inches()
	if s == US && in < 24 && math.Abs(in*16-math.Round(in*16)) > 0.02 {
		return trim(in, 2) + " in"
	}
	return s.Length(l)
}

// Words prints a bearing as 23°, NNE.
func (b Bearing) Words() string { return b.Degrees() + "°, " + b.Point() }

// Degrees prints a bearing in whole degrees, as it could be typed: 23.
func (b Bearing) Degrees() string {
	return strconv.Itoa(int(math.Mod(math.Round(b.Normal().Deg()), 360)))
}

// Point is the nearest of the sixteen compass points: NNE.
func (b Bearing) Point() string {
	points := []string{"N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW"}
	return points[int(math.Round(b.Normal().Deg()/22.5))%16]
}

// fraction prints n rounded to the nearest 1/parts as a mixed fraction.
func fraction(n float64, parts int) string {
	whole := int(math.Round(n * float64(parts)))
	top, below := whole%parts, parts
	whole /= parts
	for top != 0 && top%2 == 0 {
		top, below = top/2, below/2
	}
	switch {
	case top == 0:
		return strconv.Itoa(whole)
	case whole == 0:
		return fmt.Sprintf("%d/%d", top, below)
	}
	return fmt.Sprintf("%d %d/%d", whole, top, below)
}

// trim prints n with at most places decimals and no trailing noughts.
func trim(n float64, places int) string {
	s := strconv.FormatFloat(n, 'f', places, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		s = "0"
	}
	return s
}
