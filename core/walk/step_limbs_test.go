package walk

import (
	"regexp"
	"strings"
	"testing"

	"barkslip/core/record"
	"barkslip/core/record/recordtest"
	"barkslip/core/unit"
)

// why is the inputs of the verdict by name.
func (c *Case) whyInput(name string) (any, bool) {
	for _, in := range c.Advice.Work.Inputs {
		if in.Name == name {
			return in.Value, true
		}
	}
	return nil, false
}

// A limb that came off leaves the next one to be measured; nothing is said to be
// clear that nobody measured, and the leaf is asked last.
func TestNextLimbIsMeasured(t *testing.T) {
	w := walkerOn(t, wanting(recordtest.Northern(), 36*unit.Inch), "2027-05-03", 9).press("2", "12")
	w.present(StepLimbOff)
	w.press("1")
	w.present(StepReach)
	c, a := w.asked()
	if doneLimbs(c) != told("1 left") || doneReach(c).done || a.Entry.Likely != "" {
		t.Errorf("limbs %q, reach %q, likely %q", doneLimbs(c).words, doneReach(c).words, a.Entry.Likely)
	}
	if v, ok := c.whyInput("clear stem to the nearest limb"); ok {
		t.Errorf("the why page says %v clear", v)
	}
	if v, _ := c.whyInput("limbs left"); v != 1 {
		t.Errorf("the why page says %v limbs", v)
	}
	w.says(a.Question, "next limb")
	w.press("30")
	w.present(StepLeaf)
	w.press("3")
	w.present(StepHeight)
	c = w.sees()
	if n := c.nurse(); n.Limbs != 1 || n.Nearest.Length != 30*unit.Inch || n.Leaf != "some" || c.Found.Limb != 30*unit.Inch {
		t.Errorf("%+v, found %v", n, c.Found.Limb)
	}
}

// The next limb may be too near as well, and the last one leaves none.
func TestLimbAfterLimb(t *testing.T) {
	w := walkerOn(t, recordtest.Northern(), "2027-05-03", 9).press("2", "6", "1", "10")
	w.present(StepLimbOff)
	w.press("2")
	w.present(StepHeight)
	if c := w.sees(); doneLimbs(c) != told("none left") || !c.Found.NoLimbs {
		t.Errorf("%q", doneLimbs(c).words)
	}
}

// On the graft day too the next limb is measured before the stump goes on.
func TestNextLimbIsMeasuredAfterCutBack(t *testing.T) {
	w := walkerOn(t, wanting(recordtest.Northern(), 36*unit.Inch), "2027-05-03", 9).press("2", "20", "3", "42", "2")
	w.clock("2027-05-13", 9, 0)
	w.correct(StepReach, "12")
	w.present(StepLimbOff)
	w.press("1")
	w.present(StepReach)
	w.press("22")
	w.present(StepBleeding)
}

// Correcting the number keeps what was said of the limbs, and holds after one
// came off.
func TestCorrectedLimbs(t *testing.T) {
	w := walkerOn(t, wanting(recordtest.Northern(), 36*unit.Inch), "2027-05-03", 9).press("2", "20", "4")
	if a := w.asks(StepLimbs); a.Likely != "2" {
		t.Errorf("likely %q", a.Likely)
	}
	if a := w.asks(StepReach); a.Entry.Likely != "20 in" {
		t.Errorf("likely %q", a.Entry.Likely)
	}
	if a := w.asks(StepLeaf); a.Likely != "4" {
		t.Errorf("likely %q", a.Likely)
	}
	w.correct(StepLimbs, "3")
	if n := w.sees().nurse(); n.Limbs != 3 || n.Nearest.Length != 20*unit.Inch || n.Leaf != "much" {
		t.Errorf("%+v", n)
	}
	w.correct(StepReach, "enter").correct(StepReach, "10")
	w.press("1").correct(StepLimbs, "4")
	if n := w.sees().nurse(); n.Limbs != 4 {
		t.Errorf("%+v", n)
	}
	w.present(StepReach)
}

// No stem is clear for longer than it is high; where no height is set it may be.
func TestClearStemIsNoLongerThanTheStem(t *testing.T) {
	w := walkerOn(t, wanting(recordtest.Northern(), 36*unit.Inch), "2027-05-03", 9).press("2")
	w.says(w.refuses("400"), "36 in above the ground")
	w.press("36", "1", "42", "2")
	w.gone = StepReach
	w.says(w.refuses("37"), "36 in above the ground")
	w = walkerOn(t, recordtest.Northern(), "2027-05-03", 9).press("2")
	w.says(w.refuses("40"), "30 in")
	w.press("40|1")
	if n := w.sees().nurse(); n.Nearest.Length != 40*unit.Inch {
		t.Errorf("%+v", n)
	}
}

// The story tells all that was said of the limbs, what was answered last first.
func TestSayLimbs(t *testing.T) {
	two, near := record.NurseJudged{Limbs: 2}, record.Measured(24*unit.Inch, unit.US)
	for _, c := range []struct {
		body record.Body
		want string
	}{
		{&two, "2 limbs left"}, {&record.NurseJudged{Limbs: 1, Nearest: near}, "1 limb left, nearest 24 in below"},
		{&record.NurseJudged{Limbs: 2, Nearest: near, Leaf: "some"}, "2 limbs left, nearest 24 in below, leaf below some"},
		{&record.NurseJudged{Leaf: "none"}, "no limb left"}, {&record.LimbTakenOff{Left: 1}, "limb off, 1 limb left"}, {&record.LimbTakenOff{}, "limb off, no limb left"},
		{&record.CutBack{Height: record.Measured(42*unit.Inch, unit.US), Across: record.Measured(3.4*unit.Inch, unit.US)}, "cut back 42 in, 3.4 in across"},
		{&record.Gashed{Number: 1}, "1 gash"}, {&record.Gashed{Number: 2, Depth: record.Measured(unit.Inch/2, unit.US)}, "2 gashes, 1/2 in deep"}, {&record.Drilled{Number: 2}, "2 drain holes"},
		{&record.SlotsMarked{Asked: 3, Blocked: []record.Arc{{Bearing: 120, Width: near, Why: "blocked"}}}, "3 slots asked for, 24 in at 120°, ESE blocked"},
	} {
		if got := record.Say(c.body, unit.US); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// Texts of the steps that name inches name millimetres or centimetres behind
// them, whatever the block is kept in.
func TestFixedTextsNameBothSystems(t *testing.T) {
	inches, both := regexp.MustCompile(`[0-9] in\b`), regexp.MustCompile(`[0-9] in \([0-9.]+ [cm]m\)`)
	var texts []string
	for _, s := range append(cutBackSteps(), graftSteps()...) {
		texts = append(texts, s.LookFor, s.Why, s.NotRight)
	}
	named := 0
	for _, text := range texts {
		named += len(both.FindAllString(text, -1))
		if len(inches.FindAllString(text, -1)) != len(both.FindAllString(text, -1)) {
			t.Errorf("%q", text)
		}
	}
	if named < 5 {
		t.Errorf("only %d lengths are named", named)
	}
}

// The checks of a scion name lengths in the block's own units, and only in those.
func TestChecksAreInTheBlocksUnits(t *testing.T) {
	for _, b := range []*record.Block{recordtest.Northern(), metric(recordtest.Northern())} {
		c := Case{B: b}
		lift := c.checkItems()[5].If
		if want := c.eg("1/4 in", "6 mm"); !strings.Contains(lift, want) || strings.Contains(lift, c.eg(" mm", " in;")) {
			t.Errorf("%s: %q", b.Units, lift)
		}
	}
}
