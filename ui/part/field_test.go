package part

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/ui/paper"
)

// keyNamed is a key as the terminal sends it.
func keyNamed(name string) tea.KeyMsg {
	for kind, is := range map[tea.KeyType]string{
		tea.KeyLeft: "left", tea.KeyRight: "right", tea.KeyHome: "home", tea.KeyEnd: "end", tea.KeyDelete: "delete", tea.KeyBackspace: "backspace",
		tea.KeyCtrlLeft: "ctrl+left", tea.KeyCtrlRight: "ctrl+right", tea.KeyCtrlW: "ctrl+w", tea.KeyCtrlU: "ctrl+u", tea.KeyCtrlK: "ctrl+k",
		tea.KeyCtrlV: "ctrl+v", tea.KeyTab: "tab", tea.KeyUp: "up", tea.KeyEsc: "esc", tea.KeyEnter: "enter",
	} {
		if alt := strings.TrimPrefix(name, "alt+"); alt == is {
			return tea.KeyMsg{Type: kind, Alt: alt != name}
		}
	}
	if alt, ok := strings.CutPrefix(name, "alt+"); ok {
		return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(alt), Alt: true}
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(name)}
}

// shown is a field as it is drawn, its cursor in brackets.
func shown(f *Field, width int) string {
	var out strings.Builder
	for _, s := range f.Line("", width) {
		if s.Ink == paper.Turned {
			s.Text = "[" + s.Text + "]"
		}
		out.WriteString(s.Text)
	}
	return strings.TrimPrefix(out.String(), "> ")
}

// TestFieldEdits types into a note, moves in it and changes it.
func TestFieldEdits(t *testing.T) {
	for _, c := range []struct{ keys, want string }{
		{"", "bark slips well[ ]"},
		{"left", "bark slips wel[l]"},
		{"left left", "bark slips we[l]l"},
		{"home", "[b]ark slips well"},
		{"home delete", "[a]rk slips well"},
		{"home left", "[b]ark slips well"},
		{"home end", "bark slips well[ ]"},
		{"end right", "bark slips well[ ]"},
		{"ctrl+left", "bark slips [w]ell"},
		{"alt+left alt+left", "bark [s]lips well"},
		{"alt+b", "bark slips [w]ell"},
		{"home ctrl+right", "bark[ ]slips well"},
		{"home alt+f", "bark[ ]slips well"},
		{"ctrl+w", "bark slips [ ]"},
		{"alt+backspace", "bark slips [ ]"},
		{"ctrl+left ctrl+u", "[w]ell"},
		{"ctrl+left ctrl+k", "bark slips [ ]"},
		{"home alt+d", "[ ]slips well"},
		{"ctrl+u", "[ ]"},
		{"backspace backspace", "bark slips we[ ]"},
	} {
		f := NewField(true, "bark slips well")
		for _, name := range strings.Fields(c.keys) {
			if !f.Key(keyNamed(name)) {
				t.Errorf("%s: %s was not for the field", c.keys, name)
			}
		}
		if got := shown(&f, 76); got != c.want {
			t.Errorf("%s: %q, want %q", c.keys, got, c.want)
		}
	}
}

// TestFieldInserts types in the middle.
func TestFieldInserts(t *testing.T) {
	f := NewField(true, "34")
	f.Key(keyNamed("left"))
	f.Key(keyNamed("."))
	if got := shown(&f, 76); got != "3.[4]" {
		t.Errorf("%q", got)
	}
	f.Paste("1\x1b2\n")
	if f.Text() != "3.124" {
		t.Errorf("%q after a paste at the cursor", f.Text())
	}
}

// TestLettersAreCommandsUntilSomethingIsTyped goes key by key through a field of
// numbers.
func TestLettersAreCommandsUntilSomethingIsTyped(t *testing.T) {
	f := NewField(false, "")
	for _, name := range []string{"w", "n", "?", "/", " ", "left", "home", "backspace", "delete", "ctrl+w", "ctrl+u", "ctrl+k", "alt+b", "alt+left"} {
		if f.Takes(keyNamed(name)) || f.Key(keyNamed(name)) {
			t.Errorf("%q is taken by an empty field of numbers", name)
		}
	}
	for _, name := range []string{"3", "/", "8", "i", "n"} {
		if !f.Takes(keyNamed(name)) || !f.Key(keyNamed(name)) {
			t.Errorf("%q is not taken", name)
		}
	}
	if f.Text() != "3/8in" {
		t.Errorf("it holds %q", f.Text())
	}
	for _, name := range []string{"ctrl+v", "tab", "up", "esc", "enter"} {
		if f.Key(keyNamed(name)) || f.Text() != "3/8in" {
			t.Errorf("%q is taken, it holds %q", name, f.Text())
		}
	}
	f.Key(keyNamed("ctrl+u"))
	if f.Key(keyNamed("w")) {
		t.Error("w is text in a field that is empty again")
	}
}

// TestFieldKeepsItsCursorInSight moves through a text longer than the room.
func TestFieldKeepsItsCursorInSight(t *testing.T) {
	f := NewField(true, strings.Repeat("abcdefghi ", 9)+"the end")
	const width = 30
	for range 110 {
		l := f.Line("", width)
		if l.Width() > width {
			t.Fatalf("%d wide: %q", l.Width(), shown(&f, width))
		}
		if !strings.Contains(shown(&f, width), "[") {
			t.Fatalf("no cursor: %q", shown(&f, width))
		}
		f.Key(keyNamed("left"))
	}
	if got := shown(&f, width); !strings.HasPrefix(got, "[a]bcdefghi") || !strings.HasSuffix(got, "…") {
		t.Errorf("at its beginning it shows %q", got)
	}
	f.Key(keyNamed("end"))
	if got := shown(&f, width); !strings.HasSuffix(got, "the end[ ]") || !strings.HasPrefix(got, "…") {
		t.Errorf("at its end it shows %q", got)
	}
}
