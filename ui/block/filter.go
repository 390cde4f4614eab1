package block

import (
	"fmt"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/ui/part"
)

// filter is which stumps are shown, and which those are in words. The zero
// filter shows all.
type filter struct {
	what string
	keep func(due.Summary) bool
}

// pickFilter asks which stumps are to be shown.
func (b *Screen) pickFilter() part.Msgs {
	item := func(word, meaning, what string, keep func(due.Summary) bool) part.Item {
		return part.Item{Word: word, Meaning: meaning, Take: func() part.Msgs { return b.show(filter{what, keep}) }}
	}
	items := []part.Item{
		{Word: "all", Meaning: "no filter", Take: b.letGo},
		item("work due", "something can be done now", "those with work due", func(s due.Summary) bool { return isOpen(s, b.x) }),
		item("late", "something should have been done", "late", func(s due.Summary) bool { return isLate(s, b.x) }),
		item("disagree", "answers that cannot both hold stand; E goes to the next", "in disagreement", func(s due.Summary) bool { return s.Clash }),
		item("with notes", "", "with notes", func(s due.Summary) bool { return s.Noted }),
	}
	for _, st := range record.Stages() {
		items = append(items, item(st.String(), st.Mark(), st.String(), func(s due.Summary) bool { return s.Stage == st }))
	}
	return b.x.Picks("Show which stumps?", "The others stay in their place as dots.", items)
}

// Mark shows some stumps, and the others in their place as dots.
func (b *Screen) Mark(what string, stumps map[record.StumpID]bool) part.Msgs {
	for _, s := range b.sums {
		if stumps[s.ID] || stumps[s.ID.Trunk()] {
			b.MoveTo(s.ID)
			break
		}
	}
	return b.show(filter{what, func(s due.Summary) bool { return stumps[s.ID] || stumps[s.ID.Trunk()] }})
}

// shows says whether a stump is shown as it is.
func (b *Screen) shows(s due.Summary) bool { return b.filter.keep == nil || b.filter.keep(s) }

// show sets the filter and says how many it keeps.
func (b *Screen) show(f filter) part.Msgs {
	b.filter = f
	n := 0
	for _, s := range b.sums {
		if f.keep(s) {
			n++
		}
	}
	return part.Says(fmt.Sprintf("%d of %d are %s. Esc shows all.", n, len(b.sums), f.what))
}
