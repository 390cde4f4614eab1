package walk

import (
	"strings"
	"testing"

	"barkslip/core/ready"
	"barkslip/core/record"
	"barkslip/core/record/recordtest"
)

// Who grafts against the advice to wait for the week waits for the new face alone:
// a quarter of an hour, not the week again.
func TestAgainstTheWeekOnlyTheFaceIsWaitedFor(t *testing.T) {
	w := walkerOn(t, recordtest.Northern(), "2027-05-17", 9)
	w.Diary = recordtest.DiaryOn(w.B)
	w.On("2027-05-12", 9, 0, &record.NurseJudged{Limbs: 2, Leaf: "some"}, &record.CutBack{Height: recordtest.Inches(42)}, &record.Gashed{Number: 2})
	w.On("2027-05-17", 9, 0, &record.AgainstAdvice{Verdict: ready.Wait, Why: "a trial"}, &record.Gashed{Number: 2})
	w.On("2027-05-17", 9, 1, &record.FreshCut{Height: recordtest.Inches(36)})
	w.clock("2027-05-17", 9, 2)
	_, a := w.asked()
	if a.Step.ID != StepNewFace || a.Until == nil || a.Until.Format("2 Jan 15:04") != "17 May 09:16" || !strings.Contains(a.Because, "10 to 15 minutes") {
		t.Errorf("%s, until %v: %s", a.Step.ID, a.Until, a.Because)
	}
	w.clock("2027-05-17", 9, 17)
	if _, a = w.asked(); a.Step.ID != StepNewFace || len(a.Choices) != 4 || a.Choices[0].Doubt != nil {
		t.Errorf("%s: %d choices, doubt %v", a.Step.ID, len(a.Choices), a.Choices[0].Doubt)
	}
}
