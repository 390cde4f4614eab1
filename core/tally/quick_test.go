//go:build !race

package tally

import (
	"testing"
	"time"
)

func TestAnswersAreQuick(t *testing.T) {
	crowder := pairs(t, "10/39 23/62 23/81 26/51 17/39 5/6 53/74 55/72 32/51 46/79 10/13 8/16 10/30 8/28 23/45 0/4 3/12 22/41 15/30 32/51 3/7")
	var block []Counts
	var waited []Waited
	for i := range 20000 {
		of := 2 + i%3
		block = append(block, Counts{Alive: i % (of + 1), Of: of})
		waited = append(waited, Waited{For: float64(i*7919%365) + 0.5, Happened: i%3 > 0})
	}
	for name, answer := range map[string]func() error{
		"take, largest": func() error {
			_, err := Take(mostCounted/3, mostCounted, &Counts{Alive: mostCounted/3 + 100, Of: mostCounted})
			return err
		},
		"chance":         func() error { _, err := Chance(0.01, 1, mostScions, 0.5); return err },
		"learn, plates":  func() error { _, err := Learn(crowder); return err },
		"learn, a block": func() error { _, err := Learn(block); return err },
		"survival":       func() error { _, err := Survival(waited); return err },
		"table":          func() error { _, err := Table([][]int{{69, 126}, {139, 64}, {167, 33}}); return err },
	} {
		if took := quickest(t, answer); took > 50*time.Millisecond {
			t.Errorf("%s took %v", name, took)
		}
	}
}

// quickest is the shortest of five tries, so that a busy machine does not count.
func quickest(t *testing.T, answer func() error) time.Duration {
	t.Helper()
	best := time.Hour
	for range 5 {
		start := time.Now()
		if err := answer(); err != nil {
			t.Fatal(err)
		}
		best = min(best, time.Since(start))
	}
	return best
}
