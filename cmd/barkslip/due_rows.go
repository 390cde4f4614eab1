package main

import (
	"encoding/csv"
	"strconv"
	"strings"
	"time"

	"barkslip/core"
	"barkslip/core/unit"
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
	return unit.DateOf(t).String()
}

func (a *app) dueJSON(list dueList) error {
	rows := []dueRow{}
	for _, d := range list.blocks {
		for _, due := range d.dues {
			rows = append(rows, d.row(due))
		}
	}
	return a.writeJSON(struct {
		On  unit.Date `json:"on"`
		Due []dueRow  `json:"due"`
	}{list.on, rows})
}

// dueCSV writes RFC 4180 text, a line a due.
func (a *app) dueCSV(list dueList) error {
	w := csv.NewWriter(a.out)
	w.UseCRLF = true
	if err := w.Write([]string{"stump", "kind", "opens", "by", "late", "why", "block"}); err != nil {
		return err
	}
	for _, d := range list.blocks {
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
