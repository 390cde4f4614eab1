package walk

import (
	"strings"
	"testing"

	"barkslip/core/record"
	"barkslip/core/record/recordtest"
)

func containsWord(text, word string) bool { return strings.Contains(text, word) }

// atScion is a stump whose first scion is to be set.
func atScion(t *testing.T) *walker {
	w := atWood(t, "3.4", lot(1, "L-1", "Lantern", 0.5, 0)).press("1", "1")
	w.present(StepScion)
	return w
}

// While the coach is on each of the things seen on a scion is asked by itself, none
// with a likely answer, each kept as it is told; with the last the scion is set.
func TestEachThingIsAskedByItself(t *testing.T) {
	w := atScion(t)
	coached := func() Ask {
		c := w.sees()
		c.Coach = true
		return c.Ask(StepScion, false)
	}
	for i, item := range checksInInches {
		a := coached()
		if a.Checks != nil || a.Likely != "" || !strings.Contains(a.Question, item.Word) {
			t.Fatalf("%d: %q, likely %q", i+1, a.Question, a.Likely)
		}
		key := 0
		if i == 2 { // the back cut is not so
			key = 1
		}
		w.choose(a.Choices[key], "")
		if set := len(w.Fold().Now().Grafts); set != (i+1)/len(checksInInches) {
			t.Fatalf("%d scions set after %d of %d", set, i+1, len(checksInInches))
		}
	}
	want := record.AllGood
	want.BackCut = false
	if got := w.Fold().Now().Grafts[0].Set.What; got.Checks != want || got.Split.Given() {
		t.Errorf("%+v", got)
	}
	if a := coached(); !strings.Contains(a.Question, "Scion 2 of") || !strings.Contains(a.Question, checksInInches[0].Word) {
		t.Errorf("then %q", a.Question)
	}
}

// A scion that broke is seen anew; what was told of the broken one is not taken for
// it, and the wood of both is counted.
func TestABrokenScionIsSeenAnew(t *testing.T) {
	w := atScion(t)
	for range checksInInches {
		c := w.sees()
		c.Coach = true
		w.choose(c.Ask(StepScion, false).Choices[0], "")
	}
	w.now = w.now.Add(60e9)
	c := w.sees()
	broke, ok := c.broke("0")
	if !ok {
		t.Fatal("none can break")
	}
	w.choose(broke.Doubt.Ways[0], "")
	c = w.sees()
	c.Coach = true
	w.says(c.Ask(StepScion, false).Question, "Scion 1 of", checksInInches[0].Word)
	used := 0
	for _, n := range w.Fold().Used() {
		used += n
	}
	if used != 1 || len(w.Fold().Now().SeenOf(1)) != 0 {
		t.Errorf("%d used, told %v", used, w.Fold().Now().SeenOf(1))
	}
}

// With the coach off the list begins with what was told already.
func TestTheListHasWhatWasTold(t *testing.T) {
	w := atScion(t)
	c := w.sees()
	c.Coach = true
	w.choose(c.Ask(StepScion, false).Choices[1], "")
	a := w.sees().Ask(StepScion, false)
	if a.Checks == nil || !a.Checks.Items[0].Not || a.Checks.Items[1].Not {
		t.Errorf("%+v", a.Checks)
	}
}

// checksInInches are the things seen on a scion of a block kept in inches.
var checksInInches = (&Case{B: recordtest.Northern()}).checkItems()
