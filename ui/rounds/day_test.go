package rounds

import (
	"testing"
	"time"

	"barkslip/core/unit"
)

// TestReadDay reads a day as it may be typed, and refuses what is none.
func TestReadDay(t *testing.T) {
	today := unit.MakeDate(2027, time.May, 20)
	for text, want := range map[string]unit.Date{
		"tomorrow": today.Add(1), "Tomorrow": today.Add(1), "2027-06-01": unit.MakeDate(2027, time.June, 1), "06-01": unit.MakeDate(2027, time.June, 1),
		"1 Jun": unit.MakeDate(2027, time.June, 1), "1 June": unit.MakeDate(2027, time.June, 1), "Jun 1": unit.MakeDate(2027, time.June, 1),
	} {
		if got, err := readDay(text, today); err != nil || got != want {
			t.Errorf("%q is %s, %v; want %s", text, got, err, want)
		}
	}
	for _, text := range []string{"", "soon", "32 Jun", "13-01", "2027-02-30"} {
		if got, err := readDay(text, today); err == nil {
			t.Errorf("%q was taken as %s", text, got)
		}
	}
}
