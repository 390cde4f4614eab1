package walk

import (
	"testing"

	"barkslip/core/record"
	"barkslip/core/record/recordtest"
)

// atWood is a stump with its slots marked; lots are the lots of the book.
func atWood(t *testing.T, across string, lots ...record.Body) *walker {
	w := atSlots(t, recordtest.Northern(), across).press("1")
	var events []record.Event
	for i, l := range lots {
		events = append(events, record.Event{ID: record.ID{0x10, byte(i)}, Clock: uint64(i + 1), At: w.now.AddDate(0, 0, -i-1), Body: l})
	}
	w.book = record.FoldBook(events, recordtest.UTC)
	w.present(StepWood)
	return w
}

// lot is a lot of a thickness in inches, of so many sticks.
func lot(n byte, name, variety string, thick float64, sticks int) *record.LotReceived {
	l := &record.LotReceived{Lot: record.ID{n}, Name: name, Variety: variety, Sticks: sticks}
	if thick > 0 {
		l.Thickness = recordtest.Inches(thick)
	}
	return l
}

// Wood is held against the stump wherever it is asked about, and taken all the
// same.
func TestThicknessIsJudged(t *testing.T) {
	for _, c := range []struct {
		across string
		thick  float64
		says   string
	}{{"1.5", 0.5, "1/2 in wood is stout for a stump 1 1/2 in across: 5/16 in to 3/8 in suits it (from memory)."},
		{"3.375", 0.25, "1/4 in wood is thin for a stump 3 3/8 in across: 7/16 in to 5/8 in suits it (from memory)."}} {
		w := atWood(t, c.across, lot(1, "L-1", "Lantern", c.thick, 0))
		_, a := w.asked()
		w.says(a.Choices[0].Meaning, "for this stump")
		if a.Likely == "1" {
			t.Errorf("%s: unfit wood is likely", c.across)
		}
		w.press("1")
		w.present(StepNodes)
		if _, a = w.asked(); a.Warn != c.says {
			t.Errorf("%q", a.Warn)
		}
		if a = w.asks(StepThick); a.Warn != c.says {
			t.Errorf("%q", a.Warn)
		}
		w.press("1")
		if _, a = w.asked(); a.Step.ID != StepScion || a.Warn != c.says {
			t.Errorf("%s: %q", a.Step.ID, a.Warn)
		}
		w.press("enter")
		if len(w.Fold().Now().Grafts) != 1 {
			t.Error("not taken")
		}
	}
}

// Wood that suits is not warned of.
func TestFittingWoodIsNotWarnedOf(t *testing.T) {
	w := atWood(t, "3.4", lot(1, "L-1", "Lantern", 0.5, 0)).press("1", "1")
	if _, a := w.asked(); a.Warn != "" {
		t.Errorf("%q", a.Warn)
	}
}

// One scion may be of other wood than the rest, which then stands as it was.
func TestOtherWoodForOneScion(t *testing.T) {
	w := atWood(t, "3.4", lot(1, "L-1", "Lantern", 0.5, 0), lot(2, "L 27", "Poe", 0.375, 0)).press("1", "1", "enter")
	for _, c := range []struct {
		typed, variety string
		lot            record.ID
		thick          string
	}{{"9/16", "Lantern", record.ID{1}, "9/16 in"}, {"L 27", "Poe", record.ID{2}, "3/8 in"}, {"l 27 7/16", "Poe", record.ID{2}, "7/16 in"}, {"Wilson 7/16", "Wilson", record.None, "7/16 in"}} {
		w.press2("8", c.typed)
		got := w.sees().woodFor(2)
		if got.Variety != c.variety || got.Lot != c.lot || w.B.Units.Length(got.Thickness.Length) != c.thick || len(got.Nodes) != 2 {
			t.Errorf("%s: %+v", c.typed, got)
		}
	}
	w.press("enter", "enter")
	a := w.Fold().Now()
	for i, want := range []string{"Lantern", "Wilson", "Lantern"} {
		if got := a.Grafts[i].Set.What.Variety; got != want {
			t.Errorf("scion %d is of %s", i+1, got)
		}
	}
}

// press2 takes a choice beside a list of checks and types what it asks.
func (w *walker) press2(key, text string) {
	w.t.Helper()
	_, a := w.asked()
	for _, ch := range a.Choices {
		if ch.Key == key {
			w.choose(ch, text)
			return
		}
	}
	w.t.Fatalf("%s is not offered", key)
}

// A scion that broke before it was sealed leaves its slot open; the wood of both
// is used, and the new one is of its own time.
func TestBrokenScionIsReplaced(t *testing.T) {
	w := atWood(t, "3.4", lot(1, "L-1", "Lantern", 0.5, 0)).press("1", "1", "enter", "enter", "enter")
	w.present(StepSeal)
	w.clock("2027-05-13", 10, 30)
	_, a := w.asked()
	ch := a.Choices[len(a.Choices)-1]
	if ch.Word != "one broke" || len(ch.Doubt.Ways) != 3 {
		t.Fatalf("%+v", ch)
	}
	events, err := w.Fold().Answer(record.Given{Bodies: ch.Doubt.Ways[1].Bodies, At: w.now})
	if err != nil {
		t.Fatal(err)
	}
	w.Append(events...)
	w.present(StepScion)
	if n := w.sees().Slot(); n != 2 {
		t.Fatalf("slot %d is asked", n)
	}
	w.clock("2027-05-13", 10, 35)
	_, a = w.asked()
	events, err = w.Fold().Answer(record.Given{Bodies: a.Checks.Record(seen(7)), At: w.now})
	if err != nil {
		t.Fatal(err)
	}
	w.Append(events...)
	w.present(StepSeal)
	s := w.Fold()
	if g := s.Now().Graft(2); !g.Set.At.Equal(w.now) || s.Used()[record.ID{1}] != 4 {
		t.Errorf("set at %s, %d used", g.Set.At, s.Used()[record.ID{1}])
	}
}

// Wood is counted down by the scions set, and a lot at its end is warned of
// before it ends.
func TestWoodRunsOut(t *testing.T) {
	w := atWood(t, "3.4", lot(1, "L-1", "Lantern", 0.5, 6))
	asked := func(used int) Ask {
		c := w.sees()
		c.Used = map[record.ID]int{{1}: used}
		return c.Ask(c.Present(), false)
	}
	a := asked(12)
	w.says(a.Choices[0].Meaning, "6 to 12 scions left of 6 sticks")
	if ch := a.Choices[len(a.Choices)-1]; ch.Word != "a new lot" || !ch.Lots {
		t.Errorf("%+v", ch)
	}
	w.press("1")
	for used, want := range map[int]string{
		12: "",
		16: "L-1 may not last: 2 to 8 scions left of 6 sticks, and this stump needs 3.",
		24: "L-1 is used up by the count: 24 scions of 6 sticks.",
	} {
		if a := asked(used); a.Warn != want {
			t.Errorf("%d used: %q", used, a.Warn)
		}
	}
}

// Lots held stand behind one choice.
func TestHeldLotsAreFoldedAway(t *testing.T) {
	w := atWood(t, "3.4", lot(1, "L-1", "Lantern", 0.5, 6), lot(2, "L-2", "Poe", 0, 0), &record.LotHeld{Lot: record.ID{2}, Held: true, Why: "mouldy"})
	_, a := w.asked()
	ch := a.Choices[1]
	if ch.Word != "put away" || len(ch.Doubt.Ways) != 1 {
		t.Fatalf("%+v", ch)
	}
	w.says(ch.Doubt.Ways[0].Meaning, "HELD: mouldy")
}
