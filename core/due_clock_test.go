package core

import (
	"testing"
	"time"
)

// Look, look-again and graft run by the clock, on a stump cut back on 3 May and
// not yet grafted.
func TestDuesBeforeTheGraft(t *testing.T) {
	at := func(date string, hour, minute, second int) time.Time {
		return DayOf(date).At(hour, minute, NewYork).Add(time.Duration(second) * time.Second)
	}
	never := time.Time{}
	ready := func(d *Diary, date string) {
		d.On(date, 9, 0, &Looked{Bleeding: Dry, Slip: SlipsClean}, &Gashed{Number: 2}).On(date, 9, 20, &FreshCut{}).On(date, 9, 40, &Looked{Bleeding: Dry})
	}
	for _, c := range []struct {
		name      string
		kind      DueKind
		work      func(d *Diary)
		opens, by time.Time
	}{
		{"look: cut back + 7 d, + 10 d", DueLook, nil, at("2027-05-10", 0, 0, 0), at("2027-05-13", 23, 59, 59)},
		{"look: told to wait past the week", DueLook, func(d *Diary) { d.On("2027-05-11", 10, 0, &Looked{Bleeding: Dry, Slip: Drags}) }, at("2027-05-10", 0, 0, 0), at("2027-05-14", 10, 0, 0)},
		{"look: told to wait for the week alone", DueLook, func(d *Diary) { d.On("2027-05-05", 10, 0, &Looked{Bleeding: Dry, Slip: SlipsClean}) }, at("2027-05-10", 0, 0, 0), at("2027-05-13", 23, 59, 59)},
		{"look: one scion of two set", DueLook, func(d *Diary) {
			d.On("2027-05-12", 10, 0, &SlotsMarked{Slots: []Slot{{0}, {180}}}, &ScionSet{Slot: 1})
		}, never, never},
		{"look: both scions set", DueLook, func(d *Diary) {
			d.On("2027-05-12", 10, 0, &SlotsMarked{Slots: []Slot{{0}, {180}}}, &ScionSet{Slot: 1}, &ScionSet{Slot: 2})
		}, never, never},
		{"look: given up", DueLook, func(d *Diary) { d.On("2027-05-12", 10, 0, &GivenUp{}) }, never, never},
		{"look-again: nobody looked", DueLookAgain, nil, never, never},
		{"look-again: early", DueLookAgain, func(d *Diary) { d.On("2027-05-05", 10, 0, &Looked{Bleeding: Weeping, Slip: SlipsClean}) }, at("2027-05-10", 0, 0, 0), at("2027-05-11", 0, 0, 0)},
		{"look-again: drags, 3 d, by + 1 d", DueLookAgain, func(d *Diary) { d.On("2027-05-11", 10, 0, &Looked{Bleeding: Dry, Slip: Drags}) }, at("2027-05-14", 10, 0, 0), at("2027-05-15", 10, 0, 0)},
		{"look-again: stuck, 7 d", DueLookAgain, func(d *Diary) { d.On("2027-05-11", 10, 0, &Looked{Bleeding: Dry, Slip: Stuck}) }, at("2027-05-18", 10, 0, 0), at("2027-05-19", 10, 0, 0)},
		{"look-again: fresh cut, 15 min, by + 1 h", DueLookAgain, func(d *Diary) {
			d.On("2027-05-12", 9, 0, &Looked{Bleeding: Dry, Slip: SlipsClean}, &Gashed{Number: 2}).On("2027-05-12", 9, 20, &FreshCut{})
		}, at("2027-05-12", 9, 35, 0), at("2027-05-12", 10, 35, 0)},
		{"look-again: damp, wipe", DueLookAgain, func(d *Diary) { d.On("2027-05-12", 9, 0, &Looked{Bleeding: Damp, Slip: SlipsClean}) }, at("2027-05-12", 9, 15, 0), at("2027-05-12", 10, 15, 0)},
		{"look-again: looked", DueLookAgain, func(d *Diary) {
			d.On("2027-05-11", 10, 0, &Looked{Bleeding: Dry, Slip: Drags}).On("2027-05-14", 10, 0, &Looked{Bleeding: Dry, Slip: SlipsClean})
		}, never, never},
		{"graft: not ready", DueGraft, nil, never, never},
		{"graft: ready, the same day", DueGraft, func(d *Diary) { ready(d, "2027-05-12") }, at("2027-05-12", 0, 0, 0), at("2027-05-12", 23, 59, 59)},
		{"graft: the next day's look opens anew", DueGraft, func(d *Diary) {
			ready(d, "2027-05-12")
			d.On("2027-05-13", 9, 0, &Looked{Bleeding: Dry, Slip: SlipsClean})
		}, never, never},
		{"sprouts: before the graft", DueSprouts, nil, at("2027-05-24", 0, 0, 0), at("2027-05-31", 23, 59, 59)},
	} {
		d := DiaryOn(Northern()).On("2027-05-03", 9, 0, &NurseJudged{Limbs: 1}, &CutBack{Height: Inches(36)}, &Gashed{Number: 2})
		if c.work != nil {
			c.work(d)
		}
		got, ok := dueOf(d, c.kind)
		if ok != !c.opens.IsZero() || ok && (!got.Opens.Equal(c.opens) || !got.By.Equal(c.by)) {
			t.Errorf("%s: %v, %s by %s, want %s by %s", c.name, ok, got.Opens, got.By, c.opens, c.by)
		}
	}
}

// New York put its clocks on at 2:00 on 14 March 2027 and back at 2:00 on 7
// November: days of 23 and 25 hours.
func TestDuesOverAClockChange(t *testing.T) {
	for _, c := range []struct {
		sealed, opens, by string
	}{
		{"2027-03-12", "2027-03-14T00:00:00-05:00", "2027-03-16T23:59:59-04:00"},
		{"2027-03-10", "2027-03-12T00:00:00-05:00", "2027-03-14T23:59:59-04:00"},
		{"2027-03-11", "2027-03-13T00:00:00-05:00", "2027-03-15T23:59:59-04:00"},
		{"2027-11-05", "2027-11-07T00:00:00-04:00", "2027-11-09T23:59:59-05:00"},
		{"2027-11-03", "2027-11-05T00:00:00-04:00", "2027-11-07T23:59:59-05:00"},
	} {
		d := DiaryOn(Northern()).Grafted("2027-03-01", c.sealed, Wrapped)
		got, _ := dueOf(d, DueAfterLook)
		if from, to := got.Opens.Format(time.RFC3339), got.By.Format(time.RFC3339); from != c.opens || to != c.by {
			t.Errorf("sealed %s: %s by %s, want %s by %s", c.sealed, from, to, c.opens, c.by)
		}
	}
	d := DiaryOn(Northern()).On("2027-03-01", 9, 0, &CutBack{}, &Gashed{Number: 2}).On("2027-03-10", 10, 0, &Looked{Bleeding: Dry, Slip: Drags})
	got, _ := dueOf(d, DueLookAgain)
	if from, to := got.Opens.Format(time.RFC3339), got.By.Format(time.RFC3339); from != "2027-03-13T10:00:00-05:00" || to != "2027-03-14T10:00:00-04:00" {
		t.Errorf("look again %s by %s", from, to)
	}
}
