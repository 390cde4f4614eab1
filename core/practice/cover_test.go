package practice

import (
	"testing"

	"barkslip/core/due"
	"barkslip/core/ready"
	"barkslip/core/record"
	"barkslip/core/walk"
)

// Every verdict of the readiness table, every kind of due and every step of the walk
// has cases.
func TestCasesCoverTheRules(t *testing.T) {
	verdicts, dues, steps := map[record.Verdict]int{}, map[due.Kind]int{}, map[walk.StepID]int{}
	for seed := range uint64(6000) {
		c := Make(seed/12, Skills()[seed%12])
		verdicts[c.Rule.Verdict]++
		steps[c.Rule.Step]++
		if c.Rule.IsDue {
			dues[c.Rule.Due]++
		}
	}
	for _, v := range []record.Verdict{ready.OtherGraft, ready.CutBack, ready.TakeLimbOff, ready.Wait, ready.Look, ready.Gash, ready.Drill,
		ready.Wipe, ready.Leave, ready.FreshCut, ready.Graft} {
		if verdicts[v] == 0 {
			t.Errorf("no case has the verdict %s", v)
		}
	}
	for _, k := range due.Kinds() {
		if dues[k] == 0 {
			t.Errorf("no case turns on %s", k)
		}
	}
	for _, s := range walk.Steps() {
		if steps[s.ID] == 0 {
			t.Errorf("no case comes to the step %s", s.ID)
		}
	}
}
