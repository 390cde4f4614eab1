package out

import (
	"strconv"
	"time"

	"barkslip/core/record"
)

// GraftColumns are the names of a graft's values, in order.
var GraftColumns = []string{
	"block", "row", "tree", "limb", "grafting", "slot", "set", "hand", "variety", "lot", "thickness_mm", "waited_d", "bleeding", "cover", "advice",
	"state", "known", "took", "standing", "known_on", "died", "cause",
}

// Grafts is the values of every graft of a stump, one scion set in one slot each,
// over all its graftings, the oldest first; what was grafted on the trunk of a tree
// with limbs stands with the first limb, without a limb of its own.
func Grafts(book *record.Book, b *record.Block, s *record.Stump) (lines [][]Cell) {
	if s.TellsTrunk() {
		lines = Grafts(book, b, s.Trunk)
	}
	for n, a := range s.Attempts {
		for _, g := range a.Grafts {
			lines = append(lines, graft(book, b, s, n+1, a, g))
		}
	}
	return lines
}

func graft(book *record.Book, b *record.Block, s *record.Stump, number int, a *record.Attempt, g *record.Graft) []Cell {
	o, set, first := a.OutcomeOf(g, b), g.Set.What, firstSet(a)
	waited, bleeding, cover, advice := Cell{Number: true}, record.Bleeding(""), record.Cover(""), "with"
	if a.CutBack != nil {
		waited.Text = strconv.Itoa(int(b.Day(first) - b.Day(a.CutBack.At)))
	}
	for _, l := range a.Looks {
		if !l.At.After(first) && l.What.Bleeding != "" {
			bleeding = l.What.Bleeding
		}
	}
	if a.Sealed != nil {
		cover = a.Sealed.What.Cover
	}
	if len(a.Against) > 0 {
		advice = "against"
	}
	return []Cell{
		typed(b.Name), whole(s.ID.Row), whole(s.ID.Tree), limb(s.ID), whole(number), whole(g.Slot), clock(b, g.Set.At),
		typed(book.Canonical("hand", g.Set.Hand)), typed(set.Variety), typed(lotName(book, set.Lot)), size(set.Thickness.Length), waited,
		own(string(bleeding)), own(string(cover)), own(advice), own(string(g.State)), yesNo(o.Known), yesNo(o.Took), yesNo(o.Standing),
		day(b, o.At), day(b, o.Died), typed(o.Cause),
	}
}

// firstSet is when the first scion of an attempt was set.
func firstSet(a *record.Attempt) (first time.Time) {
	for _, g := range a.Grafts {
		if first.IsZero() || g.Set.At.Before(first) {
			first = g.Set.At
		}
	}
	return first
}
