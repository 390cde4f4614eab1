package sheet

import (
	"slices"
	"strings"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/unit"
)

// Ask is what a sheet is made from, and for whom.
type Ask struct {
	Book  *record.Book
	Block *record.Block
	Sums  []due.Summary
	Stump func(record.StumpID) (*record.Stump, error)
	Now   time.Time
	On    unit.Date                   // the day of the sheet; 0: today, or for tags any day
	Hand  string                      // for one hand alone; "" for all
	Rows  []int                       // of these rows alone; none for all
	Given func(record.StumpID) string // whose a stump is on the day, "" for nobody's; nil where nothing was given out
}

// day is the day asked for.
func (a Ask) day() unit.Date {
	if a.On != 0 {
		return a.On
	}
	return a.Block.Day(a.Now)
}

// wants says whether a stump stands in a row that is asked for.
func (a Ask) wants(id record.StumpID) bool {
	return len(a.Rows) == 0 || slices.Contains(a.Rows, int(id.Row))
}

// sameHand says whether two texts are the initials of one person.
func (a Ask) sameHand(x, y string) bool {
	name := func(s string) string { return strings.ToUpper(a.Book.Canonical("hand", s)) }
	return strings.EqualFold(x, y) || name(strings.ToUpper(x)) == name(strings.ToUpper(y))
}

// Rows are the rows that stumps stand in, in order.
func Rows(sums []due.Summary) (rows []int) {
	for _, s := range sums {
		rows = append(rows, int(s.ID.Row))
	}
	slices.Sort(rows)
	return slices.Compact(rows)
}
