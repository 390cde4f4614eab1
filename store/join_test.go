package store

import (
	"errors"
	"path/filepath"
	"strings"
	"testing"

	"barkslip/core"
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
	made := mustAppend(t, b, on(stumpAt(1, 1, 1), day, &core.PaintedWhite{}))
	if want := uint64(5+40*14+4) + 1; made[0].Clock != want {
		t.Errorf("clock %d, want %d", made[0].Clock, want)
	}
	if report, err := b.Join(ReadLines(reader(""))); err != nil || report.Added+report.Known != 0 {
		t.Errorf("nothing: %+v, %v", report, err)
	}
}

func TestClashKeepsTheSameOneEitherWay(t *testing.T) {
	one := numbered(5, []core.Event{on(stumpAt(1, 1, 1), day, &core.Noted{Text: "one"})})
	two := numbered(5, []core.Event{on(stumpAt(1, 2, 2), day, &core.Noted{Text: "two"})})
	two[0].Clock = 7
	var kept []string
	for _, order := range [][][]core.Event{{one, two}, {two, one}} {
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

// inBatches makes joining go in batches of n for one test.
func inBatches(t *testing.T, n int) {
	was := joinBatch
	joinBatch = n
	t.Cleanup(func() { joinBatch = was })
}

func TestJoinInManyBatches(t *testing.T) {
	a := newBook(t)
	fill(t, a, 12)
	mustAppend(t, a, about(&core.Same{What: "block", A: blockID(1).String(), B: blockID(2).String()}))
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
	report, err := b.Join(func(yield func(core.Event, error) bool) {
		n := 0
		for e, err := range a.All() {
			if n++; n == 10 && !yield(core.Event{}, &LineError{10, broken}) || n == 77 && !yield(core.Event{}, broken) || !yield(e, err) {
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
	j := &joining{b: b, touched: map[core.StumpID]bool{}, clashing: map[core.ID]bool{}}
	if err := b.view(j.known.fill); err != nil {
		t.Fatal(err)
	}
	_ = a.Journal(func(e core.Event) error { j.batch = append(j.batch, e); return nil })
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
