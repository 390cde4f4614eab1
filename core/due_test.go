package core

import (
	"slices"
	"testing"
	"time"
	_ "time/tzdata"

	"barkslip/core/unit"
)

func zoneOf(name string) *time.Location {
	z, err := time.LoadLocation(name)
	if err != nil {
		panic(err)
	}
	return z
}

var (
	newYork  = zoneOf("America/New_York")
	auckland = zoneOf("Pacific/Auckland")
)

// northern and southern are blocks with mild winters and no earwigs.
func northern() *Block { return &Block{ID: theBlock, Zone: newYork, Lat: 42.7} }
func southern() *Block { return &Block{ID: theBlock, Zone: auckland, Lat: -43.5} }

func frosty(b *Block) *Block      { b.Frosty = true; return b }
func withEarwigs(b *Block) *Block { b.Earwigs = true; return b }

func dayOf(text string) unit.Date {
	d, err := unit.ParseDate(text)
	if err != nil {
		panic(err)
	}
	return d
}

// diary writes answers by date and clock of a block.
type diary struct {
	*laptop
	b *Block
}

func diaryOn(b *Block) *diary { return &diary{newLaptop("AB"), b} }

func (d *diary) on(date string, hour, minute int, bodies ...Body) *diary {
	for i, body := range bodies {
		d.say(dayOf(date).At(hour, minute+i, d.b.Zone), body)
	}
	return d
}

// dues is what is due as of the newest answer, or later.
func (d *diary) dues() []Due {
	s := d.fold()
	return slices.DeleteFunc(Dues(s, d.b), func(due Due) bool { return due.Ended(s.Newest) })
}

func (d *diary) due(kind DueKind) (Due, bool) {
	for _, due := range d.dues() {
		if due.Kind == kind {
			return due, true
		}
	}
	return Due{}, false
}

// visit is a visit with the states of grafts 1, 2, ...
func visit(states ...GraftState) *Visited {
	v := &Visited{}
	for i, s := range states {
		v.Found = append(v.Found, Finding{Slot: i + 1, State: s})
	}
	return v
}

func inches(n float64) Measure { return Measured(unit.Length(n)*unit.Inch, unit.US) }

// grafted is a stump cut back on one day and grafted with two scions on another.
func (d *diary) grafted(cut, set string, cover Cover) *diary {
	d.on(cut, 9, 0, &NurseJudged{Limbs: 2, Leaf: "some"}, &CutBack{Height: inches(36)}, &Gashed{Number: 2})
	d.on(set, 10, 0, &ScionSet{Slot: 1, Checks: AllGood}, &ScionSet{Slot: 2, Checks: AllGood})
	return d.on(set, 10, 40, &Sealed{cover}).on(set, 13, 10, &PaintedWhite{})
}

// wantDay checks that a due runs from the first instant of a block's day to the
// last second of another.
func wantDay(t *testing.T, name string, d *diary, kind DueKind, opens, by string) {
	t.Helper()
	got, ok := d.due(kind)
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
	from, to := dayOf(opens).In(d.b.Zone), dayOf(by).Add(1).In(d.b.Zone).Add(-time.Second)
	if !got.Opens.Equal(from) || !got.By.Equal(to) {
		t.Errorf("%s: %s by %s, want %s by %s", name, got.Opens, got.By, from, to)
	}
	if got.Stump != stump417 || got.Since.IsZero() || got.Why(d.b) == "" || len(got.Facts()) == 0 {
		t.Errorf("%s: stump, cause, reason or facts are missing: %+v", name, got)
	}
}

func TestDueDates(t *testing.T) {
	for _, c := range dueDates {
		b := c.block
		if b == nil {
			b = northern()
		}
		d := diaryOn(b).grafted("2027-05-03", "2027-05-12", Wrapped)
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
		work      func(d *diary)
		opens, by string
	}{
		{"sprouts", DueSprouts, nil, nil, "2027-11-24", "2027-12-01"},
		{"sprouts: the season ends with March", DueSprouts, nil, func(d *diary) {
			d.on("2027-12-14", 9, 0, &LeaderChosen{Slot: 1}).on("2028-03-17", 9, 0, &SproutsRubbed{})
		}, "2028-03-31", "2028-04-07"},
		{"sprouts: next leaf-out", DueSprouts, nil, func(d *diary) { d.on("2028-03-28", 9, 0, &SproutsRubbed{}) }, "2028-11-01", "2028-11-08"},
		{"tie: last + 7 d to 31 January", DueTie, nil, func(d *diary) {
			d.on("2027-11-29", 9, 0, visit(NoChange, Pushing)).on("2028-01-31", 9, 0, &Tied{})
		}, "2028-02-07", "2028-02-11"},
		{"tie: + 14 d after", DueTie, nil, func(d *diary) {
			d.on("2027-11-29", 9, 0, visit(NoChange, Pushing)).on("2028-02-01", 9, 0, &Tied{})
		}, "2028-02-15", "2028-02-19"},
		{"pinch: until 15 February", DuePinch, nil, func(d *diary) { d.on("2027-12-14", 9, 0, &LeaderChosen{Slot: 1}).on("2028-02-01", 9, 0, &Pinched{}) }, "2028-02-15", "2028-02-22"},
		{"pinch: not after", DuePinch, nil, func(d *diary) { d.on("2027-12-14", 9, 0, &LeaderChosen{Slot: 1}).on("2028-02-02", 9, 0, &Pinched{}) }, "", ""},
		{"pinch: the block's own date", DuePinch, func() *Block { b := southern(); b.PinchUntil = MonthDay{time.January, 20}; return b }(), func(d *diary) {
			d.on("2027-12-14", 9, 0, &LeaderChosen{Slot: 1}).on("2028-01-07", 9, 0, &Pinched{})
		}, "", ""},
		{"twine: 1 February", DueTwine, nil, func(d *diary) { d.on("2027-12-14", 9, 0, &LeaderChosen{Slot: 1}) }, "2028-02-01", "2028-02-15"},
		{"seasons-end: April", DueSeasonsEnd, nil, nil, "2028-04-01", "2028-04-30"},
		{"ties-off: May and June", DueTiesOff, nil, func(d *diary) { d.on("2027-12-14", 9, 0, &Tied{}) }, "2028-05-01", "2028-06-30"},
		{"head-back: mild", DueHeadBack, nil, func(d *diary) { d.on("2027-11-29", 9, 0, visit(NoChange, Pushing)) }, "2028-07-15", "2028-09-01"},
		{"head-back: frosty", DueHeadBack, frosty(southern()), func(d *diary) { d.on("2027-11-29", 9, 0, visit(NoChange, Pushing)) }, "2028-09-01", "2028-10-15"},
		{"second-shoot-off", DueSecondShootOff, nil, func(d *diary) { d.on("2027-11-29", 9, 0, visit(NoChange, Pushing)) }, "2029-07-15", "2029-09-01"},
		{"nurse-limbs-off", DueNurseLimbsOff, nil, nil, "2028-07-15", "2028-09-01"},
		{"twine-check: January", DueTwineCheck, nil, func(d *diary) { d.on("2027-12-20", 9, 0, &Twined{}) }, "2028-01-01", "2028-01-31"},
		{"twine-check: April", DueTwineCheck, nil, func(d *diary) { d.on("2028-01-20", 9, 0, &Twined{}) }, "2028-04-01", "2028-05-01"},
		{"twine-check: October", DueTwineCheck, nil, func(d *diary) { d.on("2028-04-01", 9, 0, &Twined{}) }, "2028-10-01", "2028-10-31"},
		{"regraft: 15 September", DueRegraft, nil, func(d *diary) { d.on("2027-12-20", 9, 0, &Failed{Cause: "bled"}) }, "2028-09-15", "2028-11-15"},
	} {
		b := c.block
		if b == nil {
			b = southern()
		}
		d := diaryOn(b).grafted("2027-11-03", "2027-11-12", Wrapped)
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
		{"every graft dead", visit(Dead, Dead), []DueKind{DueKeepSprouts, DueRegraft}},
	} {
		d := diaryOn(withEarwigs(northern())).grafted("2027-05-03", "2027-05-12", Bare)
		d.on("2027-05-29", 9, 0, visit(Pushing, Pushing)).on("2027-06-14", 9, 0, &LeaderChosen{Slot: 1}, &Tied{}).on("2027-08-05", 9, 0, &Twined{})
		d.on("2027-08-20", 9, 0, c.end)
		var got []DueKind
		for _, due := range d.dues() {
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
	d := diaryOn(northern()).on("2027-05-03", 9, 0, &StumpAdded{}, &NurseJudged{Limbs: 1})
	if got := d.dues(); len(got) != 0 {
		t.Errorf("never cut back, and due: %v", got)
	}
}

// Only the attempt under way counts: what was due on the one before is gone.
func TestDuesOfAnAttemptBeforeAreGone(t *testing.T) {
	d := diaryOn(northern()).grafted("2027-05-03", "2027-05-12", Bare).on("2027-06-20", 9, 0, visit(Dead, Dead))
	d.on("2028-04-20", 9, 0, &CutBack{Height: inches(30)}, &Gashed{Number: 2})
	for _, due := range d.dues() {
		if due.Kind != DueLook && due.Kind != DueSprouts {
			t.Errorf("cut back again, and due: %s, %s", due.Kind, due.Opens)
		}
	}
	wantDay(t, "sprouts of the new attempt", d, DueSprouts, "2028-05-11", "2028-05-18")
}

// A due, each of its reasons and its step are named for every kind.
func TestEveryKindHasReasonAndStep(t *testing.T) {
	for _, kind := range DueKinds() {
		if stepByID(kind.Step()) == nil {
			t.Errorf("%s is met on no step", kind)
		}
		if len(dueReasons[kind].says) == 0 || dueRules[kind].rule == nil {
			t.Errorf("%s has no reason or no rule", kind)
		}
		if back, ok := ParseDueKind(kind.String()); !ok || back != kind {
			t.Errorf("%s reads back as %s", kind, back)
		}
	}
}
