package block

import (
	"slices"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/ui/part"
)

// filter is which stumps are shown: those that meet every one of its conditions.
// What is asked of grafts must be so of one and the same graft. nil shows all.
type filter struct{ wants []want }

// want is one condition: a field has a value.
type want struct {
	field *field
	value string
}

// field is one thing by which stumps are told apart. Its values are read of the
// stump's summary, or of each of its grafts; a stump without a graft may have one
// of its own.
type field struct {
	name, asks string
	words      func(b *Screen, value string) string // the condition in words

	// One of the first three tells a stump's values.
	stump func(b *Screen, s *due.Summary) []string                 // by its summary
	holds func(b *Screen, s *due.Summary, v string) bool           // whether it has one, where no list of values is offered
	graft func(b *Screen, g part.GraftTold) []string               // of each of its grafts
	bare  func(t part.StumpTold) []string                          // of a stump without grafts
	hint  func(b *Screen, s *due.Summary, v string) (may, is bool) // what the summary alone says of a graft's value

	order func(b *Screen, x, y string) int // of its values; nil for the alphabet
}

// isOf says whether a stump has a value by its summary.
func (f *field) isOf(b *Screen, s *due.Summary, value string) bool {
	if f.holds != nil {
		return f.holds(b, s, value)
	}
	return slices.Contains(f.stump(b, s), value)
}

// shown says of each stump whether it is shown.
func (f *filter) shown(b *Screen, sums []due.Summary) []bool {
	out := make([]bool, len(sums))
	for i := range sums {
		out[i] = f.keeps(b, &sums[i])
	}
	return out
}

// keeps says whether a stump is shown. Its grafts are gone through only where
// the rest of its summary does not tell.
func (f *filter) keeps(b *Screen, s *due.Summary) bool {
	ofGrafts, sure := 0, true
	for _, w := range f.wants {
		if w.field.holds != nil || w.field.stump != nil {
			if !w.field.isOf(b, s, w.value) {
				return false
			}
			continue
		}
		ofGrafts++
		may, is := true, false
		if w.field.hint != nil {
			may, is = w.field.hint(b, s, w.value)
		}
		if !may {
			return false
		}
		sure = sure && is
	}
	if ofGrafts == 0 || ofGrafts == 1 && sure {
		return true
	}
	return len(f.meets(b, b.x.Told(s))) > 0
}

// meets are the grafts of a stump that meet what is asked of grafts, by number; a
// stump without grafts that meets it is its own number nought.
func (f *filter) meets(b *Screen, t part.StumpTold) (out []int) {
	if len(t.Grafts) == 0 {
		for _, w := range f.wants {
			if w.field.graft != nil && (w.field.bare == nil || !slices.Contains(w.field.bare(t), w.value)) {
				return nil
			}
		}
		return []int{0}
	}
	for i, g := range t.Grafts {
		if !slices.ContainsFunc(f.wants, func(w want) bool { return w.field.graft != nil && !slices.Contains(w.field.graft(b, g), w.value) }) {
			out = append(out, i)
		}
	}
	return out
}

// words is the filter in words.
func (f *filter) words(b *Screen) string {
	words := ""
	for i, w := range f.wants {
		if i > 0 {
			words += ", "
		}
		words += w.field.words(b, w.value)
	}
	return words
}

// with is the filter with one more condition; a field has one value but for
// states, several of which may hold at once.
func (f *filter) with(w want) *filter {
	out := f.without(w.field)
	if w.field == &states && f != nil {
		for _, old := range f.wants {
			if old.field == w.field && old.value != w.value {
				out.wants = append(out.wants, old)
			}
		}
	}
	out.wants = append(out.wants, w)
	return out
}

// without is the filter without what it asks of a field.
func (f *filter) without(of *field) *filter {
	out := &filter{}
	if f != nil {
		for _, w := range f.wants {
			if w.field != of {
				out.wants = append(out.wants, w)
			}
		}
	}
	return out
}

// Mark shows some stumps, such as those of a lot, and leaves the others blank.
func (b *Screen) Mark(what string, stumps map[record.StumpID]bool) part.Msgs {
	listed := &field{
		words: func(*Screen, string) string { return what },
		holds: func(_ *Screen, s *due.Summary, _ string) bool { return stumps[s.ID] || stumps[s.ID.Trunk()] },
	}
	return b.filterBy((*filter)(nil).with(want{field: listed}))
}

// value is what a field asks for, "" for nothing.
func (f *filter) value(of *field) string {
	if f != nil {
		for _, w := range f.wants {
			if w.field == of {
				return w.value
			}
		}
	}
	return ""
}

// occurring are the values of a field that occur among the stumps the rest of the
// filter shows, with how many stumps have each.
func (f *filter) occurring(b *Screen, of *field) map[string]int {
	rest, count := f.without(of), map[string]int{}
	for i := range b.sums {
		s := &b.sums[i]
		if !rest.keeps(b, s) {
			continue
		}
		if of.stump != nil {
			for _, v := range of.stump(b, s) {
				count[v]++
			}
			continue
		}
		told, seen := b.x.Told(s), map[string]bool{}
		if len(told.Grafts) == 0 && of.bare != nil {
			for _, v := range of.bare(told) {
				seen[v] = true
			}
		}
		for _, n := range rest.meets(b, told) {
			if n < len(told.Grafts) {
				for _, v := range of.graft(b, told.Grafts[n]) {
					seen[v] = true
				}
			}
		}
		for v := range seen {
			count[v]++
		}
	}
	return count
}

// notSeen is the stumps of which nothing was told since a day.
var notSeen = field{
	name: "not seen since", asks: "a day you name",
	words: func(_ *Screen, v string) string { return "not seen since " + dayOf(v).Short() },
	holds: func(b *Screen, s *due.Summary, v string) bool { return b.x.Site().Day(s.Newest) < dayOf(v) },
}

// dayOf is the day of a value.
func dayOf(v string) unit.Date {
	var d unit.Date
	if d.UnmarshalText([]byte(v)) != nil {
		return 0
	}
	return d
}

// lotName is a lot by its name as it is told.
func (b *Screen) lotName(id string) string {
	if parsed, err := record.ParseID(id); err == nil {
		if lot := b.x.Book.Folded().LotOf(parsed); lot != nil {
			return lot.Received.What.Name
		}
	}
	return "of no recorded lot"
}
