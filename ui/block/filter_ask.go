package block

import (
	"cmp"
	"errors"
	"fmt"
	"slices"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/ui/part"
)

// pickField asks by what the stumps are told apart.
func (b *Screen) pickField() part.Msgs {
	var items []part.Item
	for _, f := range fields {
		meaning := f.asks
		if v := b.filter.value(f); v != "" {
			meaning = "now only " + f.words(b, v)
		}
		items = append(items, part.Item{Word: f.name, Meaning: meaning, Take: func() part.Msgs { return b.pickValue(f) }})
	}
	have := b.filter.occurring(b, &states)
	for _, s := range stateWords {
		meaning := fmt.Sprintf("%s, %s", part.Counted(have[s.value], "stump"), s.meaning)
		items = append(items, part.Item{Word: s.value, Meaning: meaning, Take: func() part.Msgs { return b.show(want{&states, s.value}) }})
	}
	if b.filter != nil {
		items = append(items, part.Item{Word: "all", Meaning: "no filter", Take: b.letGo})
	}
	why := "The others are left blank. Several combine; Esc on the block shows all again."
	if b.filter != nil {
		why = "Now only " + b.filter.words(b) + ". Another one narrows it."
	}
	return b.x.Picks("Show which stumps?", why, items)
}

// pickValue asks for one of the values that occur.
func (b *Screen) pickValue(f *field) part.Msgs {
	if f == &notSeen {
		return b.askSince()
	}
	have := b.filter.occurring(b, f)
	values := make([]string, 0, len(have))
	for v := range have {
		values = append(values, v)
	}
	slices.SortFunc(values, func(x, y string) int {
		if f.order != nil {
			return cmp.Or(f.order(b, x, y), cmp.Compare(x, y))
		}
		return cmp.Compare(x, y)
	})
	var items []part.Item
	for _, v := range values {
		word, meaning := part.Spaced(v), part.Counted(have[v], "stump")
		switch {
		case f == &works:
			word = due.VerbOf(v)
		case f == &lots:
			if word = b.lotName(v); b.lotHeld(v) {
				meaning += ", held back"
			}
		}
		items = append(items, part.Item{Word: record.Clean(word), Meaning: meaning, Take: func() part.Msgs { return b.show(want{f, v}) }})
	}
	if b.filter.value(f) != "" {
		items = append(items, part.Item{Word: "any", Meaning: "no matter which " + f.name, Take: func() part.Msgs { return b.filterBy(b.filter.without(f)) }})
	}
	if len(items) == 0 {
		return part.Says("Nothing is known of that on the stumps shown: no " + f.name + " occurs.")
	}
	return b.x.Picks("Which "+f.name+"?", "", items)
}

// askSince asks since when nothing was told of a stump.
func (b *Screen) askSince() part.Msgs {
	site := b.x.Site()
	return b.x.Asks("Not seen since which day (1 May, 2027-05-01, -7):", site.Day(b.x.Time()).Add(-7).String(), true, func(text string) (part.Msgs, error) {
		d, err := unit.ReadDate(text, site.Day(b.x.Time()), site.Units)
		if err != nil {
			return nil, err
		}
		if d > site.Day(b.x.Time()) {
			return nil, errors.New("that day is still to come")
		}
		return b.show(want{&notSeen, d.String()}), nil
	})
}

// show adds a condition to the filter.
func (b *Screen) show(w want) part.Msgs { return b.filterBy(b.filter.with(w)) }

// filterBy sets the filter, for the rounds and the next stump too, and says how
// many it shows. The cursor goes to the first of them.
func (b *Screen) filterBy(f *filter) part.Msgs {
	b.totals = nil
	if f == nil || len(f.wants) == 0 {
		b.filter, b.x.Only = nil, nil
		return part.Says("")
	}
	b.filter = f
	b.x.Only = &part.Only{Block: b.x.Block, Words: record.Clean(f.words(b)), Keep: func(s due.Summary) bool { return f.keeps(b, &s) }}
	n := b.count().all.kept
	if n > 0 && !b.count().shows(b.index()) {
		b.match(1)
	}
	return part.Says(fmt.Sprintf("%d of %d are %s. Esc shows all.", n, len(b.sums), b.x.Only.Words))
}

// matchWord is the word of a key that goes by the filter, "" without one.
func (b *Screen) matchWord(word string) string {
	if b.filter == nil {
		return ""
	}
	return word
}

// match moves the cursor to the next stump shown, or the one before, and round.
func (b *Screen) match(by int) part.Msgs {
	if len(b.sums) == 0 {
		return nil
	}
	t, n := b.count(), len(b.sums)
	at := b.index()
	if b.isWhole() && by > 0 && t.shows(at) { // the next line that has one
		_, to := b.line(b.at / b.perLine())
		at = b.rows[to].first + len(b.rows[to].sums) - 1
	}
	for range n {
		at = (at + by + n) % n
		if t.shows(at) {
			b.MoveTo(b.sums[at].ID)
			if b.isWhole() {
				b.at -= b.at % b.perLine()
			}
			return nil
		}
	}
	return part.Says("No stump is shown.")
}
