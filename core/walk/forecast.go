package walk

import (
	"fmt"
	"strings"

	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
	"barkslip/core/weather"
)

// forecast is what the weather put down for the coming days means for the stump
// in hand: heat for a graft about to be made or within its first week, frost
// while its shoots are soft.
func (c *Case) forecast() string {
	if stage := c.A.Stage(); stage == record.StageFailed || stage == record.StageGivenUp || stage == record.StageUntied {
		return ""
	}
	set := c.A.SetAt()
	fresh := set.IsZero() || c.B.Day(c.Now)-c.B.Day(set) <= trade.HeatLookDays
	soft := !c.A.FirstPush().IsZero() && len(c.A.Headed) == 0
	warn := Forecast(c.B, c.B.Day(c.Now), fresh, soft)
	if c.faceOfToday() || !set.IsZero() { // the top is off: what still helps
		warn = strings.Replace(warn, "Postpone, or white and shade.", "White in time, and shade.", 1)
	}
	return warn
}

// Forecast is what the weather put down for the coming days means: heat for
// fresh grafts, frost for soft shoots; "" where it is harmless or unknown.
func Forecast(b *record.Block, today unit.Date, fresh, soft bool) (warn string) {
	var hottest, coldest *record.DayWeather
	for d := range unit.Date(trade.HeatLookDays) {
		w, ok := b.Weather[today.Add(int(d))]
		if !ok {
			continue
		}
		if hottest == nil || w.What.High.Temperature > hottest.High.Temperature {
			hottest = &w.What
		}
		if coldest == nil || w.What.Low.Temperature < coldest.Low.Temperature {
			coldest = &w.What
		}
	}
	switch {
	case fresh && hottest != nil && hottest.High.Temperature >= trade.HeatPostpone-0.01:
		return hottest.Day.Short() + ": " + b.Units.Temperature(hottest.High.Temperature) + " forecast. Postpone, or white and shade."
	case soft && coldest != nil && coldest.Low.Temperature <= 0:
		return coldest.Day.Short() + ": frost forecast, " + b.Units.Temperature(coldest.Low.Temperature) + ". Soft shoots are in danger."
	case fresh && hottest != nil && hottest.High.Temperature >= trade.HeatCaution-0.01:
		return hottest.Day.Short() + ": " + b.Units.Temperature(hottest.High.Temperature) + " forecast. White in time, and shade."
	}
	return ""
}

// Callus is the callus weather of the days put down from one day on, up to
// another if that is not 0.
func Callus(b *record.Block, from, to unit.Date) (weather.CallusAnswer, error) {
	var list []weather.Extremes
	for day, w := range b.Weather {
		if day >= from && (to == 0 || day <= to) {
			list = append(list, weather.Extremes{Date: day, Low: w.What.Low.Temperature, High: w.What.High.Temperature})
		}
	}
	return weather.Callus(b.Place(), list, from, callusSpecies(b))
}

// callusWords says how much callus weather a graft has had, from the days put
// down since it was set, until the shoots move.
func (c *Case) callusWords(a *Ask) {
	set := c.A.SetAt()
	if set.IsZero() || !c.A.FirstPush().IsZero() || !c.B.Placed {
		return
	}
	grown, err := Callus(c.B, c.B.Day(set), c.B.Day(c.Now))
	if err != nil || len(grown.Days) == 0 {
		return
	}
	a.Because += fmt.Sprintf(" Callus weather so far: %.1f of %d good days, from what was put down.", grown.Total, weather.CallusRun)
	a.Work = append(a.Work, grown.Work)
}

// callusSpecies is the species whose callus is reckoned: the one named by the
// block's stock, walnut where none is known.
func callusSpecies(b *record.Block) string {
	for _, s := range weather.Species() {
		if strings.Contains(strings.ToLower(b.Species), s) {
			return s
		}
	}
	return "walnut"
}
