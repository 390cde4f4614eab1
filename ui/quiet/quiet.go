// Package quiet settles the terminal's background and colours before Bubble Tea
// starts up. Bubble Tea asks the terminal for its background as soon as it is
// imported, and waits seconds for one that never answers; this package sorts
// before it, so it runs first and there is nothing left to ask. It imports nothing
// of the program.
package quiet

import (
	"os"
	"strings"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"
)

func init() {
	lipgloss.SetHasDarkBackground(true)
	lipgloss.SetColorProfile(profile(os.Getenv))
}

// profile is the colours the terminal is taken to have. Bold and reverse are
// wanted even where colour is not, so NO_COLOR gives the profile with sixteen
// colours and a theme that uses none of them.
func profile(env func(string) string) termenv.Profile {
	term := env("TERM")
	switch {
	case env("NO_COLOR") != "", term == "linux", term == "dumb", term == "":
		return termenv.ANSI
	case strings.Contains(env("COLORTERM"), "truecolor"), strings.Contains(env("COLORTERM"), "24bit"):
		return termenv.TrueColor
	case strings.Contains(term, "256color"):
		return termenv.ANSI256
	}
	return termenv.ANSI
}
