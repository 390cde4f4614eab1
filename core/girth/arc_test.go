package girth

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"barkslip/core/unit"
)

func TestParseArc(t *testing.T) {
	for given, want := range map[string]Arc{
		"120:2in": {120, 50.8}, " sw : 5 cm": {225, 50}, "0:1ft 2in": {0, 14 * 25.4}, "360:10mm": {0, 10},
	} {
		got, err := ParseArc(given)
		if err != nil || got.Bearing != want.Bearing || math.Abs(float64(got.Width-want.Width)) > 1e-9 {
			t.Errorf("%q is %v (%v), want %v", given, got, err, want)
		}
	}
	for _, given := range []string{"", ":", "120", "120:2", "2in:120", "120:0in", "120:-2in", "361:2in", "120:2in:3in", "NaN:2in"} {
		if got, err := ParseArc(given); err == nil {
			t.Errorf("%q was taken for %v", given, got)
		}
	}
}

func TestArcReadsBackAsPrinted(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		arc := Arc{unit.Bearing(rapid.Float64Range(0, 359).Draw(t, "bearing")), unit.Length(rapid.Float64Range(0.001, 3000).Draw(t, "width"))}
		if got, err := ParseArc(arc.String()); err != nil || got != arc {
			t.Fatalf("%v came back as %v (%v)", arc, got, err)
		}
	})
}

func FuzzParseArc(f *testing.F) {
	for _, s := range []string{"120:2in", "sw:5cm", "0:1ft 2in", "x:", "1e9:1mm", "350:3 1/2 in"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		arc, err := ParseArc(s)
		if err != nil {
			return
		}
		if err := arc.check(); err != nil || arc.Bearing < 0 || arc.Bearing >= 360 {
			t.Errorf("%q gave %v", s, arc)
		}
		if _, err := Slots(SlotPlan{Across: 100, Scions: 3, Blocked: []Arc{arc}}); err != nil && float64(arc.Width) < 300 {
			t.Errorf("%q blocks the whole stump: %v", s, err)
		}
	})
}
