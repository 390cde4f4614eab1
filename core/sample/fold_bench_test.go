package sample

import (
	"testing"

	"barkslip/core/due"
	"barkslip/core/record"
)

// BenchmarkFold is the cost of a stump's record and summary, with the journal
// at hand.
func BenchmarkFold(b *testing.B) {
	h := read(b, Plan{Stumps: 2000, Seasons: 4, Zone: newYork(b), Now: usual(b, 1).Now})
	i := 0
	for b.Loop() {
		id := h.order[i%len(h.order)]
		s := record.Fold(id, h.events[id])
		due.Summarize(s, h.block, len(h.events[id]))
		i++
	}
}
