package plan

import (
	"testing"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/record/recordtest"
	"barkslip/core/unit"
)

func at(row, tree uint16) record.StumpID {
	return record.StumpID{Block: recordtest.TheBlock, Row: row, Tree: tree}
}

// TestTrailOfALot: stumps in walking order, two lots said to be one counted together,
// and only what was said since the lot is held counts as an answer.
func TestTrailOfALot(t *testing.T) {
	day, l7, l8, other := recordtest.May(3, 9, 0), record.ID{7}, record.ID{8}, record.ID{9}
	events := []record.Event{
		{ID: record.ID{1}, Clock: 1, At: day, Body: &record.LotReceived{Lot: l7, Name: "L-7"}},
		{ID: record.ID{2}, Clock: 2, At: day, Body: &record.LotReceived{Lot: l8, Name: "l-7 "}},
		{ID: record.ID{3}, Clock: 3, At: day, Body: &record.LotReceived{Lot: other, Name: "L-9"}},
		{ID: record.ID{4}, Clock: 4, At: day, Body: &record.Same{What: "lot", A: l7.String(), B: l8.String()}},
		{ID: record.ID{5}, Clock: 20, At: day, Body: &record.LotHeld{Lot: l7, Held: true, Why: "mouldy"}},
	}
	book := record.FoldBook(events, recordtest.UTC)
	sums := []due.Summary{
		{ID: at(1, 1), Used: []due.LotUse{{Lot: l7, Scions: 2, Growing: 1, Dead: 1, Do: record.Watch, Told: 10}}}, // said before it was held
		{ID: at(1, 2), Used: []due.LotUse{{Lot: other, Scions: 3, Growing: 3}}},
		{ID: at(2, 1), Used: []due.LotUse{{Lot: l7, Scions: 1, Waiting: 1, Do: record.CutOut, Told: 21}, {Lot: l8, Scions: 2, Waiting: 1}}},
		{ID: at(2, 5), Used: []due.LotUse{{Lot: l8, Scions: 2, Dead: 2}}},
		{ID: at(3, 1), Used: []due.LotUse{{Lot: l7, Do: record.Watch, Told: 30}}}, // its scion was taken back
	}
	lot := book.LotOf(l8)
	trail := TrailOf(book, lot, sums)
	var places []string
	for _, p := range trail.Places {
		places = append(places, p.Stump.Place())
	}
	if len(places) != 3 || places[0] != "1/1" || places[1] != "2/5" || places[2] != "2/1" {
		t.Fatalf("%v", places)
	}
	if trail.All.Scions != 7 || trail.Broke() != 1 || trail.Living != 2 || trail.Untold != 1 || trail.ToCut != 1 {
		t.Errorf("%+v, broke %d", trail, trail.Broke())
	}
	if f := Flags(book, sums[2]); len(f) != 1 || f[0].Do != record.CutOut || f[0].Use.Waiting != 2 || !f[0].Open() {
		t.Errorf("%+v", f)
	}
	if f := Flags(book, sums[3]); len(f) != 0 {
		t.Errorf("dead scions are flagged: %+v", f)
	}
	events[4].Body = &record.LotHeld{Lot: l7, Held: true, Why: "season over", Left: true}
	if f := Flags(record.FoldBook(events, recordtest.UTC), sums[0]); len(f) != 0 {
		t.Errorf("only the wood left is held: %+v", f)
	}
}

// TestWoodByThickness holds sticks against the stumps that remain, each in its class.
func TestWoodByThickness(t *testing.T) {
	day := recordtest.May(3, 9, 0)
	received := func(id byte, thick unit.Length, sticks int) record.Event {
		return record.Event{ID: record.ID{id}, Clock: uint64(id), At: day, Body: &record.LotReceived{Lot: record.ID{id}, Name: string('a' + rune(id)),
			Variety: "Lantern", Sticks: sticks, Thickness: record.Measure{Length: thick}}}
	}
	book := record.FoldBook([]record.Event{received(1, 3*unit.Inch/8, 4), received(2, unit.Inch/2, 2),
		received(3, 0, 5), received(4, unit.Inch/4, 0)}, recordtest.UTC)
	wood := WoodOf(book, map[record.ID]int{{1}: 5})
	sums := []due.Summary{
		{ID: at(1, 1), Across: 1.5 * unit.Inch}, {ID: at(1, 2), Across: 4 * unit.Inch, Stage: record.StageDraining}, {ID: at(1, 3)},
		{ID: at(1, 4), Across: unit.Inch / 2}, {ID: at(1, 5), Across: 4 * unit.Inch, Stage: record.StagePainted}, {ID: at(1, 6), Across: 2.5 * unit.Inch},
	}
	f := FitOf(wood, sums, "lantern", func(id record.StumpID) string {
		if id.Tree == 6 {
			return "Brisk"
		}
		return "Lantern"
	})
	want := []ThicknessRow{
		{Stumps: 1, Wanted: 2, Lots: 1, Left: 7, LeftMost: 11}, {}, {Stumps: 1, Wanted: 4, Lots: 1, Left: 6, LeftMost: 8},
		{Stumps: 1, Wanted: 3, Lots: 1, Left: 15, LeftMost: 20},
	}
	if len(f.Rows) != len(want) || f.Uncounted != 1 {
		t.Fatalf("%+v", f)
	}
	for i, r := range f.Rows {
		r.Least, r.Most = 0, 0
		if r != want[i] {
			t.Errorf("row %d is %+v, not %+v", i, r, want[i])
		}
	}
}
