package ui

import (
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/core/record"
	"barkslip/core/walk"
)

// TestWeatherReachesTheBlock: a clock that the day's heat brings forward is late
// on the block at once.
func TestWeatherReachesTheBlock(t *testing.T) {
	d := newDriver(t, "2027-05-20 10:30")
	d.plant("Hollow Lane", rows(1, 3)...)
	d.sealed(tree(1, 2), "2027-05-10 09:00", "2027-05-20 07:00", "2027-05-20 07:40")
	d.open()
	d.lacks("! late")
	d.press("d")
	d.pickWord("record today")
	d.press("60 112 0 0", "enter")
	d.sees("Recorded: weather", "1 LATE", "1 late")
}

// TestWholeRowKeepsToTheOrderOfTheWork: a row is not painted before it was
// sealed; where that holds for some, they are left out and told of.
func TestWholeRowKeepsToTheOrderOfTheWork(t *testing.T) {
	d := newDriver(t, "2027-05-20 13:30")
	d.plant("Hollow Lane", rows(1, 3)...)
	d.sealed(tree(1, 2), "2027-05-10 09:00", "2027-05-20 09:00", "2027-05-20 10:00")
	d.open()
	d.press("r")
	d.pickWord("painted white")
	d.press("07:00", "enter")
	d.sees("1/2 that cannot have been", "it was sealed only on 20 May 2027 10:00")
	if d.stages()[1] != record.StageSealed {
		t.Fatal("it was painted before it was sealed")
	}
	d.press("esc")
	d.sealed(tree(1, 1), "2027-05-10 09:00", "2027-05-20 06:00", "2027-05-20 06:30")
	d.open()
	d.press("r")
	d.pickWord("painted white")
	d.press("09:40", "enter")
	d.sees("1 stump, 09:40. Left out 2: 1/2 that cannot have been")
	d.wantStages(record.StagePainted, record.StageSealed, record.StageStanding)
}

// TestRoundTakesBackItsOwn: u on a round takes back what was answered on it, the
// last first, and never an answer from before or of another block.
func TestRoundTakesBackItsOwn(t *testing.T) {
	d := newDriver(t, "2027-05-20 12:45")
	d.plant("Hollow Lane", rows(1, 3)...)
	for n := 1; n <= 2; n++ {
		d.sealed(tree(1, n), "2027-05-10 09:00", "2027-05-20 09:00", "2027-05-20 10:00")
	}
	d.open()
	d.press("g", "u")
	d.sees("Nothing more was answered since the program was opened")
	d.press("enter", "1") // painted, and on to the next
	d.wait(time.Second)
	d.press("1", "u")
	d.sees("Took back: 1/2, painted white")
	d.press("esc", "u")
	d.sees("Took back: 1/1, painted white")
	d.press("u")
	d.sees("Nothing more was answered since the program was opened")
	d.wantStages(record.StageSealed, record.StageSealed, record.StageStanding)
}

// TestRoundGrowsWithTheClock shows what comes due while it is up.
func TestRoundGrowsWithTheClock(t *testing.T) {
	d := newDriver(t, "2027-05-20 11:30")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.sealed(tree(1, 1), "2027-05-10 09:00", "2027-05-20 08:00", "2027-05-20 09:00")
	d.sealed(tree(1, 2), "2027-05-10 09:00", "2027-05-20 09:00", "2027-05-20 10:00")
	d.open()
	d.press("g", "1")
	d.lacks("1/2")
	d.wait(31 * time.Minute)
	d.root.Update(tick{})
	d.sees("1/1", "1/2")
}

// TestWoodTakenBackIsNoHabit: the next stump is not offered wood that was taken
// back.
func TestWoodTakenBackIsNoHabit(t *testing.T) {
	d := newDriver(t, "2027-04-26 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.toWood()
	d.press("9", "Harvest", "enter", "u")
	d.lacks("as before")
	if h := d.root.x.Habit(tree(1, 2)); h.Wood != nil {
		t.Errorf("the next stump is offered %s", h.Wood.Variety)
	}
}

// TestAnswerOfTwoIsTakenBackWhole: dead at season's end is one answer.
func TestAnswerOfTwoIsTakenBackWhole(t *testing.T) {
	d := newDriver(t, "2027-10-05 09:00")
	d.plant("Hollow Lane", rows(1, 1)...)
	d.sealed(tree(1, 1), "2027-05-10 09:00", "2027-05-20 09:00", "2027-05-20 10:00")
	d.did(tree(1, 1), "2027-05-20 12:30", &record.PaintedWhite{})
	d.open()
	d.press("enter")
	before := len(d.stump().Live)
	for n := 0; d.step() != walk.StepSeason && n < 40; n++ {
		d.send(tea.KeyMsg{Type: tea.KeyTab})
	}
	d.choose("dead")
	d.sees("That ends all 3 grafts here.")
	d.press("5")
	if !d.stump().Now().AllDead() {
		t.Fatalf("not dead:\n%s", d.screen())
	}
	d.press("u")
	if s := d.stump(); len(s.Live) != before || len(s.Now().Seasons) != 0 {
		t.Errorf("%d answers stand, %d before", len(s.Live), before)
	}
	d.press("U")
	if s := d.stump(); !s.Now().AllDead() || len(s.Now().Seasons) != 1 {
		t.Error("putting back does not restore both")
	}
}

// TestDigitsOnAStumpAreAnswers: a place is typed after the slash and nowhere
// else; what a digit answered before it stands.
func TestDigitsOnAStumpAreAnswers(t *testing.T) {
	d := newDriver(t, "2027-05-04 08:00")
	d.plant("Hollow Lane", append(rows(2, 2), [2]int{12, 1})...)
	d.did(tree(1, 1), "2027-04-26 09:00", cut()...)
	d.open()
	d.press("enter")
	d.on(walk.StepBleeding)
	d.burst("2/2/1")
	d.press("enter")
	if id := d.walk().ID(); id != tree(2, 1) {
		t.Fatalf("went to %s:\n%s", id.Place(), d.screen())
	}
	s, err := d.book.Stump(tree(1, 1))
	if err != nil || s.Now().Looks == nil {
		t.Errorf("the 2 did not answer: %v", err)
	}
}

// TestPlaces types a place in each way there is, on every screen that goes to
// one.
func TestPlaces(t *testing.T) {
	for _, way := range [][]string{nil, {"enter"}, {"g"}} {
		d := newDriver(t, "2027-05-04 08:00")
		d.plant("Hollow Lane", rows(5, 20)...)
		d.append(record.Event{At: d.now, Hand: "RK", Stump: record.StumpID{Block: home, Row: 4, Tree: 17, Limb: 2}, Body: &record.StumpAdded{}})
		d.did(tree(1, 1), "2027-04-20 09:00", cut()...)
		d.open()
		d.press(way...)
		for _, c := range []struct{ typed, want string }{{"17", "1/17"}, {"4 17", "4/17b"}, {"3", "4/3"}, {"4/17/2", "4/17b"},
			{"4/17B", "4/17b"}, {"17b", "4/17b"}, {"2/1", "2/1"}} {
			d.press("/")
			d.burst(c.typed)
			d.press("enter")
			if id := d.walk().ID(); id.Place() != c.want {
				t.Errorf("%v, %q: on %s", way, c.typed, id.Place())
			}
		}
	}
}

// TestCorrectionsKeepTheOrderOfTheWork: a cut-back corrected with an earlier time
// set, and a split measured later, leave the graft where it stands.
func TestCorrectionsKeepTheOrderOfTheWork(t *testing.T) {
	d := newDriver(t, "2027-05-20 13:00")
	d.plant("Hollow Lane", rows(1, 1)...)
	d.sealed(tree(1, 1), "2027-05-10 09:00", "2027-05-20 09:00", "2027-05-20 10:00")
	d.did(tree(1, 1), "2027-05-20 12:30", &record.PaintedWhite{})
	d.open()
	d.press("enter", "t", "30", "enter")
	d.correct(walk.StepHeight)
	d.press("40", "enter")
	if s := d.stump(); len(s.Attempts) != 1 || s.Stage() != record.StagePainted || s.Now().CutBack.What.Height.Inches() != 40 {
		t.Fatalf("%s with %d attempts:\n%s", s.Stage(), len(s.Attempts), d.screen())
	}
	d.press("t")
	set := d.stump().Now().SetAt()
	d.clock("2027-07-20 09:00")
	d.correct(walk.StepScion)
	d.press("7", "enter")
	for n := 0; d.step() != walk.StepSplit && n < 40; n++ {
		d.send(tea.KeyMsg{Type: tea.KeyShiftTab})
	}
	d.press("2in", "enter")
	if s := d.stump(); !s.Now().SetAt().Equal(set) || s.Now().Graft(3).Set.What.Split.Inches() != 2 {
		t.Errorf("set at %s, %s before; split %v", s.Now().SetAt(), set, s.Now().Graft(3).Set.What.Split)
	}
}

// TestMeasureCorrectedAfterTheScions leaves slots and scions as they were set.
func TestMeasureCorrectedAfterTheScions(t *testing.T) {
	d := newDriver(t, "2027-05-20 13:00")
	d.plant("Hollow Lane", rows(1, 1)...)
	d.sealed(tree(1, 1), "2027-05-10 09:00", "2027-05-20 09:00", "2027-05-20 10:00")
	d.open()
	d.press("enter")
	d.correct(walk.StepMeasure)
	d.press("3.7 3", "enter")
	s := d.stump()
	if s.Now().Measured.What.Across.Inches() != 3.7 || !s.Now().Measured.At.Equal(at("2027-05-20 09:00")) {
		t.Errorf("measured %v at %s", s.Now().Measured.What, s.Now().Measured.At)
	}
	for _, k := range d.walk().Case().Knots() {
		if k.Step.ID == walk.StepSlots && k.Answer == "" {
			t.Errorf("the slots stand open:\n%s", d.screen())
		}
	}
}

// TestStoryNamesWhatWasPutBack tells what was taken back, and put back.
func TestStoryNamesWhatWasPutBack(t *testing.T) {
	d := newDriver(t, "2027-05-20 13:00")
	d.plant("Hollow Lane", rows(1, 1)...)
	d.sealed(tree(1, 1), "2027-05-10 09:00", "2027-05-20 09:00", "2027-05-20 10:00")
	d.open()
	d.press("enter", "u", "U", "j")
	d.sees("took back: sealed, wrapped", "put back: sealed, wrapped")
}

// TestPaintTheOneUnderTheCursor: n opens the stump at hand where it is to be
// painted first.
func TestPaintTheOneUnderTheCursor(t *testing.T) {
	d := newDriver(t, "2027-05-20 12:30")
	d.plant("Hollow Lane", rows(1, 3)...)
	d.sealed(tree(1, 1), "2027-05-10 09:00", "2027-05-20 09:00", "2027-05-20 10:00")
	d.did(tree(1, 2), "2027-05-10 09:00", cut()...)
	d.open()
	d.press("n")
	if id := d.walk().ID(); id != tree(1, 1) {
		t.Errorf("on %s, want the one to be painted", id.Place())
	}
}
