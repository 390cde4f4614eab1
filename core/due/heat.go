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
	sealed = sealed.In(b.Zone)
	day := unit.DateOf(sealed)
	w, known := b.Weather[day]
	if !known || !b.Placed {
		return answer, false
	}
	clock := unit.Clock(sealed.Hour()*60 + sealed.Minute())
	h := weather.NewHeatDay(b.Place(), day, w.What.Low.Temperature, w.What.High.Temperature, unit.Speed(w.What.Wind))
	h.Cloud, h.Sealed = float64(w.What.Cloud), &clock
	if across := s.Across(); across > 0 {
		h.Across = across
	}
	if thick := s.Thickest(); thick > 0 {
		h.Thick = thick
	}
	answer, err := weather.Heat(h)
	if w.What.WindAssumed {
		work := &answer.Work
		work.Assumed = append(slices.Clip(work.Assumed), "no wind was recorded for the day")
		work.Facts = append(slices.Clip(work.Facts), trade.LightWind)
	}
	return answer, err == nil
}
