package weather

import (
	"math"
	"time"

	"barkslip/core/unit"
)

// Extremes are the least and the greatest temperature of the air on a date.
type Extremes struct {
	Date      unit.Date
	Low, High unit.Temperature
}

// How the air follows the sun: Parton & Logan 1981, Agric. Meteorol. 23:205.
const (
	lagPeak     = 2.59 // hours from noon to the warmest air
	lagLow      = 1.55 // hours from sunrise to the coldest air
	nightDecay  = 2.2
	shortestDay = 6.0 // hours of sun; the curve has no sense with fewer
	longestDay  = 20.0
)

// airDay is the air of one date: a sine from the low after sunrise to sunset.
type airDay struct {
	low, high  float64
	least, set time.Time // when the air is coldest; sunset
	half       float64   // hours of half a wave of the sine
}

// newAirDay lays the extremes of a date along its daylight. Daylight of under 6
// or over 20 hours, as near the poles, is taken as 6 or 20 hours around noon.
func newAirDay(p Place, e Extremes) airDay {
	sun := SunDay(p, e.Date)
	hours := sun.Length().Hours()
	rise, set := sun.ends()
	if !usualDaylight(sun) {
		hours = min(longestDay, max(shortestDay, hours))
		rise, set = sun.Noon.Add(-span(hours/2)), sun.Noon.Add(span(hours/2))
	}
	return airDay{
		low: e.Low.C(), high: e.High.C(),
		least: rise.Add(span(lagLow)), set: set,
		half: hours + 2*(lagPeak-lagLow),
	}
}

// usualDaylight tells whether the air's curve can follow the sun as it is.
func usualDaylight(d Day) bool {
	hours := d.Length().Hours()
	return hours >= shortestDay && hours <= longestDay
}

func (a airDay) daytime(t time.Time) float64 {
	return a.low + (a.high-a.low)*math.Sin(math.Pi*t.Sub(a.least).Hours()/a.half)
}

// night falls from the value at sunset to the next low. Parton & Logan's decay
// is scaled so that it ends at that low instead of above it.
func (a airDay) night(t time.Time, next airDay) float64 {
	decay := unscaledNight(t.Sub(a.set).Hours(), next.least.Sub(a.set).Hours())
	least := math.Exp(-nightDecay)
	return next.low + (a.daytime(a.set)-next.low)*(decay-least)/(1-least)
}

// unscaledNight is what is left of the warmth at sunset, after hours of a night
// that lasts until the next low.
func unscaledNight(hours, night float64) float64 { return math.Exp(-nightDecay * hours / night) }

// airBetween is the air at an instant of the middle one of three dates in a row.
// Under a clock far from the sun's, that may be in the daylight of another.
func airBetween(before, day, after airDay, t time.Time) unit.Temperature {
	switch {
	case t.Before(before.set):
		return unit.Temperature(before.daytime(t))
	case t.Before(day.least):
		return unit.Temperature(before.night(t, day))
	case t.Before(day.set):
		return unit.Temperature(day.daytime(t))
	case t.Before(after.least):
		return unit.Temperature(day.night(t, after))
	}
	return unit.Temperature(after.daytime(t))
}

// airThrough is the air of each date of a list in order of dates. The night
// before the first date, after the last and beside a gap is taken as following
// or leading to a day of the same extremes.
func airThrough(p Place, list []Extremes) []func(time.Time) unit.Temperature {
	days := make([]airDay, len(list))
	for i, e := range list {
		days[i] = newAirDay(p, e)
	}
	out := make([]func(time.Time) unit.Temperature, len(list))
	for i, e := range list {
		before, after := Extremes{e.Date - 1, e.Low, e.High}, Extremes{e.Date + 1, e.Low, e.High}
		neighbour := func(like Extremes, at int) airDay {
			if at >= 0 && at < len(list) && list[at].Date == like.Date {
				return days[at]
			}
			return newAirDay(p, like)
		}
		a, b, c := neighbour(before, i-1), days[i], neighbour(after, i+1)
		out[i] = func(t time.Time) unit.Temperature { return airBetween(a, b, c, t) }
	}
	return out
}

// hourly is the air at each elapsed hour from the start of a date.
func hourly(p Place, d unit.Date, air func(time.Time) unit.Temperature) (out [24]unit.Temperature) {
	start := d.In(p.Zone)
	for h := range out {
		out[h] = air(start.Add(time.Duration(h) * time.Hour))
	}
	return out
}

// span is a number of hours as a duration.
func span(hours float64) time.Duration { return time.Duration(hours * float64(time.Hour)) }
