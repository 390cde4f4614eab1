package ui

import (
	"fmt"
	"testing"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/walk"
	"barkslip/ui/stump"
)

// mostRoundPresses is what a round of twenty stumps takes at most.
const mostRoundPresses = 100

// painted is a block of four rows of five, all grafted with three scions and
// painted on 4 May.
func painted(t *testing.T, now string) *driver {
	d := newDriver(t, now)
	d.plant("Hollow Lane", rows(4, 5)...)
	for _, p := range rows(4, 5) {
		d.sealed(tree(p[0], p[1]), "2027-04-20 09:00", "2027-05-04 08:30", "2027-05-04 09:00")
		d.did(tree(p[0], p[1]), "2027-05-04 11:30", &record.PaintedWhite{})
		d.did(tree(p[0], p[1]), "2027-05-07 11:30", &record.SealChecked{})
	}
	d.open()
	return d
}

// walkRound answers every stump of the round by keys until it is done.
func (d *driver) walkRound(keys func(step walk.StepID) []string) {
	d.t.Helper()
	d.press("g", "enter")
	for turns := 0; is[*stump.Screen](d); turns++ {
		if turns > 400 {
			d.t.Fatalf("the round does not end:\n%s", d.screen())
		}
		d.press(keys(d.step())...)
	}
	d.sees("That was the last of this round.")
}

// TestPressesOfTheFirstBuds counts a first look at the buds of twenty stumps with
// three grafts each: four in five push alike, the others each in its own way.
func TestPressesOfTheFirstBuds(t *testing.T) {
	d := painted(t, "2027-05-21 09:00")
	d.keys = 0
	d.walkRound(func(step walk.StepID) []string {
		switch {
		case step == walk.StepVisit && d.walk().ID().Tree == 5:
			return []string{"3", "2", "1"}
		case step == walk.StepVisit:
			return []string{"7"}
		case step == walk.StepStake && d.walk().Asked().Entry != nil:
			return []string{"6ft w", "enter"}
		case step == walk.StepSprouts:
			return []string{"0"}
		case step == walk.StepSproutLeaf:
			return []string{"2"}
		}
		return []string{"enter"}
	})
	t.Logf("first buds of 20 stumps with 3 grafts each: %d presses", d.keys)
	if d.keys > mostRoundPresses {
		t.Errorf("%d presses, at most %d", d.keys, mostRoundPresses)
	}
	for _, s := range d.root.x.Summaries(home) {
		for _, w := range s.Dues {
			if w.Open(d.now) {
				t.Errorf("%s is open still on %s", w.Kind, s.ID.Place())
			}
		}
	}
}

// TestPressesOfAnAugustRound counts rubbing, tying with the length and pinching
// on twenty stumps; that all are pinched is said once.
func TestPressesOfAnAugustRound(t *testing.T) {
	d := painted(t, "2027-08-03 09:00")
	for _, p := range rows(4, 5) {
		id := tree(p[0], p[1])
		found := []record.Finding{{Slot: 1, State: record.Growing}, {Slot: 2, State: record.Growing}, {Slot: 3, State: record.Growing}}
		d.did(id, "2027-05-21 09:00", &record.Visited{Found: found}, &record.Staked{Height: inches(72), Side: 270})
		d.did(id, "2027-06-28 09:00", &record.Visited{Found: found}, &record.LeaderChosen{Slot: 1, Shoot: "upper"}, &record.Tied{Shoot: inches(18)})
		d.did(id, "2027-07-14 09:00", &record.SproutsRubbed{Leaf: "some"}, &record.Pinched{}, &record.Tied{Shoot: inches(34)})
		d.did(id, "2027-07-14 09:10", &record.Twined{Loops: 2, Loop: inches(12), Stem: inches(4), Material: "natural"})
	}
	d.open()
	d.keys = 0
	d.press("g", "a")
	d.pickWord("pinched")
	d.press("enter", "esc")
	d.walkRound(func(step walk.StepID) []string {
		switch step {
		case walk.StepSprouts:
			return []string{fmt.Sprint(d.walk().ID().Tree % 3)}
		case walk.StepTie:
			return []string{"46", "enter"}
		}
		return []string{"enter"}
	})
	t.Logf("rubbed, tied with the length and pinched, 20 stumps: %d presses", d.keys)
	if d.keys > mostRoundPresses {
		t.Errorf("%d presses, at most %d", d.keys, mostRoundPresses)
	}
	for _, p := range rows(4, 5) {
		s, _ := d.book.Stump(tree(p[0], p[1]))
		a := s.Now()
		if len(a.Rubbed) != 2 || len(a.Ties) != 3 || !a.Ties[2].What.Shoot.Given() || len(a.Pinches) != 2 || !a.Rubbed[1].What.Told() {
			t.Errorf("%s: %d rubbed, %d tied, %d pinched", s.ID.Place(), len(a.Rubbed), len(a.Ties), len(a.Pinches))
		}
		if d, open := due.First(due.Of(s, d.root.x.Site()), d.now); open {
			t.Errorf("%s is open still on %s", d.Kind, s.ID.Place())
		}
	}
}

// TestPressesOfASealCheck counts the look at the seals of a row, all sound.
func TestPressesOfASealCheck(t *testing.T) {
	d := newDriver(t, "2027-05-07 09:00")
	d.plant("Hollow Lane", rows(1, 5)...)
	for _, p := range rows(1, 5) {
		d.sealed(tree(p[0], p[1]), "2027-04-20 09:00", "2027-05-04 08:30", "2027-05-04 09:00")
		d.did(tree(p[0], p[1]), "2027-05-04 11:30", &record.PaintedWhite{})
	}
	d.open()
	d.keys = 0
	d.press("r", "1", "enter")
	t.Logf("the seals of a row: %d presses", d.keys)
	for _, p := range rows(1, 5) {
		if s, _ := d.book.Stump(tree(p[0], p[1])); len(s.Now().SealChecks) != 1 || d.keys > 3 {
			t.Errorf("%s: %d looks at the seal, %d presses:\n%s", s.ID.Place(), len(s.Now().SealChecks), d.keys, d.screen())
		}
	}
}
