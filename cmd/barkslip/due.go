package main

import (
	"time"

	"github.com/spf13/cobra"

	"barkslip/core/due"
	"barkslip/core/plan"
	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/store"
)

// mostDays is how far ahead dues may be asked for: ten years.
const mostDays = 3660

func (a *app) due() *cobra.Command {
	c := &cobra.Command{
		Use: "due", Short: "What every stump needs now, in walking order",
		Long: "Lists what is due in each block, in the order of the next: white that runs out,\n" +
			"grafts to finish and to seal, faces whose wait is over, white that is open, then\n" +
			"the rest, each part up one row and down the next. Of the stumps to cut back as\n" +
			"many are listed as can be grafted in time. It only reads, and works while the\n" +
			"screens are open.\n\n" +
			"Without --on it is judged as of now. With it, as at the end of that day in the\n" +
			"block's time zone, by all that is recorded up to now: of a day gone by, what\n" +
			"has been done since is not listed any more.\n\n" +
			"As a calendar (--ics) it has one entry for each day and kind of work, and one with\n" +
			"alarms for each white clock; it can be imported again: entries already there\n" +
			"are replaced.",
		Example: "  barkslip due\n  barkslip due --on 2027-05-04 --days 7\n  barkslip due --days 30 --ics > due.ics", Args: noArguments,
	}
	g := declare(c.Flags(), bookOption,
		option{name: "on", value: "DATE", says: "the day to judge, at its end: 2027-05-04, 4 May, tomorrow; without it today, as of now"},
		option{name: "days", value: "N", says: "also what opens within so many days after that day", usual: 0})
	forms := []*bool{
		c.Flags().Bool("json", false, "one JSON object"),
		c.Flags().Bool("csv", false, "comma-separated text with a heading"),
		c.Flags().Bool("ics", false, "an iCalendar file, for calendars"),
	}
	c.RunE = func(*cobra.Command, []string) error {
		g.dayLike("on")
		ask := dueAsk{days: g.whole("days", 0, mostDays)}
		if g.err != nil {
			return g.err
		}
		form, err := oneForm([]string{"--json", "--csv", "--ics"}, forms)
		if err != nil {
			return err
		}
		book, err := a.openBook(g, true)
		if err != nil {
			return err
		}
		defer book.Close()
		ask.now = a.clockOf(book)()
		if ask.on = g.dayOf(book, "on", ask.now); g.err != nil {
			return g.err
		}
		list, err := listDues(book, ask)
		if err != nil {
			return err
		}
		switch form {
		case "--json":
			return a.dueJSON(list)
		case "--csv":
			return a.dueCSV(list)
		case "--ics":
			return a.dueCalendar(list)
		}
		a.printDues(list)
		return nil
	}
	return c
}

// dayOf is a date as people write it, read as in the book's first block.
func (g *given) dayOf(book *store.Book, name string, now time.Time) unit.Date {
	sys, today := dated(book, now)
	return g.day(name, today, sys)
}

// dated is how dates are read in a book: by the units and the day of its first
// block.
func dated(book *store.Book, now time.Time) (unit.System, unit.Date) {
	if blocks := book.Folded().List(); len(blocks) > 0 {
		return blocks[0].Units, unit.DateOf(now.In(blocks[0].Zone))
	}
	return unit.US, unit.DateOf(now)
}

// oneForm is the form of output asked for, "" for text; more than one is a
// mistake.
func oneForm(names []string, set []*bool) (form string, err error) {
	for i, name := range names {
		if !*set[i] {
			continue
		}
		if form != "" {
			return "", mistaken(name, form+" "+name, "one of --json, --csv and --ics")
		}
		form = name
	}
	return form, nil
}

// dueAsk is what a command line asks about.
type dueAsk struct {
	now  time.Time
	on   unit.Date // 0: today, as of now
	days int       // and what opens within so many days more
}

// judged is the moment at which dues are judged in a zone, and its day there.
func (q dueAsk) judged(zone *time.Location) (time.Time, unit.Date) {
	if q.on != 0 {
		return due.EndOf(q.on, zone), q.on
	}
	now := q.now.In(zone)
	return now, unit.DateOf(now)
}

// until is the moment up to which dues that open are listed.
func (q dueAsk) until(zone *time.Location) time.Time {
	at, on := q.judged(zone)
	if q.days == 0 {
		return at
	}
	return due.EndOf(on.Add(q.days), zone)
}

// dueList is what is due in a book.
type dueList struct {
	ask    dueAsk
	on     unit.Date // the day judged, in the first block where today is not the same in all
	events int       // in the book's journal
	blocks []blockDues
}

// blockDues is what is due in one block.
type blockDues struct {
	*record.Block
	at     time.Time // judged
	on     unit.Date
	stumps int       // with something due
	dues   []due.Due // in the order of the next
}

func listDues(book *store.Book, ask dueAsk) (dueList, error) {
	out := dueList{ask: ask}
	out.events, _ = book.Count()
	_, out.on = ask.judged(ask.now.Location())
	for i, b := range book.Folded().List() {
		sums, err := book.Summaries(b.ID)
		if err != nil {
			return out, err
		}
		d := blockDues{Block: b}
		d.at, d.on = ask.judged(b.Zone)
		d.take(due.Round(sums, due.Asked{From: d.at, Until: ask.until(b.Zone), CutBack: plan.CutBackOn(b, sums, d.at)}))
		if i == 0 {
			out.on = d.on
		}
		out.blocks = append(out.blocks, d)
	}
	return out, nil
}

// take lists the dues of a round in its order.
func (d *blockDues) take(calls []due.Call) {
	n := 0
	for _, c := range calls {
		n += len(c.Dues)
	}
	d.stumps, d.dues = len(calls), make([]due.Due, 0, n)
	for _, c := range calls {
		d.dues = append(d.dues, c.Dues...)
	}
}

// late is how many should have been done before.
func (d *blockDues) late() (n int) {
	for _, due := range d.dues {
		if due.Late(d.at) {
			n++
		}
	}
	return n
}
