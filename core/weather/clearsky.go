package weather

import "math"

// Sunlight is what the sun sends to one spot, in watts on a square metre.
type Sunlight struct {
	Level   float64 // on a level surface, beam and sky together
	Beam    float64 // on a surface that faces the sun
	Diffuse float64 // from the sky on a level surface
}

const (
	solarConstant = 1366.1 // W/m2 outside the air at the mean distance of the sun
	haze          = 3.0    // Linke turbidity of a clear day; 5 is hazy
	scaleHeight   = 8434.0 // metres over which the air's pressure falls to 1/e
)

// outside is the sun's strength above the air on a day of the year, in W/m2:
// Spencer 1971.
func outside(yearDay int) float64 {
	b := 2 * math.Pi * float64(yearDay-1) / 365
	return solarConstant * (1.00011 + 0.034221*math.Cos(b) + 0.00128*math.Sin(b) +
		0.000719*math.Cos(2*b) + 0.000077*math.Sin(2*b))
}

// airMass is how much air the beam crosses, 1 from straight up at the sea, for
// a seen zenith up to 90 degrees and a height in metres: Kasten & Young 1989.
func airMass(zenith, metres float64) float64 {
	return math.Exp(-metres/scaleHeight) / (cosd(zenith) + 0.50572*math.Pow(96.07995-zenith, -1.6364))
}

// ineichen is the sunlight under a clear sky: Ineichen & Perez 2002. It takes
// the strength outside the air in W/m2, the zenith in degrees, the air mass,
// the Linke turbidity and the height in metres.
func ineichen(outside, zenith, mass, turbidity, metres float64) Sunlight {
	cosz := cosd(zenith)
	if cosz <= 0 {
		return Sunlight{}
	}
	f1, f2 := math.Exp(-metres/8000), math.Exp(-metres/1250)
	c1, c2 := 5.09e-5*metres+0.868, 3.92e-5*metres+0.0387
	level := c1 * outside * cosz * math.Exp(-c2*mass*(f1+f2*(turbidity-1)))
	beam := outside * (0.664 + 0.163/f1) * math.Exp(-0.09*mass*(turbidity-1))
	most := level * (1 - (0.1-0.2*math.Exp(-turbidity))/(0.1+0.882/f1)) / cosz
	beam = math.Min(beam, most)
	return Sunlight{Level: level, Beam: beam, Diffuse: level - beam*cosz}
}

// Haurwitz is the sunlight on a level surface under a clear sky, in W/m2, from
// the zenith in degrees alone: Haurwitz 1945 with 0.059, where some texts print
// 0.057. It serves as a check on the fuller formula.
func Haurwitz(zenith float64) float64 {
	cosz := cosd(zenith)
	if cosz <= 0 {
		return 0
	}
	return 1098 * cosz * math.Exp(-0.059/cosz)
}
