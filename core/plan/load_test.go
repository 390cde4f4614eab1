package plan

import (
	"math"
	"testing"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/record/recordtest"
	"barkslip/core/unit"
)

func lantern(record.StumpID) string { return "Lantern" }

// A stump of 4 in and one of unknown size, worked through on paper.
func TestLoadByHand(t *testing.T) {
	b := recordtest.Northern()
	thick := record.LotReceived{Name: "L-7", Variety: "lantern", Thickness: record.Measured(unit.Inch/2, unit.US)}
	wood := []Wood{{Lot: &record.Lot{Received: &record.Said[record.LotReceived]{What: thick}}, Left: record.WoodLeft{Least: 3, Most: 4}, Counted: true}}
	sums := []due.Summary{{Stage: record.StageStanding, Across: 4 * unit.Inch}, {Stage: record.StageStanding}}
	l := SeasonLoad(b, sums, sums, lantern, wood)
	if l.Stumps != 2 || l.Measured != 1 || l.Scions != 4+3 || len(l.Sticks) != 2 {
		t.Fatalf("%+v", l)
	}
	// the stump of 4 in takes the stout wood that lot L-7 is; 3 in takes thinner
	if s := l.Sticks[0]; s.Scions != 3 || s.Sticks != 1 || len(s.Wood) != 0 {
		t.Errorf("thin wood %+v", s)
	}
	if s := l.Sticks[1]; s.Scions != 4 || s.Sticks != 2 || len(s.Wood) != 1 {
		t.Errorf("stout wood %+v", s)
	}
	if words, short := l.Sticks[1].woodWords(); !short || words != "L-7 gives 3 to 4 scions: may be 1 scion short" {
		t.Errorf("%q %v", words, short)
	}
	// face 12.6 and 7.1 sq in: 3 and 2 squares of 6 over the top, two for each scion
	if l.Wrap != 14+5 || l.Stakes != 2 || l.Ties != 8 || math.Abs(l.Tape.MM()-8*304.8) > 1 {
		t.Errorf("%d squares, %d stakes, %d ties of %s", l.Wrap, l.Stakes, l.Ties, unit.US.Exact(l.Tape))
	}
	// (12.57 + 12.57 x 3.5 + 7.07 + 9.42 x 3.5) sq in, 2 mm thick
	if want := (12.566 + 12.566*3.5 + 7.069 + 9.425*3.5) * 645.16 * 2 / 1000; math.Abs(l.Sealer-want) > 0.5 {
		t.Errorf("%.1f ml of sealer, want %.1f", l.Sealer, want)
	}
	// two loops of twice 12.57 and of twice 9.42 in, and 1 ft for each of the knots
	if want := 2*(2*12.566+12) + 2*(2*9.425+12); math.Abs(l.Twine.Inches()-want) > 0.1 {
		t.Errorf("%.1f in of twine, want %.1f", l.Twine.Inches(), want)
	}
}

// Nails go up to the next size sold, in the sizes of the place.
func TestNailsBySizeSold(t *testing.T) {
	b := recordtest.Northern()
	sums := many(2, due.Summary{Stage: record.StageStanding, Across: 4 * unit.Inch})
	nails := func() map[float64]int {
		out := map[float64]int{}
		for _, n := range SeasonLoad(b, sums, sums, lantern, nil).Nails {
			out[math.Round(n.Size.MM()*100)/100] += n.N
		}
		return out
	}
	// wood of 5/8 in: 12.3 mm are left at the upper nail, 4 + 12.3 + 12.7 = 29.0 mm long;
	// under 1 mm near the tip, 4 + 0.8 + 12.7 = 17.5 mm
	if got := nails(); len(got) != 2 || got[31.75] != 8 || got[19.05] != 8 {
		t.Errorf("%v", got)
	}
	b.Units = unit.Metric
	if got := nails(); len(got) != 2 || got[30] != 8 || got[20] != 8 {
		t.Errorf("metric %v", got)
	}
	b.Load.Nails = 3
	if got := nails(); got[30] != 16 || got[20] != 8 {
		t.Errorf("three a scion %v", got)
	}
}

// A day takes what is due on it: no stake where none is due, no wood where the wait
// is not over.
func TestLoadOfADay(t *testing.T) {
	b, day := recordtest.Northern(), recordtest.DayOf("2027-05-20")
	sums := []due.Summary{{Stage: record.StageDraining, CutBack: day.Add(-7)}, {Stage: record.StageDraining, CutBack: day.Add(-6)}, {Stage: record.StagePushing}}
	var calls []due.Call
	for i := range sums {
		sums[i].ID = record.StumpID{Block: recordtest.TheBlock, Row: 1, Tree: uint16(i + 1)}
		calls = append(calls, due.Call{Stump: sums[i].ID})
	}
	calls[2].Dues = []due.Due{{Kind: due.Stake}, {Kind: due.Tie}}
	l := DayLoad(b, calls, day, sums, lantern, nil)
	if l.Stumps != 1 || l.Scions != 3 || l.Stakes != 1 || l.Ties != 1 || l.Twine != 0 || l.Sealer <= 0 {
		t.Errorf("%+v", l)
	}
	if l := DayLoad(b, calls[1:2], day, sums, lantern, nil); !l.Empty() {
		t.Errorf("a stump that only drains takes %+v", l)
	}
}
