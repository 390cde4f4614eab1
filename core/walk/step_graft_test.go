package walk

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"barkslip/core/record"
	"barkslip/core/record/recordtest"
	"barkslip/core/scion"
	"barkslip/core/tally"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// atFace is a stump whose new face is dry, to be measured.
func atFace(t *testing.T, b *record.Block) *walker {
	w := walkerOn(t, b, "2027-05-03", 9).press("0", "42in", "2")
	w.clock("2027-05-13", 9, 0)
	w.press("1", "1", "2", "1")
	w.now = w.now.Add(20 * time.Minute)
	w.press("1")
	w.present(StepMeasure)
	return w
}

// atSlots is the same stump measured.
func atSlots(t *testing.T, b *record.Block, across string) *walker {
	w := atFace(t, b).press(across)
	w.present(StepSlots)
	return w
}

// A fresh cut corrected is the same cut, not one 2 in lower.
func TestCorrectedFreshCutKeepsItsHeight(t *testing.T) {
	w := atFace(t, recordtest.Northern())
	a := w.asks(StepFreshCut)
	w.says(a.Question, "36 in")
	if cut := a.Choices[0].Bodies[0].(*record.FreshCut); cut.Height.Length != 36*unit.Inch || a.Likely != "1" {
		t.Errorf("%v, likely %q", cut.Height, a.Likely)
	}
	torn := &record.FreshCut{Height: record.Measured(36*unit.Inch, unit.US), Torn: []record.Arc{{Bearing: 120, Width: record.Measured(2*unit.Inch, unit.US), Why: "torn"}}}
	w.Say(w.now, torn)
	if a = w.asks(StepFreshCut); a.Likely != "2" || len(a.Choices[1].Bodies[0].(*record.FreshCut).Torn) != 1 {
		t.Errorf("likely %q, %v", a.Likely, a.Choices[1].Bodies[0])
	}
	if a = w.asks(StepTorn); a.Entry.Likely != "120:2in" {
		t.Errorf("likely %q", a.Entry.Likely)
	}
}

// Of a measure that is corrected what is not typed stays; unchanged it leaves
// the slots alone.
func TestCorrectedMeasureKeepsTheRest(t *testing.T) {
	w := atFace(t, recordtest.Northern()).press("3.4 3.1@30", "1")
	if a := w.asks(StepMeasure); a.Entry.Likely != "3.4 in, 3.1 in @30" {
		t.Errorf("likely %q", a.Entry.Likely)
	}
	w.correct(StepMeasure, "enter")
	w.present(StepWood)
	for _, c := range []struct {
		typed      string
		long, wide float64
		way        unit.Bearing
	}{{"3.5", 3.5, 3.1, 30}, {"3.6 3", 3.6, 3, 30}, {"@45", 3.6, 3, 45}, {"2.9", 3, 2.9, 135}} {
		w.correct(StepMeasure, c.typed)
		m := w.Fold().Now().Measured.What
		if math.Abs(m.Across.Inches()-c.long)+math.Abs(m.Across2.Inches()-c.wide) > 1e-9 || m.LongWay != c.way || !m.LongWaySaid {
			t.Errorf("%s: %+v", c.typed, m)
		}
	}
}

// A face is at most as wide as any stump; the limit is said in the block's
// units.
func TestWidestFace(t *testing.T) {
	w := atFace(t, recordtest.Northern())
	w.says(w.refuses("41"), "up to 40 in")
	w = atFace(t, metric(recordtest.Northern()))
	w.says(w.refuses("103"), "up to 1.02 m")
	if a := w.asks(StepMeasure); strings.Contains(a.Entry.Asks, "3.4") {
		t.Errorf("%q is no centimetres", a.Entry.Asks)
	}
}

// Slots are named by their bearings, everywhere alike.
func TestSlotsAreNamedByBearing(t *testing.T) {
	w := atSlots(t, recordtest.Northern(), "3.4")
	_, a := w.asked()
	if a.Question != "Mark 3 slots 3 9/16 in apart, at 22°, NNE; 142°, SE; 263°, W." {
		t.Errorf("%q", a.Question)
	}
	w.says(a.Because, "one scion every 3 1/8 in; the slot at 22°, NNE, faces the shade.", "with one more scion in 96; assumed until this block has a record.")
	assumed := strings.Join(a.Work[1].Assumed, "; ")
	w.says(assumed, "0.3", "until this block has a record of its own")
	w.press("1", "9:Lantern", "3/8", "1")
	c, scion := w.asked()
	w.says(scion.Question, "at 22°, NNE")
	if got := doneSlots(c); got != told("NNE SE W") {
		t.Errorf("%q", got.words)
	}
}

// Learned odds are not called assumed.
func TestLearnedOddsAreNotAssumed(t *testing.T) {
	c := atSlots(t, recordtest.Northern(), "3.4").sees()
	c.Odds = tally.Odds{PerBud: 0.4, Together: 0.2, Learned: true, Stumps: 40}
	words, work := c.chance(3, true)
	if strings.Contains(words, "assumed") || !strings.Contains(strings.Join(work.Assumed, ";"), "40 stumps") {
		t.Errorf("%q, %v", words, work.Assumed)
	}
	if words, _ := c.chance(3, false); strings.Contains(words, "one scion more") {
		t.Errorf("%q", words)
	}
}

// One slot has no neighbour; more than fit are said, and not promised.
func TestMoreSlotsThanFit(t *testing.T) {
	w := atSlots(t, recordtest.Northern(), "3.4")
	for range 5 {
		if _, a := w.asked(); hasChoice(a, "one more") {
			w.press("2")
		}
	}
	c, a := w.asked()
	if n := c.Plan().Asked; n != 5 || hasChoice(a, "one more") || strings.Contains(a.Because, "one scion more") {
		t.Errorf("%d asked, %q, %v", n, a.Because, a.Choices)
	}
	w.Say(w.now, &record.SlotsMarked{Asked: 6}, w.Fold().Answers("slots")...)
	_, a = w.asked()
	w.says(a.Question, "Mark 5 slots ")
	w.says(a.Warn, "6 asked for, 5 marked", "1 15/16 in")
	w.Say(w.now, &record.SlotsMarked{Asked: 1}, w.Fold().Answers("slots")...)
	_, a = w.asked()
	if a.Question != "Mark 1 slot, at 22°, NNE." || hasChoice(a, "one fewer") {
		t.Errorf("%q", a.Question)
	}
}

func hasChoice(a Ask, word string) bool {
	for _, ch := range a.Choices {
		if ch.Word == word {
			return true
		}
	}
	return false
}

// A slot faces the shade side only where one does; else it is said why none
// does.
func TestShadeSide(t *testing.T) {
	w := atSlots(t, recordtest.Northern(), "3.4").press("4:22:5in")
	_, a := w.asked()
	w.says(a.Because, "no slot faces the shade: the bark there is blocked", "blocked 5 in at 22°, NNE")
	w = atSlots(t, recordtest.Northern(), "3").press("4:61:1.44in 190:4.11in 331:2.06in", "3")
	_, a = w.asked()
	w.says(a.Because, "no slot faces the shade: the widest spacing puts none there")
	south := recordtest.Southern()
	south.Placed = true
	w = atSlots(t, south, "3.4")
	_, a = w.asked()
	w.says(a.Because, "the slot at 158°, SSE, faces the shade.")
}

// Bark blocked is added to what is blocked; where none is left free, what is
// typed anew takes its place. No stretch is longer than the bark all round.
func TestBlockedBark(t *testing.T) {
	w := atSlots(t, recordtest.Northern(), "3").press("4:120:2in")
	_, a := w.asked()
	w.says(a.Choices[3].Meaning, "besides 2 in at 120")
	_, err := a.Choices[3].Entry.Read("90:12in")
	if err == nil || !strings.Contains(err.Error(), "12 in of bark at 90°, E cannot be: all round it is 9 3/8 in") {
		t.Errorf("%v", err)
	}
	w.press("4:300:7.5in")
	c, a := w.asked()
	if len(c.Plan().Blocked) != 2 || a.Choices[0].Key != "1" {
		t.Errorf("%v, %v", c.Plan().Blocked, a.Choices)
	}
	w.says(a.Because, "Blocked: 2 in at 120°, ESE; 7 1/2 in at 300°, WNW.")
	w.press("1:300:1in")
	if c = w.sees(); len(c.Plan().Blocked) != 1 || c.Plan().Blocked[0].Bearing != 300 {
		t.Errorf("%v", c.Plan().Blocked)
	}
	w.correct(StepMeasure, "3.1")
	if c = w.sees(); len(c.Plan().Blocked) != 1 {
		t.Errorf("measuring anew lost the blocked bark")
	}
	w = atSlots(t, metric(recordtest.Northern()), "76mm")
	_, a = w.asked()
	if _, err := a.Choices[3].Entry.Read("90:30"); err == nil || !strings.Contains(err.Error(), "300 mm") {
		t.Errorf("%v", err)
	}
}

// Thickness corrected alone keeps the long cut; wood corrected keeps the rest.
func TestCorrectedWoodKeepsTheRest(t *testing.T) {
	w := atSlots(t, recordtest.Northern(), "3.4").press("1", "9:Lantern", ".4 2", "3")
	if a := w.asks(StepThick); a.Entry.Likely != "0.4 in, 2 in" {
		t.Errorf("likely %q", a.Entry.Likely)
	}
	if a := w.asks(StepNodes); a.Likely != "3" {
		t.Errorf("likely %q", a.Likely)
	}
	w.correct(StepThick, ".45").correct(StepThick, "enter").correct(StepWood, "9:Harvest").correct(StepWood, "9:enter")
	got := w.sees().wood()
	if got.Variety != "Harvest" || got.Thickness.Length != 0.45*unit.Inch || got.LongCut.Length != 2*unit.Inch || len(got.Nodes) != 2 {
		t.Errorf("%+v", got)
	}
}

// Once a stick is taken each scion says where it is cut; what the stick lacks is
// said.
func TestStickSaysWhereToCut(t *testing.T) {
	w := atSlots(t, recordtest.Northern(), "3.4").press("1", "9:Lantern", ".5", "7:24 4:ps 5.2:ps 7:x 11:ps 12.5:p")
	_, a := w.asked()
	w.says(a.Because, "Cut it 1 1/4 to 5 11/16 in from the butt.", "1 more needed for 3 slots.")
	w.says(record.Say(&w.Fold().Now().Wood.What, unit.US), "1 1/4 to 5 11/16 in, 8 1/4 to 13 in")
	again := w.asks(StepNodes)
	w.says(again.Because, "from the butt at 1 1/4 to 5 11/16 in, 8 1/4 to 13 in", "1 more needed")
	if again.Likely != "8" {
		t.Errorf("likely %q", again.Likely)
	}
	w.press("enter")
	_, a = w.asked()
	w.says(a.Because, "8 1/4 to 13 in")
	w.press("enter")
	_, a = w.asked()
	w.says(a.Warn, "The stick gave 2 scions")
	w.correct(StepNodes, "1")
	if n := len(w.sees().wood().Pieces); n != 0 {
		t.Errorf("%d pieces of a stick that is not used", n)
	}
}

// What a stick is typed as is read, in both systems; one scion is one scion.
func TestStickHint(t *testing.T) {
	for _, b := range []*record.Block{recordtest.Northern(), metric(recordtest.Northern())} {
		c := atSlots(t, b, "86mm").sees()
		stick, err := c.ReadStick(c.StickHint()[0] + " " + strings.Fields(c.StickHint()[7])[0])
		if err != nil || stick.ThickButt == 0 {
			t.Fatalf("%v: %v", b.Units, err)
		}
		cut, err := scion.CutStick(stick)
		if err != nil || c.StickWords(cut) != "It gives 1 scion. 2 more needed for 3 slots." && c.A.Marked() > 0 {
			t.Errorf("%v: %q, %v", b.Units, c.StickWords(cut), err)
		}
		if !strings.HasPrefix(c.StickWords(cut), "It gives 1 scion.") {
			t.Errorf("%q", c.StickWords(cut))
		}
		_, err = c.stickEntry().Read("10 1:ps 2:ps")
		if err == nil || !strings.Contains(err.Error(), "gives no scion") || !strings.Contains(err.Error(), c.B.Units.Figure(trade.ScionLongest)) {
			t.Errorf("%v", err)
		}
	}
}

// A split that ran on is one digit among the checks, then its length; the seal
// warns of it. Without one nothing is asked.
func TestSplitRanOn(t *testing.T) {
	w := atSlots(t, recordtest.Northern(), "2").press("1", "9:Lantern", "enter", "1", "enter")
	_, a := w.asked()
	good := seen(len(a.Checks.Items))
	good[6] = false
	w.write(nil, a.Checks.Record(good)...)
	w.present(StepSplit)
	w.says(w.refuses("60"), "36 in")
	w.press("2 1/2")
	w.present(StepSeal)
	_, a = w.asked()
	w.says(a.Warn, "The split at slot 2 ran 2 1/2 in: seal below its end.")
	w.says(record.Say(&w.Fold().Now().Grafts[1].Set.What, unit.US), "scion 2 set, split ran 2 1/2 in")
	w.correct(StepSplit, "enter").correct(StepSplit, "0")
	if _, a = w.asked(); a.Step.ID != StepSeal || a.Warn != "" {
		t.Errorf("%s: %q", a.Step.ID, a.Warn)
	}
	if w.Fold().Now().Grafts[1].Set.What.Checks != record.AllGood {
		t.Error("the checks changed")
	}
}

// Lengths one behind the other are told apart.
func TestReadLengths(t *testing.T) {
	c := &Case{B: recordtest.Northern()}
	for text, want := range map[string]string{
		"42 3": "42 3", "42 in, 3 1/2 in": "42 3.5", "3 1/2 1/4": "3.5 0.25", "5 ft 6 in 3": "66 3", "1/2 3/4": "0.5 0.75", "5ft 6in x 7/8 in": "66 0.875", "6 ft 3 ft": "72 36",
	} {
		got, err := c.readLengths(text, 2, 10*unit.Metre)
		var words []string
		for _, m := range got {
			words = append(words, fmt.Sprintf("%.4g", m.Inches()))
		}
		if err != nil || strings.Join(words, " ") != want {
			t.Errorf("%q: %v, %v, want %s", text, words, err, want)
		}
	}
}

// TestLongWayIsNotAskedAfterTheScions: once they are set it changes nothing.
func TestLongWayIsNotAskedAfterTheScions(t *testing.T) {
	w := walkerOn(t, recordtest.Northern(), "2027-05-12", 12)
	w.On("2027-05-04", 9, 0, &record.CutBack{Height: recordtest.Inches(42)}).On("2027-05-12", 9, 0, &record.FreshCut{Height: recordtest.Inches(36)},
		&record.StumpMeasured{Across: recordtest.Inches(4), Across2: recordtest.Inches(3)}, &record.SlotsMarked{Slots: []record.Slot{{Bearing: 0}}}, &record.WoodChosen{Variety: "Lantern"})
	stands := func() bool {
		return slices.ContainsFunc(w.sees().Knots(), func(k Knot) bool { return k.Step.ID == StepLongWay })
	}
	if !stands() {
		t.Error("the long way of an oval stump is not asked")
	}
	w.On("2027-05-12", 10, 0, &record.ScionSet{Slot: 1, Checks: record.AllGood})
	if stands() {
		t.Error("the long way stands open after the scions")
	}
}
