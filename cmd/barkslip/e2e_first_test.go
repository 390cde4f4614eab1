package main_test

import (
	"encoding/json"
	"os"
	"slices"
	"strconv"
	"testing"
	"time"
)

// frameWithin is how long the first frame of a block of 500 stumps may take,
// and silentWithin how long on a terminal that answers nothing it is asked.
const (
	frameWithin  = 100 * time.Millisecond
	silentWithin = 500 * time.Millisecond
)

// slack is how many times slower than a laptop the machine may be.
func slack(t *testing.T) time.Duration {
	text := os.Getenv("BARKSLIP_SLACK")
	if text == "" {
		return 1
	}
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 || n > 10 {
		t.Fatalf("BARKSLIP_SLACK is %q, not a whole number from 1 to 10", text)
	}
	return time.Duration(n)
}

func testFirstFrame(t *testing.T) {
	slow(t)
	timed(t)
	w := newWorld(t, "2027-06-10 09:00")
	w.knows("RK", true)
	w.run("sample", "--stumps", "500", "--book", w.in("five.bark"))
	name := sampleName(t, w)
	for _, terminal := range []struct {
		word   string
		polite bool
		within time.Duration
	}{{"terminal that answers", true, frameWithin}, {"silent terminal", false, silentWithin}} {
		var took []time.Duration
		for range 10 {
			d := w.dial(terminal.polite, binary, "--book", w.in("five.bark"))
			took = append(took, d.first(name))
			d.kill()
		}
		slices.Sort(took)
		median := (took[4] + took[5]) / 2
		t.Logf("first frame of 500 stumps, %s: median %.1f ms, worst %.1f ms", terminal.word, ms(median), ms(took[9]))
		if most := terminal.within * slack(t); median > most {
			t.Errorf("%s: median %.1f ms, at most %.0f allowed", terminal.word, ms(median), ms(most))
		}
	}
}

func ms(d time.Duration) float64 { return float64(d) / float64(time.Millisecond) }

// sampleName is the name of the made-up block.
func sampleName(t *testing.T, w *world) string {
	t.Helper()
	var listed struct{ Blocks []struct{ Name string } }
	if err := json.Unmarshal([]byte(w.run("block", "list", "--json", "--book", w.in("five.bark"))), &listed); err != nil || len(listed.Blocks) != 1 {
		t.Fatalf("block list: %v, %d blocks", err, len(listed.Blocks))
	}
	return listed.Blocks[0].Name
}
