package record

import (
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"
)

// called lists blocks by their names.
func called(blocks []*Block) (out []string) {
	for _, b := range blocks {
		out = append(out, b.Name)
	}
	return out
}

// Made-up blocks stand in no list with real ones, and one put away in none; both
// are kept apart, and nothing is lost.
func TestMadeUpAndAwayAreApart(t *testing.T) {
	made := func(clock uint64, id byte, name string) Event {
		return Event{ID: ID{id, 1}, Clock: clock, Body: &BlockMade{Block: ID{id}, Name: name}}
	}
	set := func(clock uint64, id byte, setting, value string, replaces ...ID) Event {
		return Event{ID: ID{id, byte(clock)}, Clock: clock, Replaces: replaces, Body: &BlockSet{Block: ID{id}, Setting: setting, Value: value}}
	}
	events := []Event{made(1, 1, "Hollow Lane"), set(2, 1, "made-up", "yes")}
	if b := FoldBook(events, utc); len(b.List()) != 1 || len(b.Others()) != 0 {
		t.Errorf("made up alone: %v, %v", called(b.List()), called(b.Others()))
	}
	events = append(events, made(3, 2, "Home"))
	if b := FoldBook(events, utc); len(b.List()) != 1 || b.List()[0].Name != "Home" || len(b.Others()) != 1 {
		t.Errorf("beside a real one: %v, %v", called(b.List()), called(b.Others()))
	}
	events = append(events, set(4, 2, "away", "yes"))
	if b := FoldBook(events, utc); len(b.List()) != 1 || b.List()[0].Name != "Hollow Lane" || len(b.Others()) != 1 {
		t.Errorf("the real one put away: %v, %v", called(b.List()), called(b.Others()))
	}
	events = append(events, set(5, 2, "away", "no", ID{2, 4}))
	if b := FoldBook(events, utc); len(b.List()) != 1 || b.List()[0].Name != "Home" {
		t.Errorf("brought back: %v, %v", called(b.List()), called(b.Others()))
	}
}

// Blocks said to be one are apart again once that is taken back, and one once the
// taking back is; in whatever order it is known.
func TestBlocksComeApartInAnyOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		one := Event{ID: ID{9, 1}, Clock: 3, Body: &Same{What: "block", A: ID{1}.String(), B: ID{2}.String()}}
		apart := Event{ID: ID{9, 2}, Clock: 4, Body: &Withdrawn{Of: one.ID}}
		again := Event{ID: ID{9, 3}, Clock: 5, Body: &Withdrawn{Of: apart.ID}}
		events := []Event{{ID: ID{8, 1}, Clock: 1, Body: &BlockMade{Block: ID{1}, Name: "Lane"}}, {ID: ID{8, 2}, Clock: 2, Body: &BlockMade{Block: ID{2}, Name: "Hollow Lane"}},
			one, apart, again}
		known := rapid.IntRange(3, 5).Draw(t, "known")
		events = append(events[:known:known], events[rapid.IntRange(0, known-1).Draw(t, "twice")])
		r := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "order"), 1))
		r.Shuffle(len(events), func(i, j int) { events[i], events[j] = events[j], events[i] })
		b := FoldBook(events, utc)
		if blocks, joined := len(b.List()), len(b.Joined(ID{2})); known == 4 && (blocks != 2 || joined != 0) || known != 4 && (blocks != 1 || joined != 1) {
			t.Fatalf("%d events: %d blocks, %d joins", known, blocks, joined)
		}
	})
}
