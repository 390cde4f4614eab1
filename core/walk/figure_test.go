package walk

import (
	"testing"

	"barkslip/core/record/recordtest"
)

// The clear stem offered in a metric block is 45 cm, and is clear enough.
func TestMetricDefaultPassesItsCheck(t *testing.T) {
	w := walkerOn(t, metric(recordtest.Northern()), "2027-05-03", 9).press("1")
	w.present(StepReach)
	if _, a := w.asked(); a.Entry.Likely != "45 cm" {
		t.Errorf("%q", a.Entry.Likely)
	}
	w.press("enter")
	if w.sees().limbTooNear() {
		t.Error("the default is too near")
	}
}
