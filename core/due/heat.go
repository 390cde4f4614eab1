package due

import (
	"slices"
	"time"

	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
	"barkslip/core/weather"
)

// Heat is how hot a graft of the stump gets on the day it was sealed, or would
// get if it were sealed at the time given. ok is false where the block's place
// or the day's weather was not entered.
func Heat(s *record.Stump, b *record.Block, sealed time.Time) (answer weather.HeatAnswer, ok bool) {
	h, windAssumed, ok := heatDay(s, b, sealed)
	if !ok {
		return answer, false
	}
	answer, err := weather.Heat(h)
	if windAssumed {
		work := &answer.Work
		work.Assumed = append(slices.Clip(work.Assumed), "no wind was recorded for the day")
		work.Facts = append(slices.Clip(work.Facts), trade.LightWind)
	}
	return answer, err == nil
}

// whiteBefore is by when a graft sealed at a time must be white for its heat, where that
// is before by; see Heat, whose answer it is without the rest of it.
func whiteBefore(s *record.Stump, b *record.Block, sealed, by time.Time) (before time.Time, ok bool) {
	h, _, ok := heatDay(s, b, sealed)
	if !ok {
		return before, false
	}
	t, err := weather.WhiteBefore(h, by)
	if err != nil || t == nil {
		return before, false
	}
	return *t, true
}

// heatDay is the day on which a graft of the stump was sealed, as its heat is asked.
func heatDay(s *record.Stump, b *record.Block, sealed time.Time) (h weather.HeatDay, windAssumed, ok bool) {
	sealed = sealed.In(b.Zone)
	day := unit.DateOf(sealed)
	w, known := b.Weather[day]
	if !known || !b.Placed {
		return h, false, false
	}
	clock := unit.Clock(sealed.Hour()*60 + sealed.Minute())
	h = weather.NewHeatDay(b.Place(), day, w.What.Low.Temperature, w.What.High.Temperature, unit.Speed(w.What.Wind))
	h.Cloud, h.Sealed = float64(w.What.Cloud), &clock
	if across := s.Across(); across > 0 {
		h.Across = across
	}
	if thick := s.Thickest(); thick > 0 {
		h.Thick = thick
	}
	return h, w.What.WindAssumed, true
}
