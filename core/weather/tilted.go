package weather

import "math"

// albedo is the share of the sunlight that the ground throws back.
const albedo = 0.2

// skyOn is the diffuse light on a surface tilted by degrees from level, under a
// sky that is equally bright all over.
func skyOn(diffuse, tilt float64) float64 { return diffuse * (1 + cosd(tilt)) / 2 }

// groundOn is the light thrown back by the ground on such a surface.
func groundOn(level, albedo, tilt float64) float64 { return level * albedo * (1 - cosd(tilt)) / 2 }

// round is the mean all round an upright cylinder, in W/m2.
func (s Sunlight) round(zenith float64) float64 {
	return s.Beam*sind(zenith)/math.Pi + s.upright()
}

// sunnyHalf is the mean over the half of an upright cylinder that the sun
// shines on, in W/m2.
func (s Sunlight) sunnyHalf(zenith float64) float64 {
	return s.Beam*sind(zenith)*2/math.Pi + s.upright()
}

// upright is what sky and ground send to an upright surface.
func (s Sunlight) upright() float64 {
	return skyOn(s.Diffuse, 90) + groundOn(s.Level, albedo, 90)
}
