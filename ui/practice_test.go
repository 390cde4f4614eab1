package ui

import (
	"crypto/rand"
	"fmt"
	"strings"
	"testing"
	"time"

	"barkslip/core/practice"
	"barkslip/core/record"
	"barkslip/core/walk"
	"barkslip/store"
	"barkslip/ui/part"
	screens "barkslip/ui/practice"
	"barkslip/ui/stump"
)

// practising is practice alone, of RK, from a seed on.
func practising(t *testing.T, seed uint64) (*driver, store.Learners) {
	d := &driver{t: t, now: at("2027-05-04 08:00"), hand: time.Unix(0, 0)}
	kept := store.Learners{Folder: t.TempDir()}
	d.root = newRoot(Options{
		Book: practice.NoBook(), Now: func() time.Time { return d.now }, Tick: func() time.Time { return d.hand }, Random: rand.Reader,
		Prefs: Prefs{Hand: "RK"}, LocalZone: "America/New_York", Zones: time.LoadLocation, Learners: kept, Practice: &part.PracticeFirst{Only: true, Seed: &seed},
	})
	d.size(80, 24)
	return d, kept
}

// A case is answered by one key, judged, explained and kept.
func TestACaseByKeys(t *testing.T) {
	d, kept := practising(t, 5)
	d.sees("Practice", "RK, draining", "1 to 4 answers.")
	d.press("9")
	d.sees("does nothing here")
	d.press("1")
	d.sees("best", "next case", "why")
	d.press("w")
	d.sees("Why", "Because")
	d.press("esc", "esc")
	d.sees("Next:", "skill", "right first time")
	of, _, err := kept.Learner("RK")
	if err != nil || len(of.All()) != 1 {
		t.Fatalf("%d kept, %v", len(of.All()), err)
	}
}

// signOffBy goes through a sign-off by keys and gives the verdict.
func signOffBy(t *testing.T, seed uint64, answer func(practice.Case) int) *practice.SignOff {
	t.Helper()
	d, kept := practising(t, seed)
	d.press("esc", "1", "enter")
	for n := 0; ; n++ {
		of, _, err := kept.Learner("RK")
		if err != nil || n > 60 {
			t.Fatalf("%d cases, %v:\n%s", n, err, d.screen())
		}
		open := of.Open()
		if open == nil {
			d.sees("Sign-off of 4 May 2027")
			return of.Last()
		}
		d.lacks("w why", "(best)", "Not right", "Right:")
		if n == 7 { // it is left and gone on with
			d.press("esc", "1")
			d.sees("7 of 40 answered")
			d.press("enter")
		}
		d.press(string(rune('1' + answer(open.Case()))))
	}
}

// By keys as in the rules: all right is signed off, all but one skill is told which.
func TestSignOffByKeys(t *testing.T) {
	if s := signOffBy(t, 11, practice.Case.Best); !s.Passed() {
		t.Error(s.Verdict())
	}
	s := signOffBy(t, 12, func(c practice.Case) int {
		if c.Skill == practice.Seal {
			return (c.Best() + 1) % len(c.Choices)
		}
		return c.Best()
	})
	if weak := s.Weak(); s.Passed() || len(weak) != 1 || weak[0] != practice.Seal || !strings.Contains(s.Verdict(), "seal and white") {
		t.Errorf("%v, %s", weak, s.Verdict())
	}
	if s := signOffBy(t, 13, func(practice.Case) int { return 0 }); s.Passed() {
		t.Error(s.Verdict())
	}
}

// lifeReplies is what one who sees all go well answers, where no answer is likely.
var lifeReplies = map[walk.StepID][]string{
	walk.StepBleeding: {"1"}, walk.StepSlip: {"1"}, walk.StepNewFace: {"1"}, walk.StepMeasure: {"3.4", "enter"}, walk.StepSeal: {"2"},
	walk.StepSealCheck: {"1"}, walk.StepVisit: {"8"}, walk.StepSprouts: {"2"}, walk.StepSproutLeaf: {"2"}, walk.StepStake: {"6ft w", "enter"},
	walk.StepLeader: {"1"}, walk.StepLeaderShoot: {"1"}, walk.StepTwine: {"30in 9in", "enter"}, walk.StepTwineKind: {"1"}, walk.StepTwineCheck: {"1"}, walk.StepSeason: {"1"},
	walk.StepHeadBack: {"1"}, walk.StepUntie: {"1"}, walk.StepWhite: {"1"},
}

// TestAWholeLifeByKeys walks one stump on the screens from standing to untied.
func TestAWholeLifeByKeys(t *testing.T) {
	d, _ := practising(t, 3)
	d.press("esc", "2")
	d.sees("made up: A whole life", "How many limbs stay")
	life := d.root.x.Book.(*practice.Life)
	from, shoot := d.keys, 6
	for !life.Over() {
		if d.keys > 2000 {
			t.Fatalf("no end by %s:\n%s", life.Now(), d.screen())
		}
		if !is[*stump.Screen](d) {
			t.Fatalf("the stump was left at %s:\n%s", life.Now(), d.screen())
		}
		ask, before := d.walk().Asked(), len(life.Folded().List())
		events, _ := life.Events(life.Begun)
		switch reply := lifeReplies[ask.Step.ID]; {
		case ask.Until != nil && ask.Until.After(life.Now()), ask.Step.ID == walk.StepRest, ask.Step.ID == walk.StepEnded, ask.Step.ID == walk.StepWait:
			d.press(",")
		case ask.Step.ID == walk.StepTie:
			shoot = min(shoot+9, 108)
			d.press(fmt.Sprint(shoot, "in"), "enter")
		case reply != nil:
			d.press(reply...)
		default:
			d.press("enter")
		}
		if after, _ := life.Events(life.Begun); len(after) == len(events) && before == len(life.Folded().List()) {
			d.press(",")
		}
	}
	s, err := life.Stump(life.Begun)
	if err != nil || s.Stage() != record.StageUntied {
		t.Fatalf("it ends %v, %v:\n%s", s.Stage(), err, d.screen())
	}
	t.Logf("%d keys, to %s", d.keys-from, life.Now().Format("2 January 2006"))
	d.press(";")
	if !is[*screens.Screen](d) {
		t.Errorf("the key for practice leads to\n%s", d.screen())
	}
}
