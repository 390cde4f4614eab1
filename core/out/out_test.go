package out

import (
	"testing"

	"barkslip/core/record"
	"barkslip/core/record/recordtest"
)

// TestLinesHaveTheirColumns: as many values as names, whatever was done, and text of
// a user's marked as such and without what would turn a terminal or a sheet.
func TestLinesHaveTheirColumns(t *testing.T) {
	book, b := record.FoldBook(nil, recordtest.UTC), recordtest.Northern()
	b.Name = "=Hollow\x1b Lane"
	l := recordtest.NewLaptop("MK")
	l.Say(recordtest.May(1, 9, 0), &record.StumpAdded{Note: "by the gate"})
	l.Say(recordtest.May(2, 9, 0), &record.CutBack{})
	l.Say(recordtest.May(9, 8, 0), &record.Looked{Bleeding: record.Damp, Slip: record.SlipsClean})
	l.Say(recordtest.May(9, 9, 0), &record.ScionSet{Slot: 1, Variety: "Lantern"})
	l.Say(recordtest.May(9, 9, 5), &record.ScionSet{Slot: 2, Variety: "Lantern"})
	l.Say(recordtest.May(9, 10, 0), &record.Sealed{Cover: record.Wrapped})
	l.Say(recordtest.May(30, 9, 0), recordtest.Visit(record.Growing, record.Dead))
	l.Say(recordtest.May(30, 9, 5), &record.Noted{Text: "by the gate"})
	s := l.Fold()
	line := Stump(book, b, s, recordtest.May(30, 10, 0))
	if len(line) != len(StumpColumns) {
		t.Fatalf("%d values, %d names", len(line), len(StumpColumns))
	}
	want := map[string]string{"block": "=Hollow Lane", "row": "4", "tree": "17", "limb": "", "stage": "pushing", "variety": "Lantern", "cut_back": "2027-05-02",
		"grafted": "2027-05-09", "sealed": "2027-05-09T10:00:00-04:00", "white": "", "hand": "MK", "scions": "2", "took": "0", "standing": "0", "note": "by the gate"}
	for i, name := range StumpColumns {
		if w, ok := want[name]; ok && line[i].Text != w {
			t.Errorf("%s is %q, want %q", name, line[i].Text, w)
		}
	}
	if !line[0].User || line[1].User || !line[1].Number {
		t.Errorf("%+v", line[:2])
	}
	grafts := Grafts(book, b, s)
	if len(grafts) != 2 || len(grafts[0]) != len(GraftColumns) {
		t.Fatalf("%d grafts", len(grafts))
	}
	want = map[string]string{"slot": "2", "waited_d": "7", "bleeding": "damp", "cover": "wrapped", "advice": "with", "state": "dead", "known": "yes", "took": "no",
		"died": "2027-05-30"}
	for i, name := range GraftColumns {
		if w, ok := want[name]; ok && grafts[1][i].Text != w {
			t.Errorf("%s is %q, want %q", name, grafts[1][i].Text, w)
		}
	}
}
