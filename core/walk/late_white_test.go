package walk

import (
	"slices"
	"testing"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/record/recordtest"
	"barkslip/core/unit"
)

// sealedHot is two grafts sealed dark at 8:40 on 12 May 2027, a day of 112 F.
func sealedHot(t *testing.T) *walker {
	w := walkerOn(t, recordtest.Northern(), "2027-06-20", 9)
	w.Diary = recordtest.DiaryOn(w.B)
	w.B.Placed, w.B.Lat, w.B.Lon = true, 42.7, -77.2
	day := recordtest.DayOf("2027-05-12")
	w.B.Weather = map[unit.Date]record.Said[record.DayWeather]{day: {What: record.DayWeather{Day: day, Wind: 0.3,
		Low: record.Degrees{Temperature: unit.Fahrenheit(70), Typed: "70F"}, High: record.Degrees{Temperature: unit.Fahrenheit(112), Typed: "112F"}}}}
	w.On("2027-05-03", 9, 0, &record.NurseJudged{Limbs: 2, Leaf: "some"}, &record.CutBack{Height: recordtest.Inches(36)}, &record.Gashed{Number: 2})
	w.On("2027-05-12", 8, 0, &record.ScionSet{Slot: 1, Checks: record.AllGood}, &record.ScionSet{Slot: 2, Checks: record.AllGood})
	w.On("2027-05-12", 8, 40, &record.Sealed{Cover: record.Wrapped})
	return w
}

// White that came after the bark under dark sealer passed the limit is told with how
// long, and points to overheating when scions are told dead; white in time does not.
func TestLateWhitePointsToOverheating(t *testing.T) {
	passedAfter := func(painted time.Duration) (*walker, Ask) {
		w := sealedHot(t)
		heat, ok := due.Heat(w.Fold(), w.B, w.Fold().Now().Sealed.At)
		if !ok || heat.Passed == nil {
			t.Fatal("the day does not pass the limit")
		}
		w.Say(heat.Passed.Add(painted).Truncate(time.Second), &record.PaintedWhite{})
		w.Say(recordtest.DayOf("2027-05-30").At(9, 0, w.B.Zone), recordtest.Visit(record.Growing, record.Growing))
		w.clock("2027-06-20", 9, 0)
		w.Say(w.now, recordtest.Visit(record.Dead, record.Growing))
		return w, w.sees().Ask(StepDeath, false)
	}
	offers := func(a Ask) bool {
		return slices.ContainsFunc(a.Choices, func(ch Choice) bool { return ch.Word == "overheated" })
	}
	w, a := passedAfter(55 * time.Minute)
	w.says(a.Because, "painted white 55 min after the bark passed 45 C / 113 F, as worked out")
	if !offers(a) {
		t.Errorf("%+v", a.Choices)
	}
	w, a = passedAfter(-10 * time.Minute)
	if offers(a) {
		t.Errorf("white in time: %s", a.Because)
	}
	if late, ok := due.WhiteLate(w.Fold(), w.B, w.Fold().Now().White.At); ok {
		t.Errorf("late by %s", late.Words(w.now))
	}
}

// White that never came is told too, when the stump is said to have failed.
func TestWhiteThatNeverCame(t *testing.T) {
	w := sealedHot(t)
	w.clock("2027-06-20", 9, 0)
	w.Say(w.now, recordtest.Visit(record.Dead, record.Dead))
	a := w.sees().Ask(StepFailed, false)
	w.says(a.Because, "not painted white")
	if !slices.ContainsFunc(a.Choices, func(ch Choice) bool { return ch.Word == "overheated" }) {
		t.Errorf("%+v", a.Choices)
	}
}

// One time is said for white: that of its clock, at the white step and, as it will
// be, before sealing.
func TestOneTimeForWhite(t *testing.T) {
	w := sealedHot(t)
	w.now = w.Fold().Now().Sealed.At
	c := w.sees()
	d, ok := c.WhiteDue()
	if !ok || !c.WhiteBy().Equal(d.By) || !due.WhiteBy(w.Fold(), w.B, w.now).Equal(d.By) {
		t.Fatalf("%s, %s, %s", d.By, c.WhiteBy(), due.WhiteBy(w.Fold(), w.B, w.now))
	}
	for _, minutes := range []int{1, 119, 125, 200} {
		w.now = w.Fold().Now().Sealed.At.Add(time.Duration(minutes) * time.Minute)
		a := w.sees().Ask(StepWhite, false)
		for _, other := range []string{"White before", "White by"} {
			if containsWord(a.Because, other) {
				t.Errorf("after %d min: %q, and because %q", minutes, a.Question, a.Because)
			}
		}
	}
}
