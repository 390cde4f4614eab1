package due

import (
	"testing"
	"time"

	"barkslip/core/record"
	"barkslip/core/record/recordtest"
)

// Look, look-again and graft run by the clock, on a stump cut back on 3 May and
// not yet grafted.
func TestDuesBeforeTheGraft(t *testing.T) {
	at := func(date string, hour, minute, second int) time.Time {
		return recordtest.DayOf(date).At(hour, minute, recordtest.NewYork).Add(time.Duration(second) * time.Second)
	}
	never := time.Time{}
	ready := func(d *recordtest.Diary, date string) {
		d.On(date, 9, 0, &record.Looked{Bleeding: record.Dry, Slip: record.SlipsClean}, &record.Gashed{Number: 2}).On(date, 9, 20, &record.FreshCut{}).On(date, 9, 40, &record.Looked{Bleeding: record.Dry})
	}
	for _, c := range []struct {
		name      string
		kind      Kind
		work      func(d *recordtest.Diary)
		opens, by time.Time
	}{
		{"look: cut back + 7 d, + 10 d", Look, nil, at("2027-05-10", 0, 0, 0), at("2027-05-13", 23, 59, 59)},
		{"look: looked", Look, func(d *recordtest.Diary) {
			d.On("2027-05-11", 10, 0, &record.Looked{Bleeding: record.Dry, Slip: record.Drags})
		}, never, never},
		{"look: looked at before it was cut back", Look, func(d *recordtest.Diary) {
			d.Say(recordtest.DayOf("2027-05-02").At(10, 0, d.B.Zone), &record.Looked{Bleeding: record.Dry, Slip: record.Drags})
		}, at("2027-05-10", 0, 0, 0), at("2027-05-13", 23, 59, 59)},
		{"look: one scion of two set", Look, func(d *recordtest.Diary) {
			d.On("2027-05-12", 10, 0, &record.SlotsMarked{Slots: []record.Slot{{Bearing: 0}, {Bearing: 180}}}, &record.ScionSet{Slot: 1})
		}, never, never},
		{"look: both scions set", Look, func(d *recordtest.Diary) {
			d.On("2027-05-12", 10, 0, &record.SlotsMarked{Slots: []record.Slot{{Bearing: 0}, {Bearing: 180}}}, &record.ScionSet{Slot: 1}, &record.ScionSet{Slot: 2})
		}, never, never},
		{"look: given up", Look, func(d *recordtest.Diary) { d.On("2027-05-12", 10, 0, &record.GivenUp{}) }, never, never},
		{"look-again: nobody looked", LookAgain, nil, never, never},
		{"look-again: early", LookAgain, func(d *recordtest.Diary) {
			d.On("2027-05-05", 10, 0, &record.Looked{Bleeding: record.Weeping, Slip: record.SlipsClean})
		}, at("2027-05-10", 0, 0, 0), at("2027-05-11", 0, 0, 0)},
		{"look-again: drags, 3 d, by + 1 d", LookAgain, func(d *recordtest.Diary) {
			d.On("2027-05-11", 10, 0, &record.Looked{Bleeding: record.Dry, Slip: record.Drags})
		}, at("2027-05-14", 10, 0, 0), at("2027-05-15", 10, 0, 0)},
		{"look-again: stuck, 7 d", LookAgain, func(d *recordtest.Diary) {
			d.On("2027-05-11", 10, 0, &record.Looked{Bleeding: record.Dry, Slip: record.Stuck})
		}, at("2027-05-18", 10, 0, 0), at("2027-05-19", 10, 0, 0)},
		{"look-again: fresh cut, 15 min, by + 1 h", LookAgain, func(d *recordtest.Diary) {
			d.On("2027-05-12", 9, 0, &record.Looked{Bleeding: record.Dry, Slip: record.SlipsClean}, &record.Gashed{Number: 2}).
				On("2027-05-12", 9, 20, &record.FreshCut{})
		}, at("2027-05-12", 9, 35, 0), at("2027-05-12", 10, 35, 0)},
		{"look-again: damp, wipe", LookAgain, func(d *recordtest.Diary) {
			d.On("2027-05-12", 9, 0, &record.Looked{Bleeding: record.Damp, Slip: record.SlipsClean})
		}, at("2027-05-12", 9, 15, 0), at("2027-05-12", 10, 15, 0)},
		{"look-again: looked, and work to do at once", LookAgain, func(d *recordtest.Diary) {
			d.On("2027-05-11", 10, 0, &record.Looked{Bleeding: record.Dry, Slip: record.Drags}).
				On("2027-05-14", 10, 0, &record.Looked{Bleeding: record.Dry, Slip: record.SlipsClean})
		}, at("2027-05-14", 10, 0, 0), at("2027-05-15", 10, 0, 0)},
		{"look-again: found ready", LookAgain, func(d *recordtest.Diary) { ready(d, "2027-05-12") }, never, never},
		{"graft: not ready", Graft, nil, never, never},
		{"graft: ready, the same day", Graft, func(d *recordtest.Diary) { ready(d, "2027-05-12") }, at("2027-05-12", 0, 0, 0), at("2027-05-12", 23, 59, 59)},
		{"graft: the next day's look opens anew", Graft, func(d *recordtest.Diary) {
			ready(d, "2027-05-12")
			d.On("2027-05-13", 9, 0, &record.Looked{Bleeding: record.Dry, Slip: record.SlipsClean})
		}, never, never},
		{"sprouts: before the graft", Sprouts, nil, at("2027-05-24", 0, 0, 0), at("2027-05-31", 23, 59, 59)},
	} {
		d := recordtest.DiaryOn(recordtest.Northern()).On("2027-05-03", 9, 0, &record.NurseJudged{Limbs: 1}, &record.CutBack{Height: recordtest.Inches(36)}, &record.Gashed{Number: 2})
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
		d := recordtest.DiaryOn(recordtest.Northern()).Grafted("2027-03-01", c.sealed, record.Wrapped)
		got, _ := dueOf(d, AfterLook)
		if from, to := got.Opens.Format(time.RFC3339), got.By.Format(time.RFC3339); from != c.opens || to != c.by {
			t.Errorf("sealed %s: %s by %s, want %s by %s", c.sealed, from, to, c.opens, c.by)
		}
	}
	d := recordtest.DiaryOn(recordtest.Northern()).On("2027-03-01", 9, 0, &record.CutBack{}, &record.Gashed{Number: 2}).
		On("2027-03-10", 10, 0, &record.Looked{Bleeding: record.Dry, Slip: record.Drags})
	got, _ := dueOf(d, LookAgain)
	if from, to := got.Opens.Format(time.RFC3339), got.By.Format(time.RFC3339); from != "2027-03-13T10:00:00-05:00" || to != "2027-03-14T10:00:00-04:00" {
		t.Errorf("look again %s by %s", from, to)
	}
}
