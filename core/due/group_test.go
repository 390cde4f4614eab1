package due

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"barkslip/core/record"
	"barkslip/core/record/recordtest"
)

// TestEveryKindHasItsVerb: each its own, in lower case, without hyphens, and found
// by the name it has for machines.
func TestEveryKindHasItsVerb(t *testing.T) {
	seen := map[string]Kind{}
	for _, k := range Kinds() {
		v := k.Verb()
		if other, twice := seen[v]; twice {
			t.Errorf("%s and %s are both %q", k, other, v)
		}
		seen[v] = k
		if v == "" || strings.ToLower(v) != v || strings.Contains(v, "-") || VerbOf(k.String()) != v {
			t.Errorf("%s is said %q, by its name %q", k, v, VerbOf(k.String()))
		}
	}
	if len(seen) != len(verbs) {
		t.Errorf("%d kinds have %d verbs", len(seen), len(verbs))
	}
}

// TestByWork: groups in the order of the next, what is late before what is not; in
// a group what runs out, then in walking order, then what opens later. Each work of
// a stump stands in its group.
func TestByWork(t *testing.T) {
	now := recordtest.May(20, 12, 0)
	in := func(k Kind, from, to time.Duration) Due {
		return Due{Kind: k, Opens: now.Add(from), By: now.Add(to), Since: now.Add(from)}
	}
	at := func(row, tree uint16, dues ...Due) Summary {
		id := record.StumpID{Block: recordtest.TheBlock, Row: row, Tree: tree}
		for i := range dues {
			dues[i].Stump = id
		}
		return Summary{ID: id, Dues: dues}
	}
	const day = 24 * time.Hour
	sums := []Summary{
		at(1, 1, in(Tie, -day, day), in(Sprouts, -day, day)), at(1, 2, in(White, time.Hour, 2*time.Hour)),
		at(2, 1, in(White, 30*time.Minute, 90*time.Minute), in(Sprouts, -day, day)), at(2, 2, in(White, -time.Hour, time.Minute), in(CutTwine, -9*day, -2*day)),
		at(2, 3, in(Sprouts, -day, day)), at(3, 1, in(White, -time.Hour, time.Hour), in(Seal, -time.Minute, 20*time.Minute)),
	}
	var got []string
	for _, g := range ByWork(Round(sums, Asked{From: now, Until: now.Add(day), CutBack: -1}), now) {
		var places []string
		for _, j := range g.Jobs {
			places = append(places, j.Call.Stump.Place())
			if j.Due.Kind != g.Kind || j.Due.Stump != j.Call.Stump {
				t.Errorf("%s of %s among %s of %s", j.Due.Kind, j.Due.Stump.Place(), g.Kind, j.Call.Stump.Place())
			}
		}
		got = append(got, fmt.Sprintf("%s, %d late: %s", g.Kind.Verb(), g.Late, strings.Join(places, " ")))
	}
	want := []string{"paint white, 0 late: 2/2 3/1 2/1 1/2", "seal, 0 late: 3/1", "cut the twine, 1 late: 2/2", "rub sprouts, 0 late: 1/1 2/3 2/1", "tie, 0 late: 1/1"}
	if !slices.Equal(got, want) {
		t.Errorf("\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}
