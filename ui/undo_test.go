package ui

import (
	"testing"
	"time"

	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/core/walk"
)

// walked takes the open stump, not yet cut back, to its white paint.
func (d *driver) walked(day string) {
	d.t.Helper()
	d.press("2", "enter", "enter", "enter", "enter")
	d.clock(day)
	d.press("1", "1", "enter", "enter")
	d.wait(20 * time.Minute)
	d.press("1", "3.4", "enter")
	for range 12 {
		if d.step() == walk.StepWood && d.walk().Asked().Likely == "" {
			d.press("9")
		}
		if d.step() == walk.StepWhite {
			break
		}
		d.press("enter")
	}
	d.on(walk.StepWhite)
	d.wait(2*time.Hour + time.Minute)
	d.press("1")
}

// TestEveryAnswerCanBeTakenBack takes back a whole walk answer by answer and
// puts it back again; each is named, and the question before is asked again.
func TestEveryAnswerCanBeTakenBack(t *testing.T) {
	d := newDriver(t, "2027-04-26 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.press("enter")
	d.walked("2027-05-04 08:00")
	end := d.live()
	steps := []walk.StepID{d.step()}
	for len(d.live()) > 0 {
		e := d.live()
		last := e[len(e)-1]
		d.press("u")
		d.sees("Took back: " + record.Say(last.Body, unit.US))
		for _, e := range d.live() {
			if e.ID == last.ID {
				t.Fatalf("%s stands still", last.Body.Kind())
			}
		}
		steps = append(steps, d.step())
		if len(steps) > 60 {
			t.Fatal("taking back does not come to an end")
		}
	}
	d.on(walk.StepLimbs)
	d.press("u")
	d.sees("Nothing to take back")
	for i := len(steps) - 2; i >= 0; i-- {
		d.press("U")
		d.sees("Put back: ")
		d.on(steps[i])
	}
	d.press("U")
	d.sees("Nothing to put back")
	back := d.live()
	if len(back) != len(end) {
		t.Fatalf("%d answers stand, %d stood", len(back), len(end))
	}
	for i := range end {
		if back[i].ID != end[i].ID {
			t.Errorf("answer %d is %s, was %s", i, back[i].Body.Kind(), end[i].Body.Kind())
		}
	}
}

// TestNewAnswerEndsPuttingBack sees that after a new answer nothing older is
// put back over it.
func TestNewAnswerEndsPuttingBack(t *testing.T) {
	d := newDriver(t, "2027-04-26 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.press("enter", "2", "u", "1", "U")
	d.sees("Nothing to put back")
	if _, nurse := newest[*record.NurseJudged](d); nurse.Limbs != 1 {
		t.Errorf("%d limbs", nurse.Limbs)
	}
}

// TestUndoAfterReopening takes back an answer given before the program was
// left.
func TestUndoAfterReopening(t *testing.T) {
	d := newDriver(t, "2027-04-26 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.press("enter", "2", "enter")
	d.open()
	d.press("enter", "u")
	d.sees("Took back: ")
	d.on(walk.StepReach)
	d.open()
	d.press("enter", "U")
	d.on(walk.StepLeaf)
}

// TestUndoIsNamedBeforehand sees the answer's name in the key line.
func TestUndoIsNamedBeforehand(t *testing.T) {
	d := newDriver(t, "2027-04-26 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.press("enter", "2", "enter", "enter", "enter")
	d.size(160, 40)
	d.sees(`take back "cut back 42 in"`)
}
