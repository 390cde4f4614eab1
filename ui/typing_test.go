package ui

import (
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/core/walk"
	"barkslip/ui/block"
	"barkslip/ui/part"
)

// atMeasure is a stump whose face is to be measured.
func atMeasure(t *testing.T) *driver {
	d := newDriver(t, "2027-05-04 09:00")
	d.plant("Hollow Lane", rows(6, 6)...)
	d.did(tree(1, 1), "2027-04-20 09:00", cut()...)
	d.did(tree(1, 1), "2027-05-04 08:30", graft()[:4]...)
	d.did(tree(1, 1), "2027-05-04 08:50", &record.Looked{Bleeding: record.Dry})
	d.open()
	d.press("enter")
	d.on(walk.StepMeasure)
	return d
}

// TestBurst sends letters that came as one message.
func TestBurst(t *testing.T) {
	d := atMeasure(t)
	d.burst("3.4")
	d.sees("> 3.4")
	d.press("enter")
	if _, m := newest[*record.StumpMeasured](d); m.Across.Length != 3.4*unit.Inch {
		t.Errorf("%v across", m.Across.Length)
	}
	d.press("esc")
	d.burst("g")
	d.round()
	d.press("esc")
	d.burst("m")
	d.press("esc")
	d.burst("/3")
	d.sees("Go to row/tree:", "> 3")
	d.burst("/2")
	d.press("enter")
	if d.walk().ID() != tree(3, 2) {
		t.Errorf("on %s", d.walk().ID().Place())
	}
}

// TestBurstAnswersOnlyTheFirst sends the same digit several times in one
// message: one answer, the rest is a key held down.
func TestBurstAnswersOnlyTheFirst(t *testing.T) {
	d := newDriver(t, "2027-05-04 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.did(tree(1, 1), "2027-04-20 09:00", cut()...)
	d.open()
	d.press("enter")
	d.on(walk.StepBleeding)
	d.burst("1111")
	d.on(walk.StepSlip)
	d.sees("held down")
}

// TestEscAndKey sends Esc and a letter behind it, which arrive as one.
func TestEscAndKey(t *testing.T) {
	d := atMeasure(t)
	d.press("m")
	d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{'w'}, Alt: true})
	if over[*part.Prompt](d) || !over[*part.Page](d) {
		t.Errorf("Esc and w did not leave the note and open why:\n%s", d.screen())
	}
}

// TestHeldKey holds a key down for ten seconds: it answers once. A pause or
// another key frees it.
func TestHeldKey(t *testing.T) {
	for _, every := range []time.Duration{30 * time.Millisecond, 33 * time.Millisecond, 250 * time.Millisecond, 660 * time.Millisecond} {
		d := newDriver(t, "2027-05-04 09:00")
		d.plant("Hollow Lane", rows(1, 2)...)
		d.press("enter", "2")
		d.on(walk.StepReach)
		d.hold("enter", int(10*time.Second/every), every)
		d.on(walk.StepLeaf)
		d.sees("ignored")
		if n := len(d.live()); n != 1 {
			t.Fatalf("every %s: %d answers stand", every, n)
		}
		d.hold("3", 1, 50*time.Millisecond)
		d.on(walk.StepHeight)
		d.press("enter")
		d.on(walk.StepGashes)
	}
}

// TestHeldKeyAfterAPause answers again with the same key after 700 ms.
func TestHeldKeyAfterAPause(t *testing.T) {
	d := newDriver(t, "2027-05-04 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.press("enter", "2")
	d.hold("enter", 3, 100*time.Millisecond)
	d.on(walk.StepLeaf)
	d.hold("enter", 1, 699*time.Millisecond)
	d.on(walk.StepLeaf)
	d.hold("enter", 1, 700*time.Millisecond)
	d.on(walk.StepHeight)
}

// TestHeldDigitDoesNotRunOn holds the digit that leaves a stump: the next
// stump is not answered with it.
func TestHeldDigitDoesNotRunOn(t *testing.T) {
	d := newDriver(t, "2027-05-04 09:00")
	d.plant("Hollow Lane", rows(1, 3)...)
	for n := 1; n <= 3; n++ {
		d.did(tree(1, n), "2027-05-01 09:00", cut()...)
	}
	d.sealed(tree(1, 3), "2027-04-20 09:00", "2027-05-04 06:30", "2027-05-04 06:40")
	d.open()
	d.press("enter")
	d.on(walk.StepWait)
	d.hold("1", 60, 33*time.Millisecond)
	for n := 1; n <= 3; n++ {
		s, err := d.book.Stump(tree(1, n))
		if err != nil || s.Now().White != nil {
			t.Errorf("stump %d was painted by a held key", n)
		}
	}
}

// TestHeldEnterOnBlockOnlyOpens holds Enter on the block: the stump opens and
// is not answered.
func TestHeldEnterOnBlockOnlyOpens(t *testing.T) {
	d := newDriver(t, "2027-05-04 09:00")
	d.plant("Hollow Lane", rows(1, 3)...)
	d.hold("enter", 100, 33*time.Millisecond)
	d.on(walk.StepLimbs)
	if n := len(d.live()); n != 0 {
		t.Errorf("%d answers", n)
	}
}

// TestPaste pastes text into a field, a note and where there is no field.
func TestPaste(t *testing.T) {
	d := atMeasure(t)
	paste := func(s string) { d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(s), Paste: true}) }
	paste("3.4\x1b[2J\n")
	d.sees("> 3.4")
	d.press("esc", "m")
	paste("two lines\nof q\u202e and more")
	d.press("enter")
	if _, n := newest[*record.Noted](d); n.Text != "two linesof q and more" {
		t.Errorf("note %q", n.Text)
	}
	d.press("esc")
	before := d.ground().Cursor()
	paste("jjjq1\n")
	if d.root.quit || over[*part.Prompt](d) || d.ground().Cursor() != before {
		t.Errorf("a paste was taken as keys:\n%s", d.screen())
	}
	d.press("n", "esc")
	d.goTo(1, 2)
	d.on(walk.StepLimbs)
	paste("1")
	d.on(walk.StepLimbs)
	if n := len(d.live()); n != 0 {
		t.Errorf("a paste answered a question")
	}
}

// TestPasteOfALongText keeps a field within bounds.
func TestPasteOfALongText(t *testing.T) {
	d := atMeasure(t)
	long := make([]rune, 100_000)
	for i := range long {
		long[i] = 'é'
	}
	d.press("m")
	d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: long, Paste: true})
	if wrong := geometry(d.root.View(), 80, 24); wrong != "" {
		t.Error(wrong)
	}
	d.press("enter")
	if _, n := newest[*record.Noted](d); len(n.Text) > 2*part.FieldLimit {
		t.Errorf("a note of %d bytes", len(n.Text))
	}
}

// TestLeaveKey sees that q leaves everywhere but in a text.
func TestLeaveKey(t *testing.T) {
	for name, c := range map[string]struct {
		keys  []string
		leave bool
	}{
		"block": {nil, true}, "stump": {[]string{"enter"}, true}, "help": {[]string{"?"}, true}, "list": {[]string{"f"}, true}, "rounds": {[]string{"g"}, true},
		"note": {[]string{"enter", "m"}, false}, "hand": {[]string{"h"}, false}, "place": {[]string{"/"}, false}, "first": {[]string{"b", "2", "1"}, false},
		"number field": {[]string{"enter", "2"}, true}, "number typed": {[]string{"enter", "2", "2"}, false},
	} {
		d := newDriver(t, "2027-05-04 09:00")
		d.plant("Hollow Lane", rows(1, 3)...)
		d.press(c.keys...)
		_, cmd := d.root.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{'q'}})
		if d.root.quit != c.leave || (cmd != nil) != c.leave {
			t.Errorf("%s: leaves %v, want %v", name, d.root.quit, c.leave)
		}
	}
	d := newDriver(t, "2027-05-04 09:00")
	d.press("1", "n")
	if d.root.Update(tea.KeyMsg{Type: tea.KeyCtrlC}); !d.root.quit {
		t.Error("ctrl+c does not leave a text field")
	}
}

// TestEscNeverLeaves presses Esc on every screen many times.
func TestEscNeverLeaves(t *testing.T) {
	for _, keys := range [][]string{nil, {"enter"}, {"?"}, {"f"}, {"g"}, {"enter", "m"}, {"b", "2"}, {"b", "2", "1", "x"}} {
		d := newDriver(t, "2027-05-04 09:00")
		d.plant("Hollow Lane", rows(1, 3)...)
		d.press(keys...)
		for range 12 {
			d.press("esc")
		}
		if d.root.quit || !is[*block.Screen](d) {
			t.Errorf("%v and Esc: not on the block:\n%s", keys, d.screen())
		}
	}
}

// TestTinyWindow sees that a window too small says so, takes no answer, and
// leaves with q.
func TestTinyWindow(t *testing.T) {
	d := newDriver(t, "2027-05-04 09:00")
	d.plant("Hollow Lane", rows(1, 3)...)
	d.press("enter")
	for _, size := range [][2]int{{59, 15}, {60, 14}, {20, 5}, {7, 3}, {1, 1}, {0, 0}} {
		d.size(size[0], size[1])
		if size[1] > 0 {
			if wrong := geometry(d.root.View(), size[0], size[1]); wrong != "" {
				t.Errorf("%v: %s", size, wrong)
			}
		}
		d.press("2")
	}
	d.size(59, 15)
	d.sees("at least 60 columns by 15 lines")
	d.size(60, 15)
	d.on(walk.StepLimbs)
	if n := len(d.live()); n != 0 {
		t.Errorf("%d answers taken unseen", n)
	}
	d.size(59, 15)
	d.press("q")
	if !d.root.quit {
		t.Error("q does not leave")
	}
}
