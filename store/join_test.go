package store

import (
	"errors"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"barkslip/core/record"
)

func TestExportJoinsIntoAnEqualBook(t *testing.T) {
	a := newBook(t)
	fill(t, a, 40)
	mustAppend(t, a, life(stumpAt(2, 1, 1), 4)...)
	text := export(t, a)
	b := newBook(t)
	n := strings.Count(text, "\n")
	report, err := b.Join(ReadLines(reader(text)))
	if err != nil || report.Added != n || report.Known != 0 || len(report.Clashing) != 0 {
		t.Fatalf("%+v, %v", report, err)
	}
	if export(t, b) != text {
		t.Error("another export")
	}
	report, err = b.Join(a.All())
	if err != nil || report.Added != 0 || report.Known != n {
		t.Errorf("again: %+v, %v", report, err)
	}
	made := mustAppend(t, b, on(stumpAt(1, 1, 1), day, &record.PaintedWhite{}))
	if want := uint64(5+40*14+4) + 1; made[0].Clock != want {
		t.Errorf("clock %d, want %d", made[0].Clock, want)
	}
	if report, err := b.Join(ReadLines(reader(""))); err != nil || report.Added+report.Known != 0 {
		t.Errorf("nothing: %+v, %v", report, err)
	}
}

func TestClashKeepsTheSameOneEitherWay(t *testing.T) {
	one := numbered(5, []record.Event{on(stumpAt(1, 1, 1), day, &record.Noted{Text: "one"})})
	two := numbered(5, []record.Event{on(stumpAt(1, 2, 2), day, &record.Noted{Text: "two"})})
	two[0].Clock = 7
	var kept []string
	for _, order := range [][][]record.Event{{one, two}, {two, one}} {
		b := newBook(t)
		for i, events := range order {
			report, err := b.Join(sequence(events))
			if err != nil || i == 1 && (len(report.Clashing) != 1 || report.Clashing[0] != one[0].ID) {
				t.Errorf("%+v, %v", report, err)
			}
		}
		if n, stumps := b.Count(); n != 1 || stumps != 1 {
			t.Errorf("%d events of %d stumps", n, stumps)
		}
		kept = append(kept, export(t, b))
	}
	if kept[0] != kept[1] {
		t.Errorf("kept\n%s\n%s", kept[0], kept[1])
	}
}

// One id with two contents in one joining, in one batch or over two, is the
// same as in two joinings: the line first in the order of bytes is kept, the
// rest is as if the other had never come.
func TestClashWithinOneJoining(t *testing.T) {
	id := record.ID{7: 3}
	note := func(tree uint16, clock uint64, text string) record.Event {
		e := on(stumpAt(1, 1, tree), day, &record.Noted{Text: text})
		e.ID, e.Clock = id, clock
		return e
	}
	for name, c := range map[string]struct{ kept, other record.Event }{
		"one stump, one clock": {note(1, 5, "a"), note(1, 5, "b")},
		"two clocks":           {note(1, 3, "b"), note(1, 5, "a")},
		"two stumps":           {note(1, 5, "z"), note(2, 5, "a")},
	} {
		want := string(record.Line(c.kept)) + "\n"
		if want > string(record.Line(c.other)) {
			t.Fatalf("%s: the kept line must come first", name)
		}
		for _, order := range [][]record.Event{{c.kept, c.other}, {c.other, c.kept}, {c.other, c.kept, c.other}, {c.kept, c.other, c.kept}} {
			for _, batch := range []int{100, 1} {
				t.Run(name, func(t *testing.T) {
					inBatches(t, batch)
					b := newBook(t)
					report, err := b.Join(sequence(order))
					if err != nil || report.Added != 1 || report.Known != len(order)-1 || len(report.Clashing) != 1 || report.Clashing[0] != id {
						t.Errorf("batches of %d: %+v, %v", batch, report, err)
					}
					apart := newBook(t)
					for _, e := range order {
						if _, err := apart.Join(sequence([]record.Event{e})); err != nil {
							t.Fatal(err)
						}
					}
					if got, separate := export(t, b), export(t, apart); got != want || separate != want {
						t.Errorf("batches of %d kept\n%s, apart\n%s, want\n%s", batch, got, separate, want)
					}
					if n, stumps := b.Count(); n != 1 || stumps != 1 {
						t.Errorf("batches of %d: %d events of %d stumps", batch, n, stumps)
					}
				})
			}
		}
	}
}

// Ids that are half alike are two ids, and one event given twice does not clash.
func TestNoClash(t *testing.T) {
	events := numbered(9, []record.Event{on(stumpAt(1, 1, 1), day, &record.Noted{Text: "one"}), on(stumpAt(1, 1, 1), day, &record.Noted{Text: "two"})})
	events[1].ID = events[0].ID
	events[1].ID[15] ^= 1
	for _, batch := range []int{100, 1} {
		inBatches(t, batch)
		b := newBook(t)
		report, err := b.Join(sequence([]record.Event{events[0], events[1], events[0]}))
		if err != nil || report.Added != 2 || report.Known != 1 || len(report.Clashing) != 0 {
			t.Errorf("batches of %d: %+v, %v", batch, report, err)
		}
	}
}

// What was kept for a newer program is read as what it is once its kind is
// known, and is then the same event as its line.
func TestForeignEventOfAKindNowKnown(t *testing.T) {
	stump := stumpAt(1, 1, 1)
	kept := numbered(4, []record.Event{
		on(stump, day, &record.StumpAdded{}),
		on(stump, day, &record.Foreign{Name: "noted", V: 1, Raw: []byte(`{"text":"seen"}`)}),
		on(stump, day, &record.Foreign{Name: "noted", V: 1, Raw: []byte(`{"colour":"red"}`)}), // of no such form
		on(stump, day, &record.Foreign{Name: "noted", V: record.Version + 1, Raw: []byte(`{"text":"later"}`)}),
	})
	b := newBook(t)
	if _, err := b.Join(sequence(kept)); err != nil {
		t.Fatal(err)
	}
	b = reopen(t, b)
	events, err := b.Events(stump)
	if err != nil || len(events) != 4 {
		t.Fatal(events, err)
	}
	for _, e := range events {
		note, known := e.Body.(*record.Noted)
		if known != (e.ID == kept[1].ID) || known && note.Text != "seen" {
			t.Errorf("%s was read as %T", record.Line(e), e.Body)
		}
	}
	report, err := b.Join(ReadLines(reader(string(record.Line(kept[1])))))
	if err != nil || report.Known != 1 || len(report.Clashing) != 0 {
		t.Errorf("joined again as a line: %+v, %v", report, err)
	}
}

// Events that do not hold do not come in from a book either.
func TestJoinRefusesWhatDoesNotHold(t *testing.T) {
	events := numbered(6, []record.Event{
		on(stumpAt(1, 1, 1), day, &record.StumpAdded{}),
		on(record.NoStump, day, &record.PaintedWhite{}),                           // of no stump
		on(stumpAt(1, 1, 1), day, &record.Looked{Bleeding: "moist"}),              // no such word
		on(stumpAt(1, 1, 1), day, &record.BlockMade{Block: blockID(1)}),           // of one stump
		on(stumpAt(1, 1, 1), day, &record.Noted{Text: "after those, it goes on"}), // holds
	})
	b := newBook(t)
	report, err := b.Join(sequence(events))
	if err != nil || report.Added != 2 || len(report.Refused) != 3 {
		t.Fatalf("%+v, %v", report, err)
	}
	for i, refused := range report.Refused {
		if !strings.Contains(refused.Error(), events[i+1].ID.String()) {
			t.Errorf("refusal %d does not name its event: %v", i, refused)
		}
	}
}

// A record that a joining replaces while the journal is read is none that is
// lost.
func TestReplacedWhileTheJournalIsRead(t *testing.T) {
	b := newBook(t)
	fill(t, b, 200)
	var last record.Event
	if err := b.Journal(func(e record.Event) error { last = e; return nil }); err != nil {
		t.Fatal(err)
	}
	other := last
	other.At, other.Clock = other.At.AddDate(0, 0, -1), other.Clock+1
	read := 0
	err := b.Journal(func(record.Event) error {
		if read++; read > 1 {
			return nil
		}
		report, err := b.Join(sequence([]record.Event{other}))
		if err == nil && len(report.Clashing) != 1 {
			t.Errorf("nothing was replaced: %+v", report)
		}
		return err
	})
	if events, _ := b.Count(); err != nil || read != events-1 {
		t.Errorf("%d of %d read: %v", read, events, err)
	}
}

// inBatches makes joining go in batches of n for one test.
func inBatches(t *testing.T, n int) {
	was := joinBatch
	joinBatch = n
	t.Cleanup(func() { joinBatch = was })
}

func TestJoinInManyBatches(t *testing.T) {
	a := newBook(t)
	fill(t, a, 12)
	mustAppend(t, a, about(&record.Same{What: "block", A: blockID(1).String(), B: blockID(2).String()}))
	mustAppend(t, a, life(stumpAt(2, 1, 1), 6)...)
	inBatches(t, 20)
	b := newBook(t)
	if _, err := b.Join(a.All()); err != nil {
		t.Fatal(err)
	}
	if export(t, b) != export(t, a) {
		t.Error("another export")
	}
}

func TestJoinThatBreaksOff(t *testing.T) {
	a := newBook(t)
	fill(t, a, 12)
	inBatches(t, 20)
	b := newBook(t)
	broken := errors.New("unplugged")
	report, err := b.Join(func(yield func(record.Event, error) bool) {
		n := 0
		for e, err := range a.All() {
			if n++; n == 10 && !yield(record.Event{}, &LineError{10, broken}) || n == 77 && !yield(record.Event{}, broken) || !yield(e, err) {
				return
			}
		}
	})
	if !errors.Is(err, broken) || report.Added != 76 {
		t.Errorf("%+v, %v", report, err)
	}
	checkSound(t, b)
	if report, err := b.Join(a.All()); err != nil || report.Known != 76 {
		t.Errorf("%+v, %v", report, err)
	}
	if export(t, b) != export(t, a) {
		t.Error("another export")
	}
}

// A joining that ends without its summaries, as when the power goes, is made
// good when the book is next opened.
func TestJoinCutOffBetweenBatches(t *testing.T) {
	a := newBook(t)
	fill(t, a, 12)
	b, err := Create(filepath.Join(t.TempDir(), "book"), options(1))
	if err != nil {
		t.Fatal(err)
	}
	j := &joining{b: b, touched: map[record.StumpID]bool{}, clashing: map[record.ID]bool{}}
	if err := b.view(j.known.fill); err != nil {
		t.Fatal(err)
	}
	for n, err := range a.Entries(t.Context()) {
		if err != nil {
			t.Fatal(err)
		}
		j.batch.add(n)
	}
	if err := j.flush(true); err != nil {
		t.Fatal(err)
	}
	if found, _ := b.Check(); len(found) == 0 {
		t.Error("the summaries are there already: nothing is tried")
	}
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	b, err = Open(b.Path(), options(1))
	if err != nil {
		t.Fatal(err)
	}
	if _, stumps := b.Count(); stumps != 12 {
		t.Errorf("%d stumps", stumps)
	}
	checkAndClose(t, b)
}

// An absurd clock is not let in, and what comes with it is.
func TestAnAbsurdClockIsNotLetIn(t *testing.T) {
	b := newBook(t)
	mustAppend(t, b, settings(1)...)
	own := b.state.Load().head.clock
	good, absurd := on(stumpAt(1, 1, 1), day, &record.Noted{Text: "stands"}), on(stumpAt(1, 1, 2), day, &record.Noted{Text: "absurd"})
	good.ID, absurd.ID = record.ID{1, 1}, record.ID{1, 2}
	good.Clock, absurd.Clock = own+aheadMost, own+aheadMost+1
	report, err := b.Join(func(yield func(record.Event, error) bool) { _ = yield(absurd, nil) && yield(good, nil) })
	if err != nil || report.Added != 1 || len(report.Refused) != 1 || !strings.Contains(report.Refused[0].Error(), absurd.ID.String()) {
		t.Fatalf("%+v, %v", report, err)
	}
	mustAppend(t, b, on(stumpAt(1, 1, 1), day, &record.Noted{Text: "goes on"}))
}

// A book that an absurd clock came into before there was a limit opens and takes answers.
func TestABookOfAnAbsurdClockGoesOn(t *testing.T) {
	b := newBook(t)
	mustAppend(t, b, settings(1)...)
	absurd := on(stumpAt(1, 1, 2), day, &record.Noted{Text: "absurd"})
	absurd.ID, absurd.Clock = record.ID{9}, math.MaxInt64
	err := b.write(0.5, false, func(c *change) error {
		n := entryOf(absurd, record.Pack(nil, absurd))
		key, err := c.keyOf(n)
		if err != nil {
			return err
		}
		if err := c.put(key, n); err != nil {
			return err
		}
		c.now.head.clock = math.MaxInt64 // as it was kept then
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	b, err = Open(b.Path(), options(2))
	if err != nil {
		t.Fatal(err)
	}
	defer checkAndClose(t, b)
	mustAppend(t, b, on(stumpAt(1, 1, 1), day, &record.Noted{Text: "goes on"}))
	if clock := b.state.Load().head.clock; clock > 1<<20 {
		t.Errorf("the clock stands at %d", clock)
	}
	if err := b.Journal(func(record.Event) error { return nil }); err != nil {
		t.Error(err)
	}
}
