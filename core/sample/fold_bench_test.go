package sample

import (
	"testing"

	"barkslip/core/due"
	"barkslip/core/record"
)

// BenchmarkFold is the cost of a stump's record and summary, with the journal
// at hand.
func BenchmarkFold(b *testing.B) {
	h := made()[1]
	i := 0
	for b.Loop() {
		id := h.order[i%len(h.order)]
		s := record.Fold(id, h.events[id])
		due.Summarize(s, h.block, len(h.events[id]))
		i++
	}
}
