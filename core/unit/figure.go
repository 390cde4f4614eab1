package unit

import "math"

// Figure prints a figure of the trade, given in inches, as people of the system
// say it: 18 in or 45 cm, 6 in or 15 cm, 2 1/2 in or 6.5 cm. Measured lengths are
// printed by Length.
func (s System) Figure(l Length) string {
	if s != Metric || l < 2*Inch {
		return s.Length(l)
	}
	return trim(float64(s.Round(l)/Centimetre), 1) + " cm"
}

// Round is the length that Figure says: what is held against a figure of the
// trade, or reckoned from it, goes by the number that people were told.
func (s System) Round(l Length) Length {
	if s != Metric || l < 2*Inch {
		return l
	}
	step := 50 * Millimetre
	switch {
	case l < 100:
		step = 5 * Millimetre
	case l < 200:
		step = 10 * Millimetre
	}
	return Length(math.Round(float64(l/step))) * step
}

// sameLength is the difference, in mm, that reading and reckoning may leave.
const sameLength = 1e-6

// Beside prints a length that is held against limits finely enough to stand on
// its own side of each: 6.001 in beside a limit of 6 in, not 6 in.
func (s System) Beside(l Length, limits ...Length) string {
	text := s.Exact(l)
	for places := 1; places <= 6 && Crosses(text, l, limits...); places++ {
		if s == Metric {
			text = trim(l.MM(), places) + " mm"
		} else {
			text = trim(l.Inches(), places+1) + " in"
		}
	}
	return text
}

// Crosses says whether a length, read as it is printed, lies on another side of
// a limit than it does.
func Crosses(text string, l Length, limits ...Length) bool {
	read, err := ParseLength(text, 0)
	if err != nil {
		return false
	}
	for _, limit := range limits {
		if side(l-limit) != side(read-limit) {
			return true
		}
	}
	return false
}

func side(d Length) int {
	switch {
	case d > sameLength:
		return 1
	case d < -sameLength:
		return -1
	}
	return 0
}
