package main

import (
	"encoding/json"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"barkslip/core/record"
	"barkslip/store"
)

// painted paints a stump white at dueNow.
func painted(t *testing.T, path string, stump record.StumpID) {
	t.Helper()
	book, err := store.Open(path, store.Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer book.Close()
	if _, err := book.Append(record.Event{At: dueNow, Hand: "AB", Stump: stump, Body: &record.PaintedWhite{}}); err != nil {
		t.Fatal(err)
	}
}

// TestDueOrder: the stumps to be painted before the others, each part up one row
// and down the next, and all that is due on a stump together, white first.
func TestDueOrder(t *testing.T) {
	path := dueBook(t, "Hollow Lane", dueStump(2, 1, 0), dueStump(1, 2, 0), dueStump(2, 2, 2), dueStump(1, 1, 0), dueStump(2, 2, 1), dueStump(3, 1, 0))
	painted(t, path, dueStump(2, 2, 2))
	var answer dueAnswer
	if err := json.Unmarshal([]byte(dueRun(t, path, "--on", "2027-05-07", "--json")), &answer); err != nil {
		t.Fatal(err)
	}
	var places []string
	for _, row := range answer.Due {
		place := strings.SplitN(row.Stump, "/", 2)[1]
		first := len(places) == 0 || places[len(places)-1] != place
		if first {
			places = append(places, place)
		}
		if white := row.Kind == "white"; white != (first && place != "2/2/2") {
			t.Errorf("%s at %s, first there: %v", row.Kind, place, first)
		}
	}
	if got := strings.Join(places, " "); got != "1/1 1/2 2/2/1 2/1 3/1 2/2/2" {
		t.Errorf("in the order %s", got)
	}
}

// sampleBook is a made-up block of three seasons.
func sampleBook(t *testing.T, stumps int) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "sample.bark")
	if code := run([]string{"sample", "--stumps", fmt.Sprint(stumps), "--seasons", "3", "--book", path}, io.Discard, os.Stderr); code != 0 {
		t.Fatal(code)
	}
	return path
}

// TestDueSentencesAreFilled: every due of a block of three seasons gives its
// reason in a whole sentence, in JSON that holds.
func TestDueSentencesAreFilled(t *testing.T) {
	var answer dueAnswer
	if err := json.Unmarshal([]byte(dueRun(t, sampleBook(t, 400), "--on", "2027-05-04", "--days", "3660", "--json")), &answer); err != nil {
		t.Fatal(err)
	}
	kinds := map[string]bool{}
	for _, row := range answer.Due {
		if kinds[row.Kind] = true; strings.ContainsAny(row.Why, "{}%") || !strings.HasSuffix(row.Why, ".") {
			t.Errorf("%s at %s: %q", row.Kind, row.Stump, row.Why)
		}
	}
	if len(kinds) < 15 {
		t.Errorf("only %d kinds", len(kinds))
	}
}

// quickest is the least time that barkslip due takes, of several.
func quickest(t *testing.T, path, form string) time.Duration {
	t.Helper()
	least := time.Hour
	for range 5 {
		began := time.Now()
		if dueRun(t, path, form) == "" {
			t.Fatal("nothing due")
		}
		least = min(least, time.Since(began))
	}
	return least
}

// TestDueIsQuick lists 5,000 stumps of three seasons; with BARKSLIP_BIG set it
// makes 100,000, which takes minutes, and lists those within a second.
func TestDueIsQuick(t *testing.T) {
	stumps, most := 5000, 400*time.Millisecond
	if os.Getenv("BARKSLIP_BIG") != "" {
		stumps, most = 100_000, time.Second
	}
	path := sampleBook(t, stumps)
	for _, form := range []string{"--json=false", "--json", "--csv", "--ics"} {
		took := quickest(t, path, form)
		t.Logf("%s: %v", form, took)
		if took > most && (form == "--json" || form == "--json=false") {
			t.Errorf("%s: %v for %d stumps, at most %v", form, took, stumps, most)
		}
	}
}
