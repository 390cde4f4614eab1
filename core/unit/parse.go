package unit

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// Error says what was given and what would have been accepted.
type Error struct {
	Given    string
	Accepted string
}

func (e *Error) Error() string {
	return fmt.Sprintf("%q is not understood; give %s", e.Given, e.Accepted)
}

// The names a length may carry.
var lengthUnits = map[string]Length{
	"mm": Millimetre, "cm": Centimetre, "m": Metre,
	"in": Inch, "\"": Inch, "inch": Inch, "inches": Inch, "″": Inch,
	"ft": Foot, "'": Foot, "foot": Foot, "feet": Foot, "′": Foot,
}

const (
	lengthWithUnit = "a length with its unit: 4in, 3 1/2in, 3ft, 10.2cm, 100mm or 1.2m"
	maxLength      = 20000 * Metre
)

// ParseLength reads a length: 4in, 3 1/2 in, 3ft 6in, 10.2cm, 100mm. A bare
// number is taken in units of bare; with bare 0 it is an error that names the
// units. Signs, NaN and infinities are refused.
func ParseLength(s string, bare Length) (Length, error) {
	accepted := lengthWithUnit
	switch bare {
	case Inch:
		accepted = "inches such as 3, 3.5 or 3 1/2, or a unit: 9cm, 90mm"
	case Foot:
		accepted = "feet such as 6 or 6.5, or a unit: 72in, 1.8m"
	case Centimetre:
		accepted = "centimetres such as 9 or 8.9, or a unit: 90mm, 3 1/2in"
	case Millimetre:
		accepted = "millimetres such as 12, or a unit: 1.2cm, 1/2in"
	case Metre:
		accepted = "metres such as 1.8, or a unit: 180cm, 6ft"
	}
	fail := &Error{Given: s, Accepted: accepted}
	rest := strings.ToLower(strings.TrimSpace(s))
	if rest == "" {
		return 0, fail
	}
	var total Length
	for parts := 0; rest != ""; parts++ {
		m := quantity.FindStringSubmatch(rest)
		if m == nil || parts == 2 {
			return 0, fail
		}
		n, ok := number(m[1])
		if !ok {
			return 0, fail
		}
		size := bare
		if m[2] != "" {
			if size, ok = lengthUnits[m[2]]; !ok {
				return 0, fail
			}
		}
		if size == 0 || parts == 1 && (m[2] == "" || size >= Foot) {
			return 0, fail
		}
		total += Length(n) * size
		rest = strings.TrimSpace(rest[len(m[0]):])
		if rest != "" && size != Foot { // only feet may be followed by inches
			return 0, fail
		}
	}
	if total > maxLength {
		return 0, fail
	}
	return total, nil
}

var (
	quantity = regexp.MustCompile(`^([0-9.][0-9./ \-]*?)\s*([a-z"'″′]+|$)`)
	mixed    = regexp.MustCompile(`^(?:([0-9]+)(?:\s+|-))?([0-9]+)/([0-9]+)$`)
	plain    = regexp.MustCompile(`^(?:[0-9]+\.?[0-9]*|\.[0-9]+)$`)
)

// number reads 3, 3.5, .5, 3 1/2, 3-1/2 and 1/2.
func number(s string) (float64, bool) {
	s = strings.TrimSpace(s)
	if m := mixed.FindStringSubmatch(s); m != nil {
		whole, _ := strconv.ParseFloat("0"+m[1], 64)
		top, _ := strconv.ParseFloat(m[2], 64)
		below, _ := strconv.ParseFloat(m[3], 64)
		if below == 0 {
			return 0, false
		}
		n := whole + top/below
		return n, !math.IsInf(n, 0) && !math.IsNaN(n)
	}
	if !plain.MatchString(s) {
		return 0, false
	}
	n, err := strconv.ParseFloat(s, 64)
	return n, err == nil
}

// signed splits a signed decimal from the unit behind it.
var signed = regexp.MustCompile(`^\s*([+-]?(?:[0-9]+\.?[0-9]*|\.[0-9]+))\s*([°a-zA-Z/]*)\s*$`)

func quantityOf(s string) (n float64, name string, ok bool) {
	m := signed.FindStringSubmatch(s)
	if m == nil {
		return 0, "", false
	}
	n, err := strconv.ParseFloat(m[1], 64)
	return n, strings.ToLower(m[2]), err == nil && !math.IsInf(n, 0)
}

// ParseTemperature reads 88F or 31C. A bare number is taken in the unit named
// by bare, 'F' or 'C'; with 0 it is refused.
func ParseTemperature(s string, bare byte) (Temperature, error) {
	accepted := "a temperature with its unit: 88F or 31C"
	if bare != 0 {
		accepted = fmt.Sprintf("degrees %c such as %s, or 88F, 31C", bare, map[byte]string{'F': "88", 'C': "31"}[bare])
	}
	n, name, ok := quantityOf(s)
	if name == "" && bare != 0 {
		name = strings.ToLower(string(bare))
	}
	var t Temperature
	switch strings.TrimPrefix(name, "°") {
	case "f":
		t = Fahrenheit(n)
	case "c":
		t = Temperature(n)
	default:
		ok = false
	}
	if !ok || t < -273.15 || t > 1000 {
		return 0, &Error{Given: s, Accepted: accepted}
	}
	return t, nil
}

// ParseSpeed reads 5mph, 2m/s or 7km/h. A bare number is taken in units of
// bare; with 0 it is refused, and so is a speed below nought.
func ParseSpeed(s string, bare Speed) (Speed, error) {
	n, name, ok := quantityOf(s)
	size := bare
	switch name {
	case "":
	case "mph":
		size = MileAnHour
	case "m/s", "ms":
		size = 1
	case "km/h", "kmh", "kph":
		size = 1 / 3.6
	default:
		ok = false
	}
	if !ok || size == 0 || n < 0 || n*float64(size) > 150 {
		return 0, &Error{Given: s, Accepted: "a speed with its unit: 5mph, 2m/s or 7km/h"}
	}
	return Speed(n) * size, nil
}

// compassLetters makes letters of compass words: north-east is ne.
var compassLetters = strings.NewReplacer("north", "n", "south", "s", "east", "e", "west", "w", "-", "", " ", "")

// ParseBearing reads degrees clockwise from north, 0 to 360, or a compass word
// such as n, nne, north-east.
func ParseBearing(s string) (Bearing, error) {
	word := strings.ToLower(strings.TrimSpace(s))
	if b, ok := compass[compassLetters.Replace(word)]; ok {
		return b, nil
	}
	n, name, ok := quantityOf(word)
	if !ok || name != "" && name != "°" && name != "deg" || n < 0 || n > 360 {
		return 0, &Error{Given: s, Accepted: "a bearing of 0 to 360 degrees clockwise from north, or n, ne, e, se, s, sw, w, nw"}
	}
	return Bearing(n).Normal(), nil
}

var compass = map[string]Bearing{"n": 0, "nne": 22.5, "ne": 45, "ene": 67.5, "e": 90, "ese": 112.5, "se": 135, "sse": 157.5,
	"s": 180, "ssw": 202.5, "sw": 225, "wsw": 247.5, "w": 270, "wnw": 292.5, "nw": 315, "nnw": 337.5}

func mod360(d float64) float64 {
	d = math.Mod(d, 360)
	if d < 0 {
		d += 360
	}
	if d >= 360 {
		d = 0
	}
	return d
}
