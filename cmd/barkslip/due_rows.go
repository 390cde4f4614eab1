package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"strconv"
	"strings"
	"time"

	"barkslip/core"
)

// dueRow is one due in machine-readable form.
type dueRow struct {
	Stump string `json:"stump"` // block/row/tree, with /limb where there is one
	Kind  string `json:"kind"`
	Opens string `json:"opens"` // an instant for kinds that run by the clock, else a day
	By    string `json:"by"`
	Late  bool   `json:"late"` // after by
	Why   string `json:"why"`
}

func (d *blockDues) row(due core.Due) dueRow {
	return dueRow{due.Stump.String(), due.Kind.String(), moment(due, due.Opens), moment(due, due.By), due.Late(d.at), due.Why(d.Block)}
}

// moment is when a due opens or ends.
func moment(due core.Due, t time.Time) string {
	if due.Kind.Timed() {
		return t.Format(time.RFC3339)
	}
	return t.Format(time.DateOnly)
}

// dueJSON writes the object a row at a time: there may be hundreds of thousands.
func (a *app) dueJSON(list dueList) error {
	var row bytes.Buffer
	enc := json.NewEncoder(&row)
	enc.SetEscapeHTML(false)
	before := fmt.Sprintf(`{"on":"%s","due":[`, list.on)
	for i := range list.blocks {
		d := &list.blocks[i]
		for _, due := range d.dues {
			row.Reset()
			if err := enc.Encode(d.row(due)); err != nil {
				return err
			}
			_, _ = a.out.WriteString(before)
			_, _ = a.out.Write(bytes.TrimSuffix(row.Bytes(), []byte("\n")))
			before = ","
		}
	}
	if before != "," {
		_, _ = a.out.WriteString(before)
	}
	_, err := a.out.WriteString("]}\n")
	return err
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
		name := guarded(core.Clean(d.Name))
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
