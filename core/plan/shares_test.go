package plan

import (
	"math/rand/v2"
	"testing"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/record/recordtest"
)

// Shares of a day: each call is with every hand that has it, or with nobody, and
// what two hands have is told; in whatever order two journals are joined.
func TestSharesOfADay(t *testing.T) {
	day := recordtest.DayOf("2027-05-20")
	given := func(n byte, to string, rows ...int) record.Event {
		g := &record.WorkGiven{Block: recordtest.TheBlock, Day: day, To: to}
		for _, r := range rows {
			g.Rows = append(g.Rows, record.GivenRow{Row: r})
		}
		return record.Event{ID: record.ID{n}, Clock: uint64(n), At: recordtest.May(19, 18, 0), Hand: "RK", Body: g}
	}
	single := given(4, "AB")
	single.Body.(*record.WorkGiven).Stumps = []record.GivenStump{{Row: 4, Tree: 2}}
	events := []record.Event{given(1, "MK", 1, 2), given(2, "RK", 2, 3), given(3, "JT", 9), given(5, "JT"), single,
		{ID: record.ID{6}, Clock: 6, At: recordtest.May(19, 18, 0), Body: &record.BlockSet{Block: recordtest.TheBlock, Setting: "hands", Value: "JT MK"}}}
	var calls []due.Call
	for row := uint16(1); row <= 4; row++ {
		for tree := uint16(1); tree <= 3; tree++ {
			calls = append(calls, due.Call{Stump: record.StumpID{Block: recordtest.TheBlock, Row: row, Tree: tree}})
		}
	}
	for seed := range uint64(20) {
		r := rand.New(rand.NewPCG(seed, 2))
		r.Shuffle(len(events), func(i, j int) { events[i], events[j] = events[j], events[i] })
		s := SharesOf(record.FoldBook(events, recordtest.UTC).Blocks[recordtest.TheBlock], day, calls)
		if len(s.Hands) != 3 || len(s.Hands[0].Calls) != 1 || len(s.Hands[1].Calls) != 6 || len(s.Hands[2].Calls) != 6 {
			t.Fatalf("seed %d: %+v", seed, s.Hands)
		}
		if len(s.Nobody) != 2 || s.NobodyWords() != "Nobody has 2 stumps in row 4." {
			t.Fatalf("seed %d: %q", seed, s.NobodyWords())
		}
		if len(s.Twice) != 1 || s.Twice[0] != "row 2 is given to MK and RK" || len(s.Idle) != 1 || s.Idle[0] != "JT" {
			t.Fatalf("seed %d: twice %v, idle %v", seed, s.Twice, s.Idle)
		}
		if next := s.Next(9, "AB"); len(next) != 3 || next[0] != (record.GivenStump{Row: 4, Tree: 3}) {
			t.Fatalf("seed %d: next %v", seed, next)
		}
	}
}
