package weather

import (
	"fmt"
	"strings"
	"time"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// advice says what to do. It asks for paint on every day, hot or not: the days
// after this one count too.
func (d HeatDay) advice(a HeatAnswer, sun Day) string {
	var says []string
	says = append(says, a.paint())
	if d.Sealed == nil && !d.risesOn(sun) {
		says = append(says, d.noSunrise(sun))
	}
	if oddClock(sun) {
		says = append(says, "By this clock the sun is highest at "+clock(sun.Noon)+": check longitude and zone.")
	}
	if a.White.Side.Peak > trade.InjuryFrom || a.White.Scion.Peak > trade.InjuryFrom {
		says = append(says, "Even white it passes "+degrees(trade.InjuryFrom)+": shade it as well.")
	}
	switch {
	case d.High >= trade.HeatPostpone:
		says = append(says, "Air of "+degrees(trade.HeatPostpone)+" or more: postpone the graft, or shade it and paint it white.")
	case d.High >= trade.HeatCaution:
		says = append(says, "Air of "+degrees(trade.HeatCaution)+" or more: take care.")
	}
	return strings.Join(says, " ")
}

// noSunrise says why sealing is not taken at sunrise.
func (d HeatDay) noSunrise(sun Day) string {
	if sun.AlwaysDown {
		return "The sun does not rise on this date: sealed at the start of the date is assumed."
	}
	return "The sun is up when this date begins: sealed at the start of the date is assumed."
}

// oddClock tells of a noon at which no clock in use has it, as after a mistaken
// sign of the longitude.
func oddClock(sun Day) bool { return sun.Noon.Hour() < 9 || sun.Noon.Hour() > 15 }

func (a HeatAnswer) paint() string {
	switch {
	case a.WhiteBefore == nil:
		return "Paint it white once the sealer is dry. Under dark sealer it would stay at or under " + degrees(trade.InjuryFrom) +
			" until midnight, but that holds for this day only: paint it all the same."
	case a.DryFirst:
		return fmt.Sprintf("It must be white before %s, but the sealer will hardly be dry by then: "+
			"shade it, and paint it white once the sealer is dry.", clock(*a.WhiteBefore))
	}
	return fmt.Sprintf("Paint it white once the sealer is dry, before %s.", clock(*a.WhiteBefore))
}

// degrees names a temperature in both units.
func degrees(t unit.Temperature) string { return fmt.Sprintf("%.0f C (%.0f F)", t.C(), t.F()) }

func clock(t time.Time) string { return t.Format("15:04") }

// work is the working of the answer.
func (d HeatDay) work(a HeatAnswer, sun Day) trade.Worked {
	return trade.Worked{
		Question: "How hot does the sealed graft get, and by when must it be white?",
		Answer: []trade.Input{
			{Name: "paint it white before", Value: a.whiteBeforeWords()},
			{Name: "sunny side under dark sealer, at most", Value: a.Black.Side.Peak},
			{Name: "scion under dark sealer, at most", Value: a.Black.Scion.Peak},
			{Name: "sunny side under white paint, at most", Value: a.White.Side.Peak},
			{Name: "scion under white paint, at most", Value: a.White.Scion.Peak},
			{Name: "sunny side under dark sealer over " + degrees(trade.InjuryFrom), Value: fmt.Sprintf("%.0f min", a.Black.Side.Over45)},
		},
		Formula: fmt.Sprintf("Heat stored = sunlight absorbed - heat carried off by wind and still air - heat radiated to air, ground and sky, "+
			"step by step from sealing to midnight; it must be white %d minutes before the dark scion or side first passes %s.",
			trade.InjuryMinutes, degrees(trade.InjuryFrom)),
		Inputs:  d.inputs(a),
		Assumed: d.assumed(sun),
		Facts: []trade.Fact{
			trade.InjuryHour, trade.InjuryLab, trade.WhiteIn, trade.DarkSealer, trade.ForecastHeat, trade.HeatBalance, trade.CoatTakes,
			trade.WoodWarms, trade.WindCools, trade.StillAirCools, trade.SkyColder, trade.ClearSun, trade.SunAbove, trade.AirMass,
			trade.CloudDims, trade.SunPosition, trade.AirThroughDay, trade.NightMeetsLow,
		},
	}
}

func (d HeatDay) inputs(a HeatAnswer) []trade.Input {
	in := d.Place.inputs()
	if d.Place.Altitude != 0 {
		in = append(in, trade.Input{Name: "altitude", Value: d.Place.Altitude})
	}
	return append(in, []trade.Input{
		{Name: "date", Value: d.Date}, {Name: "low", Value: d.Low}, {Name: "high", Value: d.High},
		{Name: "wind", Value: d.Wind}, {Name: "cloud, in oktas", Value: d.Cloud},
		{Name: "stump across", Value: d.Across}, {Name: "scion thick", Value: d.Thick}, {Name: "sealed", Value: clock(a.Sealed)},
	}...)
}

func (a HeatAnswer) whiteBeforeWords() string {
	if a.WhiteBefore == nil {
		return "no limit on this day; paint it white once dry"
	}
	return clock(*a.WhiteBefore)
}

func (d HeatDay) assumed(sun Day) []string {
	says := []string{
		"The days before and after have the same low and high.",
		"The wind is steady and reaches the graft, never under 0.3 m/s; the cloud is steady; the air is of a clear day (Linke turbidity 3).",
		"Air as at the sea carries the heat off; the ground throws back a fifth of the light; nothing shades the graft.",
		"The graft is at the air's temperature when sealed. The top has no wood under it to carry heat off: an upper bound, not steered by.",
	}
	if d.Place.Altitude == 0 {
		says = append(says, "The place is no higher than the sea.")
	}
	if d.Sealed == nil {
		if d.risesOn(sun) {
			says = append(says, "Sealed at sunrise.")
		} else {
			says = append(says, d.noSunrise(sun))
		}
	}
	if !usualDaylight(sun) {
		says = append(says, "For the air's course, daylight of under 6 or over 20 hours counts as 6 or 20 hours.")
	}
	return says
}
