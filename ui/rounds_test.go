package ui

import (
	"slices"
	"strings"
	"testing"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/sample"
	"barkslip/core/walk"
	"barkslip/ui/stump"
)

// onSample opens the screens on the made-up block.
func onSample(t *testing.T, now string) *driver {
	d := newDriver(t, now)
	if err := d.book.Bulk(sample.Events(sample.Plan{Stumps: 240, Seed: 1, Zone: newYork, Now: d.now})); err != nil {
		t.Fatal(err)
	}
	d.open()
	d.sees("Hollow Lane", "240 stumps")
	return d
}

// Someone who sees it for the first time asks for the late ones and does the
// first three on the list.
func TestFirstThreeThatAreLate(t *testing.T) {
	d := onSample(t, "2027-05-20 10:12")
	d.press("g", "5")
	d.sees("late")
	before := d.round().Calls()
	late := len(before)
	d.press("enter")
	for first := before[:3]; slices.ContainsFunc(first, func(c due.Call) bool { return is[*stump.Screen](d) && c.Stump == d.walk().ID() }); {
		q, key := d.walk().Asked(), "enter"
		for i := len(q.Choices) - 1; i >= 0 && q.Entry == nil; i-- {
			if ch := q.Choices[i]; !ch.Leave {
				key = ch.Key
			}
		}
		d.press(key)
	}
	d.press("esc")
	if left := len(d.round().Calls()); left > late-3 {
		t.Errorf("%d were late, %d are left:\n%s", late, left, d.screen())
	}
	t.Logf("first three late ones: %d key presses", d.keys)
	if d.keys >= 20 {
		t.Errorf("%d key presses, want under 20", d.keys)
	}
}

func TestRoundIsInTheOrderOfTheNext(t *testing.T) {
	d := onSample(t, "2027-05-20 10:12")
	d.press("g", "6")
	calls := d.round().Calls()
	turns := 0 // from one part of the round to the next
	for i := 1; i < len(calls); i++ {
		if calls[i-1].Stump.WalkCompare(calls[i].Stump) >= 0 {
			turns++
		}
	}
	if turns > 4 {
		t.Errorf("the round goes back %d times; it has five parts", turns)
	}
	text := d.round().Text()
	for _, c := range calls {
		if !strings.Contains(text, c.Stump.Place()) {
			t.Errorf("the text lacks %s", c.Stump.Place())
		}
	}
}

func TestRoundFilters(t *testing.T) {
	d := onSample(t, "2027-05-20 10:12")
	d.press("g")
	all := len(d.round().Calls())
	d.press("f", "2", "5", "enter")
	for _, c := range d.round().Calls() {
		if c.Stump.Row != 5 {
			t.Errorf("row %d in a round of row 5", c.Stump.Row)
		}
	}
	d.press("f", "2", "enter")
	if n := len(d.round().Calls()); n != all {
		t.Errorf("%d without a filter, %d after it is taken off", all, n)
	}
	d.press("3")
	if n := len(d.round().Calls()); n < all {
		t.Errorf("the week has %d, the day %d", n, all)
	}
	d.press("4", "2027-06-20", "enter")
	d.sees("20 Jun 2027")
	d.press("4", "never", "esc", "2")
	d.press("esc")
	d.sees("Hollow Lane", "240 stumps")
}

// A whole row is answered for in under eight key presses, with its time.
func TestRowPaintedAtATime(t *testing.T) {
	d := onSample(t, "2027-05-20 10:12")
	d.press("1", "0", "/", "1", "8", "enter", "esc")
	d.keys = 0
	d.press("r", "1", "1005", "enter")
	t.Logf("a row painted white at 10:05: %d key presses", d.keys)
	if d.keys >= 8 {
		t.Errorf("%d key presses, want under 8", d.keys)
	}
	for _, s := range d.root.x.Summaries(d.root.x.Block) {
		if s.ID.Row == 10 && s.Stage == record.StageSealed {
			t.Errorf("%s is sealed still:\n%s", s.ID.Place(), d.screen())
		}
	}
	d.press("u")
	d.sees("Took back", "row 10")
}

// The round is written as plain text where the user asks for it.
func TestRoundAsText(t *testing.T) {
	d := onSample(t, "2027-05-20 10:12")
	var name, text string
	d.root.x.SaveText = func(n, s string) (string, error) { name, text = n, s; return n, nil }
	d.press("g", "ctrl-p")
	d.pickWord("the round as text")
	d.sees("Written: round-hollow-lane-2027-05-20.txt")
	if name == "" || !strings.Contains(text, "days late") || !strings.Contains(text, "\nRub sprouts: ") || strings.Count(text, "\n") < len(d.round().Calls()) {
		t.Errorf("%q holds\n%s", name, text)
	}
}

// TestRoundsByWork: each work under its heading, the cursor through stumps and
// folded headings, Tab to the next work, Enter to the step that meets it.
func TestRoundsByWork(t *testing.T) {
	d := blockOf(t, 240)
	d.press("g")
	d.sees("Work is due today on", "Paint white", "min late", "> "+d.round().Calls()[0].Stump.Place())
	stumps := len(d.round().Calls())
	under := func() string { // what stands behind the cursor
		_, words, _ := strings.Cut(d.screen(), "> ")
		return strings.Fields(words)[0]
	}
	toWork := func(verb string) {
		for range 20 {
			if strings.Contains(d.round().Reason(), ", "+verb+": ") {
				return
			}
			d.press("tab")
		}
		t.Fatalf("Tab does not come to %s:\n%s", verb, d.screen())
	}
	toWork("rub sprouts")
	first := under()
	d.sees("Rub sprouts", "> "+first)
	d.press("left")
	d.sees("> Rub sprouts")
	d.lacks("> " + first)
	d.press("down", "up")
	d.sees("> Rub sprouts")
	d.press("right")
	d.sees("> " + first)
	d.press("down", "up", "-")
	d.sees("> Rub sprouts", "+ Paint white")
	d.press("-", "6")
	d.sees("In walking order", "> "+first)
	if n := len(d.round().Calls()); n != stumps {
		t.Errorf("%d stumps by work, %d in one walk", stumps, n)
	}
	d.press("6", "f", "1")
	d.pickWord("look at the buds")
	d.sees("Only look at the buds.")
	buds := d.round().Calls()[0]
	d.press("f", "4")
	toWork("look at the buds")
	d.press("enter")
	if id, step := d.walk().ID(), d.walk().Asked().Step.ID; id != buds.Stump || step != walk.StepVisit {
		t.Errorf("Enter on the buds of %s asks %s of %s", buds.Stump.Place(), step, id.Place())
	}
}

// TestGoldenRounds is the rounds by work, in one walk and folded.
func TestGoldenRounds(t *testing.T) {
	d := blockOf(t, 240)
	d.press("g")
	d.golden("rounds")
	d.size(120, 40)
	d.golden("rounds-wide")
	d.size(60, 15)
	d.press("tab", "tab", "tab", "down")
	d.golden("rounds-small")
	d.size(80, 24)
	d.root.x.Plain = true
	d.press("-")
	d.golden("rounds-folded")
	d.press("-", "6")
	d.golden("rounds-walk")
}

// TestRoundsSayAllAtEverySize: wherever the cursor is, its stump, how late it is and
// the whole reason are seen, and no line is cut but the reasons of other lines.
func TestRoundsSayAllAtEverySize(t *testing.T) {
	d := blockOf(t, 240)
	d.press("g", "3")
	for _, size := range [][2]int{{60, 15}, {80, 24}, {100, 30}, {140, 45}, {220, 60}} {
		d.size(size[0], size[1])
		for _, keys := range []string{"", "g", "-"} {
			if keys != "" {
				d.press(keys)
			}
			d.press("pgup", "pgup", "pgup", "pgup", "pgup", "pgup", "pgup", "pgup", "pgup", "pgup", "pgup", "pgup")
			for n := 0; n < 60; n += 4 {
				screen := d.screen()
				words := strings.Join(strings.Fields(screen), " ")
				if want := d.round().Reason(); want == "" || !strings.Contains(words, want) {
					t.Fatalf("%v does not say %q:\n%s", size, want, screen)
				}
				if !strings.Contains(screen, "\n > ") && !strings.Contains(screen, "\n> ") {
					t.Fatalf("%v: the cursor is not seen:\n%s", size, screen)
				}
				d.press("down", "down", "down", "down")
			}
		}
		d.press("-", "6")
	}
}
