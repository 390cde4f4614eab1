// Package paper composes a screen from lines of inked text and paints it for
// the terminal in a theme. Text is measured and cut before any colour is put
// on, so a line is never too wide. Of the program it imports only quiet.
package paper

import (
	"strings"

	"github.com/charmbracelet/lipgloss"

	_ "barkslip/ui/quiet" // before anything that asks the terminal
)

// Ink is how a stretch of text is set.
type Ink uint8

// The inks. Each stays apart from the others without colour, by weight or by
// being turned.
const (
	Plain  Ink = iota
	Strong     // the question, what is chosen
	Faint      // what is only for orientation
	Accent     // the present step, keys
	Warn       // what runs out
	Growth     // what grows
	Turned     // the cursor
	Alarm      // what must not be missed
	Lined      // underlined: answers disagree
	inks
)

// Theme is a set of inks.
type Theme struct {
	Name  string
	ASCII bool            // plain characters: no ellipsis
	ink   [inks][2]string // what goes before and behind a stretch
}

// ThemeNames lists the themes.
var ThemeNames = []string{"dark", "sunlight", "plain"}

// ThemeNamed is a theme by name: dark, sunlight, or plain, which has no colour.
// Unknown names give dark.
func ThemeNamed(name string) Theme {
	switch name {
	case "sunlight":
		return sunlight()
	case "plain":
		return plain()
	}
	return dark()
}

func dark() Theme {
	s := lipgloss.NewStyle
	colour := func(c string) lipgloss.Style { return s().Foreground(lipgloss.Color(c)) }
	return theme("dark", [inks]lipgloss.Style{
		Plain: s(), Strong: s().Bold(true), Faint: colour("246"), Accent: colour("80").Bold(true),
		Warn: colour("214").Bold(true), Growth: colour("114"), Turned: s().Reverse(true).Bold(true), Alarm: colour("214").Bold(true).Reverse(true),
		Lined: colour("214").Underline(true),
	})
}

// sunlight is black on white; weight does what colour does elsewhere.
func sunlight() Theme {
	s := func() lipgloss.Style {
		return lipgloss.NewStyle().Foreground(lipgloss.Color("16")).Background(lipgloss.Color("231"))
	}
	return theme("sunlight", [inks]lipgloss.Style{
		Plain: s().Bold(true), Strong: s().Bold(true).Underline(true), Faint: s(), Accent: s().Bold(true).Foreground(lipgloss.Color("18")),
		Warn: s().Bold(true).Foreground(lipgloss.Color("88")), Growth: s().Bold(true).Foreground(lipgloss.Color("22")),
		Turned: lipgloss.NewStyle().Foreground(lipgloss.Color("231")).Background(lipgloss.Color("16")).Bold(true),
		Alarm:  lipgloss.NewStyle().Foreground(lipgloss.Color("231")).Background(lipgloss.Color("88")).Bold(true),
		Lined:  s().Foreground(lipgloss.Color("88")).Underline(true),
	})
}

func plain() Theme {
	s := lipgloss.NewStyle
	return theme("plain", [inks]lipgloss.Style{
		Plain: s(), Strong: s().Bold(true), Faint: s(), Accent: s().Bold(true), Warn: s().Bold(true), Growth: s(),
		Turned: s().Reverse(true), Alarm: s().Reverse(true).Bold(true), Lined: s().Underline(true),
	})
}

// theme takes the escape sequences of each style once, so that painting is
// joining strings.
func theme(name string, styles [inks]lipgloss.Style) Theme {
	t := Theme{Name: name}
	for i, s := range styles {
		before, after, _ := strings.Cut(s.Render("X"), "X")
		t.ink[i] = [2]string{before, after}
	}
	return t
}
