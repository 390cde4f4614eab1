// Package list reads a list of stumps kept as comma-separated text, as a
// spreadsheet saves it, and names every fault by line and column.
package list

import (
	"fmt"

	"barkslip/core/unit"
)

// Row is one stump of a list.
type Row struct {
	Line    int // in the file, counted from 1
	Row     int // 1 to MostNumber
	Tree    int // 1 to MostNumber
	Limb    int // 0 for a stump on the trunk, else 1 to MostLimb
	Across  unit.Length
	Typed   string // across as it stands in the list, "" where none is given
	Stock   string
	Variety string
	Note    string
}

// Place is where the stump stands, in words.
func (r Row) Place() string {
	if r.Limb > 0 {
		return fmt.Sprintf("row %d tree %d limb %d", r.Row, r.Tree, r.Limb)
	}
	return fmt.Sprintf("row %d tree %d", r.Row, r.Tree)
}

// List is the stumps of a list in its order.
type List struct {
	Rows    []Row
	Columns []string // those the list has, in its order
}

// The limits of a list.
const (
	MostRows   = 200_000
	MostNumber = 9999 // of a row or tree
	MostLimb   = 99
	MostAcross = 40 * unit.Inch
	mostText   = 1000 // characters of a cell

	MostProblems = 1000 // told one by one
)

// The columns a list may have; row and tree it must.
var columns = []string{"row", "tree", "limb", "across", "stock", "variety", "note"}

// Problem is one fault of a list.
type Problem struct {
	Line   int    // counted from 1
	Column string // "" where the whole line is at fault
	Says   string // what is wrong and what is accepted
}

// String is "line 3, column across: …".
func (p Problem) String() string {
	if p.Column == "" {
		return fmt.Sprintf("line %d: %s", p.Line, p.Says)
	}
	return fmt.Sprintf("line %d, column %s: %s", p.Line, p.Column, p.Says)
}
