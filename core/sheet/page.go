package sheet

import (
	"time"

	"barkslip/core/unit"
)

// Size is how large a page is, in mm, standing upright.
type Size struct{ Wide, High float64 }

// The sizes of paper.
var (
	Letter = Size{215.9, 279.4}
	A4     = Size{210, 297}
)

// SizeFor is the paper sold where a system of units is used.
func SizeFor(sys unit.System) Size {
	if sys == unit.Metric {
		return A4
	}
	return Letter
}

// Doc is pages to print, and what a reader of files is told of them.
type Doc struct {
	Title string
	Made  time.Time
	Size  Size
	Pages []Page
}

// Page is what stands on one page. Places are in mm from the upper left corner.
type Page struct {
	Shapes []Shape // under the rest
	Lines  []Line
	Texts  []Text
}

// Side is where a text lies to its place.
type Side uint8

// The sides: a text begins at its place, ends there, or lies about it.
const (
	FromLeft Side = iota
	FromRight
	Middle
)

// Text is one line of text on its baseline.
type Text struct {
	X, Y   float64
	Words  string
	Points float64 // the size of its letters
	Bold   bool
	Faint  bool
	Side   Side
}

// Line is a straight line.
type Line struct {
	X1, Y1, X2, Y2 float64
	Thick          float64
	Dashed, Faint  bool
}

// Point is a place on a page.
type Point struct{ X, Y float64 }

// Shape is a closed outline of straight lines, filled with a shade from white to
// black where it is filled.
type Shape struct {
	Points []Point
	Thick  float64 // of its outline; 0 draws none
	Filled bool
	Shade  float64 // 0 is white, 1 black
}

// The strengths of lines, in mm.
const (
	hairline = 0.12
	thin     = 0.2
	firm     = 0.35
)
