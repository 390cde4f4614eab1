package walk

import (
	"math"
	"testing"

	"barkslip/core/record"
	"barkslip/core/record/recordtest"
	"barkslip/core/unit"
)

// Slots keep clear of blocked bark by the slot that the wood takes: 5/8 in wood
// takes one of 5/8 in and 1/32 in, not the usual 1/2 in.
func TestSlotsKeepClearByTheRealSlot(t *testing.T) {
	w := atWood(t, "3.4", lot(1, "L-1", "Lantern", 0.625, 0))
	clear := func() unit.Length {
		c := w.sees()
		p := record.SlotsMarked{Asked: 1, Blocked: []record.Arc{{Bearing: c.B.Shade(), Width: recordtest.Inches(2)}}}
		l, err := c.Layout(p)
		if err != nil {
			t.Fatal(err)
		}
		apart := c.face().Along(l.Slots[0].Bearing) - c.face().Along(c.B.Shade())
		return max(apart, -apart) - unit.Inch
	}
	if got := clear().MM(); math.Abs(got-6.35) > 0.1 {
		t.Errorf("%.2f mm with no wood chosen", got)
	}
	w.press("1")
	if got := clear().MM(); math.Abs(got-(15.875+0.8)/2) > 0.1 {
		t.Errorf("%.2f mm with 5/8 in wood", got)
	}
}
