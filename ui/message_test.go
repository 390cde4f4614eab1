package ui

import (
	"strings"
	"testing"
	"time"

	"barkslip/core/record"
)

// atWhite is a stump sealed a quarter of an hour ago, open at its white.
func atWhite(t *testing.T) *driver {
	d := newDriver(t, "2027-05-20 10:15")
	d.plant("Hollow Lane", rows(1, 3)...)
	d.sealed(tree(1, 2), "2027-05-10 09:00", "2027-05-20 09:00", "2027-05-20 10:00")
	d.open()
	d.goTo(1, 2)
	return d
}

// TestADoubtGoesWithItsQuestion: going along the stake leaves what was in doubt, and
// what was said of it.
func TestADoubtGoesWithItsQuestion(t *testing.T) {
	d := atWhite(t)
	d.press("1")
	d.sees("Sealed only 15 minutes ago", "it is dry")
	d.press("down")
	d.lacks("Sealed only", "it is dry")
	d.sees("still wet")
	d.wait(time.Second)
	d.press("1", "up")
	d.sees("Correcting seal")
	d.lacks("Sealed only")
	d.press("esc")
	d.lacks("Sealed only", "Correcting")
	d.sees("still wet")
}

// TestEscFromALargeFigure goes back to the question, with what was typed.
func TestEscFromALargeFigure(t *testing.T) {
	d := atWhite(t)
	d.press("z")
	d.sees("The figure large")
	d.lacks("painted white")
	d.press("esc")
	d.sees("painted white", "still wet")
	d.lacks("The figure large")
	d.press("1", "z", "esc") // over a doubt: the doubt is there still
	d.sees("it is dry")

	d.press("esc", "up", "up") // a figure over a field
	for range 12 {
		if d.walk().Asked().Step.Name == "measure" {
			break
		}
		d.press("up")
	}
	if d.walk().Asked().Step.Name != "measure" {
		t.Skip("no step is typed here")
	}
	d.press("z", "4", "esc")
	d.lacks("The figure large")
	d.sees("> 4")
}

// TestHardRainIsAnAnswer: of white paint it may be told at any time after, and has
// the seal looked at.
func TestHardRainIsAnAnswer(t *testing.T) {
	d := atWhite(t)
	d.clock("2027-05-20 12:30")
	d.press("1")
	d.goTo(1, 2)
	d.clock("2027-05-21 08:00")
	d.choose("hard rain")
	d.sees("Recorded: hard rain on the seal", "Is the seal whole?", "It rained hard 21 May")
	d.wait(time.Second)
	d.press("1")
	d.lacks("Is the seal whole?")
}

// TestLateWhiteStandsInTheStory with how long after the bark passed the limit.
func TestLateWhiteStandsInTheStory(t *testing.T) {
	d := newDriver(t, "2027-05-20 17:00")
	d.plant("Hollow Lane", rows(1, 3)...)
	d.sealed(tree(1, 2), "2027-05-10 09:00", "2027-05-20 07:00", "2027-05-20 07:40")
	d.open()
	d.press("d")
	d.pickWord("record today")
	d.press("60 112 0 0 none", "enter")
	d.goTo(1, 2)
	d.choose("painted white")
	d.press("j")
	d.sees("painted white 17:00,", "after the bark passed 45 C / 113 F, as worked out")
}

// TestPutBackOnAStumpIsOfThisSession: what was taken back and put back on its stump
// is named and taken back on the block.
func TestPutBackOnAStumpIsOfThisSession(t *testing.T) {
	d := atWhite(t)
	d.clock("2027-05-20 12:30")
	d.press("1", "u")
	d.sees("Took back: painted white")
	d.press("U", "esc")
	d.sees(`u take back "1/2, painted white"`)
	d.press("u")
	d.sees("Took back: 1/2, painted white")
	d.press("U")
	d.sees("Put back: 1/2, painted white")
	d.press("u", "u")
	d.sees("Nothing more was answered")
}

// TestSecondGraftOnTheScreen starts from the record on a window of any size: the
// last cut, the nails, of what the first was lost and what to do differently.
func TestSecondGraftOnTheScreen(t *testing.T) {
	d := newDriver(t, "2028-04-20 09:00")
	d.plant("Hollow Lane", rows(1, 3)...)
	d.sealed(tree(1, 2), "2027-05-10 09:00", "2027-05-20 09:00", "2027-05-20 10:00")
	d.did(tree(1, 2), "2027-07-01 09:00", &record.Failed{Cause: "bled"})
	d.open()
	d.goTo(1, 2)
	d.choose("cut back again")
	for _, size := range [][2]int{{80, 24}, {120, 40}, {60, 15}} {
		d.size(size[0], size[1])
		d.sees("Last cut at 36 in.", "mind the saw", "it bled", "(common")
	}
	d.size(80, 24)
	d.press("0")
	if warn := d.walk().Asked().Because; !strings.Contains(warn, "old nails from 33 1/2 in to 36 in") {
		t.Errorf("%q", warn)
	}
	d.press("34", "enter")
	d.sees("Old nails stand from 33 1/2 in to 36 in", "cut there")
	d.press("esc")
	d.lacks("Old nails stand", "cut there")
}
