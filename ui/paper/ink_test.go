package paper

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/charmbracelet/lipgloss"
	"github.com/mattn/go-runewidth"
	"github.com/muesli/termenv"
)

func TestMain(m *testing.M) {
	lipgloss.SetColorProfile(termenv.ANSI256)
	runewidth.DefaultCondition.EastAsianWidth = false
	os.Exit(m.Run())
}

var escapes = regexp.MustCompile("\x1b\\[[0-9;]*m")

func bare(s string) string { return escapes.ReplaceAllString(s, "") }

// weight is what is left of an ink in a black-and-white photograph: bold,
// underlined, turned.
func weight(t Theme, i Ink) string {
	codes := strings.Split(strings.Trim(t.ink[i][0], "\x1b[m"), ";")
	var kept []string
	for n := 0; n < len(codes); n++ {
		switch codes[n] {
		case "38", "48": // a colour of the 256, in two more numbers
			n += 2
		case "1", "4", "7":
			kept = append(kept, codes[n])
		}
	}
	return strings.Join(kept, ";")
}

// TestThemesAreNamed sees that each theme is had by its name, and that any
// other name gives the dark one.
func TestThemesAreNamed(t *testing.T) {
	for _, name := range ThemeNames {
		if got := ThemeNamed(name).Name; got != name {
			t.Errorf("%s is %s", name, got)
		}
	}
	for _, name := range []string{"", "neon"} {
		if got := ThemeNamed(name).Name; got != "dark" {
			t.Errorf("%q is %s", name, got)
		}
	}
}

// TestPlainThemeHasNoColour and yet sets the question, the cursor and what must
// not be missed apart.
func TestPlainThemeHasNoColour(t *testing.T) {
	p := ThemeNamed("plain")
	for i := Plain; i < inks; i++ {
		for _, code := range strings.Split(strings.Trim(p.ink[i][0], "\x1b[m"), ";") {
			if code != "" && code != "1" && code != "4" && code != "7" {
				t.Errorf("ink %d has code %s", i, code)
			}
		}
	}
	for _, i := range []Ink{Strong, Turned, Alarm} {
		if weight(p, i) == weight(p, Plain) {
			t.Errorf("ink %d is like plain text", i)
		}
	}
}

// TestEveryInkEnds sees that no ink runs on behind its text.
func TestEveryInkEnds(t *testing.T) {
	for _, name := range ThemeNames {
		theme := ThemeNamed(name)
		for i := Plain; i < inks; i++ {
			if before, after := theme.ink[i][0], theme.ink[i][1]; (before == "") != (after == "") || before != "" && after != "\x1b[0m" {
				t.Errorf("%s, ink %d: %q and %q", name, i, before, after)
			}
		}
	}
}

// TestCursorAndAlarmStandOut in every theme, apart from the text around them.
func TestCursorAndAlarmStandOut(t *testing.T) {
	for _, name := range ThemeNames {
		theme := ThemeNamed(name)
		for _, i := range []Ink{Strong, Turned, Alarm} {
			if theme.ink[i] == theme.ink[Plain] {
				t.Errorf("%s: ink %d is like plain text", name, i)
			}
		}
		if theme.ink[Turned] == theme.ink[Alarm] {
			t.Errorf("%s: the cursor looks like an alarm", name)
		}
	}
}

// TestSunlightIsBlackOnWhite in all that is read.
func TestSunlightIsBlackOnWhite(t *testing.T) {
	s := ThemeNamed("sunlight")
	for _, i := range []Ink{Plain, Strong, Faint} {
		if !strings.Contains(s.ink[i][0], "38;5;16") || !strings.Contains(s.ink[i][0], "48;5;231") {
			t.Errorf("ink %d: %q", i, s.ink[i][0])
		}
	}
}
