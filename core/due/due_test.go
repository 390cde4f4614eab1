package due

import (
	"testing"
	"time"
	_ "time/tzdata"

	"barkslip/core/record"
	"barkslip/core/record/recordtest"
)

// wantDay checks that a due runs from the first instant of a block's day to the
// last second of another.
func wantDay(t *testing.T, name string, d *recordtest.Diary, kind Kind, opens, by string) {
	t.Helper()
	got, ok := dueOf(d, kind)
	if opens == "" {
		if ok {
			t.Errorf("%s: due %s by %s, want nothing", name, got.Opens, got.By)
		}
		return
	}
	if !ok {
		t.Errorf("%s: nothing is due, want %s by %s", name, opens, by)
		return
	}
	from, to := recordtest.DayOf(opens).In(d.B.Zone), recordtest.DayOf(by).Add(1).In(d.B.Zone).Add(-time.Second)
	if !got.Opens.Equal(from) || !got.By.Equal(to) {
		t.Errorf("%s: %s by %s, want %s by %s", name, got.Opens, got.By, from, to)
	}
	if got.Stump != recordtest.Stump417 || got.Since.IsZero() || got.Why(d.B) == "" || len(got.Facts()) == 0 {
		t.Errorf("%s: stump, cause, reason or facts are missing: %+v", name, got)
	}
}

func TestDueDates(t *testing.T) {
	for _, c := range dueDates {
		b := c.block
		if b == nil {
			b = recordtest.Northern()
		}
		d := recordtest.DiaryOn(b).Grafted("2027-05-03", "2027-05-12", record.Wrapped)
		d.Bare = true // a row may lack what its due does not ask for
		if c.work != nil {
			c.work(d)
		}
		wantDay(t, c.name, d, c.kind, c.opens, c.by)
	}
}

// Half a year on in the south: a stump cut back on 3 November and grafted on 12
// November 2027 at 43.5 S.
func TestDueDatesInTheSouth(t *testing.T) {
	for _, c := range []dueDate{
		{"sprouts", Sprouts, nil, nil, "2027-11-24", "2027-12-01"},
		{"sprouts: the season ends with March", Sprouts, nil, func(d *recordtest.Diary) {
			d.On("2027-12-14", 9, 0, &record.LeaderChosen{Slot: 1}).On("2028-03-17", 9, 0, &record.SproutsRubbed{Leaf: "some"})
		}, "2028-03-31", "2028-04-07"},
		{"sprouts: next leaf-out", Sprouts, nil, func(d *recordtest.Diary) {
			d.On("2028-03-28", 9, 0, &record.SproutsRubbed{Leaf: "some"})
		}, "2028-11-01", "2028-11-08"},
		{"tie: last + 7 d to 31 January", Tie, nil, func(d *recordtest.Diary) {
			d.On("2027-11-29", 9, 0, recordtest.Visit(record.NoChange, record.Pushing)).On("2028-01-31", 9, 0, &record.Tied{})
		}, "2028-02-07", "2028-02-11"},
		{"tie: + 14 d after", Tie, nil, func(d *recordtest.Diary) {
			d.On("2027-11-29", 9, 0, recordtest.Visit(record.NoChange, record.Pushing)).On("2028-02-01", 9, 0, &record.Tied{})
		}, "2028-02-15", "2028-02-19"},
		{"pinch: until 15 February", Pinch, nil, func(d *recordtest.Diary) {
			d.On("2027-12-14", 9, 0, &record.LeaderChosen{Slot: 1}).On("2028-02-01", 9, 0, &record.Pinched{})
		}, "2028-02-15", "2028-02-22"},
		{"pinch: not after", Pinch, nil, func(d *recordtest.Diary) {
			d.On("2027-12-14", 9, 0, &record.LeaderChosen{Slot: 1}).On("2028-02-02", 9, 0, &record.Pinched{})
		}, "", ""},
		{"pinch: the block's own date", Pinch, func() *record.Block {
			b := recordtest.Southern()
			b.PinchUntil = record.MonthDay{Month: time.January, Day: 20}
			return b
		}(), func(d *recordtest.Diary) {
			d.On("2027-12-14", 9, 0, &record.LeaderChosen{Slot: 1}).On("2028-01-07", 9, 0, &record.Pinched{})
		}, "", ""},
		{"twine: 1 February", Twine, nil, func(d *recordtest.Diary) { d.On("2027-12-14", 9, 0, &record.LeaderChosen{Slot: 1}) }, "2028-02-01", "2028-02-15"},
		{"seasons-end: April", SeasonsEnd, nil, nil, "2028-04-01", "2028-04-30"},
		{"ties-off: May and June", TiesOff, nil, func(d *recordtest.Diary) { d.On("2027-12-14", 9, 0, &record.Tied{}) }, "2028-05-01", "2028-06-30"},
		{"head-back: mild", HeadBack, nil, func(d *recordtest.Diary) {
			d.On("2027-11-29", 9, 0, recordtest.Visit(record.NoChange, record.Pushing), &record.LeaderChosen{Slot: 2, Shoot: "only"})
		}, "2028-07-15", "2028-09-01"},
		{"head-back: frosty", HeadBack, recordtest.Frosty(recordtest.Southern()), func(d *recordtest.Diary) {
			d.On("2027-11-29", 9, 0, recordtest.Visit(record.NoChange, record.Pushing), &record.LeaderChosen{Slot: 2, Shoot: "only"})
		}, "2028-09-01", "2028-10-15"},
		{"second-shoot-off", SecondShootOff, nil, func(d *recordtest.Diary) {
			d.On("2027-11-29", 9, 0, recordtest.Visit(record.NoChange, record.Pushing), &record.LeaderChosen{Slot: 2, Shoot: "only"})
		}, "2029-07-15", "2029-09-01"},
		{"nurse-limbs-off", NurseLimbsOff, nil, nil, "2028-07-15", "2028-09-01"},
		{"twine-check: January", TwineCheck, nil, func(d *recordtest.Diary) { d.On("2027-12-20", 9, 0, &record.Twined{}) }, "2028-01-01", "2028-01-31"},
		{"twine-check: April", TwineCheck, nil, func(d *recordtest.Diary) { d.On("2028-01-20", 9, 0, &record.Twined{}) }, "2028-04-01", "2028-05-01"},
		{"twine-check: October", TwineCheck, nil, func(d *recordtest.Diary) { d.On("2028-04-01", 9, 0, &record.Twined{}) }, "2028-10-01", "2028-10-31"},
		{"regraft: 15 September", Regraft, nil, func(d *recordtest.Diary) { d.On("2027-12-20", 9, 0, &record.Failed{Cause: "bled"}) }, "2028-09-15", "2028-11-15"},
	} {
		b := c.block
		if b == nil {
			b = recordtest.Southern()
		}
		d := recordtest.DiaryOn(b).Grafted("2027-11-03", "2027-11-12", record.Wrapped)
		d.Bare = true
		if c.work != nil {
			c.work(d)
		}
		wantDay(t, c.name, d, c.kind, c.opens, c.by)
	}
}

// A stump that is untied, given up or failed is asked for no more than belongs
// to it.
func TestDuesAtTheEnd(t *testing.T) {
	for _, c := range []struct {
		name string
		end  record.Body
		want []Kind
	}{
		{"untied", &record.Untied{}, nil},
		{"given up", &record.GivenUp{}, nil},
		{"left for the season", &record.GivenUp{Season: true}, []Kind{Regraft}},
		{"failed", &record.Failed{Cause: "wind"}, []Kind{KeepSprouts, Regraft}},
		{"every graft dead", recordtest.Visit(record.Dead, record.Dead), []Kind{KeepSprouts, Regraft}},
	} {
		d := recordtest.DiaryOn(recordtest.WithEarwigs(recordtest.Northern())).Grafted("2027-05-03", "2027-05-12", record.Bare)
		d.On("2027-05-29", 9, 0, recordtest.Visit(record.Pushing, record.Pushing)).On("2027-06-14", 9, 0, &record.LeaderChosen{Slot: 1}, &record.Tied{}).
			On("2027-08-05", 9, 0, &record.Twined{})
		d.On("2027-08-20", 9, 0, c.end)
		var got []Kind
		for _, due := range duesOf(d) {
			got = append(got, due.Kind)
		}
		if len(got) != len(c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
			continue
		}
		for i := range got {
			if got[i] != c.want[i] {
				t.Errorf("%s: %v, want %v", c.name, got, c.want)
			}
		}
	}
}

// TestAStandingStumpIsToBeCutBack, and needs nothing else.
func TestAStandingStumpIsToBeCutBack(t *testing.T) {
	d := recordtest.DiaryOn(recordtest.Northern()).On("2027-05-03", 9, 0, &record.StumpAdded{}, &record.NurseJudged{Limbs: 1})
	if got := duesOf(d); len(got) != 1 || got[0].Kind != CutBack {
		t.Errorf("never cut back, and due: %v", got)
	}
}

// A stump is cut back for the season of slip at hand, or the next one where it
// is too late for that, and anew where it was cut back too long before.
func TestCutBackDates(t *testing.T) {
	placed := recordtest.Northern()
	placed.Placed = true
	cut := func(day string) func(d *recordtest.Diary) {
		return func(d *recordtest.Diary) { d.On(day, 9, 0, &record.CutBack{Height: recordtest.Inches(36)}) }
	}
	added := func(day string) func(d *recordtest.Diary) {
		return func(d *recordtest.Diary) { d.On(day, 9, 0, &record.StumpAdded{}) }
	}
	for _, c := range []dueDate{
		{"slip start - 10 d, slip end - 10 d", CutBack, nil, added("2027-01-10"), "2027-04-05", "2027-06-05"},
		{"as bark slips at the block's latitude", CutBack, placed, added("2027-01-10"), "2027-04-30", "2027-05-31"},
		{"on the block's own days", CutBack, slipping("05-01", "05-31"), added("2027-01-10"), "2027-04-21", "2027-05-21"},
		{"in the south", CutBack, recordtest.Southern(), added("2027-07-10"), "2027-09-21", "2027-11-20"},
		{"added within the window", CutBack, nil, added("2027-05-20"), "2027-04-05", "2027-06-05"},
		{"added too late to be grafted", CutBack, nil, added("2027-06-09"), "2028-04-05", "2028-06-05"},
		{"cut back this year", CutBack, nil, cut("2027-05-03"), "2028-04-05", "2028-06-05"},
		{"cut back in an earlier year", CutBack, nil, cut("2026-06-20"), "2027-04-05", "2027-06-05"},
		{"grafted", CutBack, nil, func(d *recordtest.Diary) { d.Grafted("2027-05-03", "2027-05-12", record.Wrapped) }, "", ""},
		{"given up", CutBack, nil, func(d *recordtest.Diary) { d.On("2027-05-03", 9, 0, &record.StumpAdded{}, &record.GivenUp{}) }, "", ""},
	} {
		b := c.block
		if b == nil {
			b = recordtest.Northern()
		}
		d := recordtest.DiaryOn(b)
		c.work(d)
		wantDay(t, c.name, d, c.kind, c.opens, c.by)
	}
}

// Only the attempt under way counts: what was due on the one before is gone.
func TestDuesOfAnAttemptBeforeAreGone(t *testing.T) {
	d := recordtest.DiaryOn(recordtest.Northern()).Grafted("2027-05-03", "2027-05-12", record.Bare).
		On("2027-06-20", 9, 0, recordtest.Visit(record.Dead, record.Dead))
	d.On("2028-04-20", 9, 0, &record.CutBack{Height: recordtest.Inches(30)}, &record.Gashed{Number: 2})
	for _, due := range duesOf(d) {
		if due.Kind != Look && due.Kind != Sprouts && due.Kind != CutBack {
			t.Errorf("cut back again, and due: %s, %s", due.Kind, due.Opens)
		}
	}
	wantDay(t, "sprouts of the new attempt", d, Sprouts, "2028-05-11", "2028-05-18")
}

// A due, each of its reasons and its step are named for every kind.
func TestEveryKindHasReasonAndStep(t *testing.T) {
	for _, kind := range Kinds() {
		if w := kind.work(); len(w.Says) == 0 || len(w.Facts) == 0 || w.Rule == nil || w.Step == "" {
			t.Errorf("%s has no reason, no facts, no rule or no step", kind)
		}
		if back, ok := ParseKind(kind.String()); !ok || back != kind {
			t.Errorf("%s reads back as %s", kind, back)
		}
	}
}
