package walk

import (
	"testing"

	"barkslip/core/due"
	"barkslip/core/record"
)

// Rain on wet sealer, rain on wet paint and hard rain later are three things.
func TestRainIsThreeThings(t *testing.T) {
	w := atWood(t, "3.4", lot(1, "L-1", "Lantern", 0.5, 0)).press("1", "1", "enter", "enter", "enter", "1")
	word := func(a Ask, key string) Choice {
		for _, ch := range a.Choices {
			if ch.Key == key {
				return ch
			}
		}
		return Choice{}
	}
	w.clock("2027-05-13", 11, 45)
	_, a := w.asked()
	if b, ok := word(a, "3").Bodies[0].(*record.StillWet); a.Step.ID != StepWhite || !ok || !b.Rain {
		t.Fatalf("%s: %+v", a.Step.ID, word(a, "3"))
	}
	w.press("1")
	if _, open := dueIn(w.Diary, due.White); open {
		t.Fatal("white is due though it is painted")
	}
	w.clock("2027-05-13", 12, 30)
	a = w.asks(StepWhite)
	if ch := word(a, "5"); ch.Go != StepSealCheck {
		t.Errorf("%+v", ch)
	}
	for range 2 { // a second rain washes off what was painted after the first
		events, err := w.Fold().Answer(record.Given{Bodies: word(a, "3").Bodies, At: w.now, Again: true})
		if err != nil {
			t.Fatal(err)
		}
		w.Append(events...)
		if d, open := dueIn(w.Diary, due.White); !open || !d.Since.Equal(w.now) {
			t.Fatalf("white is not opened again at %s: %+v", w.now, d)
		}
		w.now = w.now.Add(150 * 60e9)
		w.at(StepWhite, "1")
		w.now = w.now.Add(30 * 60e9)
		a = w.asks(StepWhite)
	}
}
