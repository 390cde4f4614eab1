package ui

import (
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
)

// On a slow disk a key that is pressed while the old question still stands never answers the
// next one.
func TestAKeyPressedWhileItIsSavedAnswersNothing(t *testing.T) {
	for _, c := range []struct {
		takes time.Duration // saving
		after time.Duration // of the frame, when the next key comes
		taken bool
	}{
		{500 * time.Millisecond, time.Millisecond, false}, {500 * time.Millisecond, 90 * time.Millisecond, false},
		{500 * time.Millisecond, 800 * time.Millisecond, true}, {20 * time.Millisecond, 800 * time.Millisecond, true},
	} {
		d := newDriver(t, "2027-04-26 09:00")
		d.plant("Hollow Lane", rows(1, 2)...)
		d.press("enter")
		w := d.watch()
		answers := func() int { return len(d.walk().Record().Live) }
		key := func(k rune) { d.root.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{k}}) }
		d.hand = d.hand.Add(time.Second)
		was := answers()
		w.before = func() error { d.hand = d.hand.Add(c.takes); return nil }
		key('2')
		if answers() == was {
			t.Fatal("the first key answered nothing")
		}
		d.hand = d.hand.Add(c.after)
		d.root.Update(tea.KeyMsg{Type: tea.KeyEnter})
		if taken := strings.Contains(d.root.said.Text, "nearest 18 in"); taken != c.taken {
			t.Errorf("saved in %v, the next key after %v: taken %v, want %v (said %q)", c.takes, c.after, taken, c.taken, d.root.said.Text)
		}
		if !c.taken {
			d.sees("A key pressed meanwhile was ignored.")
		}
	}
}
