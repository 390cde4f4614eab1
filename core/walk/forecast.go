package walk

import (
	"fmt"
	"strings"

	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
	"barkslip/core/weather"
)

// forecast is what the weather put down for the coming days means for a graft in
// the field: heat within its first week, frost while its shoots are soft.
func (c *Case) forecast() string {
	set := c.A.SetAt()
	if c.over() || set.IsZero() {
		return ""
	}
	today := c.B.Day(c.Now)
	if soft := !c.A.FirstPush().IsZero() && len(c.A.Headed) == 0; soft {
		if coldest, ok := coldestFrom(c.B, today); ok {
			return "Frost is forecast for " + coldest.Day.Short() + ", " + c.B.Units.Temperature(coldest.Low.Temperature) + ": soft shoots are in danger."
		}
	}
	hottest, ok := hottestFrom(c.B, today)
	if !ok || today-c.B.Day(set) > trade.HeatLookDays {
		return ""
	}
	return c.B.Units.Temperature(hottest.What.High.Temperature) + " is forecast for " + hottest.What.Day.Short() + ": white paint and shade help."
}

// hottestFrom is the hottest of the days put down from one on that a fresh graft
// has to stand, if one is hot.
func hottestFrom(b *record.Block, today unit.Date) (hottest record.Said[record.DayWeather], ok bool) {
	for d := range unit.Date(trade.HeatLookDays) {
		w, known := b.Weather[today.Add(int(d))]
		if known && w.What.High.Temperature >= trade.HeatCaution-0.01 && (!ok || w.What.High.Temperature > hottest.What.High.Temperature) {
			hottest, ok = w, true
		}
	}
	return hottest, ok
}

// coldestFrom is the coldest of the coming days put down, if it brings frost.
func coldestFrom(b *record.Block, today unit.Date) (coldest record.DayWeather, ok bool) {
	for d := range unit.Date(trade.HeatLookDays) {
		w, known := b.Weather[today.Add(int(d))]
		if known && w.What.Low.Temperature <= 0 && (!ok || w.What.Low.Temperature < coldest.Low.Temperature) {
			coldest, ok = w.What, true
		}
	}
	return coldest, ok
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
	a.Because += fmt.Sprintf(" Callus growth so far equals %.1f of the %d days wanted at the best temperature, by the weather recorded.",
		grown.Total, weather.CallusRun)
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
