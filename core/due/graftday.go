package due

import (
	"time"

	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
	"barkslip/core/weather"
)

// Finish is setting the scions that a grafting begun still lacks.
const Finish Kind = 25

var finish = Work{
	Kind: Finish, Name: "finish", While: grafting, Rule: finishRule, Step: "scions", Timed: true,
	Says:  []string{"The last scion was set {since} at {at} and a slot is open: set it within the hour, or record that it stays empty."},
	Facts: []trade.Fact{trade.FinishSoon, trade.DarkSealer},
}

// finishRule stands while a slot is open on a stump with scions, until all are
// set or the rest is said to stay empty.
func finishRule(c *dueCase) []Due {
	if c.a.AllSet() || c.a.Sealed != nil {
		return nil
	}
	last := c.a.SetAt()
	return c.one(c.at(last, last.Add(trade.FinishMinutes*time.Minute), last))
}

// Seal is putting sealer over a graft whose scions are set.
const Seal Kind = 26

var sealing = Work{
	Kind: Seal, Name: "seal", While: grafting, Rule: sealRule, Step: "seal", Timed: true,
	Says:  []string{"The last scion was set {since} at {at}: seal it within half an hour, before it dries."},
	Facts: []trade.Fact{trade.SealSoon, trade.SealBelow},
}

// sealRule stands from the last scion until the graft is sealed, and again where
// a scion was set after it.
func sealRule(c *dueCase) []Due {
	if c.a.IsSealed() || c.a.Sealed == nil && !c.a.AllSet() {
		return nil
	}
	last := c.a.SetAt()
	return c.one(c.at(last, last.Add(trade.SealMinutes*time.Minute), last))
}

// White is painting white over the sealer before the sun harms it.
const White Kind = 0

// Hints of the white due: which of its reasons applies.
const (
	whitePlain uint8 = iota
	whiteStillWet
	whiteMorning
	whiteHeat
	whiteResealed
	whiteWashed
	whiteRained
)

var white = Work{
	Kind: White, Name: "white", While: underSeal, Rule: whiteRule, Step: "white", Timed: true,
	Says: []string{
		"Sealed {since} at {at}: paint it white 2 to 3 hours later, once the sealer is dry.",
		"It was still wet on {since} at {at}: look again half an hour later.",
		"The time runs out in the dark: paint it white within an hour of sunrise.",
		"Sealed {since} at {at}: the day's sun would harm the graft under dark sealer before the 3 hours are up.",
		"Resealed {since} at {at}: paint it white 2 to 3 hours later, once the sealer is dry.",
		"The white was washed off by {since} at {at}: paint it white again when the sealer is dry.",
		"It was rained on {since} at {at}, which wets the sealer again: look half an hour later.",
	},
	Facts: []trade.Fact{trade.WhiteIn, trade.DarkSealer, trade.StillWet},
}

// whiteRule runs from sealing until the graft is white: it opens after two
// hours, or half an hour after it was said to be wet still, and is due after
// three hours, or before the sun harms it if that is sooner, though never before
// it opens. What falls due in the dark waits for the morning. Sealing again and
// white washed off run it again.
func whiteRule(c *dueCase) []Due {
	a := c.a
	if !a.IsSealed() || a.IsWhite() {
		return nil
	}
	coat, hint := a.Sealed.At, whitePlain
	if r := record.LastOf(a.Reseals); r != nil && r.At.After(coat) {
		coat, hint = r.At, whiteResealed
	}
	if w := record.LastOf(a.Washed); w != nil && w.At.After(coat) {
		coat, hint = w.At, whiteWashed
	}
	d := c.at(coat.Add(trade.WhiteOpensHours*time.Hour), coat.Add(trade.WhiteByHours*time.Hour), coat).hinted(hint)
	if before, hot := whiteBefore(c.s, c.b, coat, d.By); hot {
		d.By, d.Hint = before.In(c.b.Zone), whiteHeat
	}
	for _, wet := range a.StillWet {
		if opens := wet.At.Add(trade.StillWetMinutes * time.Minute); wet.At.After(coat) && opens.After(d.Opens) {
			d.Opens, d.Hint, d.Since = opens.In(c.b.Zone), whiteStillWet, wet.At.In(c.b.Zone)
			if wet.What.Rain {
				d.Hint = whiteRained
			}
		}
	}
	return c.one(notBefore(c.b, d))
}

// notBefore moves the end of a white due to its opening, and out of the dark.
func notBefore(b *record.Block, d Due) Due {
	if d.By.Before(d.Opens) {
		d.By = d.Opens
	}
	if morning, dark := afterDark(b, d.By); dark {
		d.By, d.Hint = morning, whiteMorning
	}
	return d
}

// WhiteBy is by when a graft sealed at a time would be due to be white, as the
// white due says it once it is sealed.
func WhiteBy(s *record.Stump, b *record.Block, sealed time.Time) time.Time {
	d := Due{Opens: sealed.Add(trade.WhiteOpensHours * time.Hour), By: sealed.Add(trade.WhiteByHours * time.Hour)}
	if before, hot := whiteBefore(s, b, sealed, d.By); hot {
		d.By = before
	}
	return notBefore(b, d).By
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
