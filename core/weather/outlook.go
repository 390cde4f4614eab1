package weather

import (
	"fmt"
	"slices"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// CallusDay is one date's growth in days of callus at the best temperature, 0
// to 1.
type CallusDay struct {
	Date   unit.Date `json:"date"`
	Callus float64   `json:"callus_d"`
}

// CallusAnswer is the growth of callus over a list of dates.
type CallusAnswer struct {
	Days      []CallusDay  `json:"days"`
	Total     float64      `json:"total_d"`
	BestStart *unit.Date   `json:"best_start"` // first day of the best 14 in a row; nil if there are none
	Work      trade.Worked `json:"because"`
}

// CallusRun is the length of the run of dates that is looked for: callus fills
// the union in about as many days.
const CallusRun = 14

// Callus reckons the growth on each date of a list from the date from on (0:
// all), by the mean rate over the 24 hours of the date's air. The list may have
// gaps and any order; a run of days never spans a gap. The error is a
// *trade.Impossible.
func Callus(p Place, list []Extremes, from unit.Date, species string) (CallusAnswer, error) {
	kind, err := kindOf(species)
	if err != nil {
		return CallusAnswer{}, err
	}
	cardinal, err := CallusOf(kind.Name)
	if err != nil {
		return CallusAnswer{}, err
	}
	list, err = inOrder(p, list)
	if err != nil {
		return CallusAnswer{}, err
	}
	a := CallusAnswer{Days: []CallusDay{}}
	for i, air := range airThrough(p, list) {
		if list[i].Date < from && from != 0 {
			continue
		}
		day := CallusDay{Date: list[i].Date}
		for _, t := range hourly(p, day.Date, air) {
			day.Callus += cardinal.Rate(t) / 24
		}
		a.Days = append(a.Days, day)
		a.Total += day.Callus
	}
	a.BestStart = bestRun(a.Days)
	a.Work = callusWork(p, a, cardinal, kind)
	return a, nil
}

// inOrder is a list of possible days by date, each once.
func inOrder(p Place, list []Extremes) ([]Extremes, error) {
	if err := Validate(p); err != nil {
		return nil, err
	}
	list = slices.Clone(list)
	slices.SortFunc(list, func(a, b Extremes) int { return int(a.Date) - int(b.Date) })
	for i, e := range list {
		if err := checkAir(e.Low, e.High); err != nil {
			return nil, err
		}
		if i > 0 && list[i-1].Date == e.Date {
			return nil, &trade.Impossible{Option: "temps", Given: e.Date.String() + " twice", Accepted: "each date once"}
		}
	}
	return list, nil
}

// bestRun is the first day of the 14 dates in a row with the most growth, the
// earliest of equals.
func bestRun(days []CallusDay) *unit.Date {
	var best *unit.Date
	most := 0.0
	for i := 0; i+CallusRun <= len(days); i++ {
		run := days[i : i+CallusRun]
		if run[CallusRun-1].Date != run[0].Date.Add(CallusRun-1) {
			continue
		}
		sum := 0.0
		for _, d := range run {
			sum += d.Callus
		}
		if best == nil || sum > most+1e-12 {
			best, most = &run[0].Date, sum
		}
	}
	if best != nil {
		start := *best
		return &start
	}
	return nil
}

func callusWork(p Place, a CallusAnswer, c Cardinal, kind trade.CallusKind) trade.Worked {
	w := trade.Worked{
		Question: "How well does callus grow, and when is the best fortnight to graft?",
		Answer: []trade.Input{
			{Value: fmt.Sprintf("Callus growth equals %.1f days at the best temperature.", a.Total)},
			{Name: "best 14 days start", Value: "none: fewer than 14 days in a row"},
		},
		Formula: "Each day counts the mean growth of its 24 hours, 1 at the best temperature and 0 outside the limits; the best start has the greatest " +
			"sum over 14 days in a row.",
		Inputs: append(p.inputs(), []trade.Input{
			{Name: "days", Value: len(a.Days)}, {Name: "species", Value: kind.Name},
			{Name: "no growth under", Value: c.Least}, {Name: "fastest growth at", Value: c.Best}, {Name: "no growth over", Value: c.Most},
		}...),
		Assumed: []string{
			"The temperature is that of the air, not of the graft.",
			"The least and the most temperature of callus are assumed, whatever the species.",
			"The air goes from each day's low to its high and back as the sun does; beside a missing date the extremes are assumed unchanged.",
		},
		Facts: append(callusFacts(kind), trade.AirThroughDay, trade.NightMeetsLow, trade.SunPosition),
	}
	if kind.Name != Walnut {
		w.Assumed = append(w.Assumed, "The union fills in about 14 days, as a walnut's does.")
	}
	if a.BestStart != nil {
		w.Answer[1].Value = *a.BestStart
	}
	for i := 1; i < len(a.Days); i++ {
		if a.Days[i].Date != a.Days[i-1].Date+1 {
			w.Assumed = append(w.Assumed, "Dates are missing from the list, first after "+a.Days[i-1].Date.String()+"; a run of 14 days does not span the gap.")
			break
		}
	}
	return w
}
