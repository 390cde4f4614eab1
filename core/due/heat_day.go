package due

import (
	"time"

	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/core/weather"
)

// WhiteOn is by when a usual graft must be white that is sealed at sunrise of a day, nil
// where its heat does no harm, and whether the sealer is not dry by then; by the weather
// put down for that day, which for a day to come is a forecast. ok is false where the
// block's place or the day's weather was not entered.
func WhiteOn(b *record.Block, day unit.Date) (before *time.Time, dryFirst, ok bool) {
	w, known := b.Weather[day]
	if !known || !b.Placed {
		return nil, false, false
	}
	h := weather.NewHeatDay(b.Place(), day, w.What.Low.Temperature, w.What.High.Temperature, unit.Speed(w.What.Wind))
	h.Cloud = float64(w.What.Cloud)
	before, dryFirst, err := weather.WhiteOn(h)
	return before, dryFirst, err == nil
}
