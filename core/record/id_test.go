package record

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestStumpIDRoundTrips(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawn(t)
		s := StumpID{p.id(), uint16(1 + p(MaxRow)), uint16(1 + p(MaxTree)), uint8(p(MaxLimb + 1))}
		if got, err := ParseStumpID(s.String()); err != nil || got != s {
			t.Fatalf("%s became %v, %v", s, got, err)
		}
	})
	if got, err := ParseStumpID(""); err != nil || got != NoStump || NoStump.String() != "" {
		t.Errorf("no stump became %v, %v", got, err)
	}
}

func TestParsePlaceRefuses(t *testing.T) {
	for _, bad := range []string{"", "4", "4/", "/17", "4/17/", "0/1", "1/0", "1/1/0", "10000/1", "1/10000", "1/1/100", "a/b", "4/17/2/1", "-4/17", "4.5/17"} {
		if row, tree, limb, err := ParsePlace(bad); err == nil {
			t.Errorf("%q became %d/%d/%d", bad, row, tree, limb)
		}
	}
}

// Up one row and down the next.
func TestWalkingOrder(t *testing.T) {
	at := func(row, tree uint16, limb uint8) StumpID { return StumpID{theBlock, row, tree, limb} }
	want := []StumpID{at(1, 1, 0), at(1, 2, 0), at(1, 2, 1), at(1, 3, 0), at(2, 3, 0), at(2, 2, 1), at(2, 2, 2), at(2, 1, 0), at(3, 1, 0)}
	got := slices.Clone(want)
	slices.SortFunc(got, StumpID.Compare)
	slices.SortFunc(got, StumpID.WalkCompare)
	if !slices.Equal(got, want) {
		t.Errorf("walked %v", got)
	}
}
