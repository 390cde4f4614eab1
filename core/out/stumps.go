package out

import (
	"cmp"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
)

// StumpColumns are the names of a stump's values, in order.
var StumpColumns = []string{
	"block", "row", "tree", "limb", "stage", "variety", "stock", "across_mm", "cut_back", "grafted", "sealed", "white", "lots", "hand",
	"scions", "took", "standing", "leader_mm", "next", "next_by", "cause", "note",
}

// Stump is the values of a stump as it stands at now. Scions, took and standing are
// those of its present grafting.
func Stump(book *record.Book, b *record.Block, s *record.Stump, now time.Time) []Cell {
	a := s.Now()
	var lots, hands, causes, notes []string
	took, standing, variety := 0, 0, ""
	for _, g := range a.Grafts {
		o := a.OutcomeOf(g, b)
		if o.Took {
			took++
		}
		if o.Standing {
			standing++
		}
		lots, hands = append(lots, lotName(book, g.Set.What.Lot)), append(hands, book.Canonical("hand", g.Set.Hand))
		causes = append(causes, o.Cause)
		variety = cmp.Or(variety, g.Set.What.Variety)
	}
	if a.Failed != nil && len(a.Grafts) == 0 {
		causes = append(causes, a.Failed.What.Cause)
	}
	stock, planned := b.Species, b.Variety
	if s.Added != nil {
		stock, planned = cmp.Or(s.Added.What.Stock, stock), cmp.Or(s.Added.What.Variety, planned)
		notes = append(notes, s.Added.What.Note)
	}
	for _, n := range s.Notes {
		notes = append(notes, n.What.Text)
	}
	next, nextBy := coming(b, s, now)
	return []Cell{
		typed(b.Name), whole(s.ID.Row), whole(s.ID.Tree), limb(s.ID), own(s.Stage().String()), typed(cmp.Or(variety, planned)), typed(stock), size(s.Across()),
		day(b, at(a.CutBack)), day(b, a.SetAt()), clock(b, at(a.Sealed)), clock(b, at(a.White)), typed(lots...), typed(hands...),
		whole(len(a.Grafts)), whole(took), whole(standing), size(a.Shoot()), next, nextBy, typed(causes...), typed(notes...),
	}
}

// coming is what the stump needs next and by when: an instant for white and looks,
// a day for the rest.
func coming(b *record.Block, s *record.Stump, now time.Time) (what, by Cell) {
	d, ok := due.Next(due.Of(s, b), now)
	switch {
	case !ok:
		return Cell{}, Cell{}
	case d.Kind == due.White || d.Kind == due.Look || d.Kind == due.LookAgain:
		return own(d.Kind.String()), clock(b, d.By)
	}
	return own(d.Kind.String()), day(b, d.By)
}

// at is when something was said, zero where it was not.
func at[T any](s *record.Said[T]) time.Time {
	if s == nil {
		return time.Time{}
	}
	return s.At
}

// lotName is the name of a lot, "" for wood of no recorded lot.
func lotName(book *record.Book, id record.ID) string {
	if l := book.LotOf(id); l != nil {
		return l.Received.What.Name
	}
	return ""
}
