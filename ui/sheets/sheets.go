// Package sheets asks which sheet of paper is wanted and writes it. It may import
// core and ui/part with its leaves, and no other screen.
package sheets

import (
	"fmt"
	"strings"

	"barkslip/core/sheet"
	"barkslip/core/unit"
	"barkslip/ui/part"
	"barkslip/ui/pdf"
)

// Ways is the list of the sheets that can be made of the session's block.
func Ways(x *part.Session, m part.Sheets) *part.List {
	on := m.On
	if on == 0 {
		on = x.Site().Day(x.Time())
	}
	what := on.Long()
	if m.Row > 0 {
		what += fmt.Sprintf(", row %d", m.Row)
	}
	item := func(word, meaning string, kind sheet.Kind, on unit.Date, hand string) part.Item {
		return part.Item{Word: word, Meaning: meaning, Take: func() part.Msgs { return write(x, kind, m.Row, on, hand) }}
	}
	items := []part.Item{
		item("day's sheet", "What is due, as one walks.", sheet.ForDay, on, ""),
		item("tags of the day", "Trees grafted that day.", sheet.ForTags, on, ""),
		item("tags of all", "All that carry grafts.", sheet.ForTags, 0, ""),
		item("cutting card", "Cuts at true size.", sheet.ForCuts, 0, ""),
	}
	if m.On == 0 {
		items = append(items, item("tomorrow's sheets", "One for each hand that is given work, one for the rest.", sheet.ForDay, on.Add(1), ""))
	}
	if hand := strings.TrimSpace(x.Hand); hand != "" {
		own := item("sheet of "+hand, "What is due for "+hand+".", sheet.ForDay, on, hand)
		items = append(items[:1], append([]part.Item{own}, items[1:]...)...)
		if m.On == 0 {
			items = append(items, item("tomorrow, of "+hand, "What is due for "+hand+" tomorrow.", sheet.ForDay, on.Add(1), hand))
		}
	}
	if m.Text != nil {
		items = append(items, part.Item{Word: "the round as text", Meaning: "A plain text file of what is shown.", Take: m.Text})
	}
	return part.NewList(x, "Which sheet of paper?", what+". A PDF is written beside the book, never over another.", items)
}

// write makes a sheet and writes it to a file of its own.
func write(x *part.Session, kind sheet.Kind, row int, on unit.Date, hand string) part.Msgs {
	if x.SaveText == nil {
		return part.Says("barkslip sheet makes paper.")
	}
	ask := sheet.Ask{Book: x.Book.Folded(), Block: x.Site(), Sums: x.Summaries(x.Block), Stump: x.Book.Stump, Now: x.Time().In(x.Site().Zone), On: on, Hand: hand}
	if row > 0 {
		ask.Rows = []int{row}
	}
	doc, err := sheet.Make(kind, ask, pdf.Letters{})
	if err != nil {
		return part.Fails(err)
	}
	data, err := pdf.Bytes(doc)
	if err != nil {
		return part.Fails(err)
	}
	path, err := x.SaveText(sheet.FileName(kind, ask), string(data))
	if err != nil {
		return part.Fails(err)
	}
	return part.Says("Written: " + path)
}
