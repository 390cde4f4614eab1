package ui

import (
	"strings"
	"testing"
	"time"

	"barkslip/core/ready"
	"barkslip/core/record"
	"barkslip/core/walk"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// TestAgainstAdvice grafts a stump that should wait, with a typed reason, and
// takes that back.
func TestAgainstAdvice(t *testing.T) {
	d := newDriver(t, "2027-04-26 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.press("enter", "2", "enter", "enter", "enter", "enter")
	d.on(walk.StepWait)
	before := len(d.live())
	d.press("x")
	d.pickWord("graft it all the same")
	d.press("enter")
	if len(d.live()) != before {
		t.Error("Enter went against the advice unseen")
	}
	d.pickWord("another reason")
	d.press("enter")
	d.sees("type the reason first")
	d.press("quick, before the frost", "enter")
	e, against := newest[*record.AgainstAdvice](d)
	if against.Verdict != ready.Wait || against.Why != "quick, before the frost" || !e.At.Equal(d.now) {
		t.Errorf("%+v at %s", against, e.At)
	}
	if s := d.step(); s == walk.StepWait {
		t.Errorf("it still waits")
	}
	d.sees("quick, before the frost")
	d.press("u")
	d.sees("Took back: against advice")
	d.on(walk.StepWait)
	d.choose("go on")
	d.pickWord("a trial")
	if _, against := newest[*record.AgainstAdvice](d); against.Why != "a trial" {
		t.Errorf("reason %q", against.Why)
	}
	sums, err := d.book.Summaries(home)
	if err != nil || !sums[0].Against {
		t.Errorf("the summary does not say it: %+v %v", sums[0], err)
	}
}

// TestNoAdviceAgainst sees that where nothing advises against it no reason is
// asked.
func TestNoAdviceAgainst(t *testing.T) {
	d := newDriver(t, "2027-05-04 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.did(tree(1, 1), "2027-04-20 09:00", cut()...)
	d.did(tree(1, 1), "2027-05-04 08:00", graft()...)
	d.open()
	d.press("enter", "x")
	d.sees("failed", "given up")
	d.lacks("graft it all the same")
}

// TestFailedWithCause puts a graft down as lost, with its cause.
func TestFailedWithCause(t *testing.T) {
	d := newDriver(t, "2027-05-30 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.sealed(tree(1, 1), "2027-04-20 09:00", "2027-05-04 09:00", "2027-05-04 09:40")
	d.did(tree(1, 1), "2027-05-04 12:00", &record.PaintedWhite{})
	d.open()
	d.press("enter", "x")
	d.pickWord("failed")
	d.sees("cause")
	d.pickWord("overheated")
	if _, f := newest[*record.Failed](d); f.Cause != "overheated" {
		t.Errorf("cause %q", f.Cause)
	}
	if s := d.stump().Stage(); s != record.StageFailed {
		t.Errorf("stage %s", s)
	}
	d.sees("overheated")
	d.press("esc")
	d.sees("failed")
	d.press("enter", "u")
	d.sees("Took back: failed: overheated")
	if s := d.stump().Stage(); s != record.StagePainted {
		t.Errorf("stage %s", s)
	}
	d.press("x", "esc")
	if over[*part.List](d) || d.stump().Stage() != record.StagePainted {
		t.Errorf("Esc did not leave the list")
	}
}

// TestNotYetGraftedCannotFail offers only to give up what was never grafted.
func TestNotYetGraftedCannotFail(t *testing.T) {
	d := newDriver(t, "2027-05-30 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.press("enter", "x")
	d.lacks("no graft lives")
	before := len(d.live())
	d.pickWord("given up this season")
	d.sees("Give it up?")
	d.press("enter")
	if len(d.live()) != before {
		t.Error("it is given up without being asked once more")
	}
	d.press("x")
	d.pickWord("given up this season")
	d.pickWord("yes")
	if _, g := newest[*record.GivenUp](d); !g.Season {
		t.Error("it is given up for good")
	}
}

// TestOtherVarietyIsWarnedLoudly takes wood of another variety than planned:
// turned letters say so at every step that follows, until the wood is right.
func TestOtherVarietyIsWarnedLoudly(t *testing.T) {
	d := newDriver(t, "2027-04-26 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.toWood()
	d.press("9", "Harvest", "enter")
	for d.step() != walk.StepSeal {
		d.sees("OTHER VARIETY", "Harvest", "Lantern")
		for _, l := range strings.Split(d.root.View(), "\n") {
			if strings.Contains(l, "OTHER VARIETY") && !strings.Contains(l, setBefore(d.root.x.Theme, paper.Alarm)) {
				t.Errorf("not loud: %q", l)
			}
		}
		d.press("enter")
	}
	d = newDriver(t, "2027-04-26 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.toWood()
	d.press("9", "lantern", "enter")
	d.lacks("OTHER VARIETY")
}

// toWood takes the first stump, not yet cut back, to the choice of wood.
func (d *driver) toWood() {
	d.t.Helper()
	d.did(tree(1, 1), "2027-04-26 09:00", cut()...)
	d.clock("2027-05-04 08:00")
	d.open()
	d.press("enter", "1", "1", "enter", "enter")
	d.wait(20 * time.Minute)
	d.press("1", "3.4", "enter", "enter")
	d.on(walk.StepWood)
}

// TestWoodAndCoverOfTheStumpBefore offers what was used on the stump before.
func TestWoodAndCoverOfTheStumpBefore(t *testing.T) {
	d := newDriver(t, "2027-05-04 08:00")
	d.plant("Hollow Lane", rows(1, 3)...)
	d.did(tree(1, 1), "2027-04-20 09:00", cut()...)
	d.did(tree(1, 1), "2027-05-04 07:00", graft()...)
	d.did(tree(1, 1), "2027-05-04 07:40", &record.Sealed{Cover: record.Bare})
	d.did(tree(1, 2), "2027-04-20 09:00", cut()...)
	d.did(tree(1, 3), "2027-04-20 09:00", cut()...)
	d.open()
	for n := 2; n <= 3; n++ {
		d.goTo(1, n)
		d.press("1", "1", "enter", "enter")
		d.wait(20 * time.Minute)
		d.press("1", "3.4", "enter", "enter")
		d.on(walk.StepWood)
		d.sees("1/", "as before", "Lantern", "1/2 in")
		d.press("enter")
		d.on(walk.StepScion)
		d.press("enter", "enter", "enter")
		d.on(walk.StepSeal)
		d.press("enter")
		if _, s := newest[*record.Sealed](d); s.Cover != record.Bare {
			t.Errorf("stump %d: cover %s", n, s.Cover)
		}
		d.press("esc")
	}
}
