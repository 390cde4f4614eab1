// Package figure draws the program's pictures to scale in the cells of a
// terminal: the stump from above, the scion with its cuts, the stick, curves
// through a day or a summer, a shoot beside its stake, an interval. It knows
// nothing of screens or colours: a Figure is plain characters and, cell by
// cell, the ink they are meant to have. It may import the leaves of core.
package figure

import (
	"strings"

	"github.com/mattn/go-runewidth"
)

// Mode is the kind of mark the terminal can show.
type Mode uint8

// The modes. A cell is taken to be twice as tall as wide, so that in Braille
// the dots stand square, two across and four down in each cell.
const (
	Braille Mode = iota
	ASCII        // for terminals without Braille: one sign a cell
)

// Ink is what a cell means, for a theme to colour. No figure depends on it:
// everything is told apart by its shape or its word as well.
type Ink uint8

// The inks.
const (
	Plain  Ink = iota
	Accent     // the thing in hand
	Warn       // what harms: torn bark, the heat limit
	Growth     // what grows
	Faint      // scales, dimensions, shade
	Black      // dark sealer: as dark as the ground allows
	White      // white paint
)

// rank says which ink a cell takes when several meet in it.
var rank = [...]uint8{Plain: 1, Accent: 4, Warn: 3, Growth: 2, Faint: 0, Black: 6, White: 5}

// The largest figure drawn, in cells; a larger one asked for is cut to it.
const (
	widest  = 1000
	tallest = 500
)

// The smallest figure that can say anything; a smaller one is left blank.
const (
	narrowest = 8
	lowest    = 4
)

// Figure is a drawing of a fixed number of columns and lines.
type Figure struct {
	w, h  int
	runes []rune // 0 is the second column of a wide character
	inks  []Ink
	words []word // what is written on it, in the order in which it was
}

// word is text on a figure: the cell it begins at.
type word struct {
	x, y int
	text string
}

// Size is the number of columns and lines.
func (f Figure) Size() (w, h int) { return f.w, f.h }

// Empty is true when nothing is drawn: no room, or nothing that has a size.
func (f Figure) Empty() bool {
	for _, r := range f.runes {
		if r != ' ' {
			return false
		}
	}
	return true
}

// Cell is the character at a column and line, and its ink; a blank outside
// the figure, 0 for the second column of a wide character.
func (f Figure) Cell(x, y int) (rune, Ink) {
	if x < 0 || y < 0 || x >= f.w || y >= f.h {
		return ' ', Plain
	}
	return f.runes[y*f.w+x], f.inks[y*f.w+x]
}

// Lines are the figure's lines without colour, each exactly as wide as the
// figure.
func (f Figure) Lines() []string {
	return f.Render(func(_ Ink, s string) string { return s })
}

// Render are the figure's lines with every run of one ink passed through
// style.
func (f Figure) Render(style func(Ink, string) string) []string {
	lines := make([]string, f.h)
	var run, line strings.Builder
	for y := range lines {
		line.Reset()
		ink := Plain
		for x := range f.w {
			r, next := f.Cell(x, y)
			if next != ink && run.Len() > 0 {
				line.WriteString(style(ink, run.String()))
				run.Reset()
			}
			ink = next
			if r != 0 {
				run.WriteRune(r)
			}
		}
		if run.Len() > 0 {
			line.WriteString(style(ink, run.String()))
			run.Reset()
		}
		lines[y] = line.String()
	}
	return lines
}

// columns measures text the same way on every machine, whatever its locale.
var columns = &runewidth.Condition{StrictEmojiNeutral: true}

func width(s string) int { return columns.StringWidth(s) }

// short cuts text to n columns.
func short(s string, n int) string {
	if width(s) <= n {
		return s
	}
	return columns.Truncate(s, max(n, 0), "")
}
