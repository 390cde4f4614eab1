package block

import (
	"fmt"
	"maps"
	"slices"

	"barkslip/core/due"
	"barkslip/core/plan"
	"barkslip/core/record"
	"barkslip/ui/part"
)

// marked is a set of stumps that another screen asked to be shown; the others stay
// in their places as dots. The zero value marks none, so that all are shown.
type marked struct {
	title  string
	stumps map[record.StumpID]bool
}

// Mark shows some stumps and goes to the first of them; stumps of other blocks are
// counted in words.
func (b *Screen) Mark(title string, stumps []record.StumpID) part.Msgs {
	b.marked = marked{title, map[record.StumpID]bool{}}
	elsewhere := 0
	for _, id := range stumps {
		if id.Block != b.x.Block {
			elsewhere++
			continue
		}
		b.marked.stumps[id] = true
	}
	here := slices.SortedFunc(maps.Keys(b.marked.stumps), record.StumpID.Compare)
	if len(here) > 0 {
		b.MoveTo(here[0])
	}
	said := fmt.Sprintf("%s: %s shown.", title, part.Counted(len(here), "stump"))
	if elsewhere > 0 {
		said += fmt.Sprintf(" %d more on other blocks.", elsewhere)
	}
	return part.Says(said + " Esc lets go of them.")
}

// shows says whether a stump is shown as it is: it is of those marked, if some are,
// and of those the filter keeps.
func (b *Screen) shows(s due.Summary) bool {
	if b.marked.stumps != nil && !b.marked.stumps[s.ID] {
		return false
	}
	return b.filter.keep == nil || b.filter.keep(s)
}

// heldWords is what is to be minded of a stump on which wood of a held lot lives.
func (b *Screen) heldWords(s due.Summary) (words []string) {
	for _, f := range plan.Flags(b.x.Book.Folded(), s) {
		words = append(words, fmt.Sprintf("%s of HELD lot %s, %s", part.Counted(f.Use.Living(), "scion"), f.Lot.Name(), f.Do.Words()))
	}
	return words
}
