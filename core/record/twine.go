package record

import "time"

// TwineOn says whether twine is on the stem.
func (a *Attempt) TwineOn() bool {
	return a.Twine != nil && (a.TwineCut == nil || a.TwineCut.At.Before(a.Twine.At))
}

// TwineSeen is when the twine was last put on, checked or moved.
func (a *Attempt) TwineSeen() time.Time {
	seen := a.Twine.At
	if s := LastOf(a.TwineChecks); s != nil && s.At.After(seen) {
		seen = s.At
	}
	if s := LastOf(a.TwineMoves); s != nil && s.At.After(seen) {
		seen = s.At
	}
	return seen
}

// SeenTight is when the twine, as it is now, was first seen tight.
func (a *Attempt) SeenTight() (time.Time, bool) {
	moved := LastOf(a.TwineMoves)
	for _, s := range a.TwineChecks {
		if s.What.Tight && !s.At.Before(a.Twine.At) && (moved == nil || Newer(s, *moved)) {
			return s.At, true
		}
	}
	return time.Time{}, false
}
