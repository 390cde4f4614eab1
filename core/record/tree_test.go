package record_test

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/record/recordtest"
)

// forked is a tree of two limbs: the first was cut back and gashed, the second
// added only.
func forked() *recordtest.Laptop {
	l := recordtest.NewLaptop("AB")
	l.At(1).Say(recordtest.May(1, 8, 0), &record.StumpAdded{})
	l.At(2).Say(recordtest.May(1, 8, 1), &record.StumpAdded{})
	l.At(1).Say(recordtest.May(1, 9, 0), &record.NurseJudged{Limbs: 2})
	l.Say(recordtest.May(1, 9, 1), &record.CutBack{Height: recordtest.Inches(36)})
	l.Say(recordtest.May(1, 9, 2), &record.Gashed{Number: 2})
	l.Say(recordtest.May(1, 9, 3), &record.Drilled{Number: 1})
	l.Say(recordtest.May(9, 9, 0), &record.Looked{Bleeding: record.Running, Slip: record.SlipsClean})
	return l
}

// TestTheTreesAnswersHoldForAllLimbs, the rest is each limb's own.
func TestTheTreesAnswersHoldForAllLimbs(t *testing.T) {
	l := forked()
	a := l.At(2).Fold().Now()
	if a.Nurse == nil || len(a.Gashes) != 1 || len(a.Holes) != 1 {
		t.Errorf("the other limb has nurse %v, gashes %v, holes %v", a.Nurse, a.Gashes, a.Holes)
	}
	if len(a.Looks) != 1 || a.Looks[0].What != (record.Looked{Slip: record.SlipsClean}) {
		t.Errorf("the other limb has the looks %v: its bark slips, its face was not seen", a.Looks)
	}
	if a.CutBack != nil {
		t.Error("the other limb is cut back")
	}
	l.At(2).Say(recordtest.May(10, 8, 0), &record.NurseLimbOff{Left: 1})
	l.Say(recordtest.May(10, 8, 1), &record.Looked{Bleeding: record.Dry})
	if first := l.At(1).Fold().Now(); first.LimbsLeft() != 1 || len(first.Looks) != 1 {
		t.Errorf("the first limb has %d limbs left and the looks %v", first.LimbsLeft(), first.Looks)
	}
}

// TestTakingBackReachesOverTheTree, in whatever order the events come.
func TestTakingBackReachesOverTheTree(t *testing.T) {
	l := forked()
	gashed := l.Events[4]
	l.At(1).Say(recordtest.May(9, 10, 0), &record.Withdrawn{Of: gashed.ID})
	l.At(2).Say(recordtest.May(9, 11, 0), &record.NurseJudged{Limbs: 1}, l.At(2).Fold().Answers("nurse-limbs")...)
	want := l.At(1).Fold()
	if len(want.Now().Gashes) != 0 || want.Now().Nurse.What.Limbs != 1 || len(want.Clashes) != 0 {
		t.Fatalf("gashes %v, nurse %v, clashes %v", want.Now().Gashes, want.Now().Nurse, want.Clashes)
	}
	for range 20 {
		events := slices.Clone(append(l.Events, l.Events[3:]...))
		rand.Shuffle(len(events), func(i, j int) { events[i], events[j] = events[j], events[i] })
		if diff := recordtest.Diff(want, record.Fold(want.ID, events)); diff != "" {
			t.Fatal(diff)
		}
	}
}

// TestUndoOnALimb takes back what was answered on the tree, but of an answer that
// holds here only in part none; last the adding of the limb.
func TestUndoOnALimb(t *testing.T) {
	l := forked()
	if e, ok := l.At(2).Fold().Undoable(); !ok || e.Body.Kind() != "drilled" {
		t.Errorf("undo takes back %v", e.Body)
	}
	l = recordtest.NewLaptop("AB")
	l.At(1).Say(recordtest.May(1, 8, 0), &record.StumpAdded{})
	added := l.At(2).Say(recordtest.May(1, 8, 1), &record.StumpAdded{})
	if e, ok := l.Fold().Undoable(); !ok || e.ID != added.ID {
		t.Errorf("undo takes back %v, not the adding", e.Body)
	}
	l.Say(recordtest.May(1, 9, 0), &record.CutBack{})
	l.Say(recordtest.May(1, 9, 1), &record.Withdrawn{Of: added.ID})
	if s := l.Fold(); !s.Standing() || !slices.Equal(s.Limbs, []uint8{1, 2}) {
		t.Errorf("a limb whose adding was taken back after an answer is gone: %v", s.Limbs)
	}
}

// TestTrunkWithLimbsIsNoStump: it needs nothing, and its history stays.
func TestTrunkWithLimbsIsNoStump(t *testing.T) {
	l := recordtest.NewLaptop("AB")
	l.At(1).Say(recordtest.May(1, 7, 0), &record.Gashed{Number: 2}) // before the tree is known
	l.At(0).Say(recordtest.May(1, 8, 0), &record.StumpAdded{Variety: "Lantern"})
	l.Say(recordtest.May(1, 8, 1), &record.Noted{Text: "forks low"})
	trunk, limb := l.Fold(), l.At(1).Fold()
	if !trunk.Divided() || trunk.Standing() || len(due.Of(trunk, recordtest.Northern())) != 0 {
		t.Errorf("divided %v, standing %v, due %v", trunk.Divided(), trunk.Standing(), due.Of(trunk, recordtest.Northern()))
	}
	if !limb.Standing() || limb.Trunk == nil || len(limb.Trunk.Notes) != 1 || len(due.Of(limb, recordtest.Northern())) == 0 {
		t.Errorf("the limb has the trunk %v and the dues %v", limb.Trunk, due.Of(limb, recordtest.Northern()))
	}
	id, says, err := limb.NextLimb()
	if err != nil || id.Place() != "4/17b" || says.Variety != "Lantern" {
		t.Errorf("next is %s %v: %v", id.Place(), says, err)
	}
}

// TestTheSameLimbAddedTwiceIsOne, by two laptops that know nothing of each other.
func TestTheSameLimbAddedTwiceIsOne(t *testing.T) {
	one := recordtest.NewLaptop("AB")
	one.Say(recordtest.May(1, 8, 0), &record.StumpAdded{Variety: "Brisk"})
	two := one.Apart("CD")
	for _, l := range []*recordtest.Laptop{one, two} {
		id, says, err := l.At(0).Fold().NextLimb()
		if err != nil {
			t.Fatal(err)
		}
		l.At(id.Limb).Say(recordtest.May(2, 8, 0), says)
	}
	one.Events = append(one.Events, two.Events...)
	if s := one.At(1).Fold(); !slices.Equal(s.Limbs, []uint8{1}) || len(s.Clashes) != 0 {
		t.Errorf("limbs %v, clashes %v", s.Limbs, s.Clashes)
	}
}

// TestLimbsThatCannotBe are refused in a sentence.
func TestLimbsThatCannotBe(t *testing.T) {
	l := recordtest.NewLaptop("AB")
	l.Say(recordtest.May(1, 8, 0), &record.ScionSet{Slot: 1, Checks: record.AllGood})
	if _, _, err := l.Fold().NextLimb(); err == nil || !strings.Contains(err.Error(), "grafts stand on the trunk of 4/17") {
		t.Errorf("on a grafted trunk: %v", err)
	}
	l.Say(recordtest.May(30, 8, 0), recordtest.Visit(record.Dead))
	if _, _, err := l.Fold().NextLimb(); err != nil {
		t.Errorf("after its grafts were lost: %v", err)
	}
	for n := range uint8(record.Letters) {
		l.At(n+1).Say(recordtest.May(31, 8, 0), &record.StumpAdded{})
	}
	if _, _, err := l.Fold().NextLimb(); err == nil || !strings.Contains(err.Error(), "letters") {
		t.Errorf("past z: %v", err)
	}
}

// TestRegraftedLimbKeepsTheTreesGashes made between its loss and its new cut, and
// is not begun anew by work at another limb.
func TestRegraftedLimbKeepsTheTreesGashes(t *testing.T) {
	l := recordtest.NewLaptop("AB")
	l.At(1).Say(recordtest.May(1, 8, 0), &record.ScionSet{Slot: 1, Checks: record.AllGood})
	l.Say(recordtest.May(20, 8, 0), recordtest.Visit(record.Dead))
	l.At(2).Say(recordtest.May(25, 8, 0), &record.Gashed{Number: 3})
	if s := l.At(1).Fold(); len(s.Attempts) != 1 {
		t.Fatalf("a gash at the other limb began attempt %d", len(s.Attempts))
	}
	l.Say(recordtest.May(25, 9, 0), &record.CutBack{})
	if s := l.Fold(); len(s.Attempts) != 2 || len(s.Now().Gashes) != 1 {
		t.Errorf("%d attempts, gashes %v", len(s.Attempts), s.Now().Gashes)
	}
}

// TestPlacesOfLimbs are read as they are said.
func TestPlacesOfLimbs(t *testing.T) {
	for text, want := range map[string]string{
		"4/17": "4/17", "4/17b": "4/17b", "4/17B": "4/17b", "4/17 b": "4/17b", "4/17/2": "4/17b", "4/17/b": "4/17b", "4/17/26": "4/17z", "4/17/27": "4/17/27",
	} {
		row, tree, limb, err := record.ParsePlace(text)
		id := record.StumpID{Block: recordtest.TheBlock, Row: row, Tree: tree, Limb: limb}
		if err != nil || id.Place() != want {
			t.Errorf("%q is read as %s: %v", text, id.Place(), err)
		}
		if again, err := record.ParseStumpID(id.String()); err != nil || again != id {
			t.Errorf("%s is read back as %v: %v", id, again, err)
		}
	}
	for _, wrong := range []string{"b", "4/b", "4/17bb", "4/17/0", "/b", "4/17é"} {
		if _, _, _, err := record.ParsePlace(wrong); err == nil {
			t.Errorf("%q was taken", wrong)
		}
	}
}
