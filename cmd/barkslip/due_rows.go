package main

import (
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
)

// dueRow is one due in machine-readable form.
type dueRow struct {
	Stump string `json:"stump"` // block/row/tree, with /limb where there is one
	Kind  string `json:"kind"`
	Opens string `json:"opens"` // see moment
	By    string `json:"by"`
	Late  bool   `json:"late"` // after by
	Why   string `json:"why"`
}

func (d *blockDues) row(due due.Due) dueRow {
	return dueRow{due.Stump.String(), due.Kind.String(), moment(due, due.Opens), moment(due, due.By), due.Late(d.at), due.Why(d.Block)}
}

// moment is when a due opens or ends, as scripts rely on it: an instant for white
// and looks, a day for the rest, those to finish and to seal among them.
func moment(d due.Due, t time.Time) string {
	switch d.Kind {
	case due.White, due.LookAgain, due.Look:
		return t.Format(time.RFC3339)
	}
	return t.Format(time.DateOnly)
}

// dueJSON writes the object a row at a time: there may be hundreds of thousands.
func (a *app) dueJSON(list dueList) error {
	_, _ = fmt.Fprintf(a.out, `{"on":"%s","due":[`, list.on)
	var row []byte
	for i := range list.blocks {
		d := &list.blocks[i]
		for _, due := range d.dues {
			if row != nil {
				_ = a.out.WriteByte(',')
			}
			row = d.row(due).json(row[:0])
			_, _ = a.out.Write(row)
		}
	}
	_, err := a.out.WriteString("]}\n")
	return err
}

// json appends the row as an object. None of its texts is the user's.
func (r dueRow) json(out []byte) []byte {
	for _, f := range [...][2]string{{`{"stump":"`, r.Stump}, {`","kind":"`, r.Kind}, {`","opens":"`, r.Opens}, {`","by":"`, r.By}} {
		out = append(append(out, f[0]...), f[1]...)
	}
	out = strconv.AppendBool(append(out, `","late":`...), r.Late)
	out = append(out, `,"why":`...)
	if strings.ContainsAny(r.Why, `"\`) {
		out = strconv.AppendQuote(out, r.Why)
	} else {
		out = append(append(append(out, '"'), r.Why...), '"')
	}
	return append(out, '}')
}

// dueCSV writes RFC 4180 text, a line a due.
func (a *app) dueCSV(list dueList) error {
	w := csv.NewWriter(a.out)
	w.UseCRLF = true
	if err := w.Write([]string{"stump", "kind", "opens", "by", "late", "why", "block"}); err != nil {
		return err
	}
	for i := range list.blocks {
		d := &list.blocks[i]
		name := guarded(record.Clean(d.Name))
		for _, due := range d.dues {
			r := d.row(due)
			if err := w.Write([]string{r.Stump, r.Kind, r.Opens, r.By, strconv.FormatBool(r.Late), r.Why, name}); err != nil {
				return err
			}
		}
	}
	w.Flush()
	return w.Error()
}

// guarded puts an apostrophe before a text of the user's that a spreadsheet
// would take for a formula.
func guarded(text string) string {
	if text != "" && strings.ContainsRune("=+-@\t\r", rune(text[0])) {
		return "'" + text
	}
	return text
}
