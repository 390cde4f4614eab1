package main

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"barkslip/core/changes"
	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/store"
)

func (a *app) changes() *cobra.Command {
	c := &cobra.Command{
		Use: "changes", Short: "What was done or seen since a day, by day and hand",
		Long: "Tells what was done or seen on the blocks from the beginning of a day in their zone,\n" +
			"by day, hand and kind. A correction counts in place of what it corrects; what was\n" +
			"taken back since is told as taken back and not counted as done.",
		Example: "  barkslip changes --since 2027-05-03\n  barkslip changes --since -7 --hand MK --json", Args: noArguments,
	}
	g := declare(c.Flags(), bookOption,
		option{name: "since", value: "DATE", says: "the first day: 2027-05-03, 3 May, -7 for a week ago", need: true},
		option{name: "hand", value: "XX", says: "only what this hand did, by initials"},
		option{name: "block", value: "NAME", says: "the block; without it all that are in the list"})
	asJSON := c.Flags().Bool("json", false, "one JSON object")
	c.RunE = func(*cobra.Command, []string) error {
		g.dayLike("since")
		hand, name := g.text("hand", "the initials of a hand"), g.text("block", "the name of a block")
		if g.err != nil {
			return g.err
		}
		book, err := a.openBook(g, true)
		if err != nil {
			return err
		}
		defer book.Close()
		now := a.clockOf(book)()
		since := g.dayOf(book, "since", now)
		if _, today := dated(book, now); g.err == nil && since > today {
			g.refuse("since", "a day up to today, "+today.String())
		}
		if g.err != nil {
			return g.err
		}
		list, err := changesOf(book, name, since, hand)
		if err != nil {
			return err
		}
		if *asJSON {
			return a.writeJSON(list.row())
		}
		a.printChanges(list)
		return nil
	}
	return c
}

// changeList is what changed in the blocks asked for.
type changeList struct {
	since  unit.Date
	hand   string
	blocks []*record.Block
	done   []changes.Change
	taken  []changes.Change
}

func changesOf(book *store.Book, name string, since unit.Date, hand string) (list changeList, err error) {
	if list.blocks, err = blocksNamed(book, name); err != nil {
		return list, err
	}
	list.since, list.hand = since, strings.ToUpper(hand)
	if list.hand != "" {
		if err := knownHand(book, hand, list.hand); err != nil {
			return list, err
		}
	}
	general, err := book.Events(record.NoStump)
	if err != nil {
		return list, err
	}
	var all []changes.Change
	for i, b := range list.blocks {
		f := changes.Since(book.Folded(), b, since, list.hand)
		sums, err := book.Summaries(b.ID)
		if err != nil {
			return list, err
		}
		for _, sum := range sums {
			if !f.Touched(sum) {
				continue
			}
			s, err := book.Stump(sum.ID)
			if err != nil {
				return list, err
			}
			f.Stump(s)
		}
		f.General(aboutBlock(general, i == 0))
		all = append(all, f.Changes()...)
	}
	list.done, list.taken = changes.Parted(all)
	return list, nil
}

// aboutBlock is the events about no stump; what is about no block either, as wood,
// goes with the first one.
func aboutBlock(general []record.Event, first bool) []record.Event {
	if first {
		return general
	}
	names := map[record.ID]bool{}
	for _, e := range general {
		names[e.ID] = record.BlockOf(e.Body) != record.None
	}
	return slices.DeleteFunc(slices.Clone(general), func(e record.Event) bool {
		w, taking := e.Body.(*record.Withdrawn)
		return !names[e.ID] && (!taking || !names[w.Of])
	})
}

// knownHand refuses a hand that nothing in the book is by.
func knownHand(book *store.Book, given, hand string) error {
	hands := map[string]bool{}
	for e, err := range book.All() {
		if err != nil {
			return err
		}
		if e.Hand == hand {
			return nil
		}
		hands[e.Hand] = true
	}
	delete(hands, "")
	var known []string
	for h := range hands {
		known = append(known, record.Clean(h))
	}
	slices.Sort(known)
	if len(known) == 0 {
		known = []string{"none yet"}
	}
	return mistaken("--hand", given, "the initials of a hand in this book: "+strings.Join(known, ", "))
}

// changeRow is what one hand did of one kind in one day, in machine-readable form.
type changeRow struct {
	Date   string   `json:"date"`
	Hand   string   `json:"hand"`
	Kind   string   `json:"kind"`
	Count  int      `json:"count"`
	Stumps []string `json:"stumps"`
}

// changeGroup is the sum over a hand or a kind.
type changeGroup struct {
	Name   string `json:"name"`
	Count  int    `json:"count"`
	Stumps int    `json:"stumps"`
}

// changeRows is all of it: what was done and what was taken back, a row a day, hand
// and kind.
type changeRows struct {
	Since     string        `json:"since"`
	Hand      *string       `json:"hand"`
	Days      []changeRow   `json:"days"`
	Hands     []changeGroup `json:"hands"`
	Kinds     []changeGroup `json:"kinds"`
	TakenBack []changeRow   `json:"taken_back"`
	Total     changeGroup   `json:"total"`
}

func (l changeList) row() changeRows {
	out := changeRows{Since: l.since.String(), Days: dayRows(l.done), TakenBack: dayRows(l.taken), Total: changeGroup{Name: "all"}}
	if l.hand != "" {
		out.Hand = &l.hand
	}
	out.Hands, out.Kinds = groupsOf(l.done, handOf), groupsOf(l.done, kindOf)
	if all := groupsOf(l.done, func(changes.Change) string { return "all" }); len(all) > 0 {
		out.Total = all[0]
	}
	return out
}

func handOf(c changes.Change) string { return c.Hand }
func kindOf(c changes.Change) string { return c.Kind }

func groupsOf(all []changes.Change, name func(changes.Change) string) []changeGroup {
	out := []changeGroup{}
	for _, g := range changes.Grouped(all, name) {
		out = append(out, changeGroup{record.Clean(g.Name), g.Count, len(g.Stumps)})
	}
	return out
}

// dayRows puts the changes of one day, hand and kind together.
func dayRows(all []changes.Change) []changeRow {
	all = slices.Clone(all)
	slices.SortStableFunc(all, func(x, y changes.Change) int {
		return cmp.Or(cmp.Compare(x.Day, y.Day), cmp.Compare(x.Hand, y.Hand), cmp.Compare(x.Kind, y.Kind))
	})
	out := []changeRow{}
	for i, c := range all {
		if i == 0 || c.Day != all[i-1].Day || c.Hand != all[i-1].Hand || c.Kind != all[i-1].Kind {
			out = append(out, changeRow{c.Day.String(), record.Clean(c.Hand), c.Kind, 0, []string{}})
		}
		last := &out[len(out)-1]
		last.Count += c.Count
		if c.Stump != record.NoStump {
			last.Stumps = append(last.Stumps, c.Stump.String())
		}
	}
	return out
}

// printChanges writes the changes for people.
func (a *app) printChanges(l changeList) {
	r := l.row()
	if len(l.blocks) == 0 {
		fmt.Fprintln(a.out, "No blocks yet. Add one from a list: barkslip block add FILE.csv")
		return
	}
	fmt.Fprintf(a.out, "Since %s %s: %d done or seen on %s, %d taken back\n", l.since.Weekday().String()[:3], l.since.Long(),
		r.Total.Count, count(r.Total.Stumps, "stump"), total(r.TakenBack))
	for _, part := range []struct {
		title  string
		groups []changeGroup
	}{{"By hand", r.Hands}, {"By kind", r.Kinds}} {
		if len(part.groups) > 0 {
			fmt.Fprintf(a.out, "\n%s\n", part.title)
		}
		for _, g := range part.groups {
			fmt.Fprintf(a.out, "  %-18s %6d%s\n", cmp.Or(g.Name, "(no hand)"), g.Count, onStumps(g.Stumps))
		}
	}
	a.printChangeRows("By day", r.Days)
	a.printChangeRows("Taken back", r.TakenBack)
}

func (a *app) printChangeRows(title string, rows []changeRow) {
	if len(rows) > 0 {
		fmt.Fprintf(a.out, "\n%s\n", title)
	}
	for _, r := range rows {
		fmt.Fprintf(a.out, "  %s  %-4s %-18s %6d%s\n", r.Date, cmp.Or(r.Hand, "-"), r.Kind, r.Count, onStumps(len(r.Stumps)))
	}
}

func total(rows []changeRow) (n int) {
	for _, r := range rows {
		n += r.Count
	}
	return n
}

// onStumps says on how many stumps, nothing where it was on none.
func onStumps(n int) string {
	if n == 0 {
		return ""
	}
	return " on " + count(n, "stump")
}
