package main

import (
	"fmt"
	"time"

	"barkslip/core"
	"barkslip/core/unit"
)

// printDues writes the dues for people: a heading a block, a line a due.
func (a *app) printDues(list dueList) {
	if len(list.blocks) == 0 {
		fmt.Fprintln(a.out, "No blocks yet. Add one from a list: barkslip block add FILE.csv")
	}
	for i := range list.blocks {
		d := &list.blocks[i]
		if i > 0 {
			fmt.Fprintln(a.out)
		}
		fmt.Fprintln(a.out, wrap("", core.Clean(d.Name)+", "+list.ask.when(d)+": "+d.counts(), 2))
		for _, due := range d.dues {
			fmt.Fprintf(a.out, "%-4s  %-8s  %-16s  %-24s  %s\n", d.mark(due), due.Stump.Place(), due.Kind, d.window(due), due.Why(d.Block))
		}
	}
}

// when is the day judged, and how far ahead is looked.
func (q dueAsk) when(d *blockDues) string {
	says := d.at.Format("Mon 2 Jan 2006 15:04")
	if q.on != 0 {
		says = "at the end of " + d.at.Format("Mon 2 Jan 2006")
	}
	if q.days > 0 {
		says += " and " + count(q.days, "day") + " on"
	}
	return says
}

// counts is what a heading says of a block.
func (d *blockDues) counts() string {
	if len(d.dues) == 0 {
		return "nothing due"
	}
	says := fmt.Sprintf("%d due on %s", len(d.dues), count(d.stumps, "stump"))
	if late := d.late(); late > 0 {
		says += fmt.Sprintf(", %d late", late)
	}
	return says
}

// mark says of a due whether it is late, or not open yet.
func (d *blockDues) mark(due core.Due) string {
	switch {
	case due.Late(d.at):
		return "late"
	case !due.Open(d.at):
		return "soon"
	}
	return ""
}

// window is when a due opens and by when it is to be done, the year only where
// it is not that of the day judged.
func (d *blockDues) window(due core.Due) string {
	from, to := unit.DateOf(due.Opens), unit.DateOf(due.By)
	switch {
	case !due.Kind.Timed() && from == to:
		return d.day(to)
	case !due.Kind.Timed():
		return d.day(from) + " to " + d.day(to)
	case from == to:
		return d.day(from) + " " + hour(due.Opens) + " to " + hour(due.By)
	}
	return d.day(from) + " " + hour(due.Opens) + " to " + d.day(to) + " " + hour(due.By)
}

func (d *blockDues) day(day unit.Date) string {
	if day.Year() != d.on.Year() {
		return day.Long()
	}
	return day.Short()
}

func hour(t time.Time) string { return t.Format("15:04") }
