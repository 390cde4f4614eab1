package walk

import (
	"testing"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/record/recordtest"
	"barkslip/core/unit"
)

// A stump cut back in an earlier year and not grafted is cut back anew, lower
// than it stands, gashed, and looked at a week on.
func TestCutBackAnewInALaterYear(t *testing.T) {
	w := walkerOn(t, wanting(recordtest.Northern(), 36*unit.Inch), "2027-05-03", 9).press("0", "42", "2")
	w.clock("2028-04-05", 9, 0)
	w.present(StepLimbs)
	w.press("0")
	w.present(StepHeight)
	_, a := w.asked()
	w.says(a.Because, "It stands at 42 in")
	w.press("38")
	w.present(StepGashes)
	w.press("2")
	w.present(StepWait)
	w.clock("2028-04-12", 9, 0)
	w.opens(due.Look)
	w.present(StepBleeding)
}

// A stump grafted again goes on with its cut on another day than that on which
// its limbs were judged.
func TestRegraftGoesOnAnotherDay(t *testing.T) {
	w := threeGrafts(t, "2027-06-20")
	w.On("2027-06-20", 9, 0, &record.Failed{Cause: "bled"}).On("2028-03-20", 9, 0, &record.NurseJudged{Leaf: "none"})
	w.clock("2028-03-21", 9, 0)
	w.present(StepHeight)
}

// A look that is due is not waited for because of one before the cut.
func TestALookIsDueDespiteALookBeforeTheCut(t *testing.T) {
	w := walkerOn(t, recordtest.Northern(), "2027-05-10", 9)
	w.On("2027-05-03", 23, 30, &record.Looked{Bleeding: record.Dry, Slip: record.Stuck}, &record.NurseJudged{Leaf: "none"}, &record.CutBack{Height: recordtest.Inches(36)}, &record.Gashed{Number: 2})
	w.opens(due.Look)
	w.present(StepBleeding)
}

// A scion taken back takes what today's visit told of it along, and the leader
// that came from it.
func TestAScionTakenBack(t *testing.T) {
	w := threeGrafts(t, "2027-07-12")
	w.On("2027-06-12", 9, 0, recordtest.Visit(record.Pushing, record.Pushing, record.NoChange), &record.LeaderChosen{Slot: 1, Shoot: "only"}, &record.SproutsRubbed{Leaf: "some"})
	w.On("2027-07-12", 8, 0, recordtest.Visit(record.Growing, record.Growing, record.NoChange))
	w.Say(w.now, &record.SlotEmpty{Slot: 1}, w.Fold().Answers("scion/1")...)
	w.now = w.now.Add(time.Minute)
	w.present(StepScratch)
	w.press("1")
	if _, lost := w.Fold().Now().LeaderLost(); !lost {
		t.Error("the leader of a scion that is no more leads on")
	}
	if d, ok := dueIn(w.Diary, due.Leader); !ok || !d.Open(w.now) {
		t.Errorf("no other leader is asked for: %v", d)
	}
}

// Slots that are all said to stay empty are asked for again: a graft has a scion.
func TestNotAllSlotsStayEmpty(t *testing.T) {
	w := atSlots(t, recordtest.Northern(), "3.4").press("1", "9:Lantern", "3/8", "1")
	for slot := range 3 {
		w.write(nil, &record.SlotEmpty{Slot: slot + 1})
	}
	w.present(StepScion)
	if _, a := w.asked(); a.Checks == nil {
		t.Errorf("asked %q", a.Question)
	}
}
