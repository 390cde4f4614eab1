package due

import (
	"time"

	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
	"barkslip/core/weather"
)

// Hints of the white due: which of its reasons applies.
const (
	whitePlain uint8 = iota
	whiteStillWet
	whiteMorning
	whiteHeat
)

// whiteDue runs from sealing until the graft is white: it opens after two
// hours, or half an hour after it was said to be wet still, and is due after
// three hours, or before the sun harms it if that is sooner. What falls due in
// the dark waits for the morning.
func whiteDue(c *dueCase) []Due {
	a := c.a
	if a.Sealed == nil || a.White != nil || c.stage == record.StageFailed || c.stage == record.StageGivenUp || c.stage == record.StageUntied {
		return nil
	}
	sealed := a.Sealed.At
	d := c.at(sealed.Add(trade.WhiteOpensHours*time.Hour), sealed.Add(trade.WhiteByHours*time.Hour), sealed)
	if before, ok := whiteBefore(c); ok && before.Before(d.By) {
		d.By, d.Hint = before, whiteHeat
	}
	for _, wet := range a.StillWet {
		if opens := wet.At.Add(trade.StillWetMinutes * time.Minute); wet.At.After(sealed) && opens.After(d.Opens) {
			d.Opens, d.Hint, d.Since = opens.In(c.b.Zone), whiteStillWet, wet.At.In(c.b.Zone)
		}
	}
	if d.By.Before(d.Opens) {
		d.By = d.Opens
	}
	if morning, dark := afterDark(c.b, d.By); dark {
		d.By, d.Hint = morning, whiteMorning
	}
	return c.one(d)
}

// afterDark gives, for a time between sunset and sunrise, one hour after the
// next sunrise. Where the block has no place or the sun does not set, nothing
// is dark.
func afterDark(b *record.Block, t time.Time) (time.Time, bool) {
	if !b.Placed {
		return t, false
	}
	day := unit.DateOf(t.In(b.Zone))
	for _, d := range []unit.Date{day, day.Add(1)} {
		sun := weather.SunDay(b.Place(), d)
		if sun.Rise == nil || sun.Set == nil {
			continue
		}
		switch {
		case t.Before(*sun.Rise):
			return sun.Rise.Add(trade.WhiteMorning * time.Minute), true
		case t.Before(*sun.Set):
			return t, false
		}
	}
	return t, false
}
