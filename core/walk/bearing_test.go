package walk

import (
	"testing"

	"barkslip/core/record"
	"barkslip/core/record/recordtest"
	"barkslip/core/unit"
)

// A direction is a word, degrees, or the clock seen from the shade side, which
// is mirrored in the south.
func TestDirectionWithoutACompass(t *testing.T) {
	for _, b := range []*record.Block{recordtest.Northern(), recordtest.Southern()} {
		c := &Case{B: b}
		shade := b.Shade()
		for text, want := range map[string]unit.Bearing{"N": 0, "north": 0, "nne": 22.5, "north-east": 45, "South West": 225, "120": 120, "120°": 120,
			"6 o'clock": shade, "12h": shade + 180, "3h": shade + 270, "9 o'clock": shade + 90} {
			if got, err := c.readBearing(text); err != nil || got.From(want) > 1e-9 {
				t.Errorf("%s: %v, %v", text, got, err)
			}
		}
		for _, text := range []string{"", "13h", "0h", "up", "400"} {
			if got, err := c.readBearing(text); err == nil {
				t.Errorf("%q is %v", text, got)
			}
		}
	}
}

// Wherever a direction is asked, letters are text, and arcs and stakes take all
// three ways.
func TestSidesAreTyped(t *testing.T) {
	w := atSlots(t, recordtest.Northern(), "3.4").press("4:NE:1in, 3 o'clock:1in")
	p := w.sees().Plan()
	if len(p.Blocked) != 2 || p.Blocked[0].Bearing != 45 || p.Blocked[1].Bearing != 292.5 {
		t.Errorf("%+v", p.Blocked)
	}
	_, a := w.asked()
	for _, ch := range a.Choices {
		if ch.Entry != nil && !ch.Entry.Text {
			t.Errorf("letters are commands at %s", ch.Word)
		}
	}
	w.says(a.Question, "°, ")
	bodies, err := w.sees().readStake("6ft 6 o'clock")
	if err != nil || bodies[0].(*record.Staked).Side != 22.5 {
		t.Errorf("%v, %v", bodies, err)
	}
}
