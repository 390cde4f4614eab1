package ui

import (
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/core/record"
	"barkslip/ui/block"
	"barkslip/ui/part"
	"barkslip/ui/plan"
	"barkslip/ui/rounds"
	"barkslip/ui/stump"
	"barkslip/ui/wood"
)

// toVisit is a block of which two stumps are to be painted.
func toVisit(t *testing.T) *driver {
	d := newDriver(t, "2027-05-20 12:45")
	d.plant("Hollow Lane", rows(2, 3)...)
	for n := 1; n <= 2; n++ {
		d.sealed(tree(1, n), "2027-05-10 09:00", "2027-05-20 09:00", "2027-05-20 10:00")
	}
	d.open()
	return d
}

// TestRoundLiesBeneathItsStump opens a stump from a round: Esc goes back to the
// round, and from there to the block.
func TestRoundLiesBeneathItsStump(t *testing.T) {
	d := toVisit(t)
	d.press("g", "down", "enter")
	if !is[*stump.Screen](d) || len(d.root.up) != 3 || d.walk().ID() != tree(1, 2) {
		t.Fatalf("%d screens lie on each other:\n%s", len(d.root.up), d.screen())
	}
	d.press("/", "2/1", "enter") // another stump in its place
	if len(d.root.up) != 3 || d.walk().ID() != tree(2, 1) {
		t.Fatalf("%d screens lie on each other:\n%s", len(d.root.up), d.screen())
	}
	d.press("esc")
	if !is[*rounds.Screen](d) || len(d.root.up) != 2 {
		t.Fatalf("Esc does not go back to the round:\n%s", d.screen())
	}
	d.sees("> 1/2")
	d.press("esc")
	if !is[*block.Screen](d) || len(d.root.up) != 1 {
		t.Fatalf("Esc does not go back to the block:\n%s", d.screen())
	}
	d.press("esc", "esc")
	if len(d.root.up) != 1 {
		t.Error("the ground was taken off")
	}
}

// TestNextInARound: n on a stump of a round leaves it as it is and opens the next
// of the round; behind the last the round is up again. Esc only goes back.
func TestNextInARound(t *testing.T) {
	d := toVisit(t)
	d.press("g", "n")
	if d.walk().ID() != tree(1, 1) {
		t.Fatalf("on %s", d.walk().ID().Place())
	}
	d.press("esc")
	if !is[*rounds.Screen](d) {
		t.Fatalf("Esc does not go back to the round:\n%s", d.screen())
	}
	for range len(d.round().Calls()) {
		d.press("n")
	}
	if !is[*stump.Screen](d) || d.walk().ID() == tree(1, 1) {
		t.Fatalf("n does not go along the round:\n%s", d.screen())
	}
	d.press("n")
	if !is[*rounds.Screen](d) {
		t.Fatalf("behind the last the round is not up:\n%s", d.screen())
	}
	d.sees("the last of this round")
	for _, s := range d.stages()[:2] {
		if s != record.StageSealed {
			t.Errorf("%s, though nothing was answered", s)
		}
	}
}

// TestWhatLiesOver lays prompt, list and page over a stump; each goes by Esc and
// leaves what is beneath.
func TestWhatLiesOver(t *testing.T) {
	d := toVisit(t)
	d.press("enter")
	for _, c := range []struct {
		key  string
		over func(*driver) bool
	}{{"m", over[*part.Prompt]}, {"x", over[*part.List]}, {"j", over[*part.Page]}, {"?", over[*part.Page]}, {"/", over[*part.Prompt]}, {"d", over[*part.List]}} {
		d.press(c.key)
		if !c.over(d) || !is[*stump.Screen](d) {
			t.Errorf("%s: not what it should be:\n%s", c.key, d.screen())
		}
		d.press("esc")
		if d.root.over != nil || !is[*stump.Screen](d) {
			t.Errorf("%s: Esc does not leave it:\n%s", c.key, d.screen())
		}
	}
}

// TestScreensOfTheBlock goes to wood and plan and from there on: they are
// screens, with the keys of screens.
func TestScreensOfTheBlock(t *testing.T) {
	d := toVisit(t)
	for key, up := range map[string]func(*driver) bool{"l": is[*wood.Screen], "p": is[*plan.Screen]} {
		d.press(key)
		if !up(d) {
			t.Fatalf("%s: not up:\n%s", key, d.screen())
		}
		d.press("?")
		d.sees("n Open the next stump", "/ Go to a stump")
		d.press("esc")
		if !up(d) {
			t.Fatalf("%s: Esc leaves more than the help:\n%s", key, d.screen())
		}
		d.press("n")
		if !is[*stump.Screen](d) || d.walk().ID() != tree(1, 1) {
			t.Fatalf("%s and n: not on the next stump:\n%s", key, d.screen())
		}
		d.press("esc")
		if !up(d) {
			t.Fatalf("%s: Esc leaves more than the stump:\n%s", key, d.screen())
		}
		d.press("/", "2/3", "enter", "esc", "esc")
		if !is[*block.Screen](d) {
			t.Fatalf("%s: not back:\n%s", key, d.screen())
		}
	}
}

// TestPasteGoesToTheFieldOrNowhere pastes on every kind of thing that may be on
// top.
func TestPasteGoesToTheFieldOrNowhere(t *testing.T) {
	for name, c := range map[string]struct {
		way  []string
		want string // what the field holds after it, "" for no field
	}{
		"block": {nil, ""}, "round": {[]string{"g"}, ""}, "wood": {[]string{"l"}, ""}, "plan": {[]string{"p"}, ""}, "choices": {[]string{"enter"}, ""},
		"note": {[]string{"enter", "m"}, "3.4"}, "place": {[]string{"/"}, "3.4"}, "list over a stump": {[]string{"enter", "x"}, ""},
		"field of numbers": {[]string{"/", "2/1", "enter", "2"}, "3.4"}, "list over a field": {[]string{"/", "2/1", "enter", "2", "x"}, ""},
		"page over a field": {[]string{"/", "2/1", "enter", "2", "w"}, ""}, "begin": {[]string{"b", "2"}, ""}, "first question": {[]string{"b", "2", "1"}, "3.4"},
	} {
		d := toVisit(t)
		d.press(c.way...)
		before := d.screen()
		d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("3.4"), Paste: true})
		got := ""
		if f := d.root.top().Field(); f != nil {
			got = f.Text()
		}
		if got != c.want {
			t.Errorf("%s: the field holds %q, want %q:\n%s", name, got, c.want, d.screen())
		}
		if c.want == "" && d.screen() != before {
			t.Errorf("%s: a paste changed the screen:\n%s", name, d.screen())
		}
		if c.want == "" && d.root.over != nil { // nor what lies beneath
			d.press("esc")
			if f := d.root.top().Field(); f != nil && f.Text() != "" {
				t.Errorf("%s: the field beneath holds %q", name, f.Text())
			}
		}
	}
}

// TestWordKeysAndEsc: in what is typed alt and a key that goes by words is taken
// as it is; with any other key, and where nothing is typed, it was Esc and the
// key.
func TestWordKeysAndEsc(t *testing.T) {
	alt := func(d *driver, r rune) { d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}, Alt: true}) }
	d := toVisit(t)
	d.press("enter", "m", "two words")
	alt(d, 'b')
	d.press("x")
	if f := d.root.top().Field(); f == nil || f.Text() != "two xwords" {
		t.Fatalf("alt and b did not go by a word:\n%s", d.screen())
	}
	alt(d, 'w')
	if over[*part.Prompt](d) || !over[*part.Page](d) {
		t.Fatalf("Esc and w did not leave the note for why:\n%s", d.screen())
	}
	d.press("esc", "m")
	alt(d, 'f')
	if over[*part.Prompt](d) {
		t.Errorf("Esc and f did not leave an empty note:\n%s", d.screen())
	}
}

// TestAFaultIsSaid: a fault in the program takes off what lies over the screen
// and is said.
func TestAFaultIsSaid(t *testing.T) {
	d := toVisit(t)
	d.root.calm = true
	d.press("enter")
	d.root.do(d.root.x.Picks("Which?", "", []part.Item{{Word: "it", Take: func() part.Msgs { panic("broken") }}})...)
	d.press("1")
	d.sees("a fault in the program", "broken")
	if d.root.over != nil || !is[*stump.Screen](d) {
		t.Errorf("what lay over it is still there:\n%s", d.screen())
	}
}

// TestMessageGoesWithItsCause: what was wrong with a text is said no more once a
// right one is taken, how a prompt is answered goes with it, and that a key has
// no use is said until the next key.
func TestMessageGoesWithItsCause(t *testing.T) {
	d := toVisit(t)
	d.press("g", "f", "2")
	d.sees("Enter takes it, Esc leaves it, F1 shows the keys.")
	d.press("9", "enter")
	d.sees("there is no row 9")
	d.press("backspace", "1", "enter")
	d.lacks("there is no row 9", "Esc leaves it")
	d.press("!")
	d.sees("That key does nothing here")
	d.press("down")
	d.lacks("That key does nothing here")
}
