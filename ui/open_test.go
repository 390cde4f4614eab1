package ui

import (
	"strings"
	"testing"
	"time"

	"barkslip/core/record"
	"barkslip/core/walk"
	"barkslip/ui/first"
	"barkslip/ui/part"
	"barkslip/ui/stump"
)

// TestPlainModeIsASCII sees that nothing but what was typed needs more than
// ASCII.
func TestPlainModeIsASCII(t *testing.T) {
	told := map[string]bool{}
	tour(t, func(name string, d *driver) {
		d.each(func(size [2]int, theme string, plain bool) {
			if !plain || theme != "dark" {
				return
			}
			for _, l := range strings.Split(d.screen(), "\n") {
				for _, r := range l {
					if r > 127 && !told[name+string(r)] {
						told[name+string(r)] = true
						t.Errorf("%s, %v: %q in plain characters: %s", name, size, r, l)
					}
				}
			}
		})
	})
}

// TestEveryAnswerInASmallWindow sees that a small window hides no answer either.
func TestEveryAnswerInASmallWindow(t *testing.T) {
	tour(t, func(name string, d *driver) {
		if !is[*stump.Screen](d) || over[*part.Page](d) || over[*part.List](d) || over[*part.Prompt](d) {
			return
		}
		d.size(60, 15)
		if missing := d.hidden(); missing != "" {
			t.Errorf("%s: %q is not to be seen:\n%s", name, missing, d.screen())
		}
		d.size(80, 24)
	})
}

// TestSmallWindowKeepsTheWhiteClocks: what runs out is the last to be left out.
func TestSmallWindowKeepsTheWhiteClocks(t *testing.T) {
	d := sealedRow(t)
	d.press("space")
	d.size(60, 15)
	d.sees("3 to paint")
	d.press("n")
	d.sees("3 to paint")
}

// TestSmallWindowShowsTheCounts: no number is cut.
func TestSmallWindowShowsTheCounts(t *testing.T) {
	d := newDriver(t, "2027-05-04 09:00")
	d.plant("Hollow Lane", rows(12, 20)...)
	d.size(60, 15)
	d.sees("standing 240")
}

// TestMessageIsWhole: an error or warning is not cut where it says what to do.
func TestMessageIsWhole(t *testing.T) {
	d := newDriver(t, "2027-05-04 14:00")
	d.plant("Hollow Lane", rows(1, 3)...)
	d.now = at("2020-01-01 00:00")
	d.open()
	d.sees("Is the clock right?")
}

// TestSeparatorsAreCleaned: Unicode's line separators are control characters
// too.
func TestSeparatorsAreCleaned(t *testing.T) {
	if got := record.Clean("a\u2028b\u2029c\u200e\u200f\u061cd"); got != "abcd" {
		t.Errorf("%q", got)
	}
}

// TestUnwrittenNoteIsKept: a note that could not be written stays in the field.
func TestUnwrittenNoteIsKept(t *testing.T) {
	d := newDriver(t, "2027-04-26 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.press("enter")
	w := d.watch()
	w.before = func() error { return errFull }
	d.press("m", "split runs 5 in", "enter")
	d.sees("disk is full", "split runs 5 in")
}

// TestHeldKeyInAList: the key that picked from a list picks nothing from the
// next.
func TestHeldKeyInAList(t *testing.T) {
	d := newDriver(t, "2027-05-30 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.sealed(tree(1, 1), "2027-04-20 09:00", "2027-05-04 09:00", "2027-05-04 09:40")
	d.open()
	d.press("enter", "x")
	d.hold("1", 20, 33*time.Millisecond)
	if s := d.stump().Stage(); s == record.StageFailed {
		t.Errorf("failed, with a cause, by a key held down: %s", d.root.said.Text)
	}
}

// TestHeldEnterAfterANote: the Enter that ends a note answers no question.
func TestHeldEnterAfterANote(t *testing.T) {
	d := newDriver(t, "2027-05-30 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.press("enter", "m", "wet")
	d.hold("enter", 20, 33*time.Millisecond)
	if n := len(d.live()); n != 1 {
		t.Errorf("%d answers after a note and a held Enter", n)
	}
}

// TestHeldEnterOnFirstUse: one Enter is one answer there too.
func TestHeldEnterOnFirstUse(t *testing.T) {
	d := newDriver(t, "2027-05-30 09:00")
	d.press("1", "Home")
	d.hold("enter", 40, 33*time.Millisecond)
	if !is[*first.Screen](d) || d.asked() != "rows" {
		t.Errorf("a held Enter went on:\n%s", d.screen())
	}
}

// TestHeldEnterOnARow: Enter held on the list does not paint the row.
func TestHeldEnterOnARow(t *testing.T) {
	d := sealedRow(t)
	d.press("r")
	d.hold("enter", 40, 33*time.Millisecond)
	if d.stages()[0] == record.StagePainted {
		t.Errorf("a held Enter painted the row and opened a stump:\n%s", d.screen())
	}
}

// TestHeldUndo: u held down takes back one answer.
func TestHeldUndo(t *testing.T) {
	d := newDriver(t, "2027-05-30 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.press("enter", "2", "enter", "enter", "enter", "enter")
	n := len(d.live())
	d.hold("u", 40, 33*time.Millisecond)
	if len(d.live()) < n-1 {
		t.Errorf("%d of %d answers are left", len(d.live()), n)
	}
}

// TestHelpFitsAfterResize: a text to read is wrapped anew for a new window.
func TestHelpFitsAfterResize(t *testing.T) {
	d := newDriver(t, "2027-05-04 14:00")
	d.plant("Hollow Lane", rows(1, 3)...)
	d.press("?")
	d.size(60, 15)
	d.lacks("…")
}

// TestLongTextShowsItsEnd: what is typed last in a long text is in sight.
func TestLongTextShowsItsEnd(t *testing.T) {
	d := newDriver(t, "2027-05-04 14:00")
	d.plant("Hollow Lane", rows(1, 3)...)
	d.press("enter", "m")
	for range 12 {
		d.press("a long note ")
	}
	d.press("the end")
	d.sees("the end")
}

// TestAgainstAdviceStillCutsFresh: who grafts against the days still gashes,
// cuts the top fresh and looks at the new face.
func TestAgainstAdviceStillCutsFresh(t *testing.T) {
	d := newDriver(t, "2027-05-03 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.did(tree(1, 1), "2027-04-27 09:00", cut()...)
	d.open()
	d.press("enter")
	d.on(walk.StepWait)
	d.choose("go on")
	d.pickWord("a trial")
	if s := d.step(); s == walk.StepMeasure {
		t.Errorf("measured without a fresh cut:\n%s", d.screen())
	}
}

// TestOtherVarietyIsNotLikely: Enter takes no wood of another variety than
// planned where a lot of the planned one is there.
func TestOtherVarietyIsNotLikely(t *testing.T) {
	d := newDriver(t, "2027-04-26 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.append(record.Event{At: d.now, Hand: "RK", Body: &record.LotReceived{Lot: record.ID{8}, Name: "L-1", Variety: "Lantern"}})
	d.did(tree(1, 2), "2027-04-20 09:00", cut()...)
	d.did(tree(1, 2), "2027-04-26 08:00", append(graft()[:7:7], &record.WoodChosen{Variety: "Harvest", Thickness: inches(0.5),
		Nodes: []record.Node{{Buds: record.Paired}}},
		&record.ScionSet{Slot: 1, Variety: "Harvest", Checks: record.AllGood})...)
	d.open()
	d.toWood()
	d.press("enter")
	if w := d.stump().Now().Wood; w != nil && w.What.Variety == "Harvest" {
		t.Errorf("Enter took %s for Lantern", w.What.Variety)
	}
}

// TestTakenNamesTheAnswer: what is said as taken, and named for taking back, is
// what was answered, not only the wood it belongs to.
func TestTakenNamesTheAnswer(t *testing.T) {
	d := newDriver(t, "2027-04-26 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.toWood()
	d.press("9", "Lantern", "enter")
	d.on(walk.StepThick)
	d.press("1/2", "enter")
	d.sees("1/2 in")
	if said := d.root.said.Text; !strings.Contains(said, "1/2") {
		t.Errorf("said %q for a thickness", said)
	}
	d.press("u")
	if said := d.root.said.Text; !strings.Contains(said, "1/2") {
		t.Errorf("said %q for a thickness taken back", said)
	}
}

// TestKeyLineOfATypedField: while letters are text the key line offers none as
// a command.
func TestKeyLineOfATypedField(t *testing.T) {
	d := newDriver(t, "2027-04-26 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.press("enter", "2", "2")
	d.lacks("w why", "m note", "n next")
}

// TestHelpIsOffered: the key for help is in the key line of every full screen.
func TestHelpIsOffered(t *testing.T) {
	d := newDriver(t, "2027-04-26 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.sees("? keys")
	d.press("enter")
	d.sees("? keys")
}

// TestMarkedChecksAreNotAllGood: with one marked the key line does not offer
// to take all as good.
func TestMarkedChecksAreNotAllGood(t *testing.T) {
	d := newDriver(t, "2027-05-04 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.did(tree(1, 1), "2027-04-20 09:00", cut()...)
	d.did(tree(1, 1), "2027-05-04 08:00", graft()[:8]...)
	d.open()
	d.press("enter", "2")
	d.lacks("Enter all good")
}
