// Package unit holds the named quantities the program reckons with: lengths,
// temperatures, speeds, bearings, angles and calendar dates. Each is stored in
// one SI unit, so that mixing inches with millimetres does not compile, and is
// read and printed in both systems.
package unit

// Length is a distance in millimetres.
type Length float64

// Exact by definition: NIST SP 811 (inch 25.4 mm, foot 0.3048 m).
const (
	Millimetre Length = 1
	Centimetre Length = 10
	Metre      Length = 1000
	Inch       Length = 25.4
	Foot       Length = 304.8
)

// MM is the length in millimetres.
func (l Length) MM() float64 { return float64(l) }

// Inches is the length in inches.
func (l Length) Inches() float64 { return float64(l / Inch) }

// Metres is the length in metres.
func (l Length) Metres() float64 { return float64(l / Metre) }

// Area is a surface in square millimetres.
type Area float64

// Temperature is in degrees Celsius.
type Temperature float64

// Fahrenheit makes a temperature from degrees Fahrenheit.
func Fahrenheit(f float64) Temperature { return Temperature((f - 32) * 5 / 9) }

// C is the temperature in degrees Celsius.
func (t Temperature) C() float64 { return float64(t) }

// F is the temperature in degrees Fahrenheit.
func (t Temperature) F() float64 { return float64(t)*9/5 + 32 }

// Warmth is a difference of temperatures in kelvin. A difference of one degree
// Fahrenheit is 5/9 K; no 32 is involved.
type Warmth float64

// K is the difference in kelvin.
func (w Warmth) K() float64 { return float64(w) }

// Speed is in metres a second.
type Speed float64

// MileAnHour is exactly 0.44704 m/s (NIST SP 811).
const MileAnHour Speed = 0.44704

// MS is the speed in metres a second.
func (s Speed) MS() float64 { return float64(s) }

// Bearing is a direction in degrees clockwise from north, 0 to under 360 once
// Normal has been applied.
type Bearing float64

// Normal is the same direction from 0 to under 360.
func (b Bearing) Normal() Bearing {
	n := mod360(float64(b))
	return Bearing(n)
}

// Deg is the bearing in degrees.
func (b Bearing) Deg() float64 { return float64(b) }

// From is the smaller angle between two directions, 0 to 180 degrees.
func (b Bearing) From(other Bearing) float64 {
	d := mod360(float64(b - other))
	if d > 180 {
		d = 360 - d
	}
	return d
}

// Angle is in degrees.
type Angle float64

// Deg is the angle in degrees.
func (a Angle) Deg() float64 { return float64(a) }
