package changes

import (
	"testing"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/record/recordtest"
	"barkslip/core/unit"
)

func empty() *record.Book { return record.FoldBook(nil, recordtest.UTC) }

func find(t *testing.T, l *recordtest.Laptop, from unit.Date, hand string) (done, taken []Change) {
	t.Helper()
	f := Since(empty(), recordtest.Northern(), from, hand)
	if s := l.Fold(); f.Touched(due.Summarize(s, recordtest.Northern(), len(s.All))) {
		f.Stump(s)
	}
	return Parted(f.Changes())
}

// TestNothingIsCountedTwice: a correction counts once, what was taken back counts
// as taken back alone, and put back again it counts as done.
func TestNothingIsCountedTwice(t *testing.T) {
	l := recordtest.NewLaptop("MK")
	l.Say(recordtest.May(1, 9, 0), &record.CutBack{})
	l.Say(recordtest.May(3, 9, 0), &record.Gashed{})
	first := l.Say(recordtest.May(3, 10, 0), &record.StumpMeasured{Across: recordtest.Inches(4)})
	l.Say(recordtest.May(3, 10, 5), &record.StumpMeasured{Across: recordtest.Inches(5)}, first.ID)
	noted := l.Say(recordtest.May(4, 9, 0), &record.Noted{Text: "wet"})
	l.Hand = "RB"
	gone := l.Say(recordtest.May(5, 9, 0), &record.Withdrawn{Of: noted.ID})
	done, taken := find(t, l, recordtest.MayDay(3), "")
	if len(done) != 2 || done[0].Kind != "gashed" || done[1].Kind != "measured" || done[1].Count != 1 {
		t.Errorf("done %+v", done)
	}
	if len(taken) != 1 || taken[0].Kind != "noted" || taken[0].Hand != "RB" || taken[0].Day != recordtest.MayDay(5) {
		t.Errorf("taken back %+v", taken)
	}
	if done, taken := find(t, l, recordtest.MayDay(3), "RB"); len(done) != 0 || len(taken) != 1 {
		t.Errorf("RB: %+v, %+v", done, taken)
	}
	// The last thing put down is a taking back: the stump is still looked at.
	if done, taken := find(t, l, recordtest.MayDay(5), ""); len(done) != 0 || len(taken) != 1 {
		t.Errorf("since the 5th: %+v, %+v", done, taken)
	}
	l.Say(recordtest.May(6, 9, 0), &record.Withdrawn{Of: gone.ID})
	if done, taken := find(t, l, recordtest.MayDay(3), ""); len(done) != 3 || len(taken) != 0 {
		t.Errorf("put back: %+v, %+v", done, taken)
	}
	if done, taken := find(t, l, recordtest.MayDay(7), ""); len(done)+len(taken) != 0 {
		t.Errorf("since the 7th: %+v, %+v", done, taken)
	}
}

// TestLateWorkGoesByTheHandWhoWorkedLast: of a stump nobody worked it is that of
// its row, and of a row nobody worked nobody's.
func TestLateWorkGoesByTheHandWhoWorkedLast(t *testing.T) {
	at := func(row, tree uint16) record.StumpID {
		return record.StumpID{Block: recordtest.TheBlock, Row: row, Tree: tree}
	}
	by := recordtest.May(4, 9, 0)
	var calls []due.Call
	for _, id := range []record.StumpID{at(1, 1), at(1, 2), at(2, 1)} {
		calls = append(calls, due.Call{Stump: id, Dues: []due.Due{{Stump: id, Kind: due.White, Opens: by, By: by}}})
	}
	sums := []due.Summary{{ID: at(1, 1), Hand: "MK", Newest: by}, {ID: at(1, 2)}, {ID: at(2, 1)}}
	got := Late(calls, sums, recordtest.May(5, 9, 0))
	if len(got) != 2 || got[0].Name != "MK" || len(got[0].Stumps) != 2 || got[1].Name != Nobody || got[1].Count != 1 {
		t.Errorf("%+v", got)
	}
	if got := Late(calls, sums, by); len(got) != 0 {
		t.Errorf("not late yet: %+v", got)
	}
}

func TestMonday(t *testing.T) {
	for day, want := range map[string]string{"2027-05-03": "2027-05-03", "2027-05-04": "2027-05-03", "2027-05-09": "2027-05-03"} {
		if got := Monday(recordtest.DayOf(day)); got != recordtest.DayOf(want) {
			t.Errorf("%s: %s", day, got)
		}
	}
}
