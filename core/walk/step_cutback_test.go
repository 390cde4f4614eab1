package walk

import (
	"errors"
	"math"
	"testing"

	"barkslip/core/ready"
	"barkslip/core/record"
	"barkslip/core/record/recordtest"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// metric is the block kept in millimetres.
func metric(b *record.Block) *record.Block { b.Units = unit.Metric; return b }

func wanting(b *record.Block, graft unit.Length) *record.Block {
	b.GraftHeight = record.Measured(graft, b.Units)
	return b
}

// A height typed alone keeps the diameter that was answered with it; Enter keeps
// both.
func TestCorrectedHeightKeepsTheDiameter(t *testing.T) {
	w := walkerOn(t, wanting(recordtest.Northern(), 36*unit.Inch), "2027-05-03", 9).press("0", "42.3 3")
	if a := w.asks(StepHeight); a.Entry.Likely != "42 1/2 in, 3 in" {
		t.Errorf("likely %q", a.Entry.Likely)
	}
	for _, c := range []struct {
		typed          string
		height, across unit.Length
	}{
		{"enter", 42.3 * unit.Inch, 3 * unit.Inch}, {"44", 44 * unit.Inch, 3 * unit.Inch},
		{"40 2 7/8", 40 * unit.Inch, 2.875 * unit.Inch}, {"3 ft 5 in 7/8", 41 * unit.Inch, 0.875 * unit.Inch}, {"enter", 41 * unit.Inch, 0.875 * unit.Inch},
	} {
		w.correct(StepHeight, c.typed)
		got := w.Fold().Now().CutBack.What
		if math.Abs((got.Height.Length-c.height).MM()) > 1e-9 || math.Abs((got.Across.Length-c.across).MM()) > 1e-9 {
			t.Errorf("%s: %v high, %v across", c.typed, got.Height, got.Across)
		}
	}
}

// The usual graft height is said to be from memory where the block sets none.
func TestUsualGraftHeightIsFromMemory(t *testing.T) {
	w := walkerOn(t, metric(recordtest.Northern()), "2027-05-03", 9).press("0")
	c, a := w.asked()
	w.says(a.Because, c.B.Units.Figure(trade.GraftHeightUsual), "Usual graft height", "(from memory)")
	if trade.UsualGraftHeight.Standing != trade.Memory {
		t.Errorf("it is %s", trade.UsualGraftHeight.Standing)
	}
}

// A cut far below the wanted height is doubted, and taken if it is so.
func TestCutBackFarTooLow(t *testing.T) {
	w := walkerOn(t, wanting(recordtest.Northern(), 36*unit.Inch), "2027-05-03", 9).press("0")
	w.says(w.refuses("4 3"), "4 in is under half of the 42 in wanted")
	w.press("4 3|1")
	if got := w.Fold().Now().CutBack.What; got.Height.Length != 4*unit.Inch || got.Across.Length != 3*unit.Inch {
		t.Errorf("%v", got)
	}
}

// A gash on a thin stem is never deeper than a quarter of it.
func TestGashDepthIsRoundedDown(t *testing.T) {
	for _, sys := range []unit.System{unit.US, unit.Metric} {
		for across := 10 * unit.Millimetre; across < 100; across += 0.7 {
			c := &Case{B: &record.Block{Units: sys}, Found: ready.Found{Across: across}}
			deep, printed := c.gashDepth(), c.length(c.gashDepth())
			back, err := unit.ParseLength(printed, 0)
			if err != nil || deep > trade.GashDepth || across < trade.SmallStem && back > across*trade.SmallStemShare+1e-6 {
				t.Errorf("%v: %v across, %s deep, %v", sys, across, printed, err)
			}
		}
	}
}

// Correcting the first gashes leaves those of the graft day alone, and starts
// from their own number.
func TestCorrectedGashesAreTheFirst(t *testing.T) {
	w := walkerOn(t, recordtest.Northern(), "2027-05-03", 9).press("0", "36", "3")
	w.clock("2027-05-13", 9, 0)
	w.press("1", "1", "2")
	a := w.asks(StepGashes)
	if a.Likely != "3" || len(a.Choices[0].Refines) != 1 || a.Choices[0].Refines[0] != w.Fold().Now().Gashes[0].ID {
		t.Errorf("likely %q, it takes the place of %v", a.Likely, a.Choices[0].Refines)
	}
	if a := w.asks(StepNewGashes); a.Likely != "2" || a.Choices[0].Refines[0] != w.Fold().Now().Gashes[1].ID {
		t.Errorf("fresh gashes: likely %q, %v", a.Likely, a.Choices[0].Refines)
	}
}

// TestCutBackAgainBelowTheOldFace: a stump grafted before is no higher than its
// last face.
func TestCutBackAgainBelowTheOldFace(t *testing.T) {
	b := recordtest.Northern()
	b.GraftHeight = recordtest.Inches(36)
	w := walkerOn(t, b, "2028-03-20", 9)
	w.On("2027-05-01", 9, 0, &record.CutBack{Height: recordtest.Inches(42)}).
		On("2027-05-10", 9, 0, &record.FreshCut{Height: recordtest.Inches(36)}, &record.SlotsMarked{Slots: []record.Slot{{Bearing: 0}}}, &record.ScionSet{Slot: 1, Checks: record.AllGood}).
		On("2027-07-01", 9, 0, &record.Failed{Cause: "wind"})
	c := w.sees()
	a := c.Ask(StepHeight, false)
	if a.Entry.Likely != "31 1/2 in" {
		t.Errorf("Enter takes %s, want 31 1/2 in, clear of the nails", a.Entry.Likely)
	}
	for text, doubted := range map[string]bool{"42in": true, "36in": true, "31in": false, "12in": false, "100in": true} {
		_, err := a.Entry.Read(text)
		var doubt *Doubt
		if errors.As(err, &doubt) != doubted {
			t.Errorf("%s: %v, want a doubt: %v", text, err, doubted)
		}
	}
	fresh := walkerOn(t, b, "2028-03-20", 9).sees().Ask(StepHeight, false)
	if _, err := fresh.Entry.Read("200in"); err == nil {
		t.Error("over twice the height wanted is taken without a word")
	}
}
