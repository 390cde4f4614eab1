package store

import (
	"fmt"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"barkslip/core/record"
)

// seasonBook is a closed book of stumps with so many events each.
func seasonBook(tb testing.TB, stumps, each int) string {
	tb.Helper()
	b, err := Create(filepath.Join(tb.TempDir(), "book"), options(1))
	if err != nil {
		tb.Fatal(err)
	}
	if err := b.Bulk(slices.Values(season(stumps, each))); err != nil {
		tb.Fatal(err)
	}
	if err := b.Close(); err != nil {
		tb.Fatal(err)
	}
	return b.Path()
}

func season(stumps, each int) []record.Event {
	events := settings(1)
	for i := range stumps {
		events = append(events, life(stumpAt(1, uint16(i/100+1), uint16(i%100+1)), each)...)
	}
	return numbered(6, events)
}

// A block of 500 stumps opens within 30 ms and is listed within 5 ms. The best
// of several tries counts, since the machine may be busy.
func TestOpeningAndListingAreQuick(t *testing.T) {
	if raceDetector {
		t.Skip("times mean nothing under the race detector")
	}
	path := seasonBook(t, 500, 40)
	opening, listing := time.Hour, time.Hour
	for range 8 {
		began := time.Now()
		b, err := Open(path, options(1))
		opened := time.Now()
		if err != nil {
			t.Fatal(err)
		}
		list, err := b.Summaries(blockID(1))
		if err != nil || len(list) != 500 {
			t.Fatal(len(list), err)
		}
		opening, listing = min(opening, opened.Sub(began)), min(listing, time.Since(opened))
		if err := b.Close(); err != nil {
			t.Fatal(err)
		}
	}
	if opening > 30*time.Millisecond || listing > 5*time.Millisecond {
		t.Errorf("opening took %v, listing %v", opening, listing)
	}
	t.Logf("opening %v, listing %v", opening, listing)
}

func BenchmarkOpen(b *testing.B) {
	path := seasonBook(b, 500, 40)
	for b.Loop() {
		book, err := Open(path, options(1))
		if err != nil {
			b.Fatal(err)
		}
		if err := book.Close(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSummaries(b *testing.B) {
	book, err := Open(seasonBook(b, 500, 40), options(1))
	if err != nil {
		b.Fatal(err)
	}
	defer book.Close()
	for b.Loop() {
		if list, err := book.Summaries(blockID(1)); err != nil || len(list) != 500 {
			b.Fatal(err)
		}
	}
}

func BenchmarkAppend(b *testing.B) {
	book, err := Open(seasonBook(b, 500, 40), options(1))
	if err != nil {
		b.Fatal(err)
	}
	defer book.Close()
	for i := 0; b.Loop(); i++ {
		mustAppend(b, book, on(stumpAt(1, uint16(i%5+1), uint16(i%100+1)), day, &record.Noted{Text: fmt.Sprint("note ", i)}))
	}
}

// BenchmarkBulk writes 2,500 stumps of 40 events and gives events a second.
func BenchmarkBulk(b *testing.B) {
	events := season(2500, 40)
	dir, n := b.TempDir(), 0
	for b.Loop() {
		n++
		book, err := Create(filepath.Join(dir, fmt.Sprint(n)), options(1))
		if err != nil {
			b.Fatal(err)
		}
		if err := book.Bulk(slices.Values(events)); err != nil {
			b.Fatal(err)
		}
		if err := book.Close(); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(len(events)*b.N)/b.Elapsed().Seconds(), "events/s")
}

// BenchmarkJoin joins that journal into an empty book.
func BenchmarkJoin(b *testing.B) {
	book, err := Open(seasonBook(b, 2500, 40), options(1))
	if err != nil {
		b.Fatal(err)
	}
	defer book.Close()
	dir, n := b.TempDir(), 0
	for b.Loop() {
		n++
		to, err := Create(filepath.Join(dir, fmt.Sprint(n)), options(1))
		if err != nil {
			b.Fatal(err)
		}
		if _, err := to.Join(book.All()); err != nil {
			b.Fatal(err)
		}
		if err := to.Close(); err != nil {
			b.Fatal(err)
		}
	}
	events, _ := book.Count()
	b.ReportMetric(float64(events*b.N)/b.Elapsed().Seconds(), "events/s")
}
