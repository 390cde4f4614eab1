package walk

import (
	"errors"
	"regexp"
	"testing"

	"barkslip/core/due"
	"barkslip/core/ready"
	"barkslip/core/record"
	"barkslip/core/record/recordtest"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// The clear stem offered in a metric block is 45 cm, and is clear enough.
func TestMetricDefaultPassesItsCheck(t *testing.T) {
	w := walkerOn(t, metric(recordtest.Northern()), "2027-05-03", 9).press("1")
	w.present(StepReach)
	if _, a := w.asked(); a.Entry.Likely != "45 cm" {
		t.Errorf("%q", a.Entry.Likely)
	}
	w.press("enter")
	if w.sees().limbTooNear() {
		t.Error("the default is too near")
	}
}

// Whatever Enter takes on an empty field passes the field's own check, in inches
// and in metric; and what a metric block offers is a round metric number.
func TestDefaultsPassTheirOwnChecks(t *testing.T) {
	odd := regexp.MustCompile(`\b457(\.\d+)? mm`)
	fields := map[StepID]bool{}
	for _, b := range []*record.Block{recordtest.Northern(), metric(recordtest.Northern())} {
		for seed := range uint64(25) {
			w := newStroll(seed, b)
			w.care = true
			for range 120 {
				c := w.sees()
				for _, k := range c.Knots() {
					for _, again := range []bool{false, k.Done} {
						a := c.Ask(k.Step.ID, again)
						fields[k.Step.ID] = passes(t, b, a) || fields[k.Step.ID]
						if b.Units == unit.Metric && !again && odd.MatchString(a.Because) {
							t.Fatalf("%s: %s", k.Step.ID, a.Because)
						}
					}
				}
				w.dues = due.Of(w.s, w.b)
				w.goOn(w.sees())
				w.pass()
			}
		}
	}
	for _, id := range []StepID{StepReach, StepHeight, StepThick} {
		if !fields[id] {
			t.Errorf("%s never offered anything", id)
		}
	}
}

// passes reads what is offered in each field of a question; ok says whether
// anything was.
func passes(t *testing.T, b *record.Block, a Ask) (ok bool) {
	t.Helper()
	entries := []*Entry{a.Entry}
	for _, ch := range a.Choices {
		entries = append(entries, ch.Entry)
	}
	for _, e := range entries {
		if e == nil || e.Likely == "" {
			continue
		}
		ok = true
		bodies, err := e.Read(e.Likely)
		var doubt *Doubt
		if err != nil && !errors.As(err, &doubt) {
			t.Fatalf("%s, %s: %q is offered and refused: %v", b.Units, a.Step.ID, e.Likely, err)
		}
		for _, body := range bodies {
			if n, is := body.(*record.NurseJudged); is && n.Nearest.Given() && a.Step.ID == StepReach && e.Likely == b.Units.Figure(trade.LimbClear) &&
				ready.LimbTooNear(n.Nearest.Length, b.Units) {
				t.Fatalf("%s: %s is offered and is too near", b.Units, e.Likely)
			}
		}
	}
	return ok
}

// A metric block without a height of its own is cut at 90 cm for a graft at 75,
// and the fresh cut offered is at 75 cm again.
func TestMetricHeights(t *testing.T) {
	b := metric(recordtest.Northern())
	b.GraftHeight, b.Browse = record.Measure{}, record.Measure{Length: 750, Typed: "75 cm"}
	w := walkerOn(t, b, "2027-05-03", 9).press("0")
	_, a := w.asked()
	if m, err := record.ReadMeasure(a.Entry.Likely, 0); err != nil || m.Length != 900 {
		t.Errorf("%q, %v", a.Entry.Likely, err)
	}
	w.press("enter")
	if w.sees().Found.Low {
		t.Error("the height offered lies below the browse height")
	}
}
