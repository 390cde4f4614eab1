package weather

import "math"

// under is clear sunlight as it comes through cloud of 0 to 8 oktas, for the
// cosine of the zenith: Kasten & Czeplak 1980. The diffuse share is never less
// than that of the clear sky, so that cloud never strengthens a low beam.
func (s Sunlight) under(oktas, cosz float64) Sunlight {
	if oktas == 0 || s.Level == 0 {
		return s
	}
	cover := oktas / 8
	share := math.Max(0.3+0.7*cover*cover, s.Diffuse/s.Level)
	level := s.Level * (1 - 0.75*math.Pow(cover, 3.4))
	return Sunlight{Level: level, Diffuse: share * level, Beam: (1 - share) * level / cosz}
}
