package ui

import (
	"testing"
	"time"

	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/core/walk"
	"barkslip/ui/block"
)

// correct moves up the stake to a step.
func (d *driver) correct(step walk.StepID) {
	d.t.Helper()
	for range 40 {
		if d.step() == step {
			return
		}
		d.press("up")
	}
	d.t.Fatalf("%s is not on the stake:\n%s", step, d.screen())
}

// TestCorrectStandingAnswer corrects the height of the cut-back after the
// gashes: the new answer takes the place of the old, which stays in the story.
func TestCorrectStandingAnswer(t *testing.T) {
	d := newDriver(t, "2027-04-26 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.press("enter", "2", "enter", "enter", "40", "enter", "enter")
	d.on(walk.StepWait)
	first := d.live()
	d.correct(walk.StepHeight)
	d.sees("Correcting", "40 in")
	d.wait(time.Hour)
	d.press("44", "enter")
	d.on(walk.StepWait)
	d.sees("Recorded: ", "44 in")
	heights := 0
	for _, e := range d.live() {
		if c, ok := e.Body.(*record.CutBack); ok {
			heights++
			if c.Height.Length != 44*unit.Inch {
				t.Errorf("height %v", c.Height.Length)
			}
		}
	}
	if heights != 1 || len(d.live()) != len(first) {
		t.Errorf("%d heights, %d answers stand, %d stood", heights, len(d.live()), len(first))
	}
	if n := len(d.stump().Clashes); n != 0 {
		t.Errorf("%d clashes", n)
	}
	d.press("j")
	d.sees("40 in", "44 in")
}

// TestCorrectedObservationKeepsItsTime corrects a look an hour later.
func TestCorrectedObservationKeepsItsTime(t *testing.T) {
	d := newDriver(t, "2027-04-26 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.did(tree(1, 1), "2027-04-20 09:00", cut()...)
	d.open()
	d.press("enter")
	d.on(walk.StepWait)
	d.clock("2027-05-04 08:00")
	d.press("1", "1")
	d.wait(time.Hour)
	d.correct(walk.StepBleeding)
	d.press("3")
	looks := 0
	for _, e := range d.live() {
		l, ok := e.Body.(*record.Looked)
		if !ok || l.Bleeding == "" {
			continue
		}
		looks++
		if l.Bleeding != record.Weeping || !e.At.Equal(at("2027-05-04 08:00")) {
			t.Errorf("%s at %s", l.Bleeding, e.At)
		}
	}
	if looks != 1 {
		t.Errorf("%d looks stand", looks)
	}
	slips := 0
	for _, e := range d.live() {
		if l, ok := e.Body.(*record.Looked); ok && l.Slip != "" {
			slips++
		}
	}
	if slips != 1 {
		t.Errorf("%d tries of the bark stand", slips)
	}
}

// TestCorrectingCanBeLeft goes up the stake and back without an answer.
func TestCorrectingCanBeLeft(t *testing.T) {
	d := newDriver(t, "2027-04-26 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.press("enter", "2", "enter", "enter", "enter", "enter")
	before := d.live()
	d.press("up", "up", "up", "esc")
	d.on(walk.StepWait)
	d.press("up", "up", "down", "down")
	d.on(walk.StepWait)
	if len(d.live()) != len(before) {
		t.Errorf("%d answers, were %d", len(d.live()), len(before))
	}
	d.press("esc")
	if !is[*block.Screen](d) {
		t.Errorf("Esc did not go back to the block:\n%s", d.screen())
	}
}

// TestCorrectEachStandingAnswer goes up to every tied step of a walk in turn
// and gives its likely answer again: nothing but that answer changes hands, and
// no two stand.
func TestCorrectEachStandingAnswer(t *testing.T) {
	d := newDriver(t, "2027-04-26 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.press("enter")
	d.walked("2027-05-04 08:00")
	present := d.step()
	for _, step := range []walk.StepID{walk.StepNodes, walk.StepThick, walk.StepHeight, walk.StepReach, walk.StepLimbs} {
		before := len(d.live())
		d.correct(step)
		if d.walk().Asked().Likely == "" && d.walk().Field() == nil {
			t.Fatalf("%s has no likely answer", step)
		}
		d.press("enter")
		if n := len(d.live()); n != before {
			t.Errorf("%s: %d answers stand, %d stood", step, n, before)
		}
		if n := len(d.stump().Clashes); n != 0 {
			t.Errorf("%s: %d clashes", step, n)
		}
		d.on(present)
	}
}
