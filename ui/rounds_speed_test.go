package ui

import (
	"os"
	"testing"
	"time"

	"barkslip/core/sample"
)

// The rounds open in under 300 ms: on 5,000 stumps over 3 seasons here, and on
// 100,000 with BARKSLIP_BIG=1.
func TestRoundsOpenQuickly(t *testing.T) {
	if raceDetector || testing.Short() {
		t.Skip("timing means nothing here")
	}
	stumps := 5000
	if os.Getenv("BARKSLIP_BIG") == "1" {
		stumps = 100_000
	}
	d := newDriver(t, "2027-05-20 10:12")
	if err := d.book.Bulk(sample.Events(sample.Plan{Stumps: stumps, Seasons: 3, Seed: 1, Zone: newYork, Now: d.now})); err != nil {
		t.Fatal(err)
	}
	d.open()
	best := time.Hour
	for range 5 {
		began := time.Now()
		d.press("g")
		d.root.View()
		best = min(best, time.Since(began))
		calls := len(d.round().Calls())
		if calls == 0 {
			t.Fatal("nothing is due")
		}
		d.press("esc")
	}
	t.Logf("rounds of %d stumps open in %v", stumps, best)
	if best > 300*time.Millisecond {
		t.Errorf("the rounds open in %v, want under 300 ms", best)
	}
}
