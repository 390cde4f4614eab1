package due

import (
	"time"

	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// LateWhite is white that came after the bark under dark sealer had passed the
// limit, as reckoned from the days' weather.
type LateWhite struct {
	Passed  time.Time // when the limit was passed first
	Painted time.Time // zero where it is not white yet
}

// After is how long after it was passed the white came, up to a time where it has
// not come yet.
func (l LateWhite) After(now time.Time) time.Duration {
	if l.Painted.IsZero() {
		return now.Sub(l.Passed)
	}
	return l.Painted.Sub(l.Passed)
}

// Words say it in a sentence's end: "55 min after the bark passed 45 C / 113 F, as
// worked out".
func (l LateWhite) Words(now time.Time) string {
	limit := trade.InjuryFrom
	return unit.Lasting(l.After(now)) + " after the bark passed " + unit.Metric.Temperature(limit) + " / " + unit.US.Temperature(limit) + ", as worked out"
}

// mostDark is how many days after sealing the sun on a graft that is still dark is
// reckoned.
const mostDark = 7

// WhiteLate says whether the white painted at a time came late. ok is false where
// it came in time, or where the place or the day's weather is not known.
func WhiteLate(s *record.Stump, b *record.Block, painted time.Time) (late LateWhite, ok bool) {
	coat := coatBefore(s, painted)
	if passed, hot := passedLimit(s, b, coat, painted); hot {
		return LateWhite{passed, painted}, true
	}
	return late, false
}

// AttemptLate is the late white of an attempt: the white it has, or none as of a
// time.
func AttemptLate(s *record.Stump, a *record.Attempt, b *record.Block, now time.Time) (late LateWhite, ok bool) {
	if !a.IsSealed() {
		return late, false
	}
	if a.IsWhite() {
		return WhiteLate(s, b, a.White.At)
	}
	if passed, hot := passedLimit(s, b, a.Coat(), now); hot {
		return LateWhite{Passed: passed}, true
	}
	return late, false
}

// coatBefore is when the coat was put on that lay dark until a time; zero where
// none did.
func coatBefore(s *record.Stump, painted time.Time) (coat time.Time) {
	newest := func(at time.Time) {
		if !at.After(painted) && at.After(coat) {
			coat = at
		}
	}
	for _, a := range s.Attempts {
		if a.Sealed == nil {
			continue
		}
		newest(a.Sealed.At)
		for _, r := range a.Reseals {
			newest(r.At)
		}
		for _, w := range a.Washed {
			newest(w.At)
		}
	}
	return coat
}

// passedLimit is when the dark bark of a graft first passes the limit between a
// coat of sealer and a time, in the sun of the days whose weather is known.
func passedLimit(s *record.Stump, b *record.Block, coat, until time.Time) (at time.Time, ok bool) {
	if coat.IsZero() {
		return at, false
	}
	for dark := coat; !dark.After(until) && dark.Sub(coat) < mostDark*24*time.Hour; {
		heat, known := Heat(s, b, dark)
		if known && heat.Passed != nil {
			return heat.Passed.In(b.Zone), heat.Passed.Before(until)
		}
		dark = b.Day(dark).Add(1).In(b.Zone)
	}
	return at, false
}
