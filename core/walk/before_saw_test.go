package walk

import (
	"testing"

	"barkslip/core/record"
	"barkslip/core/record/recordtest"
	"barkslip/core/unit"
)

// Season, heat and wind, and old nails are said before the saw; once the top is
// off, what still helps.
func TestBeforeTheSaw(t *testing.T) {
	b := recordtest.Northern()
	b.SlipFrom, b.SlipTo = record.MonthDay{Month: 5, Day: 10}, record.MonthDay{Month: 6, Day: 10}
	day := recordtest.DayOf("2027-07-01")
	hot := record.DayWeather{Day: day, High: record.Degrees{Temperature: unit.Fahrenheit(101), Typed: "101F"}, Wind: 4.4704}
	b.Weather = map[unit.Date]record.Said[record.DayWeather]{day: {What: hot}}
	w := walkerOn(t, b, "2027-07-01", 9)
	a := w.sees().Ask(StepHeight, false)
	if want := "The season of slip was over on 10 Jun; today up to 101 F, wind 10 mph."; a.Warn != want {
		t.Errorf("%q", a.Warn)
	}
	w.says(w.sees().forecast(), "Postpone")
	w.Say(w.now, &record.CutBack{Height: recordtest.Inches(42)})
	w.Say(w.now, &record.FreshCut{Height: recordtest.Inches(36)})
	w.says(w.sees().forecast(), "White in time, and shade.")
	w = walkerOn(t, b, "2027-03-01", 9)
	w.says(w.sees().beforeSaw(0, 0), "begins only on 10 May")
}

// A cut near the nails of an earlier graft says where they stand.
func TestOldNailsAreSaid(t *testing.T) {
	w := walkerOn(t, recordtest.Northern(), "2027-05-13", 9)
	w.Say(w.now, &record.CutBack{Height: recordtest.Inches(42)})
	w.Say(w.now, &record.FreshCut{Height: recordtest.Inches(36)})
	w.Say(w.now, &record.ScionSet{Slot: 1})
	w.Say(w.now, &record.Failed{Cause: "bled"})
	w.clock("2028-05-12", 9, 0)
	c := w.sees()
	w.says(c.beforeSaw(34*unit.Inch, 0), "Old nails stand from 33 1/2 in to 36 in.")
	if got := c.beforeSaw(28*unit.Inch, 0); got != "" {
		t.Errorf("%q", got)
	}
}
