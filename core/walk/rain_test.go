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
	if _, ok := word(a, "5").Bodies[0].(*record.RainedHard); !ok {
		t.Errorf("%+v", word(a, "5"))
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

// Hard rain has the seal looked at that day, whenever it comes; the look, or sealer
// put on anew, ends it.
func TestHardRainAsksWhetherTheSealIsWhole(t *testing.T) {
	for _, ends := range []record.Body{&record.SealChecked{}, &record.Resealed{}} {
		w := threeGrafts(t, "2027-05-17")
		if _, open := dueIn(w.Diary, due.AfterLook); open {
			t.Fatal("the seal was looked at")
		}
		w.clock("2027-05-17", 18, 0)
		rest := w.sees().Ask(StepRest, false)
		for _, ch := range rest.Choices {
			if ch.Key == "5" {
				w.choose(ch, "")
			}
		}
		d, open := dueIn(w.Diary, due.AfterLook)
		if !open || !d.Open(w.now) || w.B.Day(d.By) != w.B.Day(w.now).Add(1) {
			t.Fatalf("%+v, %v", d, open)
		}
		w.says(d.Why(w.B), "It rained hard 17 May")
		w.clock("2027-05-18", 8, 0)
		w.Say(w.now, ends)
		if d, open := dueIn(w.Diary, due.AfterLook); open && d.Open(w.now) {
			t.Errorf("%s leaves it open: %s", ends.Kind(), d.Why(w.B))
		}
	}
}

// Rain on wet sealer says so in the due.
func TestRainOnWetSealerIsNamed(t *testing.T) {
	w := atWood(t, "3.4", lot(1, "L-1", "Lantern", 0.5, 0)).press("1", "1", "enter", "enter", "enter", "1")
	w.now = w.now.Add(110 * 60e9)
	w.at(StepWhite, "3")
	d, _ := dueIn(w.Diary, due.White)
	w.says(d.Why(w.B), "It was rained on")
	if !d.Opens.Equal(w.now.Add(30 * 60e9)) {
		t.Errorf("opens %s", d.Opens)
	}
}
