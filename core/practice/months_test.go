package practice

import (
	"strings"
	"testing"
)

// What is told in the south of the tapes of a winter, the twine of a summer, is told by
// the months of the south.
func TestMonthsOfTheSouth(t *testing.T) {
	for _, c := range []struct{ north, south string }{
		{"tight by next June.", "tight by next December."}, {"since August", "since February"}, {"from March on", "from September on"},
		{"Each April, July and October", "Each October, January and April"}, {"it may be so", "it may be so"},
	} {
		north, south := newTale(0), newTale(0)
		for seed := uint64(1); north.b.South(); seed++ {
			north = newTale(seed)
		}
		for seed := uint64(1); !south.b.South(); seed++ {
			south = newTale(seed)
		}
		if got := north.here(c.north); got != c.north {
			t.Errorf("in the north %q", got)
		}
		if got := south.here(c.north); got != c.south {
			t.Errorf("%q in the south is %q, want %q", c.north, got, c.south)
		}
	}
	seen := 0
	for seed := range uint64(60) {
		for _, m := range tiesKinds {
			if c := m.make(seed); m.kind == "april-twine" && strings.HasPrefix(c.Told[0], "In the south") {
				seen++
				if text := strings.Join(c.Told, " "); !strings.Contains(text, "since February") {
					t.Errorf("seed %d: %s", seed, text)
				}
			}
		}
	}
	if seen == 0 {
		t.Error("no case in the south")
	}
}
