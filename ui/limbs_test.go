package ui

import (
	"slices"
	"testing"

	"barkslip/core/record"
	"barkslip/ui/stump"
)

func limb(row, on, n int) record.StumpID {
	id := tree(row, on)
	id.Limb = uint8(n)
	return id
}

func (d *driver) stumps() (places []string) {
	d.t.Helper()
	sums, err := d.book.Summaries(home)
	if err != nil {
		d.t.Fatal(err)
	}
	for _, s := range sums {
		places = append(places, s.ID.Place())
	}
	return places
}

func (d *driver) stands(want ...string) {
	d.t.Helper()
	if got := d.stumps(); !slices.Equal(got, want) {
		d.t.Fatalf("the stumps are %v, not %v:\n%s", got, want, d.screen())
	}
}

// TestLimbsFromBlock: a key adds limbs to the tree under the cursor, and u takes
// each back until the trunk is the stump again.
func TestLimbsFromBlock(t *testing.T) {
	d := newDriver(t, "2027-05-04 08:00")
	d.plant("Hollow Lane", rows(1, 3)...)
	d.open()
	d.press("right", "y")
	d.sees("Limb a added to 1/2", "1/2a", "3 stumps")
	d.press("y")
	d.sees("1/2b", "4 stumps")
	d.stands("1/1", "1/2a", "1/2b", "1/3")
	d.press("u")
	d.sees("Took back: limb b of 1/2 added")
	d.stands("1/1", "1/2a", "1/3")
	d.press("u")
	d.stands("1/1", "1/2", "1/3")
	d.press("U")
	d.stands("1/1", "1/2a", "1/3")
}

// TestLimbsFromStump: the same on a stump, which goes to the limb and back; what
// is the tree's is asked at one limb only, and the trunk's story stays.
func TestLimbsFromStump(t *testing.T) {
	d := newDriver(t, "2027-05-04 08:00")
	d.plant("Hollow Lane", rows(1, 1)...)
	d.did(tree(1, 1), "2027-05-03 08:00", &record.Noted{Text: "forks low"})
	d.open()
	d.press("enter", "y")
	d.sees("row 1 tree 1 limb a", "Limb a added to 1/1")
	d.press("y")
	d.sees("row 1 tree 1 limb b")
	d.press("u")
	d.sees("row 1 tree 1 limb a", "Took back: limb b of 1/1 added")
	d.press("y", "5")
	d.sees("Recorded: nurse limb: the other limb")
	d.press("36", "enter", "1")
	d.press("/", "1/1a", "enter")
	d.sees("row 1 tree 1 limb a")
	if s := d.stump(); s.Now().Nurse == nil || len(s.Now().Gashes) != 1 || s.Now().CutBack != nil {
		t.Fatalf("limb a has nurse %v, gashes %v, cut %v", s.Now().Nurse, s.Now().Gashes, s.Now().CutBack)
	}
	d.sees("At what height")
	d.press("36", "enter")
	if is[*stump.Screen](d) && d.stump().Now().CutBack == nil {
		t.Fatalf("limb a was not cut back:\n%s", d.screen())
	}
	d.press("/", "1/1a", "enter", "j")
	d.sees("forks low (on the trunk)", "(at limb b)")
	d.press("esc", "esc")
	d.stands("1/1a", "1/1b")
}

// TestSistersAreKeptInStep: an answer at one limb makes the summaries of the
// others anew with it, and taking it back from there reaches it.
func TestSistersAreKeptInStep(t *testing.T) {
	d := newDriver(t, "2027-05-20 08:00")
	d.plant("Hollow Lane", rows(1, 1)...)
	for n := 1; n <= 2; n++ {
		d.did(limb(1, 1, n), "2027-05-04 09:00", &record.StumpAdded{}, &record.CutBack{Height: inches(42)}, &record.Looked{Bleeding: record.Running, Slip: record.SlipsClean})
	}
	before := d.dues(limb(1, 1, 2))
	d.did(limb(1, 1, 1), "2027-05-20 07:55", &record.Gashed{Number: 2})
	if after := d.dues(limb(1, 1, 2)); after == before {
		t.Errorf("a gash at 1/1a left 1/1b with %s", after)
	}
	d.open()
	d.press("/", "1/1b", "enter", "u")
	d.sees("Took back: 2 gashes")
	if after := d.dues(limb(1, 1, 2)); after != before {
		t.Errorf("taken back, 1/1b has %s, before %s", after, before)
	}
}

// dues are the first dues of a stump in words.
func (d *driver) dues(id record.StumpID) (out string) {
	sums, err := d.book.Summaries(home)
	if err != nil {
		d.t.Fatal(err)
	}
	for _, s := range sums {
		for _, due := range s.Dues {
			if s.ID == id {
				out += due.Kind.String() + " " + due.Opens.String() + "; "
			}
		}
	}
	return out
}

// TestNoLimbOnAGraftedTrunk says why.
func TestNoLimbOnAGraftedTrunk(t *testing.T) {
	d := newDriver(t, "2027-05-20 13:00")
	d.plant("Hollow Lane", rows(1, 1)...)
	d.sealed(tree(1, 1), "2027-05-10 09:00", "2027-05-20 09:00", "2027-05-20 10:00")
	d.open()
	for range 2 {
		d.press("y")
		d.sees("grafts stand on the trunk of 1/1")
		d.press("enter")
	}
	d.stands("1/1")
}

// TestRowAnswerIsGivenOnceATree where it is the tree's.
func TestRowAnswerIsGivenOnceATree(t *testing.T) {
	d := newDriver(t, "2027-05-20 13:00")
	d.plant("Hollow Lane", rows(1, 1)...)
	for n := 1; n <= 2; n++ {
		d.did(limb(1, 1, n), "2027-05-20 12:30", &record.StumpAdded{}, &record.NurseJudged{Other: true}, &record.CutBack{Height: inches(42)})
	}
	d.open()
	d.press("r")
	d.sees("gashed 1 of 2")
	d.press("1")
	d.sees("Left out 1: 1/1b has it with 1/1a.")
	d.press("enter")
	s, err := d.book.Stump(limb(1, 1, 2))
	if err != nil || len(s.Now().Gashes) != 1 {
		t.Errorf("limb b has the gashes %v: %v", s.Now().Gashes, err)
	}
}
