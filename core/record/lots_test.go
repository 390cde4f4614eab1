package record

import (
	"encoding/hex"
	"os"
	"strings"
	"testing"
	"time"
)

// TestLotsOfBeforeAreRead reads lines, each with its packed form, as they were written
// before a lot had a source, a keeping, a health and a permit, and a hold said what it
// is of: fields that came later are empty, and both forms are written
// as they were.
func TestLotsOfBeforeAreRead(t *testing.T) {
	golden, err := os.ReadFile("testdata/lots-before.golden")
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSpace(string(golden)), "\n")
	for i := 0; i+1 < len(lines); i += 2 {
		c := [2]string{lines[i], strings.TrimPrefix(lines[i+1], "packed ")}
		e, err := ParseLine([]byte(c[0]))
		if err != nil {
			t.Fatalf("%s: %v", c[0], err)
		}
		packed, err := hex.DecodeString(c[1])
		if err != nil {
			t.Fatal(err)
		}
		unpacked, err := Unpack(packed, e.Stump, e.Clock, e.ID)
		if err != nil {
			t.Fatalf("%s: %v", c[0], err)
		}
		if d := alike(e, unpacked); d != "" {
			t.Errorf("%s and its packed form differ:\n%s", c[0], d)
		}
		if string(Line(e)) != c[0] || hex.EncodeToString(Pack(nil, e)) != c[1] {
			t.Errorf("%s is written as %s", c[0], Line(e))
		}
	}
	if len(lines) != 4 {
		t.Errorf("%d lines", len(lines))
	}
}

// TestCuttingOutTellsOfTheLotAlone: the scions of another lot are not spoken of, nor
// those dead already.
func TestCuttingOutTellsOfTheLotAlone(t *testing.T) {
	at := time.Date(2027, 5, 4, 9, 0, 0, 0, time.UTC)
	one, same, other := ID{1}, ID{2}, ID{3}
	book := FoldBook([]Event{
		{ID: ID{11}, Clock: 1, At: at, Body: &LotReceived{Lot: one, Name: "L-1"}},
		{ID: ID{12}, Clock: 2, At: at, Body: &LotReceived{Lot: same, Name: "L-1"}},
		{ID: ID{13}, Clock: 3, At: at, Body: &LotReceived{Lot: other, Name: "L-3"}},
		{ID: ID{14}, Clock: 4, At: at, Body: &Same{What: "lot", A: one.String(), B: same.String()}},
	}, func(string) (*time.Location, error) { return time.UTC, nil })
	set := func(slot int, lot ID, state GraftState) *Graft {
		return &Graft{Slot: slot, State: state, Set: &Said[ScionSet]{What: ScionSet{Slot: slot, Lot: lot}}}
	}
	a := &Attempt{Grafts: []*Graft{set(1, one, Growing), set(2, same, ""), set(3, other, Growing), set(4, one, Dead), set(5, None, Growing)}}
	bodies := a.CutOutNow(book, one)
	if len(bodies) != 2 || bodies[0].(*LotFollowed).Do != WereCut {
		t.Fatalf("%v", bodies)
	}
	found := bodies[1].(*Visited).Found
	if len(found) != 2 || found[0].Slot != 1 || found[1].Slot != 2 || found[1].State != Dead || found[1].Cause != "poor wood" {
		t.Errorf("%+v", found)
	}
	if bodies := a.CutOutNow(book, ID{9}); len(bodies) != 1 {
		t.Errorf("a lot never received: %v", bodies)
	}
}
