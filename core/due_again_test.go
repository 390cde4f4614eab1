package core

import "testing"

// openOn is the due of a kind that is open at noon of a day.
func (d *Diary) openOn(kind DueKind, day string) (Due, bool) {
	at := DayOf(day).At(12, 0, d.B.Zone)
	for _, due := range Dues(d.Fold(), d.B) {
		if due.Kind == kind && due.Open(at) {
			return due, true
		}
	}
	return Due{}, false
}

func (d *Diary) wants(t *testing.T, kind DueKind, day string, want bool) {
	t.Helper()
	if due, open := d.openOn(kind, day); open != want {
		t.Errorf("%s on %s: open %v, want %v; %v", kind, day, open, want, due)
	}
}

// TestSeasonsEndByTheCalendar: work of a summer is over with it, whatever else
// was put down or not, and comes again with the leaf.
func TestSeasonsEndByTheCalendar(t *testing.T) {
	for _, note := range []bool{false, true} {
		d := twoGrafts().On("2027-06-20", 9, 0, &LeaderChosen{Slot: 1, Shoot: "upper"}, &Tied{}, &SproutsRubbed{}, &Pinched{})
		if note {
			d.On("2027-09-20", 9, 0, &Noted{Text: "fence down"})
		}
		for _, c := range []struct {
			kind DueKind
			day  string
			want bool
		}{
			{DueSprouts, "2027-09-30", true}, {DueSprouts, "2027-10-01", false}, {DueSprouts, "2028-04-30", false}, {DueSprouts, "2028-05-01", true}, {DueSprouts, "2028-09-30", true}, {DueSprouts, "2028-10-02", false},
			{DueSprouts, "2029-01-15", false}, {DueSprouts, "2029-07-01", true}, {DueSprouts, "2030-12-15", false},
			{DueTie, "2027-09-30", true}, {DueTie, "2027-10-01", false}, {DueTie, "2028-05-01", true}, {DueTie, "2028-10-02", false}, {DueTie, "2029-06-01", false},
			{DuePinch, "2027-08-15", true}, {DuePinch, "2027-08-16", false}, {DuePinch, "2028-07-01", false},
			{DueTiesOff, "2027-11-01", true}, {DueTiesOff, "2028-10-31", true}, {DueTiesOff, "2028-11-01", true},
		} {
			d.wants(t, c.kind, c.day, c.want)
		}
	}
	second := twoGrafts().On("2027-06-20", 9, 0, &LeaderChosen{Slot: 1, Shoot: "upper"}).On("2028-06-20", 9, 0, &Tied{})
	second.wants(t, DueTie, "2028-09-30", true)
	second.wants(t, DueTie, "2028-10-01", false)
	second.wants(t, DueTie, "2029-06-01", false) // two seasons of ties
}

// TestFirstTieInOctober belongs to the winter at hand.
func TestFirstTieInOctober(t *testing.T) {
	d := twoGrafts().On("2027-06-20", 9, 0, &LeaderChosen{Slot: 1, Shoot: "upper"}).On("2027-10-10", 9, 0, &Tied{})
	d.wants(t, DueTiesOff, "2027-11-02", true)
}

// TestSealedAgainRunsTheClockAgain: white on the coat before does not count.
func TestSealedAgainRunsTheClockAgain(t *testing.T) {
	d := DiaryOn(Northern()).Grafted("2027-05-04", "2027-05-12", Wrapped)
	d.On("2027-05-12", 12, 0, &PaintedWhite{})
	d.On("2027-05-15", 10, 30, &Sealed{Cover: Bare})
	at := DayOf("2027-05-15").At(13, 0, d.B.Zone)
	found := false
	for _, due := range duesOf(d) {
		found = found || due.Kind == DueWhite && due.Open(at) && due.Since.Equal(DayOf("2027-05-15").At(10, 30, d.B.Zone))
	}
	if !found || d.Fold().Stage() != SealedUp {
		t.Errorf("no clock runs after sealing again; the stump is %s", d.Fold().Stage())
	}
}

// TestCutBackThroughLivingGrafts begins anew: nothing of the grafts before is
// due, and what a new graft needs is.
func TestCutBackThroughLivingGrafts(t *testing.T) {
	d := twoGrafts().On("2027-06-20", 9, 0, &LeaderChosen{Slot: 1, Shoot: "upper"}, &Tied{}).On("2028-05-02", 9, 0, &CutBack{Height: Inches(30)})
	if n := len(d.Fold().Attempts); n != 2 {
		t.Fatalf("%d attempts, want 2", n)
	}
	for _, kind := range []DueKind{DueStake, DueTie, DueHeadBack, DueTwine, DueSeasonsEnd} {
		d.wants(t, kind, "2028-05-12", false)
	}
	d.wants(t, DueLook, "2028-05-09", true)
}

// TestGraftedAgainAfterUntied starts anew too.
func TestGraftedAgainAfterUntied(t *testing.T) {
	d := twoGrafts().On("2030-05-01", 9, 0, &Untied{})
	if len(duesOf(d)) != 0 {
		t.Fatalf("untied, and %v is due", duesOf(d))
	}
	d.On("2031-05-02", 9, 0, &CutBack{Height: Inches(30)})
	d.wants(t, DueLook, "2031-05-09", true)
	if s := d.Fold(); s.Stage() != Draining || len(s.Attempts) != 2 {
		t.Errorf("%s with %d attempts", s.Stage(), len(s.Attempts))
	}
}

// TestDeadAtSeasonsEnd ends the grafts, though no visit says so.
func TestDeadAtSeasonsEnd(t *testing.T) {
	d := twoGrafts().On("2027-10-05", 9, 0, &SeasonsEnd{Word: "dead"})
	d.wants(t, DueKeepSprouts, "2027-10-06", true)
	d.wants(t, DueStake, "2027-10-06", false)
	if d.Fold().Stage() != FailedOut {
		t.Errorf("the stump is %s", d.Fold().Stage())
	}
	d.On("2028-03-20", 9, 0, &CutBack{Height: Inches(30)})
	if s := d.Fold(); s.Stage() != Draining {
		t.Errorf("cut back again it is %s", s.Stage())
	}
}

// TestNewLeaderHasItsOwnLength: what the dead graft's shoot had grown says
// nothing of the next.
func TestNewLeaderHasItsOwnLength(t *testing.T) {
	d := twoGrafts().On("2027-06-20", 9, 0, &LeaderChosen{Slot: 1, Shoot: "upper"}).On("2027-06-28", 9, 0, &Tied{Shoot: Inches(40)}).
		On("2027-07-01", 9, 0, Visit(Dead, Growing))
	d.Say(DayOf("2027-07-02").At(9, 0, d.B.Zone), &LeaderChosen{Slot: 2, Shoot: "upper"}, d.Fold().Answers((Event{Body: &LeaderChosen{}}).Question())...)
	d.On("2027-07-05", 9, 0, &Tied{Shoot: Inches(12)})
	d.wants(t, DueTwine, "2027-07-20", false)
	d.wants(t, DueTie, "2027-07-07", false)
	d.wants(t, DueTie, "2027-07-12", true)
	d.wants(t, DueTwine, "2027-08-01", true)
}

// TestShorterShootIsNotTheNextFoot: a length measured before the last is no
// growth since.
func TestShorterShootIsNotTheNextFoot(t *testing.T) {
	d := twoGrafts().On("2027-06-20", 9, 0, &LeaderChosen{Slot: 1, Shoot: "upper"}).On("2027-06-24", 9, 0, &Tied{Shoot: Inches(20)}).
		On("2027-07-08", 9, 0, &Tied{Shoot: Inches(40)}).On("2027-07-15", 9, 0, &Tied{Shoot: Inches(21)})
	d.wants(t, DueTie, "2027-07-17", false)
}

// TestSouthByItsZone: a block without a place goes by the hemisphere of its zone.
func TestSouthByItsZone(t *testing.T) {
	for zone, want := range map[string]bool{"Australia/Melbourne": true, "Pacific/Auckland": true, "Africa/Johannesburg": true, "America/Santiago": true, "America/New_York": false, "Europe/Zurich": false, "": false} {
		if b := (&Block{ZoneName: zone}); b.South() != want {
			t.Errorf("%q lies in the south: %v", zone, !want)
		}
	}
	if b := (&Block{ZoneName: "Australia/Darwin", Placed: true, Lat: 10}); b.South() {
		t.Error("the zone goes before the latitude")
	}
}

// TestRevivedAfterDeadAtSeasonsEnd: a graft seen growing later was not dead, and
// work on the stump begins nothing anew.
func TestRevivedAfterDeadAtSeasonsEnd(t *testing.T) {
	d := twoGrafts().On("2027-10-05", 9, 0, &SeasonsEnd{Word: "dead"}).On("2028-05-20", 9, 0, Visit(Growing, Dead), &Gashed{Number: 1})
	if s := d.Fold(); len(s.Attempts) != 1 || s.Stage() != PushingOn {
		t.Errorf("%s with %d attempts", s.Stage(), len(s.Attempts))
	}
	bare := DiaryOn(Northern()).On("2027-05-04", 9, 0, &CutBack{Height: Inches(30)}).On("2027-10-05", 9, 0, &SeasonsEnd{Word: "dead"}, &Gashed{Number: 1})
	if s := bare.Fold(); s.Stage() != Draining {
		t.Errorf("without grafts it is %s", s.Stage())
	}
}

// TestCoverCorrectedInTheSecondOfWhite leaves the white as it is.
func TestCoverCorrectedInTheSecondOfWhite(t *testing.T) {
	d := DiaryOn(Northern()).Grafted("2027-05-04", "2027-05-12", Wrapped)
	sealed := d.Fold().Now().Sealed
	d.Say(sealed.At, &PaintedWhite{})
	d.Say(sealed.At, &Sealed{Cover: Bare}, sealed.ID)
	if got := d.Fold().Stage(); got != Painted {
		t.Errorf("the stump is %s", got)
	}
}

// TestNewLeaderIsBelowItsStake though the dead one stood above.
func TestNewLeaderIsBelowItsStake(t *testing.T) {
	d := twoGrafts().On("2027-06-10", 9, 0, &Staked{Height: Inches(36)}).On("2027-06-20", 9, 0, &LeaderChosen{Slot: 1, Shoot: "upper"}).
		On("2027-06-28", 9, 0, &Tied{Shoot: Inches(40)}).On("2027-07-01", 9, 0, Visit(Dead, Growing))
	d.Say(DayOf("2027-07-02").At(9, 0, d.B.Zone), &LeaderChosen{Slot: 2, Shoot: "upper"}, d.Fold().Answers((Event{Body: &LeaderChosen{}}).Question())...)
	if got := d.Fold().Stage(); got != LeaderOn {
		t.Errorf("the stump is %s", got)
	}
}
