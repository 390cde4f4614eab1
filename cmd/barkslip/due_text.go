package main

import (
	"fmt"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
)

// dueColumns is how wide the columns before the reason are.
var dueColumns = [...]int{4, 8, 20, 22}

// printDues writes the dues for people: a heading a block, a line a due.
func (a *app) printDues(list dueList) {
	if len(list.blocks) == 0 {
		fmt.Fprintln(a.out, "No blocks yet. Add one from a list: barkslip block add FILE.csv")
	}
	var line []byte
	for i := range list.blocks {
		d := &list.blocks[i]
		if i > 0 {
			fmt.Fprintln(a.out)
		}
		fmt.Fprintf(a.out, "%s, %s: %s\n", record.Clean(d.Name), list.ask.when(d), d.counts())
		for _, due := range d.dues {
			line = line[:0]
			for i, cell := range []string{d.mark(due), due.Stump.Place(), due.Kind.Verb(), d.window(due)} {
				line = append(line, cell...)
				for n := len(cell); n < dueColumns[i]; n++ {
					line = append(line, ' ')
				}
				line = append(line, "  "...)
			}
			line = append(append(line, due.Why(d.Block)...), '\n')
			_, _ = a.out.Write(line)
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
func (d *blockDues) mark(due due.Due) string {
	switch {
	case due.Late(d.at):
		return "late"
	case !due.Open(d.at):
		return "soon"
	}
	return ""
}

// window is when a due opens and by when it is to be done.
func (d *blockDues) window(due due.Due) string {
	out := d.moment(make([]byte, 0, 40), due.Opens, due.Kind.Timed())
	switch {
	case due.Opens.YearDay() != due.By.YearDay() || due.Opens.Year() != due.By.Year():
		out = d.moment(append(out, " to "...), due.By, due.Kind.Timed())
	case due.Kind.Timed():
		out = due.By.AppendFormat(append(out, " to "...), "15:04")
	}
	return string(out)
}

// moment appends a day, the year only where it is not that of the day judged,
// and the time of day if timed.
func (d *blockDues) moment(out []byte, t time.Time, timed bool) []byte {
	out = t.AppendFormat(out, "2 Jan")
	if t.Year() != d.at.Year() {
		out = t.AppendFormat(out, " 2006")
	}
	if timed {
		out = t.AppendFormat(out, " 15:04")
	}
	return out
}
