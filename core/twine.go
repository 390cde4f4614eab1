package core

import "time"

// twineOn says whether twine is on the stem.
func (a *Attempt) twineOn() bool {
	return a.Twine != nil && (a.TwineCut == nil || a.TwineCut.At.Before(a.Twine.At))
}

// twineSeen is when the twine was last put on, checked or moved.
func (a *Attempt) twineSeen() time.Time {
	seen := a.Twine.At
	if s := lastOf(a.TwineChecks); s != nil && s.At.After(seen) {
		seen = s.At
	}
	if s := lastOf(a.TwineMoves); s != nil && s.At.After(seen) {
		seen = s.At
	}
	return seen
}

// seenTight is when the twine, as it is now, was first seen tight.
func (a *Attempt) seenTight() (time.Time, bool) {
	moved := lastOf(a.TwineMoves)
	for _, s := range a.TwineChecks {
		if s.What.Tight && !s.At.Before(a.Twine.At) && (moved == nil || newer(s, *moved)) {
			return s.At, true
		}
	}
	return time.Time{}, false
}
