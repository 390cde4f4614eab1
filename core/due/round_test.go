package due

import (
	"slices"
	"testing"
	"time"

	"barkslip/core/record"
	"barkslip/core/record/recordtest"
)

// TestRoundIsInTheOrderOfTheNext: white late or running out, scions to finish
// and grafts to seal, faces whose wait is over, white open, then the rest, each
// up one row and down the next.
func TestRoundIsInTheOrderOfTheNext(t *testing.T) {
	now := recordtest.May(20, 12, 0)
	in := func(from, to time.Duration) Due {
		return Due{Opens: now.Add(from), By: now.Add(to), Since: now.Add(from - 15*time.Minute)}
	}
	at := func(row, tree uint16, kind Kind, d Due) Summary {
		id := record.StumpID{Block: recordtest.TheBlock, Row: row, Tree: tree}
		d.Stump, d.Kind = id, kind
		return Summary{ID: id, Dues: []Due{d}}
	}
	face := in(-time.Minute, time.Hour)
	face.Hint = againLook
	sums := []Summary{
		at(1, 1, Sprouts, in(-time.Hour, time.Hour)), at(1, 2, White, in(-time.Hour, 45*time.Minute)), at(1, 3, LookAgain, face), at(1, 4, Tie, in(time.Hour, 2*time.Hour)),
		at(2, 1, Seal, in(-time.Minute, 29*time.Minute)), at(2, 2, White, in(-2*time.Hour, -time.Hour)), at(2, 3, Sprouts, in(-time.Hour, time.Hour)), at(2, 4, Sprouts, in(-time.Hour, time.Hour)),
		at(3, 1, White, in(-time.Hour, 20*time.Minute)), at(3, 2, Finish, in(-time.Minute, time.Hour)), at(3, 3, CutBack, in(-time.Hour, time.Hour)), at(3, 4, CutBack, in(-time.Hour, time.Hour)),
	}
	places := func(ask Asked) (out []string) {
		for _, c := range Round(sums, ask) {
			out = append(out, c.Stump.Place())
		}
		return out
	}
	want := []string{"2/2", "3/1", "2/1", "3/2", "1/3", "1/2", "1/1", "2/4", "2/3", "3/3", "3/4"}
	if got := places(Now(now)); !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	ask := Now(now)
	ask.CutBack = 1
	if got := places(ask); !slices.Equal(got, want[:len(want)-1]) {
		t.Errorf("one a day: %v, want %v", got, want[:len(want)-1])
	}
	ask.Keep = func(d Due) bool { return d.Kind == Sprouts }
	if got := places(ask); !slices.Equal(got, []string{"1/1", "2/4", "2/3"}) {
		t.Errorf("sprouts: %v", got)
	}
}
