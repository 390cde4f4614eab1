package due

import "time"

// whiteBefore is when the sun would begin to harm the dark sealer on the day of
// sealing; ok is false if it would not, or if the place or the day's weather was
// not entered.
func whiteBefore(c *dueCase) (before time.Time, ok bool) {
	heat, known := Heat(c.s, c.b, c.a.Sealed.At)
	if !known || heat.WhiteBefore == nil {
		return before, false
	}
	return *heat.WhiteBefore, true
}
