package core

import (
	"strings"
	"testing"
	"time"
)

// An answer for an earlier time cannot stand before what it follows from.
func TestBeforeCause(t *testing.T) {
	w := threeGrafts(t, "2027-08-20")
	w.On("2027-05-29", 9, 0, Visit(Growing, Growing, NoChange)).On("2027-06-14", 9, 0, &LeaderChosen{Slot: 1})
	w.On("2027-06-20", 9, 0, Visit(Growing, Dead, NoChange))
	s := w.Fold()
	at := func(date string, hour, minute int) time.Time { return DayOf(date).At(hour, minute, NewYork) }
	for _, c := range []struct {
		body Body
		at   time.Time
		says string // "" where it can stand
	}{
		{&Visited{[]Finding{{Slot: 1, State: Pushing}}}, at("2027-05-12", 9, 0), "the last scion was set only on 12 May 2027 10:05"},
		{&Visited{[]Finding{{Slot: 1, State: Pushing}}}, at("2027-05-12", 11, 0), ""},
		{&Visited{[]Finding{{Slot: 4, State: Pushing}}}, at("2027-05-29", 9, 0), "slot 4"},
		{&PaintedWhite{}, at("2027-05-12", 10, 39), "sealed only on"},
		{&PaintedWhite{}, at("2027-05-12", 10, 40), ""},
		{&Looked{Bleeding: Dry}, at("2027-05-02", 9, 0), "cut back only on"},
		{&Looked{Bleeding: Dry}, at("2027-05-04", 9, 0), ""},
		{&TwineCut{}, at("2027-08-20", 9, 0), "no twine was put on"},
		{&TapesLoosened{}, at("2027-08-20", 9, 0), "no tie was put on"},
		{&LeaderChosen{Slot: 2}, at("2027-08-20", 9, 0), "graft 2 is dead"},
		{&LeaderChosen{Slot: 2}, at("2027-06-15", 9, 0), ""},
		{&LeaderChosen{Slot: 7}, at("2027-06-15", 9, 0), "slot 7"},
		{&LeaderBroken{Promoted: 2}, at("2027-08-20", 9, 0), "graft 2 is dead"},
		{&LeaderBroken{}, at("2027-06-13", 9, 0), "the leader was chosen only on"},
		{&HeadedBack{}, at("2027-05-20", 9, 0), "the first push was seen only on"},
		{&Noted{"note"}, at("2020-01-01", 9, 0), ""},
	} {
		err := BeforeCause(s, c.body, c.at, NewYork)
		if (c.says == "") != (err == nil) || err != nil && !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s at %s: %v, want %q", c.body.Kind(), c.at.Format("2 Jan 2006 15:04"), err, c.says)
		}
	}
	empty := DiaryOn(Northern()).Fold()
	for _, body := range []Body{&Sealed{Wrapped}, &PaintedWhite{}, Visit(Growing), &Tied{}, &Twined{}, &TwineChecked{}, &HeadedBack{}} {
		if BeforeCause(empty, body, at("2027-05-12", 9, 0), NewYork) == nil {
			t.Errorf("%s on a stump with no work", body.Kind())
		}
	}
	if err := BeforeCause(empty, &Gashed{Number: 2}, at("2027-05-12", 9, 0), NewYork); err != nil {
		t.Errorf("gashed: %v", err)
	}
}

// An answer for a time of an attempt before is judged by that attempt.
func TestBeforeCauseInTheAttemptOfItsTime(t *testing.T) {
	d := DiaryOn(Northern()).Grafted("2027-05-03", "2027-05-12", Bare).On("2027-06-20", 9, 0, &Failed{Cause: "bled"})
	d.On("2028-04-20", 9, 0, &CutBack{Height: Inches(30)})
	s := d.Fold()
	if err := BeforeCause(s, Visit(NoChange, NoChange), DayOf("2027-06-01").At(9, 0, NewYork), NewYork); err != nil {
		t.Errorf("a visit to the first graft: %v", err)
	}
	if BeforeCause(s, Visit(NoChange, NoChange), DayOf("2028-05-01").At(9, 0, NewYork), NewYork) == nil {
		t.Error("a visit to grafts not yet set was taken")
	}
}
