package ui

import (
	"testing"
	"time"

	"barkslip/core/record"
	"barkslip/core/walk"
	"barkslip/ui/part"
)

// TestEarlierTime gives answers from notes on paper.
func TestEarlierTime(t *testing.T) {
	for _, c := range []struct{ typed, want string }{
		{"13:40", "2027-04-26 13:40"},
		{"2027-04-25 13:40", "2027-04-25 13:40"},
		{"20", "2027-04-26 14:10"},
		{"0:05", "2027-04-26 00:05"},
		{"14:30", "2027-04-26 14:30"},
		{"yesterday", "2027-04-25 12:00"},
		{"yesterday 9:05", "2027-04-25 09:05"},
		{"-2 13:40", "2027-04-24 13:40"},
		{"24 Apr 13:40", "2027-04-24 13:40"},
		{"Apr 24 2027 13:40", "2027-04-24 13:40"},
		{"4/24 13:40", "2027-04-24 13:40"},
		{"24.4. 13:40", "2027-04-24 13:40"},
	} {
		d := newDriver(t, "2027-04-26 14:30")
		d.plant("Hollow Lane", rows(1, 2)...)
		d.press("enter", "t", c.typed, "enter")
		if over[*part.Prompt](d) {
			t.Errorf("%s: not taken: %s", c.typed, d.root.said.Text)
			continue
		}
		d.sees("FOR")
		d.press("2")
		if e, _ := newest[*record.NurseJudged](d); !e.At.Equal(at(c.want)) {
			t.Errorf("%s: at %s, want %s", c.typed, e.At, c.want)
		}
		d.press("t")
		d.lacks("FOR ")
		d.press("enter")
		if e, _ := newest[*record.NurseJudged](d); !e.At.Equal(d.now) {
			t.Errorf("%s: after going back to now: %s", c.typed, e.At)
		}
	}
}

// TestTimeToComeIsRefused types times that are no earlier ones.
func TestTimeToComeIsRefused(t *testing.T) {
	for _, typed := range []string{"14:31", "23:59", "2027-04-27", "2027-04-27 08:00", "2099-01-01 10:00", "25:00", "tomorrow", "1:2:3", "4 Mai 9:00",
		"1900-01-01 10:00", "2027-04-25 13:40 x", ""} {
		d := newDriver(t, "2027-04-26 14:30")
		d.plant("Hollow Lane", rows(1, 2)...)
		d.press("enter", "t", typed, "enter")
		if !over[*part.Prompt](d) || !d.root.x.Earlier.IsZero() {
			t.Errorf("%q was taken: %s", typed, d.root.said.Text)
			continue
		}
		d.sees("a time before now")
		d.press("esc", "2")
		if e, _ := newest[*record.NurseJudged](d); !e.At.Equal(d.now) {
			t.Errorf("%q: answer at %s", typed, e.At)
		}
	}
}

// TestEarlierTimeIsPutInOrder enters a look of the morning after one of noon:
// the walk judges by when it was seen, not by when it was typed.
func TestEarlierTimeIsPutInOrder(t *testing.T) {
	d := newDriver(t, "2027-04-26 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.did(tree(1, 1), "2027-04-20 09:00", cut()...)
	d.open()
	d.clock("2027-05-04 12:00")
	d.press("enter", "1", "1")
	d.on(walk.StepNewGashes)
	d.press("t", "2027-05-04 08:00", "enter")
	d.correct(walk.StepBleeding)
	d.press("esc", "t")
	d.on(walk.StepNewGashes)
	d.press("t", "8:00", "enter")
	d.sees("FOR 4 May 08:00")
	d.wait(time.Minute)
	d.sees("FOR 4 May 08:00")
}

// TestNotes types notes with letters that are keys elsewhere, and takes one
// back.
func TestNotes(t *testing.T) {
	d := newDriver(t, "2027-04-26 14:30")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.press("enter", "m", "quite wet? 3 jays / uUq", "enter")
	d.on(walk.StepLimbs)
	if _, n := newest[*record.Noted](d); n.Text != "quite wet? 3 jays / uUq" {
		t.Errorf("note %q", n.Text)
	}
	d.press("m", "enter")
	d.sees("type the note first")
	d.press("esc", "m", "   ", "enter", "esc")
	if n := len(d.live()); n != 1 {
		t.Errorf("%d notes", n)
	}
	d.press("j")
	d.sees("quite wet? 3 jays / uUq")
	d.press("esc", "u")
	d.sees("Took back: note: quite wet?")
	if n := len(d.live()); n != 0 {
		t.Errorf("%d notes", n)
	}
}
