package store

import (
	"errors"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"barkslip/core/record"
)

func TestAppendKeepsWhatItReturns(t *testing.T) {
	b := newBook(t)
	stump := stumpAt(1, 4, 17)
	made := mustAppend(t, b, append(settings(1), life(stump, 11)...)...)
	for i, e := range made {
		if e.ID == record.None || e.Clock != uint64(i+1) {
			t.Fatalf("event %d has id %s and clock %d", i, e.ID, e.Clock)
		}
	}
	b = reopen(t, b)
	events, err := b.Events(stump)
	if err != nil {
		t.Fatal(err)
	}
	want := made[len(made)-11:]
	if diff := cmp.Diff(lines(want), lines(record.InOrder(events))); diff != "" {
		t.Error(diff)
	}
	s, err := b.Stump(stump)
	if err != nil || s.Stage() != record.StagePainted {
		t.Errorf("stage is %v, %v", s.Stage(), err)
	}
	if b.Folded().Blocks[blockID(1)].Name != "block 1" {
		t.Error("the block's name is lost")
	}
	events2, stumps := b.Count()
	if events2 != len(made) || stumps != 1 {
		t.Errorf("counted %d events and %d stumps", events2, stumps)
	}
	if want := day.Add(4 * time.Hour); !b.Newest().Equal(want) {
		t.Errorf("newest is %v, want %v", b.Newest(), want)
	}
}

func lines(events []record.Event) []string {
	var out []string
	for _, e := range events {
		out = append(out, string(record.Line(e)))
	}
	return out
}

func TestAppendNothing(t *testing.T) {
	b := newBook(t)
	if out, err := b.Append(); out.Events != nil || err != nil {
		t.Errorf("got %v, %v", out, err)
	}
	if n, _ := b.Count(); n != 0 {
		t.Errorf("%d events", n)
	}
}

func TestAppendIsAllOrNothing(t *testing.T) {
	b := newBook(t)
	stump := stumpAt(1, 1, 1)
	mustAppend(t, b, on(stump, day, &record.StumpAdded{}))
	before := export(t, b)
	given := record.ID{1, 2, 3}
	bad := map[string]record.Event{
		"needs a stump":         {At: day, Body: &record.Sealed{Cover: record.Bare}},
		"about no single stump": {At: day, Stump: stump, Body: &record.BlockMade{Block: blockID(1), Name: "x"}},
		"cover is":              {At: day, Stump: stump, Body: &record.Sealed{Cover: "tin"}},
		"not a place":           {At: day, Stump: record.StumpID{Block: blockID(1)}, Body: &record.PaintedWhite{}},
		"at is not an instant":  {Stump: stump, Body: &record.PaintedWhite{}},
		"says nothing":          {At: day, Stump: stump},
		"have the id":           {ID: given, At: day, Stump: stump, Body: &record.PaintedWhite{}},
	}
	for want, e := range bad {
		first := on(stump, day, &record.Noted{Text: "first"})
		first.ID = given
		_, err := b.Append(first, e)
		if !errors.Is(err, ErrRefused) || !strings.Contains(err.Error(), want) || !strings.Contains(err.Error(), "not kept") {
			t.Errorf("want %q, got %v", want, err)
		}
	}
	if after := export(t, b); after != before {
		t.Errorf("the journal changed:\n%s", after)
	}
}

func TestAppendRefusesAnIDThatIsThere(t *testing.T) {
	b := newBook(t)
	e := on(stumpAt(1, 1, 1), day, &record.Noted{Text: "one"})
	e.ID = record.ID{5}
	mustAppend(t, b, e)
	if _, err := b.Append(e); !errors.Is(err, ErrRefused) {
		t.Errorf("got %v", err)
	}
}

func TestAppendCleansText(t *testing.T) {
	b := newBook(t)
	made := mustAppend(t, b, on(stumpAt(1, 1, 1), day.Add(300*time.Millisecond), &record.Noted{Text: "a\x1b[31mred\n"}))
	if got := made[0].Body.(*record.Noted).Text; got != "a[31mred" {
		t.Errorf("kept %q", got)
	}
	if !made[0].At.Equal(day) {
		t.Errorf("kept %v", made[0].At)
	}
}

func TestUndoneStumpLeavesTheList(t *testing.T) {
	b := newBook(t)
	stump := stumpAt(1, 1, 1)
	added := mustAppend(t, b, on(stump, day, &record.StumpAdded{}))
	undone := mustAppend(t, b, on(stump, day, &record.Withdrawn{Of: added[0].ID}))
	if _, stumps := b.Count(); stumps != 0 {
		t.Errorf("%d stumps after the undo", stumps)
	}
	checkSound(t, b)
	mustAppend(t, b, on(stump, day, &record.Withdrawn{Of: undone[0].ID}))
	if _, stumps := b.Count(); stumps != 1 {
		t.Errorf("%d stumps after the redo", stumps)
	}
}

func TestSameBlocksGoOnAsOne(t *testing.T) {
	b := newBook(t)
	mustAppend(t, b, settings(1)...)
	mustAppend(t, b, life(stumpAt(1, 1, 1), 5)...)
	mustAppend(t, b, life(stumpAt(2, 1, 1), 2)...)
	mustAppend(t, b, life(stumpAt(2, 1, 2), 3)...)
	same := mustAppend(t, b, about(&record.Same{What: "block", A: blockID(2).String(), B: blockID(1).String()}))
	for _, block := range []byte{1, 2} {
		list, err := b.Summaries(blockID(block))
		if err != nil || len(list) != 2 || list[0].ID != stumpAt(1, 1, 1) || list[0].Events != 7 || list[1].ID != stumpAt(1, 1, 2) {
			t.Errorf("block %d: %v, %v", block, list, err)
		}
	}
	events, err := b.Events(stumpAt(2, 1, 1))
	if err != nil || len(events) != 7 {
		t.Errorf("%d events, %v", len(events), err)
	}
	checkSound(t, b)
	mustAppend(t, b, about(&record.Withdrawn{Of: same[0].ID}))
	list, err := b.Summaries(blockID(2))
	if err != nil || len(list) != 2 || list[0].ID != stumpAt(2, 1, 1) || list[0].Events != 2 {
		t.Errorf("after the undo: %v, %v", list, err)
	}
}

func TestBlockEventsMoveSummaries(t *testing.T) {
	b := newBook(t)
	mustAppend(t, b, settings(1)...)
	mustAppend(t, b, life(stumpAt(1, 1, 1), 10)...) // sealed, not white
	mustAppend(t, b, life(stumpAt(1, 1, 2), 11)...) // white
	before, err := b.Summaries(blockID(1))
	if err != nil || len(before[0].Dues) == 0 {
		t.Fatal(before, err)
	}
	change := []record.Body{
		&record.DayWeather{Block: blockID(1), Day: unitDate(2027, 5, 4), Low: celsius(15), High: celsius(40), Wind: 1},
		&record.BlockSet{Block: blockID(1), Setting: "zone", Value: "America/New_York"},
		&record.BlockSet{Block: blockID(1), Setting: "longitude", Value: "100"},
		&record.BlockSet{Block: blockID(1), Setting: "frosty", Value: "yes"},
		&record.BlockSet{Block: blockID(1), Setting: "earwigs", Value: "yes"},
		&record.BlockSet{Block: blockID(1), Setting: "pinch-until", Value: "09-01"},
		&record.BlockSet{Block: blockID(1), Setting: "browse", Value: "6ft"},
	}
	for _, body := range change {
		mustAppend(t, b, about(body))
		checkSound(t, b) // compares each summary with one made anew
	}
	after, err := b.Summaries(blockID(1))
	if err != nil || cmp.Equal(before[0].Dues, after[0].Dues) {
		t.Errorf("the dues did not move: %v, %v", after[0].Dues, err)
	}
}

func TestClosedBook(t *testing.T) {
	b := newBook(t)
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	if err := b.Close(); err != nil {
		t.Error("closing twice:", err)
	}
	if _, err := b.Append(on(stumpAt(1, 1, 1), day, &record.PaintedWhite{})); !errors.Is(err, ErrClosed) {
		t.Errorf("append: %v", err)
	}
	if _, err := b.Events(stumpAt(1, 1, 1)); !errors.Is(err, ErrClosed) {
		t.Errorf("events: %v", err)
	}
	if _, err := b.Check(); !errors.Is(err, ErrClosed) {
		t.Errorf("check: %v", err)
	}
}
