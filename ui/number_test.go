package ui

import (
	"testing"
	"time"

	"barkslip/core/record"
	"barkslip/core/walk"
)

// TestANumberAtAChoiceAnswersOnce: digits typed as a number answer one question,
// and what was ignored is said; a pause on, a digit answers again.
func TestANumberAtAChoiceAnswersOnce(t *testing.T) {
	d := newDriver(t, "2027-05-04 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.did(tree(1, 1), "2027-04-26 09:00", cut()...)
	d.open()
	d.press("enter")
	d.on(walk.StepBleeding)
	d.burst("12")
	d.on(walk.StepSlip)
	d.sees("2 was ignored")
	if n := len(d.stump().Now().Looks); n != 1 {
		t.Errorf("%d looks by one number", n)
	}
	d.hand = d.hand.Add(time.Second)
	d.press("1")
	if _, look := newest[*record.Looked](d); look.Slip != record.SlipsClean {
		t.Errorf("a digit after a pause gave %+v", look)
	}
}

// TestMessagesGoWithTheirCause: what is wrong with a text is said no longer when
// it is typed anew or left, and Esc goes from a large figure to the question.
func TestMessagesGoWithTheirCause(t *testing.T) {
	d := newDriver(t, "2027-05-04 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.did(tree(1, 1), "2027-04-20 09:00", cut()...)
	d.did(tree(1, 1), "2027-05-04 08:00", graft()[:5]...)
	d.open()
	d.press("enter")
	d.on(walk.StepMeasure)
	d.press("99", "enter")
	said := d.root.said
	if !said.Wrong {
		t.Fatalf("99 was taken:\n%s", d.screen())
	}
	d.press("1")
	if d.root.said == said {
		t.Errorf("%q is said of what is typed anew", said.Text)
	}
	d.press("enter", "esc")
	if d.root.said.Wrong {
		t.Errorf("%q outlives its field", d.root.said.Text)
	}
	d.press("3.4", "enter", "z", "esc")
	if d.root.said.Wrong || d.step() == walk.StepMeasure {
		t.Errorf("Esc from a large figure leaves the stump:\n%s", d.screen())
	}
	d.on(walk.StepSlots)
}
