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

// coached is the question at the scion with the coach on.
func (w *walker) coached() Ask {
	c := w.sees()
	c.Coach = true
	return c.Ask(StepScion, false)
}

// While the coach is on a scion is led through in the order of the work, each thing
// asked by itself with what is done and the figures of this scion, none with a
// likely answer, each kept as it is told under its own number; with the last the
// scion is set.
func TestEachThingIsAskedByItself(t *testing.T) {
	w := atScion(t)
	ways := []struct{ name, does string }{
		{"way up", "1/2 in thick; its lower 2 1/2 in"}, {"long cut", "2 1/2 in long in one stroke"}, {"back cut", "The last 1/2 in of the other side"},
		{"slot and slit", "Two slits 3 in down"}, {"slide in", "between wood and lifted bark"}, {"a little proud", "Stop with 1/4 in of the long cut"},
		{"two nails", "in below the top of the long cut, a nail of"},
	}
	cautions, lessons := map[string]bool{}, map[string]bool{}
	for i, way := range ways {
		a := w.coached()
		if a.Checks != nil || a.Likely != "" {
			t.Fatalf("%d: %q, likely %q", i+1, a.Question, a.Likely)
		}
		w.says(a.Question, "Scion 1 of 3", way.name)
		w.says(a.Because, way.does)
		l := a.Lesson()
		if l.LookFor == "" || l.NotRight == "" || l.Why == "" || len(l.Facts) == 0 || lessons[l.ID] {
			t.Errorf("%s: its lesson is %+v", way.name, l)
		}
		lessons[l.ID] = true
		for _, c := range l.Cautions {
			cautions[c.ID] = true
		}
		key := 0
		if way.name == "back cut" { // it is not so
			key = 1
		}
		w.choose(a.Choices[key], "")
		if set := len(w.Fold().Now().Grafts); set != (i+1)/len(ways) {
			t.Fatalf("%d scions set after %d of %d", set, i+1, len(ways))
		}
	}
	want := record.AllGood
	want.BackCut = false
	if got := w.Fold().Now().Grafts[0].Set.What; got.Checks != want || got.Split.Given() {
		t.Errorf("%+v", got)
	}
	if !cautions["knife-hand"] || !cautions["hammer-nails"] {
		t.Errorf("cautions %v", cautions)
	}
	w.says(w.coached().Question, "Scion 2 of", "way up")
}

// A slit that ran on only when the scion went in is said there, in one answer.
func TestTheSlitRunsOnAsItGoesIn(t *testing.T) {
	w := atScion(t)
	for range 4 {
		w.choose(w.coached().Choices[0], "")
	}
	a := w.coached()
	w.says(a.Question, "slide in")
	w.choose(a.Choices[2], "")
	for range 2 {
		w.choose(w.coached().Choices[0], "")
	}
	if got := w.Fold().Now().Grafts[0].Set.What; got.Checks != record.AllGood || got.Split != record.SplitUnmeasured {
		t.Errorf("%+v", got)
	}
}

// A scion that broke is seen anew; what was told of the broken one is not taken for
// it, and the wood of both is counted.
func TestABrokenScionIsSeenAnew(t *testing.T) {
	w := atScion(t)
	for range checksInInches {
		w.choose(w.coached().Choices[0], "")
	}
	w.now = w.now.Add(60e9)
	c := w.sees()
	broke, ok := c.broke("0")
	if !ok {
		t.Fatal("none can break")
	}
	w.choose(broke.Doubt.Ways[0], "")
	w.says(w.coached().Question, "Scion 1 of", "way up")
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
	w.choose(w.coached().Choices[1], "")
	a := w.sees().Ask(StepScion, false)
	if a.Checks == nil || !a.Checks.Items[0].Not || a.Checks.Items[1].Not {
		t.Errorf("%+v", a.Checks)
	}
}

// checksInInches are the things seen on a scion of a block kept in inches.
var checksInInches = (&Case{B: recordtest.Northern()}).checkItems()
