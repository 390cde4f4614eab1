package core

import (
	"testing"
	"time"
	_ "time/tzdata"
)

// wantDay checks that a due runs from the first instant of a block's day to the
// last second of another.
func wantDay(t *testing.T, name string, d *Diary, kind DueKind, opens, by string) {
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
	from, to := DayOf(opens).In(d.B.Zone), DayOf(by).Add(1).In(d.B.Zone).Add(-time.Second)
	if !got.Opens.Equal(from) || !got.By.Equal(to) {
		t.Errorf("%s: %s by %s, want %s by %s", name, got.Opens, got.By, from, to)
	}
	if got.Stump != Stump417 || got.Since.IsZero() || got.Why(d.B) == "" || len(got.Facts()) == 0 {
		t.Errorf("%s: stump, cause, reason or facts are missing: %+v", name, got)
	}
}

func TestDueDates(t *testing.T) {
	for _, c := range dueDates {
		b := c.block
		if b == nil {
			b = Northern()
		}
		d := DiaryOn(b).Grafted("2027-05-03", "2027-05-12", Wrapped)
		if c.work != nil {
			c.work(d)
		}
		wantDay(t, c.name, d, c.kind, c.opens, c.by)
	}
}

// Half a year on in the south: a stump cut back on 3 November and grafted on 12
// November 2027 at 43.5 S.
func TestDueDatesInTheSouth(t *testing.T) {
	for _, c := range []struct {
		name      string
		kind      DueKind
		block     *Block
		work      func(d *Diary)
		opens, by string
	}{
		{"sprouts", DueSprouts, nil, nil, "2027-11-24", "2027-12-01"},
		{"sprouts: the season ends with March", DueSprouts, nil, func(d *Diary) {
			d.On("2027-12-14", 9, 0, &LeaderChosen{Slot: 1}).On("2028-03-17", 9, 0, &SproutsRubbed{})
		}, "2028-03-31", "2028-04-07"},
		{"sprouts: next leaf-out", DueSprouts, nil, func(d *Diary) { d.On("2028-03-28", 9, 0, &SproutsRubbed{}) }, "2028-11-01", "2028-11-08"},
		{"tie: last + 7 d to 31 January", DueTie, nil, func(d *Diary) {
			d.On("2027-11-29", 9, 0, Visit(NoChange, Pushing)).On("2028-01-31", 9, 0, &Tied{})
		}, "2028-02-07", "2028-02-11"},
		{"tie: + 14 d after", DueTie, nil, func(d *Diary) {
			d.On("2027-11-29", 9, 0, Visit(NoChange, Pushing)).On("2028-02-01", 9, 0, &Tied{})
		}, "2028-02-15", "2028-02-19"},
		{"pinch: until 15 February", DuePinch, nil, func(d *Diary) { d.On("2027-12-14", 9, 0, &LeaderChosen{Slot: 1}).On("2028-02-01", 9, 0, &Pinched{}) }, "2028-02-15", "2028-02-22"},
		{"pinch: not after", DuePinch, nil, func(d *Diary) { d.On("2027-12-14", 9, 0, &LeaderChosen{Slot: 1}).On("2028-02-02", 9, 0, &Pinched{}) }, "", ""},
		{"pinch: the block's own date", DuePinch, func() *Block { b := Southern(); b.PinchUntil = MonthDay{time.January, 20}; return b }(), func(d *Diary) {
			d.On("2027-12-14", 9, 0, &LeaderChosen{Slot: 1}).On("2028-01-07", 9, 0, &Pinched{})
		}, "", ""},
		{"twine: 1 February", DueTwine, nil, func(d *Diary) { d.On("2027-12-14", 9, 0, &LeaderChosen{Slot: 1}) }, "2028-02-01", "2028-02-15"},
		{"seasons-end: April", DueSeasonsEnd, nil, nil, "2028-04-01", "2028-04-30"},
		{"ties-off: May and June", DueTiesOff, nil, func(d *Diary) { d.On("2027-12-14", 9, 0, &Tied{}) }, "2028-05-01", "2028-06-30"},
		{"head-back: mild", DueHeadBack, nil, func(d *Diary) { d.On("2027-11-29", 9, 0, Visit(NoChange, Pushing)) }, "2028-07-15", "2028-09-01"},
		{"head-back: frosty", DueHeadBack, Frosty(Southern()), func(d *Diary) { d.On("2027-11-29", 9, 0, Visit(NoChange, Pushing)) }, "2028-09-01", "2028-10-15"},
		{"second-shoot-off", DueSecondShootOff, nil, func(d *Diary) { d.On("2027-11-29", 9, 0, Visit(NoChange, Pushing)) }, "2029-07-15", "2029-09-01"},
		{"nurse-limbs-off", DueNurseLimbsOff, nil, nil, "2028-07-15", "2028-09-01"},
		{"twine-check: January", DueTwineCheck, nil, func(d *Diary) { d.On("2027-12-20", 9, 0, &Twined{}) }, "2028-01-01", "2028-01-31"},
		{"twine-check: April", DueTwineCheck, nil, func(d *Diary) { d.On("2028-01-20", 9, 0, &Twined{}) }, "2028-04-01", "2028-05-01"},
		{"twine-check: October", DueTwineCheck, nil, func(d *Diary) { d.On("2028-04-01", 9, 0, &Twined{}) }, "2028-10-01", "2028-10-31"},
		{"regraft: 15 September", DueRegraft, nil, func(d *Diary) { d.On("2027-12-20", 9, 0, &Failed{Cause: "bled"}) }, "2028-09-15", "2028-11-15"},
	} {
		b := c.block
		if b == nil {
			b = Southern()
		}
		d := DiaryOn(b).Grafted("2027-11-03", "2027-11-12", Wrapped)
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
		end  Body
		want []DueKind
	}{
		{"untied", &Untied{}, nil},
		{"given up", &GivenUp{}, nil},
		{"left for the season", &GivenUp{Season: true}, []DueKind{DueRegraft}},
		{"failed", &Failed{Cause: "wind"}, []DueKind{DueKeepSprouts, DueRegraft}},
		{"every graft dead", Visit(Dead, Dead), []DueKind{DueKeepSprouts, DueRegraft}},
	} {
		d := DiaryOn(WithEarwigs(Northern())).Grafted("2027-05-03", "2027-05-12", Bare)
		d.On("2027-05-29", 9, 0, Visit(Pushing, Pushing)).On("2027-06-14", 9, 0, &LeaderChosen{Slot: 1}, &Tied{}).On("2027-08-05", 9, 0, &Twined{})
		d.On("2027-08-20", 9, 0, c.end)
		var got []DueKind
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

func TestAStandingStumpNeedsNothing(t *testing.T) {
	d := DiaryOn(Northern()).On("2027-05-03", 9, 0, &StumpAdded{}, &NurseJudged{Limbs: 1})
	if got := duesOf(d); len(got) != 0 {
		t.Errorf("never cut back, and due: %v", got)
	}
}

// Only the attempt under way counts: what was due on the one before is gone.
func TestDuesOfAnAttemptBeforeAreGone(t *testing.T) {
	d := DiaryOn(Northern()).Grafted("2027-05-03", "2027-05-12", Bare).On("2027-06-20", 9, 0, Visit(Dead, Dead))
	d.On("2028-04-20", 9, 0, &CutBack{Height: Inches(30)}, &Gashed{Number: 2})
	for _, due := range duesOf(d) {
		if due.Kind != DueLook && due.Kind != DueSprouts {
			t.Errorf("cut back again, and due: %s, %s", due.Kind, due.Opens)
		}
	}
	wantDay(t, "sprouts of the new attempt", d, DueSprouts, "2028-05-11", "2028-05-18")
}

// A due, each of its reasons and its step are named for every kind.
func TestEveryKindHasReasonAndStep(t *testing.T) {
	for _, kind := range DueKinds() {
		if len(dueReasons[kind].says) == 0 || dueRules[kind].rule == nil {
			t.Errorf("%s has no reason or no rule", kind)
		}
		if back, ok := ParseDueKind(kind.String()); !ok || back != kind {
			t.Errorf("%s reads back as %s", kind, back)
		}
	}
}
