package store

import (
	"fmt"
	"iter"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"barkslip/core/due"
	"barkslip/core/record"
)

// model is the book as it should be: every event in memory, folded anew for
// every question.
type model struct{ events []record.Event }

func (m *model) general() (out []record.Event) {
	for _, e := range m.events {
		if e.Stump == record.NoStump {
			out = append(out, e)
		}
	}
	return out
}

func (m *model) stumps() map[record.StumpID][]record.Event {
	folded, out := record.FoldBook(m.general(), zoneOnce), map[record.StumpID][]record.Event{}
	for _, e := range m.events {
		if id := e.Stump; id != record.NoStump {
			id.Block = folded.CanonicalBlock(id.Block)
			out[id] = append(out[id], e)
		}
	}
	return out
}

func (m *model) export() (out string) {
	for _, e := range record.InOrder(m.events) {
		out += string(record.Line(e)) + "\n"
	}
	return out
}

// compare holds a book against the model.
func (m *model) compare(t *rapid.T, b *Book) {
	folded := record.FoldBook(m.general(), zoneOnce)
	listed, stumps := 0, m.stumps()
	trees := map[record.StumpID][]record.Event{}
	for id, events := range stumps {
		trees[id.Trunk()] = append(trees[id.Trunk()], events...)
	}
	for id, events := range stumps {
		got, err := b.Events(id)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(lines(record.InOrder(events)), lines(record.InOrder(got))); diff != "" {
			t.Fatalf("%s: %s", id.Long(), diff)
		}
		s := record.Fold(id, trees[id.Trunk()])
		if !s.Standing() {
			continue
		}
		listed++
		block := folded.Blocks[id.Block]
		if block == nil {
			continue // the check of the book compares these
		}
		list, err := b.Summaries(id.Block)
		at := slices.IndexFunc(list, func(s due.Summary) bool { return s.ID == id })
		if err != nil || at < 0 {
			t.Fatalf("%s is not in the list: %v", id.Long(), err)
		}
		if want, got := due.PackSummary(nil, due.Summarize(s, block, len(events))), due.PackSummary(nil, list[at]); string(want) != string(got) {
			t.Fatalf("the summary of %s is %v", id.Long(), list[at])
		}
	}
	events, counted := b.Count()
	if events != len(m.events) || counted != listed {
		t.Fatalf("counted %d events and %d stumps, not %d and %d", events, counted, len(m.events), listed)
	}
	all := 0
	if err := b.EachSummary(func(due.Summary) error { all++; return nil }); err != nil || all != listed {
		t.Fatalf("%d summaries, not %d: %v", all, listed, err)
	}
}

// anyEvent draws an event about a small ground, so that events meet.
func anyEvent(t *rapid.T, known []record.Event) record.Event {
	block := byte(rapid.IntRange(1, 3).Draw(t, "block"))
	stump := stumpAt(block, uint16(rapid.IntRange(1, 2).Draw(t, "row")), uint16(rapid.IntRange(1, 3).Draw(t, "tree")))
	stump.Limb = uint8(rapid.IntRange(0, 2).Draw(t, "limb"))
	at := day.Add(time.Duration(rapid.IntRange(0, 2000).Draw(t, "minutes")) * time.Minute)
	settings := [][2]string{{"zone", "Europe/Paris"}, {"zone", "Nowhere/None"}, {"latitude", "51"}, {"longitude", "170"},
		{"frosty", "yes"}, {"variety", "Chandler"}, {"unheard-of", "x"}}
	switch rapid.IntRange(0, 9).Draw(t, "kind") {
	case 0:
		kv := rapid.SampledFrom(settings).Draw(t, "setting")
		return about(&record.BlockSet{Block: blockID(block), Setting: kv[0], Value: kv[1]})
	case 1:
		return about(&record.DayWeather{Block: blockID(block), Day: unitDate(2027, 5, 4+rapid.IntRange(0, 1).Draw(t, "day")), Low: celsius(12), High: celsius(39)})
	case 2:
		return about(&record.Same{What: "block", A: blockID(block).String(), B: blockID(block%4 + 1).String()})
	case 3:
		return about(&record.BlockMade{Block: blockID(block), Name: fmt.Sprint("block ", block)})
	case 4, 5:
		if len(known) > 0 {
			of := rapid.SampledFrom(known).Draw(t, "of")
			return on(of.Stump, at, &record.Withdrawn{Of: of.ID})
		}
		return on(stump, at, &record.StumpAdded{})
	case 6:
		return on(stump, at, &record.PaintedWhite{})
	case 7:
		return on(stump, at, &record.Foreign{Name: "polled", V: 9, Raw: []byte(`{"by":"hand"}`)})
	}
	return on(stump, at, rapid.SampledFrom(life(stump, 11)).Draw(t, "answer").Body)
}

func TestBookAgainstAModel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		dir, done := scratchDir(t)
		defer done()
		o := options(rapid.Uint64().Draw(t, "seed"))
		b, err := Create(filepath.Join(dir, "book"), o)
		if err != nil {
			t.Fatal(err)
		}
		defer func() { _ = b.Close() }()
		m := &model{}
		t.Repeat(map[string]func(*rapid.T){
			"append": func(t *rapid.T) {
				events := make([]record.Event, rapid.IntRange(1, 5).Draw(t, "many"))
				for i := range events {
					events[i] = anyEvent(t, m.events)
				}
				made, err := b.Append(events...)
				if err != nil {
					t.Fatal(err)
				}
				m.events = append(m.events, made.Events...)
			},
			"reopen": func(t *rapid.T) {
				if err := b.Close(); err != nil {
					t.Fatal(err)
				}
				if b, err = Open(filepath.Join(dir, "book"), o); err != nil {
					t.Fatal(err)
				}
			},
			"export": func(t *rapid.T) {
				got := ""
				err := b.Journal(func(e record.Event) error { got += string(record.Line(e)) + "\n"; return nil })
				if diff := cmp.Diff(m.export(), got); err != nil || diff != "" {
					t.Fatal(err, diff)
				}
			},
			"": func(t *rapid.T) { m.compare(t, b) },
		})
		if found, err := b.Check(); err != nil || len(found) > 0 {
			t.Fatal(err, found)
		}
	})
}

// Three books with events in common end up the same, in whatever way they are
// joined.
func TestJoinInAnyGrouping(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		dir, done := scratchDir(t)
		defer done()
		pool := make([]record.Event, rapid.IntRange(1, 12).Draw(t, "pool"))
		for i := range pool {
			pool[i] = anyEvent(t, pool[:i])
			pool[i].ID = record.ID{byte(rapid.IntRange(1, 9).Draw(t, "id"))} // some alike, with other content
			pool[i].Clock = uint64(rapid.IntRange(1, 6).Draw(t, "clock"))
		}
		heap := func(name string) []record.Event {
			return rapid.SliceOfN(rapid.SampledFrom(pool), 0, 12).Draw(t, name)
		}
		x, y, z := heap("x"), heap("y"), heap("z")
		n := 0
		join := func(parts ...[]record.Event) []record.Event {
			n++
			return joined(t, filepath.Join(dir, fmt.Sprint(n)), parts)
		}
		want := lines(join(x, y, z))
		for name, got := range map[string][]record.Event{
			"(x y) z": join(join(x, y), z),
			"x (y z)": join(x, join(y, z)),
			"z y x":   join(z, y, x),
			"y z x y": join(y, z, x, y),
		} {
			if diff := cmp.Diff(want, lines(got)); diff != "" {
				t.Fatalf("%s: %s", name, diff)
			}
		}
	})
}

// joined is the journal of a new book that parts were joined into.
func joined(t *rapid.T, path string, parts [][]record.Event) (out []record.Event) {
	b, err := Create(path, options(1))
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = b.Close() }()
	for _, part := range parts {
		if _, err := b.Join(sequence(part)); err != nil {
			t.Fatal(err)
		}
	}
	found, err := b.Check()
	if err != nil || len(found) > 0 {
		t.Fatal(err, found)
	}
	if err := b.Journal(func(e record.Event) error { out = append(out, e); return nil }); err != nil {
		t.Fatal(err)
	}
	return out
}

func sequence(events []record.Event) iter.Seq2[record.Event, error] {
	return func(yield func(record.Event, error) bool) {
		for _, e := range events {
			if !yield(e, nil) {
				return
			}
		}
	}
}
