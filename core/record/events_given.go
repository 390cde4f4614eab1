package record

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode"

	"barkslip/core/unit"
)

// WorkGiven is the rows, or the single stumps, of a block that a hand is given for
// a day. Given anew it takes the place of what that hand had; with neither rows nor
// stumps it takes all of it away.
type WorkGiven struct {
	Block  ID
	Day    unit.Date
	To     string // initials of the hand
	Rows   []GivenRow
	Stumps []GivenStump
}

// GivenRow is a row that is given whole.
type GivenRow struct{ Row int }

// GivenStump is one stump that is given.
type GivenStump struct{ Row, Tree, Limb int }

// Kind is work-given.
func (*WorkGiven) Kind() string { return "work-given" }

// Say is the answer in a few words.
func (b *WorkGiven) Say(_ unit.System) string {
	switch {
	case len(b.Rows) > 0:
		return b.To + " has " + b.RowWords() + " on " + b.Day.Short()
	case len(b.Stumps) > 0:
		return b.To + " has " + unit.Count(len(b.Stumps), "stump") + " on " + b.Day.Short()
	}
	return b.To + " has nothing on " + b.Day.Short()
}

// RowWords names the rows that are given: "rows 1, 4".
func (b *WorkGiven) RowWords() string {
	var rows []string
	for _, r := range b.Rows {
		rows = append(rows, fmt.Sprint(r.Row))
	}
	if len(rows) == 1 {
		return "row " + rows[0]
	}
	return "rows " + strings.Join(rows, ", ")
}

func (b *WorkGiven) fields(f fields) {
	f.id("block", &b.Block)
	f.date("day", &b.Day)
	f.text("to", &b.To)
	listOf(f, "rows", &b.Rows, func(r *GivenRow, f fields) { f.number("row", &r.Row) })
	listOf(f, "stumps", &b.Stumps, func(s *GivenStump, f fields) {
		f.number("row", &s.Row)
		f.number("tree", &s.Tree)
		f.number("limb", &s.Limb)
	})
}

func (b *WorkGiven) question() string { return fmt.Sprint("given/", b.Block, "/", b.Day, "/", b.To) }

func (b *WorkGiven) check() error {
	switch {
	case b.Block == None || b.Day == 0:
		return errors.New("work-given needs a block and a day")
	case !Initials(b.To):
		return &unit.Error{Given: b.To, Accepted: "one to four letters, such as RK"}
	case len(b.Rows) > 0 && len(b.Stumps) > 0:
		return errors.New("either rows or stumps are given, not both")
	}
	rows, stumps := map[GivenRow]bool{}, map[GivenStump]bool{}
	for _, r := range b.Rows {
		if r.Row < 1 || r.Row > MaxRow {
			return fmt.Errorf("a row is 1 to %d", MaxRow)
		}
		if rows[r] {
			return fmt.Errorf("row %d is given twice", r.Row)
		}
		rows[r] = true
	}
	for _, s := range b.Stumps {
		if s.Row < 1 || s.Row > MaxRow || s.Tree < 1 || s.Tree > MaxTree || s.Limb < 0 || s.Limb > MaxLimb {
			return fmt.Errorf("there can be no stump %d/%d", s.Row, s.Tree)
		}
		if stumps[s] {
			return fmt.Errorf("stump %d/%d is given twice", s.Row, s.Tree)
		}
		stumps[s] = true
	}
	return nil
}

// Takes says whether a stump is among what is given.
func (b *WorkGiven) Takes(id StumpID) bool {
	return slices.Contains(b.Rows, GivenRow{int(id.Row)}) || slices.Contains(b.Stumps, GivenStump{int(id.Row), int(id.Tree), int(id.Limb)})
}

// Set is Takes for many stumps.
func (b *WorkGiven) Set() func(StumpID) bool {
	rows, stumps := map[int]bool{}, map[GivenStump]bool{}
	for _, r := range b.Rows {
		rows[r.Row] = true
	}
	for _, s := range b.Stumps {
		stumps[s] = true
	}
	return func(id StumpID) bool {
		return rows[int(id.Row)] || stumps[GivenStump{int(id.Row), int(id.Tree), int(id.Limb)}]
	}
}

func (b *WorkGiven) applyBook(book *Book, e Event) {
	block := book.block(b.Block)
	if block.Given == nil {
		block.Given = map[unit.Date][]Said[WorkGiven]{}
	}
	given := *b
	given.To = book.Canonical("hand", b.To)
	block.Given[b.Day] = append(block.Given[b.Day], said(e, given))
}

// GivenOn is what hands are given on a day, by hand: of each hand what was said of
// it last, and nothing of those that have nothing.
func (b *Block) GivenOn(day unit.Date) (out []Said[WorkGiven]) {
	last := map[string]Said[WorkGiven]{}
	for _, g := range b.Given[day] { // they stand in order
		last[g.What.To] = g
	}
	for _, g := range last {
		if len(g.What.Rows)+len(g.What.Stumps) > 0 {
			out = append(out, g)
		}
	}
	slices.SortFunc(out, func(x, y Said[WorkGiven]) int { return cmp.Compare(x.What.To, y.What.To) })
	return out
}

// HandsOf are the hands that a stump is given to on a day.
func (b *Block) HandsOf(id StumpID, day unit.Date) (out []string) {
	for _, g := range b.GivenOn(day) {
		if g.What.Takes(id) {
			out = append(out, g.What.To)
		}
	}
	return out
}

// LastGiven is what was given last for a day or one after it; ok is false where
// nothing stands.
func (b *Block) LastGiven(from unit.Date) (last Said[WorkGiven], ok bool) {
	for day, given := range b.Given {
		for _, g := range given {
			if day < from {
				continue
			}
			if !ok || cmp.Or(cmp.Compare(g.Clock, last.Clock), g.ID.Compare(last.ID)) > 0 {
				last, ok = g, true
			}
		}
	}
	return last, ok
}

// Initials says whether a text is a hand's initials: one to four letters.
func Initials(text string) bool {
	n := len([]rune(text))
	return n >= 1 && n <= 4 && !strings.ContainsFunc(text, func(c rune) bool { return !unicode.IsLetter(c) })
}
