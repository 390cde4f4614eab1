package main

import (
	"fmt"
	"strings"

	"barkslip/core/girth"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

var scionsSum = sum{
	name: "scions", short: "How many scions a stump takes",
	example: "barkslip reckon scions --across 4in\nbarkslip reckon scions --across 10.2cm --across2 8.6cm --units metric",
	options: []option{
		{name: "across", value: "LENGTH", says: "diameter of the stump", need: true},
		{name: "across2", value: "LENGTH", says: "diameter at right angles to it; without it the stump is round"},
	},
	work: func(g *given, _ unit.System) (any, trade.Worked, error) {
		across, across2 := g.size("across"), g.size("across2")
		if g.err != nil {
			return nil, trade.Worked{}, g.err
		}
		answer, err := girth.Scions(across, across2)
		return answer, answer.Work, err
	},
}

var slotsSum = sum{
	name: "slots", short: "Where the slots go round a stump",
	long: "Places the slots so that the smallest gap between neighbours along the bark is\n" +
		"as large as can be. Bearings are directions from the stump's centre, clockwise\n" +
		"from north.",
	example: "barkslip reckon slots --across 4.2in --across2 3.4in --long-way 30 --blocked 120:2in --toward 20",
	options: []option{
		{name: "across", value: "LENGTH", says: "diameter of the stump", need: true},
		{name: "across2", value: "LENGTH", says: "diameter at right angles to it; without it the stump is round"},
		{name: "long-way", value: "BEARING", says: "direction of the longer diameter", usual: unit.Bearing(0)},
		{name: "scions", value: "N", says: "how many; without it as many as the size asks for"},
		{name: "blocked", value: "BEARING:WIDTH", says: "bark that can carry no slot, WIDTH along the bark around BEARING; may be given again", many: true},
		{name: "slot", value: "LENGTH", says: "width of a slot, kept clear of blocked bark", usual: trade.SlotWidth},
		{name: "toward", value: "BEARING", says: "side one slot should be nearest: the shade side or windward"},
	},
	work: func(g *given, _ unit.System) (any, trade.Worked, error) {
		plan := girth.SlotPlan{Across: g.size("across"), Across2: g.size("across2"), LongWay: g.bearing("long-way"), Slot: g.size("slot"), Blocked: arcs(g)}
		if g.has("scions") {
			plan.Scions = g.whole("scions", 1, girth.MostSlots)
		}
		if toward := g.bearing("toward"); g.has("toward") {
			plan.Toward = &toward
		}
		if g.err != nil {
			return nil, trade.Worked{}, g.err
		}
		answer, err := girth.Slots(plan)
		work := answer.Work
		for i, s := range answer.Slots {
			work.Answer = append(work.Answer, trade.Input{
				Name:  fmt.Sprintf("slot %d, clockwise along the bark from %s", i+1, plan.LongWay.Words()),
				Value: s.Along,
			})
		}
		return answer, work, err
	},
}

// arcs reads --blocked as often as it was given.
func arcs(g *given) []girth.Arc {
	var out []girth.Arc
	for _, text := range g.each("blocked") {
		arc, err := girth.ParseArc(text)
		if err != nil {
			g.fail(g.fault("blocked", text, accepts(err)))
		}
		out = append(out, arc)
	}
	return out
}

var twineSum = sum{
	name: "twine", short: "When a loop of twine grows tight",
	long: "Finds the day on which the stem's girth reaches the loop's, and by when to cut.\n" +
		"With --rate it goes on from the newest reading; without it three readings or\n" +
		"more are fitted.",
	example: "barkslip reckon twine --loop 16in --girth \"2027-06-01=4.1in 2027-10-01=5.0in\" --rate 3in",
	options: []option{
		{name: "loop", value: "LENGTH", says: "girth of the loop", need: true},
		{name: "girth", value: "READINGS", says: "girths of the stem in order of date, DATE=GIRTH …", need: true, many: true, list: true},
		{name: "rate", value: "LENGTH", says: "girth gained a year"},
	},
	work: func(g *given, _ unit.System) (any, trade.Worked, error) {
		plan := girth.TwinePlan{Loop: read(g, "loop", within(parseLength, girth.LoopLimits)), Readings: read(g, "girth", parseReadings)}
		if rate := read(g, "rate", within(parseLength, rateLimits)); g.has("rate") {
			plan.Rate = &rate
		}
		if g.err != nil {
			return nil, trade.Worked{}, g.err
		}
		answer, err := girth.Twine(plan)
		return answer, answer.Work, err
	},
}

// parseReadings reads girths, on days that can be meant.
func parseReadings(s string) ([]girth.Reading, error) {
	readings, err := girth.ParseReadings(strings.TrimSpace(s))
	for _, r := range readings {
		if r.On < unit.FirstDay || r.On > unit.LastDay {
			return nil, &unit.Error{Given: r.On.String(), Accepted: "readings from 1971 to 2199"}
		}
	}
	return readings, err
}
