package walk

import (
	"errors"
	"strings"
	"testing"

	"barkslip/core/record"
	"barkslip/core/record/recordtest"
	"barkslip/core/unit"
)

// hotDay is a day of 101 F with a wind of 10 mph and showers.
func hotDay(date string) map[unit.Date]record.Said[record.DayWeather] {
	day := recordtest.DayOf(date)
	return map[unit.Date]record.Said[record.DayWeather]{day: {What: record.DayWeather{Day: day, Wind: 4.4704, Rain: record.Showers,
		Low: record.Degrees{Temperature: unit.Fahrenheit(70), Typed: "70F"}, High: record.Degrees{Temperature: unit.Fahrenheit(101), Typed: "101F"}}}}
}

// Season, heat, wind and rain are said before the first cut, in one sentence, and
// not again at the cuts after it.
func TestBeforeTheFirstCut(t *testing.T) {
	b := recordtest.Northern()
	b.SlipFrom, b.SlipTo = record.MonthDay{Month: 5, Day: 10}, record.MonthDay{Month: 6, Day: 10}
	b.Weather = hotDay("2027-07-01")
	w := walkerOn(t, b, "2027-07-01", 9)
	want := "Bark stopped slipping on 10 Jun; today up to 101 F, wind 10 mph, showers: postpone, or shade it and paint it white."
	if a := w.sees().Ask(StepHeight, false); a.Warn != want {
		t.Errorf("%q", a.Warn)
	}
	w.Say(w.now, &record.CutBack{Height: recordtest.Inches(42)})
	for _, step := range []StepID{StepNewGashes, StepFreshCut, StepNewFace, StepMeasure, StepWood} {
		if a := w.sees().Ask(step, false); a.Warn != "" {
			t.Errorf("%s says it again: %q", step, a.Warn)
		}
	}
}

// On the graft day it is said before the gashes, or before the top comes off where
// the gashes were renewed before the weather was put down; then at the sealing what
// still helps.
func TestBeforeTheTopComesOff(t *testing.T) {
	b := recordtest.Northern()
	b.Weather = hotDay("2027-05-20")
	w := walkerOn(t, b, "2027-05-20", 9)
	w.Say(recordtest.DayOf("2027-05-10").At(9, 0, b.Zone), &record.CutBack{Height: recordtest.Inches(42)})
	w.says(w.sees().Ask(StepNewGashes, false).Warn, "Today up to 101 F, wind 10 mph, showers")
	w.says(w.sees().Ask(StepFreshCut, false).Warn, "Today up to 101 F")
	w.Say(w.now, &record.Gashed{Number: 2})
	if a := w.sees().Ask(StepFreshCut, false); a.Warn != "" {
		t.Errorf("said again: %q", a.Warn)
	}
	for day, said := range b.Weather {
		said.At = w.now.Add(60e9)
		b.Weather[day] = said
	}
	w.says(w.sees().Ask(StepFreshCut, false).Warn, "Today up to 101 F")
	w.clock("2027-05-20", 9, 30)
	w.Say(w.now, &record.FreshCut{Height: recordtest.Inches(36)})
	if a := w.sees().Ask(StepNewFace, false); a.Warn != "" {
		t.Errorf("the top is off: %q", a.Warn)
	}
	a := w.sees().Ask(StepSeal, false)
	w.says(a.Because+a.Warn, "hite by 12:30")
}

// A mild dry day is told without a warning; a season not begun is one.
func TestHarmlessWeatherIsNoWarning(t *testing.T) {
	b := recordtest.Northern()
	b.SlipFrom, b.SlipTo = record.MonthDay{Month: 5, Day: 10}, record.MonthDay{Month: 6, Day: 10}
	day := recordtest.DayOf("2027-05-20")
	b.Weather = map[unit.Date]record.Said[record.DayWeather]{day: {What: record.DayWeather{Day: day, Wind: 4.4704, Rain: record.NoRain,
		High: record.Degrees{Temperature: unit.Fahrenheit(70), Typed: "70F"}}}}
	a := walkerOn(t, b, "2027-05-20", 9).sees().Ask(StepHeight, false)
	if a.Warn != "" || !strings.Contains(a.Because, "Today up to 70 F, wind 10 mph, no rain.") {
		t.Errorf("%q, %q", a.Warn, a.Because)
	}
	w := walkerOn(t, b, "2027-03-01", 9)
	w.says(w.sees().Ask(StepHeight, false).Warn, "Bark does not slip before 10 May")
}

// A cut near the nails of an earlier graft says where they stand: the one proposed,
// and the one typed.
func TestOldNailsAreSaid(t *testing.T) {
	w := walkerOn(t, recordtest.Northern(), "2027-05-13", 9)
	w.Say(w.now, &record.CutBack{Height: recordtest.Inches(42)})
	w.Say(w.now, &record.FreshCut{Height: recordtest.Inches(36)})
	w.Say(w.now, &record.ScionSet{Slot: 1})
	w.Say(w.now, &record.Failed{Cause: "bled"})
	w.clock("2028-05-12", 9, 0)
	c := w.sees()
	w.says(c.nearOldNails(34*unit.Inch), "Old nails stand from 33 1/2 in to 36 in.")
	if got := c.nearOldNails(28 * unit.Inch); got != "" {
		t.Errorf("%q", got)
	}
	a := c.Ask(StepHeight, false)
	w.says(a.Because, "It stands at 36 in", "old nails from 33 1/2 in to 36 in")
	if a.Entry.Likely != "31 1/2 in" || a.Warn != "" {
		t.Errorf("proposed at %s: %q", a.Entry.Likely, a.Warn)
	}
	var doubt *Doubt
	if _, err := a.Entry.Read("34"); !errors.As(err, &doubt) {
		t.Fatalf("a cut through the nails: %v", err)
	}
	w.says(doubt.Says, "Old nails stand from 33 1/2 in to 36 in.")
}

// A second graft starts from the record: the last cut, the nails, of what the first
// was lost and what to do differently, by whose word.
func TestSecondGraftStartsFromTheRecord(t *testing.T) {
	w := walkerOn(t, recordtest.Northern(), "2027-05-13", 9)
	if a := w.sees().Ask(StepLimbs, false); strings.Contains(a.Because, "lost") {
		t.Errorf("%q", a.Because)
	}
	w.Say(w.now, &record.CutBack{Height: recordtest.Inches(42)})
	w.Say(w.now, &record.FreshCut{Height: recordtest.Inches(36)})
	w.Say(w.now, &record.ScionSet{Slot: 1})
	w.Say(w.now, &record.Failed{Cause: "overheated"})
	w.clock("2028-05-12", 9, 0)
	w.says(w.sees().Ask(StepLimbs, false).Because, "Last cut at 36 in.", "Nails stand in the stem from 33 1/2 in to 36 in: mind the saw.",
		"The graft of 2027 was lost: it overheated.", "paint it white in time, and shade it on a hot day (common practice).")
}
