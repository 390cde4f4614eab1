package quiet

import (
	"testing"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"
)

// TestProfile sees what colours each terminal is taken to have; without colour
// bold and reverse are still wanted, which the profile without any would lose.
func TestProfile(t *testing.T) {
	for _, c := range []struct {
		env  map[string]string
		want termenv.Profile
	}{
		{map[string]string{"TERM": "xterm-256color"}, termenv.ANSI256},
		{map[string]string{"TERM": "screen-256color"}, termenv.ANSI256},
		{map[string]string{"TERM": "xterm", "COLORTERM": "truecolor"}, termenv.TrueColor},
		{map[string]string{"TERM": "xterm"}, termenv.ANSI},
		{map[string]string{"TERM": "xterm-256color", "COLORTERM": "24bit"}, termenv.TrueColor},
		{map[string]string{"TERM": "linux", "COLORTERM": "truecolor"}, termenv.ANSI},
		{map[string]string{"TERM": "dumb"}, termenv.ANSI},
		{map[string]string{}, termenv.ANSI},
		{map[string]string{"TERM": "xterm-256color", "NO_COLOR": "1"}, termenv.ANSI},
		{map[string]string{"TERM": "xterm-256color", "NO_COLOR": ""}, termenv.ANSI256},
	} {
		if got := profile(func(name string) string { return c.env[name] }); got != c.want {
			t.Errorf("%v: %v, want %v", c.env, got, c.want)
		}
	}
}

// TestNothingIsLeftToAsk sees that background and colours are settled once this
// package is there.
func TestNothingIsLeftToAsk(t *testing.T) {
	if !lipgloss.HasDarkBackground() {
		t.Error("the background is not settled")
	}
	if p := lipgloss.ColorProfile(); p != termenv.ANSI && p != termenv.ANSI256 && p != termenv.TrueColor {
		t.Errorf("profile %v", p)
	}
}
