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
	Plain   Ink = iota
	Strong      // the question, what is chosen
	Faint       // what is only for orientation
	Accent      // keys
	Warn        // what runs out
	Growth      // what grows
	Turned      // the cursor
	Alarm       // what must not be missed
	Lined       // underlined: answers disagree
	Present     // the present step, a filled bar
	Late        // a stump on which work is late, as high as it has come
	inks
)

var inkNames = [inks]string{"plain", "strong", "faint", "accent", "warn", "growth", "turned", "alarm", "lined", "present", "late"}

// String is the ink's name.
func (i Ink) String() string { return inkNames[i] }

// Inks are all inks.
func Inks() []Ink {
	out := make([]Ink, inks)
	for i := range out {
		out[i] = Ink(i)
	}
	return out
}

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
		return theme(name, sunlight)
	case "plain":
		return theme(name, plain)
	}
	return theme("dark", dark)
}

// theme takes the escape sequences of each ink once, so that painting is joining
// strings.
func theme(name string, looks [inks]look) Theme {
	t := Theme{Name: name}
	for i, l := range looks {
		before, after, _ := strings.Cut(l.style().Render("X"), "X")
		t.ink[i] = [2]string{before, after}
	}
	return t
}

// look is how an ink looks: its colour and its ground, and its weight.
type look struct {
	fore, back        shade
	bold, line, turns bool
}

func (l look) style() lipgloss.Style {
	s := lipgloss.NewStyle().Bold(l.bold).Underline(l.line).Reverse(l.turns)
	if l.fore != (shade{}) {
		s = s.Foreground(l.fore.colour())
	}
	if l.back != (shade{}) {
		s = s.Background(l.back.colour())
	}
	return s
}
