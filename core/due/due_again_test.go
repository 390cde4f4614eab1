package due

import (
	"testing"

	"barkslip/core/record"
	"barkslip/core/record/recordtest"
)

// openOn is the due of a kind that is open at noon of a day.
func openOn(d *recordtest.Diary, kind Kind, day string) (Due, bool) {
	at := recordtest.DayOf(day).At(12, 0, d.B.Zone)
	for _, due := range At(Of(d.Fold(), d.B), at) {
		if due.Kind == kind && due.Open(at) {
			return due, true
		}
	}
	return Due{}, false
}

func wants(d *recordtest.Diary, t *testing.T, kind Kind, day string, want bool) {
	t.Helper()
	if due, open := openOn(d, kind, day); open != want {
		t.Errorf("%s on %s: open %v, want %v; %v", kind, day, open, want, due)
	}
}

// TestSeasonsEndByTheCalendar: work of a summer is over with it, whatever else
// was put down or not, and comes again with the leaf.
func TestSeasonsEndByTheCalendar(t *testing.T) {
	for _, note := range []bool{false, true} {
		d := twoGrafts().On("2027-06-20", 9, 0, &record.LeaderChosen{Slot: 1, Shoot: "upper"}, &record.Tied{}, &record.SproutsRubbed{Leaf: "some"}, &record.Pinched{})
		if note {
			d.On("2027-09-20", 9, 0, &record.Noted{Text: "fence down"})
		}
		for _, c := range []struct {
			kind Kind
			day  string
			want bool
		}{
			{Sprouts, "2027-09-30", true}, {Sprouts, "2027-10-01", false}, {Sprouts, "2028-04-30", false}, {Sprouts, "2028-05-01", true}, {Sprouts, "2028-09-30", true}, {Sprouts, "2028-10-02", false},
			{Sprouts, "2029-01-15", false}, {Sprouts, "2029-07-01", true}, {Sprouts, "2030-07-01", true}, {Sprouts, "2030-12-15", false},
			{Tie, "2027-09-30", true}, {Tie, "2027-10-01", false}, {Tie, "2028-05-31", false}, {Tie, "2028-06-01", true}, {Tie, "2028-10-02", false}, {Tie, "2029-06-01", false},
			{Pinch, "2027-08-15", true}, {Pinch, "2027-08-16", false}, {Pinch, "2028-07-01", false},
			{TiesOff, "2027-11-01", true}, {TiesOff, "2028-04-30", true}, {TiesOff, "2028-05-01", false}, {TiesOff, "2028-10-31", false}, {TiesOff, "2028-11-01", true},
		} {
			wants(d, t, c.kind, c.day, c.want)
		}
	}
	second := twoGrafts().On("2027-06-20", 9, 0, &record.LeaderChosen{Slot: 1, Shoot: "upper"}).On("2028-06-20", 9, 0, &record.Tied{})
	wants(second, t, Tie, "2028-09-30", true)
	wants(second, t, Tie, "2028-10-01", false)
	wants(second, t, Tie, "2029-06-01", false) // two seasons of ties
}

// TestFirstTieInOctober belongs to the winter at hand.
func TestFirstTieInOctober(t *testing.T) {
	d := twoGrafts().On("2027-06-20", 9, 0, &record.LeaderChosen{Slot: 1, Shoot: "upper"}).On("2027-10-10", 9, 0, &record.Tied{})
	wants(d, t, TiesOff, "2027-11-02", true)
}

// TestSealedAgainRunsTheClockAgain: white on the coat before does not count.
func TestSealedAgainRunsTheClockAgain(t *testing.T) {
	d := recordtest.DiaryOn(recordtest.Northern()).Grafted("2027-05-04", "2027-05-12", record.Wrapped)
	d.On("2027-05-12", 12, 0, &record.PaintedWhite{})
	d.On("2027-05-15", 10, 30, &record.Sealed{Cover: record.Bare})
	at := recordtest.DayOf("2027-05-15").At(13, 0, d.B.Zone)
	found := false
	for _, due := range duesOf(d) {
		found = found || due.Kind == White && due.Open(at) && due.Since.Equal(recordtest.DayOf("2027-05-15").At(10, 30, d.B.Zone))
	}
	if !found || d.Fold().Stage() != record.StageSealed {
		t.Errorf("no clock runs after sealing again; the stump is %s", d.Fold().Stage())
	}
}

// TestCutBackThroughLivingGrafts begins anew: nothing of the grafts before is
// due, and what a new graft needs is.
func TestCutBackThroughLivingGrafts(t *testing.T) {
	d := twoGrafts().On("2027-06-20", 9, 0, &record.LeaderChosen{Slot: 1, Shoot: "upper"}, &record.Tied{}).
		On("2028-05-02", 9, 0, &record.CutBack{Height: recordtest.Inches(30)})
	if n := len(d.Fold().Attempts); n != 2 {
		t.Fatalf("%d attempts, want 2", n)
	}
	for _, kind := range []Kind{Stake, Tie, HeadBack, Twine, SeasonsEnd} {
		wants(d, t, kind, "2028-05-12", false)
	}
	wants(d, t, Look, "2028-05-09", true)
}

// TestGraftedAgainAfterUntied starts anew too.
func TestGraftedAgainAfterUntied(t *testing.T) {
	d := twoGrafts().On("2030-05-01", 9, 0, &record.Untied{})
	if len(duesOf(d)) != 0 {
		t.Fatalf("untied, and %v is due", duesOf(d))
	}
	d.On("2031-05-02", 9, 0, &record.CutBack{Height: recordtest.Inches(30)})
	wants(d, t, Look, "2031-05-09", true)
	if s := d.Fold(); s.Stage() != record.StageDraining || len(s.Attempts) != 2 {
		t.Errorf("%s with %d attempts", s.Stage(), len(s.Attempts))
	}
}

// TestDeadAtSeasonsEnd ends the grafts, though no visit says so.
func TestDeadAtSeasonsEnd(t *testing.T) {
	d := twoGrafts().On("2027-10-05", 9, 0, &record.SeasonsEnd{Word: "dead"})
	wants(d, t, KeepSprouts, "2027-10-06", true)
	wants(d, t, Stake, "2027-10-06", false)
	if d.Fold().Stage() != record.StageFailed {
		t.Errorf("the stump is %s", d.Fold().Stage())
	}
	d.On("2028-03-20", 9, 0, &record.CutBack{Height: recordtest.Inches(30)})
	if s := d.Fold(); s.Stage() != record.StageDraining {
		t.Errorf("cut back again it is %s", s.Stage())
	}
}

// TestNewLeaderHasItsOwnLength: what the dead graft's shoot had grown says
// nothing of the next.
func TestNewLeaderHasItsOwnLength(t *testing.T) {
	d := twoGrafts().On("2027-06-20", 9, 0, &record.LeaderChosen{Slot: 1, Shoot: "upper"}).On("2027-06-28", 9, 0, &record.Tied{Shoot: recordtest.Inches(40)}).
		On("2027-07-01", 9, 0, recordtest.Visit(record.Dead, record.Growing))
	d.Say(recordtest.DayOf("2027-07-02").At(9, 0, d.B.Zone), &record.LeaderChosen{Slot: 2, Shoot: "upper"}, d.Fold().Answers((record.Event{Body: &record.LeaderChosen{}}).Question())...)
	d.On("2027-07-05", 9, 0, &record.Tied{Shoot: recordtest.Inches(12)})
	wants(d, t, Twine, "2027-07-20", false)
	wants(d, t, Tie, "2027-07-07", false)
	wants(d, t, Tie, "2027-07-12", true)
	wants(d, t, Twine, "2027-08-01", true)
}

// TestShorterShootIsNotTheNextFoot: a length measured before the last is no
// growth since.
func TestShorterShootIsNotTheNextFoot(t *testing.T) {
	d := twoGrafts().On("2027-06-20", 9, 0, &record.LeaderChosen{Slot: 1, Shoot: "upper"}).On("2027-06-24", 9, 0, &record.Tied{Shoot: recordtest.Inches(20)}).
		On("2027-07-08", 9, 0, &record.Tied{Shoot: recordtest.Inches(40)}).On("2027-07-15", 9, 0, &record.Tied{Shoot: recordtest.Inches(21)})
	wants(d, t, Tie, "2027-07-17", false)
}

// TestSouthByItsZone: a block without a place goes by the hemisphere of its zone.
func TestSouthByItsZone(t *testing.T) {
	for zone, want := range map[string]bool{"Australia/Melbourne": true, "Pacific/Auckland": true, "Africa/Johannesburg": true, "America/Santiago": true, "America/New_York": false, "Europe/Zurich": false, "": false} {
		if b := (&record.Block{ZoneName: zone}); b.South() != want {
			t.Errorf("%q lies in the south: %v", zone, !want)
		}
	}
	if b := (&record.Block{ZoneName: "Australia/Darwin", Placed: true, Lat: 10}); b.South() {
		t.Error("the zone goes before the latitude")
	}
}

// TestRevivedAfterDeadAtSeasonsEnd: a graft seen growing later was not dead, and
// work on the stump begins nothing anew.
func TestRevivedAfterDeadAtSeasonsEnd(t *testing.T) {
	d := twoGrafts().On("2027-10-05", 9, 0, &record.SeasonsEnd{Word: "dead"}).
		On("2028-05-20", 9, 0, recordtest.Visit(record.Growing, record.Dead), &record.Gashed{Number: 1})
	if s := d.Fold(); len(s.Attempts) != 1 || s.Stage() != record.StagePushing {
		t.Errorf("%s with %d attempts", s.Stage(), len(s.Attempts))
	}
	bare := recordtest.DiaryOn(recordtest.Northern()).On("2027-05-04", 9, 0, &record.CutBack{Height: recordtest.Inches(30)})
	bare.Say(recordtest.DayOf("2027-10-05").At(9, 0, bare.B.Zone), &record.SeasonsEnd{Word: "dead"}) // as a join may bring it
	bare.On("2027-10-05", 9, 1, &record.Gashed{Number: 1})
	if s := bare.Fold(); s.Stage() != record.StageDraining {
		t.Errorf("without grafts it is %s", s.Stage())
	}
}

// TestCoverCorrectedInTheSecondOfWhite leaves the white as it is.
func TestCoverCorrectedInTheSecondOfWhite(t *testing.T) {
	d := recordtest.DiaryOn(recordtest.Northern()).Grafted("2027-05-04", "2027-05-12", record.Wrapped)
	sealed := d.Fold().Now().Sealed
	d.Say(sealed.At, &record.PaintedWhite{})
	d.Say(sealed.At, &record.Sealed{Cover: record.Bare}, sealed.ID)
	if got := d.Fold().Stage(); got != record.StagePainted {
		t.Errorf("the stump is %s", got)
	}
}

// TestNewLeaderIsBelowItsStake though the dead one stood above.
func TestNewLeaderIsBelowItsStake(t *testing.T) {
	d := twoGrafts().On("2027-06-10", 9, 0, &record.Staked{Height: recordtest.Inches(36)}).On("2027-06-20", 9, 0, &record.LeaderChosen{Slot: 1, Shoot: "upper"}).
		On("2027-06-28", 9, 0, &record.Tied{Shoot: recordtest.Inches(40)}).On("2027-07-01", 9, 0, recordtest.Visit(record.Dead, record.Growing))
	d.Say(recordtest.DayOf("2027-07-02").At(9, 0, d.B.Zone), &record.LeaderChosen{Slot: 2, Shoot: "upper"}, d.Fold().Answers((record.Event{Body: &record.LeaderChosen{}}).Question())...)
	if got := d.Fold().Stage(); got != record.StageLeader {
		t.Errorf("the stump is %s", got)
	}
}
