package record

import (
	"testing"
	"time"

	"barkslip/core/unit"
)

// What a hand is given stands until it is given anew, taken away or taken back; two
// names of one hand are one.
func TestWorkGivenStandsAndGoes(t *testing.T) {
	day := unit.MakeDate(2027, 5, 20)
	given := func(n byte, to string, rows ...GivenRow) Event {
		return Event{ID: ID{n}, Clock: uint64(n), Hand: "RK", Body: &WorkGiven{Block: ID{9}, Day: day, To: to, Rows: rows}}
	}
	one := func(events ...Event) string {
		words := ""
		for _, g := range FoldBook(events, func(string) (*time.Location, error) { return time.UTC, nil }).Blocks[ID{9}].GivenOn(day) {
			words += g.What.Say(unit.US) + "; "
		}
		return words
	}
	first, again, away := given(1, "MK", GivenRow{1}), given(2, "MK", GivenRow{2}, GivenRow{3}), given(3, "MK")
	again.Replaces, away.Replaces = []ID{{1}}, []ID{{2}}
	back := Event{ID: ID{4}, Clock: 4, Body: &Withdrawn{Of: ID{3}}}
	same := Event{ID: ID{5}, Clock: 5, Body: &Same{What: "hand", A: "MA", B: "MK"}}
	for _, c := range []struct {
		want   string
		events []Event
	}{
		{"MK has row 1 on 20 May; ", []Event{first}},
		{"MK has rows 2, 3 on 20 May; ", []Event{again, first}},
		{"", []Event{first, away, again}},
		{"MK has rows 2, 3 on 20 May; ", []Event{back, first, away, again}},
		{"MA has rows 2, 3 on 20 May; ", []Event{first, same, again}},
	} {
		if got := one(c.events...); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// What cannot be given is refused.
func TestWorkGivenIsRefused(t *testing.T) {
	day := unit.MakeDate(2027, 5, 20)
	for _, b := range []WorkGiven{
		{Day: day, To: "MK"}, {Block: ID{9}, To: "MK"}, {Block: ID{9}, Day: day}, {Block: ID{9}, Day: day, To: "M1"},
		{Block: ID{9}, Day: day, To: "MK", Rows: []GivenRow{{0}}}, {Block: ID{9}, Day: day, To: "MK", Rows: []GivenRow{{2}, {2}}},
		{Block: ID{9}, Day: day, To: "MK", Stumps: []GivenStump{{1, 1, 0}, {1, 1, 0}}}, {Block: ID{9}, Day: day, To: "MK", Stumps: []GivenStump{{1, 0, 0}}},
		{Block: ID{9}, Day: day, To: "MK", Rows: []GivenRow{{1}}, Stumps: []GivenStump{{2, 1, 0}}},
	} {
		if b.check() == nil {
			t.Errorf("%+v was taken", b)
		}
	}
}
