package weather

import (
	"testing"
	"time"

	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// TestReadDay reads a day's weather with what may be left out left out, and
// refuses what cannot be.
func TestReadDay(t *testing.T) {
	b := &record.Block{ID: record.ID{1}, Units: unit.US, Zone: time.UTC}
	now := time.Date(2027, 5, 20, 12, 0, 0, 0, time.UTC)
	w, err := readDay("52 91", b, now)
	if err != nil || w.Day != unit.MakeDate(2027, time.May, 20) || w.Low.Temperature != unit.Fahrenheit(52) || !w.WindAssumed || w.Wind != trade.UsualWind.MS() {
		t.Errorf("%+v, %v", w, err)
	}
	w, err = readDay("2027-05-21 52 91 3 8", b, now)
	if err != nil || w.Day != unit.MakeDate(2027, time.May, 21) || w.WindAssumed || w.Cloud != 8 {
		t.Errorf("%+v, %v", w, err)
	}
	for _, text := range []string{"", "52", "warm 91", "52 91 3 9", "52 91 3 -1", "52 91 3 0 1", "91 52", "52 91 gale"} {
		if w, err := readDay(text, b, now); err == nil {
			t.Errorf("%q was taken as %+v", text, w)
		}
	}
}
