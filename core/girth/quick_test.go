//go:build !race

package girth

import (
	"slices"
	"testing"
	"time"

	"barkslip/core/unit"
)

// A layout comes within the time of a key press: half of them under 5 ms.
func TestSlotsAreQuick(t *testing.T) {
	var took []time.Duration
	for i := range 200 {
		p := SlotPlan{Across: unit.Length(80 + i), Across2: unit.Length(70 + i/2), LongWay: unit.Bearing(i), Scions: 2 + i%5, Toward: towards(unit.Bearing(2 * i))}
		for j := range i % 6 {
			p.Blocked = append(p.Blocked, Arc{unit.Bearing(61*j + i), unit.Length(5 + j + i%11)})
		}
		start := time.Now()
		if _, err := Slots(p); err != nil {
			t.Fatal(err)
		}
		took = append(took, time.Since(start))
	}
	slices.Sort(took)
	if took[100] > 5*time.Millisecond {
		t.Errorf("half of the layouts take over %v", took[100])
	}
	t.Logf("median %v, slowest %v", took[100], took[199])
}
