package weather

import (
	"testing"
	"time"

	"pgregory.net/rapid"
)

// The short way must give what the whole day's heat gives.
func TestWhiteBeforeIsThatOfTheHeat(t *testing.T) {
	hot := 0
	check := func(t *rapid.T) {
		d := someHeat(t)
		whole, err := Heat(d)
		if err != nil {
			t.Fatal(err)
		}
		by := whole.Sealed.Add(time.Duration(rapid.IntRange(-60, 1000).Draw(t, "by")) * time.Minute)
		got, err := WhiteBefore(d, by)
		if err != nil {
			t.Fatal(err)
		}
		want := whole.WhiteBefore
		if want != nil && !want.Before(by) {
			want = nil
		}
		if (got == nil) != (want == nil) || got != nil && !got.Equal(*want) {
			t.Fatalf("sealed %v, by %v: %v, want %v", whole.Sealed, by, got, want)
		}
		if got != nil {
			hot++
		}
		before, dry, err := WhiteOn(d)
		if err != nil {
			t.Fatal(err)
		}
		if want = whole.WhiteBefore; (before == nil) != (want == nil) || before != nil && !before.Equal(*want) || dry != whole.DryFirst {
			t.Fatalf("sealed %v: %v, dry first %v, want %v, %v", whole.Sealed, before, dry, want, whole.DryFirst)
		}
	}
	for tries := 0; hot == 0 && tries < 20; tries++ { // a hundred cool days in a row can be
		rapid.Check(t, check)
	}
	if hot == 0 {
		t.Error("none of the days was hot")
	}
}
