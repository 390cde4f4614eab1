package due

import (
	"testing"
	"time"

	"barkslip/core/record"
	"barkslip/core/record/recordtest"
)

// twoGrafts is a block's stump with two scions set, pushing when first visited.
func twoGrafts() *recordtest.Diary {
	d := recordtest.DiaryOn(recordtest.Northern())
	return d.On("2027-05-04", 9, 0, &record.CutBack{}, &record.SlotsMarked{Slots: []record.Slot{{Bearing: 0}, {Bearing: 180}}},
		&record.ScionSet{Slot: 1, Checks: record.AllGood}, &record.ScionSet{Slot: 2, Checks: record.AllGood}, &record.Sealed{Cover: record.Wrapped}, &record.PaintedWhite{}).
		On("2027-05-30", 16, 0, recordtest.Visit(record.Pushing, record.Pushing))
}

// TestTakenCountsDaysAndEachGraft: the thirtieth day counts whatever the hour,
// the day before does not, and a visit tells only of the grafts it saw.
func TestTakenCountsDaysAndEachGraft(t *testing.T) {
	for _, c := range []struct {
		name         string
		then         func(d *recordtest.Diary)
		taken, known int
		standing     int
	}{
		{"29 days", func(d *recordtest.Diary) { d.On("2027-06-28", 23, 0, recordtest.Visit(record.Growing, record.Growing)) }, 0, 0, 0},
		{"30 days, earlier in the day", func(d *recordtest.Diary) { d.On("2027-06-29", 9, 0, recordtest.Visit(record.Growing, record.Growing)) }, 2, 2, 2},
		{"one seen", func(d *recordtest.Diary) { d.On("2027-06-30", 9, 0, recordtest.Visit(record.Growing)) }, 1, 1, 1},
		{"one dead", func(d *recordtest.Diary) { d.On("2027-06-30", 9, 0, recordtest.Visit(record.Growing, record.Dead)) }, 1, 2, 1},
		{"failed", func(d *recordtest.Diary) { d.On("2027-06-10", 9, 0, &record.Failed{Cause: "wind"}) }, 0, 2, 0},
		{"took, and one was lost later", func(d *recordtest.Diary) {
			d.On("2027-06-30", 9, 0, recordtest.Visit(record.Growing, record.Growing)).On("2027-08-30", 9, 0, recordtest.Visit(record.Growing, record.Dead))
		}, 2, 2, 1},
		{"took, and all failed later", func(d *recordtest.Diary) {
			d.On("2027-06-30", 9, 0, recordtest.Visit(record.Growing, record.Growing)).On("2028-08-30", 9, 0, &record.Failed{Cause: "wind"})
		}, 2, 2, 0},
		{"known by the end of the season alone", func(d *recordtest.Diary) { d.On("2027-10-02", 9, 0, &record.SeasonsEnd{Alive: 2, Word: "fair"}) }, 2, 2, 2},
		{"dead by the end of the season", func(d *recordtest.Diary) { d.On("2027-10-02", 9, 0, &record.SeasonsEnd{Word: "dead"}) }, 0, 2, 0},
		{"not moved yet on the thirtieth day", func(d *recordtest.Diary) { d.On("2027-06-30", 9, 0, recordtest.Visit(record.Growing, record.NoChange)) }, 1, 1, 1},
		{"never moved when the season ended", func(d *recordtest.Diary) {
			d.On("2027-06-30", 9, 0, recordtest.Visit(record.Growing, record.NoChange)).On("2027-10-02", 9, 0, &record.SeasonsEnd{Alive: 1, Word: "fair"})
		}, 1, 2, 1},
	} {
		d := twoGrafts()
		c.then(d)
		if taken, known := d.Fold().Now().Take(d.B); taken != c.taken || known != c.known {
			t.Errorf("%s: %d of %d took, want %d of %d", c.name, taken, known, c.taken, c.known)
		}
		standing, a := 0, d.Fold().Now()
		for _, g := range a.Grafts {
			if a.OutcomeOf(g, d.B).Standing {
				standing++
			}
		}
		if standing != c.standing {
			t.Errorf("%s: %d stand, want %d", c.name, standing, c.standing)
		}
	}
	// The visit that closes the due is the visit that is counted.
	d := twoGrafts().On("2027-06-29", 9, 0, recordtest.Visit(record.Growing, record.Growing))
	if _, open := dueOf(d, ConfirmTake); open {
		t.Error("a visit on the thirtieth day leaves the due open")
	}
}

func TestByWords(t *testing.T) {
	now := time.Date(2027, 5, 20, 10, 0, 0, 0, recordtest.NewYork)
	for day, want := range map[string]string{"2027-05-18": "18 May", "2027-05-19": "19 May", "2027-05-20": "20 May", "2027-05-21": "21 May", "2026-12-31": "31 Dec 2026"} {
		d := Due{Kind: Stake, By: EndOf(recordtest.DayOf(day), recordtest.NewYork)}
		if got := d.ByWords(now, recordtest.NewYork); got != want {
			t.Errorf("by %s is shown as %s, want %s", day, got, want)
		}
	}
	if got := (Due{Kind: White, By: now.Add(90 * time.Minute)}).ByWords(now, recordtest.NewYork); got != "11:30" {
		t.Errorf("white by 11:30 is shown as %s", got)
	}
}

// TestTooShortIsNotHeadedBack: cut to strong buds and regrown, the leader has
// its stake still to pass.
func TestTooShortIsNotHeadedBack(t *testing.T) {
	d := twoGrafts().On("2027-06-20", 9, 0, &record.LeaderChosen{Slot: 1, Shoot: "upper"}).On("2028-03-10", 9, 0, &record.HeadedBack{Short: true})
	if got := d.Fold().Stage(); got != record.StageLeader {
		t.Errorf("too short is %s, want %s", got, record.StageLeader)
	}
	if got := d.On("2029-03-10", 9, 0, &record.HeadedBack{Height: recordtest.Inches(48)}).Fold().Stage(); got != record.StageHeadedBack {
		t.Errorf("headed back is %s, want %s", got, record.StageHeadedBack)
	}
}

// TestLeaderChosenInTheSameSecond stands though its break was put down with it.
func TestLeaderChosenInTheSameSecond(t *testing.T) {
	d := twoGrafts().On("2027-06-20", 9, 0, &record.LeaderChosen{Slot: 1, Shoot: "upper"})
	at := recordtest.DayOf("2027-07-01").At(9, 0, recordtest.NewYork)
	d.Say(at, &record.LeaderBroken{Cause: "wind"})
	if _, lost := d.Fold().Now().LeaderLost(); !lost {
		t.Error("a break with none promoted leaves a leader")
	}
	d.Say(at, &record.LeaderChosen{Slot: 2, Shoot: "upper"}, d.Fold().Answers((record.Event{Body: &record.LeaderChosen{}}).Question())...)
	if _, lost := d.Fold().Now().LeaderLost(); lost {
		t.Error("the leader chosen after the break is lost")
	}
}

// TestGivenAsOneGoesAsOne: taking back an answer of two events finds the other,
// and putting it back restores both.
func TestGivenAsOneGoesAsOne(t *testing.T) {
	d := twoGrafts()
	d.Odd("2027-10-05", 9, 0, &record.SeasonsEnd{Word: "dead"})
	at := recordtest.DayOf("2027-10-05").At(9, 0, recordtest.NewYork)
	d.Say(at, recordtest.Visit(record.Dead, record.Dead))
	s := d.Fold()
	e, _ := s.Undoable()
	with := s.GivenWith(e)
	if e.Body.Kind() != "visited" || len(with) != 1 || with[0].Body.Kind() != "seasons-end" {
		t.Fatalf("%s is taken back with %v", e.Body.Kind(), with)
	}
	d.Say(at.Add(time.Minute), &record.Withdrawn{Of: e.ID})
	d.Say(at.Add(time.Minute), &record.Withdrawn{Of: with[0].ID})
	if a := d.Fold().Now(); a.AllDead() || len(a.Seasons) != 0 {
		t.Fatal("something of the answer is left")
	}
	taken, answers := d.Fold().Redoable()
	if len(taken) != 2 || answers[0].Body.Kind() != "seasons-end" || answers[1].Body.Kind() != "visited" {
		t.Fatalf("putting back restores %v", answers)
	}
	for _, w := range taken {
		d.Say(at.Add(2*time.Minute), &record.Withdrawn{Of: w.ID})
	}
	if a := d.Fold().Now(); !a.AllDead() || len(a.Seasons) != 1 {
		t.Error("putting back does not restore both")
	}
	if s := twoGrafts().Fold(); len(s.GivenWith(s.Live[len(s.Live)-1])) != 0 {
		t.Error("a visit of its own is taken back with something else")
	}
}
