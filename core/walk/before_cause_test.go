package walk

import (
	"strings"
	"testing"
	"time"

	"barkslip/core/record"
	"barkslip/core/record/recordtest"
)

// An answer for an earlier time cannot stand before what it follows from.
func TestBeforeCause(t *testing.T) {
	w := threeGrafts(t, "2027-08-20")
	w.On("2027-05-29", 9, 0, recordtest.Visit(record.Growing, record.Growing, record.NoChange)).On("2027-06-14", 9, 0, &record.LeaderChosen{Slot: 1})
	w.On("2027-06-20", 9, 0, recordtest.Visit(record.Growing, record.Dead, record.NoChange))
	s := w.Fold()
	at := func(date string, hour, minute int) time.Time {
		return recordtest.DayOf(date).At(hour, minute, recordtest.NewYork)
	}
	for _, c := range []struct {
		body record.Body
		at   time.Time
		says string // "" where it can stand
	}{
		{&record.Visited{Found: []record.Finding{{Slot: 1, State: record.Pushing}}}, at("2027-05-12", 9, 0), "the last scion was set only on 12 May 2027 10:05"},
		{&record.Visited{Found: []record.Finding{{Slot: 1, State: record.Pushing}}}, at("2027-05-12", 11, 0), ""},
		{&record.Visited{Found: []record.Finding{{Slot: 4, State: record.Pushing}}}, at("2027-05-29", 9, 0), "slot 4"},
		{&record.PaintedWhite{}, at("2027-05-12", 10, 39), "sealed only on"},
		{&record.PaintedWhite{}, at("2027-05-12", 10, 40), ""},
		{&record.Looked{Bleeding: record.Dry}, at("2027-05-02", 9, 0), "cut back only on"},
		{&record.Looked{Bleeding: record.Dry}, at("2027-05-04", 9, 0), ""},
		{&record.TwineCut{}, at("2027-08-20", 9, 0), "no twine was put on"},
		{&record.TapesLoosened{}, at("2027-08-20", 9, 0), "no tie was put on"},
		{&record.LeaderChosen{Slot: 2}, at("2027-08-20", 9, 0), "graft 2 is dead"},
		{&record.LeaderChosen{Slot: 2}, at("2027-06-15", 9, 0), ""},
		{&record.LeaderChosen{Slot: 7}, at("2027-06-15", 9, 0), "slot 7"},
		{&record.LeaderBroken{Promoted: 2}, at("2027-08-20", 9, 0), "graft 2 is dead"},
		{&record.LeaderBroken{}, at("2027-06-13", 9, 0), "the leader was chosen only on"},
		{&record.HeadedBack{}, at("2027-05-20", 9, 0), "the first push was seen only on"},
		{&record.Noted{Text: "note"}, at("2020-01-01", 9, 0), ""},
	} {
		err := record.BeforeCause(s, c.body, c.at, recordtest.NewYork)
		if (c.says == "") != (err == nil) || err != nil && !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s at %s: %v, want %q", c.body.Kind(), c.at.Format("2 Jan 2006 15:04"), err, c.says)
		}
	}
	empty := recordtest.DiaryOn(recordtest.Northern()).Fold()
	for _, body := range []record.Body{&record.Sealed{Cover: record.Wrapped}, &record.PaintedWhite{}, recordtest.Visit(record.Growing), &record.Tied{}, &record.Twined{}, &record.TwineChecked{}, &record.HeadedBack{}} {
		if record.BeforeCause(empty, body, at("2027-05-12", 9, 0), recordtest.NewYork) == nil {
			t.Errorf("%s on a stump with no work", body.Kind())
		}
	}
	if err := record.BeforeCause(empty, &record.Gashed{Number: 2}, at("2027-05-12", 9, 0), recordtest.NewYork); err != nil {
		t.Errorf("gashed: %v", err)
	}
}

// An answer for a time of an attempt before is judged by that attempt.
func TestBeforeCauseInTheAttemptOfItsTime(t *testing.T) {
	d := recordtest.DiaryOn(recordtest.Northern()).Grafted("2027-05-03", "2027-05-12", record.Bare).On("2027-06-20", 9, 0, &record.Failed{Cause: "bled"})
	d.On("2028-04-20", 9, 0, &record.CutBack{Height: recordtest.Inches(30)})
	s := d.Fold()
	if err := record.BeforeCause(s, recordtest.Visit(record.NoChange, record.NoChange), recordtest.DayOf("2027-06-01").At(9, 0, recordtest.NewYork), recordtest.NewYork); err != nil {
		t.Errorf("a visit to the first graft: %v", err)
	}
	if record.BeforeCause(s, recordtest.Visit(record.NoChange, record.NoChange), recordtest.DayOf("2028-05-01").At(9, 0, recordtest.NewYork), recordtest.NewYork) == nil {
		t.Error("a visit to grafts not yet set was taken")
	}
}
