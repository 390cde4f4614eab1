package due

import (
	"slices"

	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
	"barkslip/core/weather"
)

// HeatOn is how hot a usual graft gets on a day if it is sealed at sunrise, by the
// weather put down for that day, which for a day to come is a forecast. ok is
// false where the block's place or the day's weather was not entered.
func HeatOn(b *record.Block, day unit.Date) (answer weather.HeatAnswer, ok bool) {
	w, known := b.Weather[day]
	if !known || !b.Placed {
		return answer, false
	}
	h := weather.NewHeatDay(b.Place(), day, w.What.Low.Temperature, w.What.High.Temperature, unit.Speed(w.What.Wind))
	h.Cloud = float64(w.What.Cloud)
	answer, err := weather.Heat(h)
	if w.What.WindAssumed {
		work := &answer.Work
		work.Assumed = append(slices.Clip(work.Assumed), "no wind was recorded for the day")
		work.Facts = append(slices.Clip(work.Facts), trade.LightWind)
	}
	return answer, err == nil
}
