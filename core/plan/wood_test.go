package plan

import (
	"testing"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/record/recordtest"
)

// Sticks count down by the scions set on all stumps; what is left is held
// against what is needed.
func TestWoodCountsDown(t *testing.T) {
	at := recordtest.May(3, 9, 0)
	book := record.FoldBook([]record.Event{
		{ID: record.ID{1}, Clock: 1, At: at, Body: &record.LotReceived{Lot: record.ID{7}, Name: "L-7", Variety: "Lantern", Sticks: 6}},
		{ID: record.ID{2}, Clock: 2, At: at, Body: &record.LotReceived{Lot: record.ID{8}, Name: "L-8", Variety: "Lantern", Sticks: 2}},
	}, recordtest.UTC)
	used := map[record.ID]int{}
	UsedOf(used, many(19, due.Summary{Used: []due.LotUse{{Lot: record.ID{7}, Scions: 1}}}))
	UsedOf(used, many(4, due.Summary{Used: []due.LotUse{{Lot: record.ID{8}, Scions: 2}}}))
	wood := WoodOf(book, used)
	if len(wood) != 1 || wood[0].Left != (record.WoodLeft{Sticks: 6, Used: 19, Least: 0, Most: 5}) {
		t.Fatalf("%+v", wood)
	}
	if least, most, counted := Enough(wood, "lantern"); least != 0 || most != 5 || !counted {
		t.Errorf("%d to %d, %v", least, most, counted)
	}
}
