package main

import (
	"encoding/csv"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"barkslip/core/record"
	"barkslip/core/results"
	"barkslip/core/tally"
	"barkslip/core/unit"
	"barkslip/store"
)

// byCause is the one key that groups losses, not grafts.
const byCause = "cause"

func (a *app) tally() *cobra.Command {
	var names []string
	for _, k := range results.Keys() {
		names = append(names, k.String())
	}
	names = append(names, byCause)
	c := &cobra.Command{
		Use: "tally", Short: "What took, what stands, what was lost to what",
		Long: "Counts the grafts by what may have made the difference. Took is what was alive and\n" +
			"growing 30 days after push, whatever came later; standing is what took and is alive\n" +
			"now. The bars are 95 % intervals; grafts of one stump share its luck, so they count\n" +
			"for less than as many on stumps of their own.",
		Example: "  barkslip tally\n  barkslip tally --by hand --season 2027\n  barkslip tally --by cause --json", Args: noArguments,
	}
	g := declare(c.Flags(), bookOption,
		option{name: "by", value: "KEY", says: "one of " + strings.Join(names, ", "), usual: "lot"},
		option{name: "season", value: "Y", says: "grafts set in that season alone; a southern one by the year it begins", usual: 0},
		option{name: "block", value: "NAME", says: "the block; without it all that are listed"})
	forms := []*bool{c.Flags().Bool("json", false, "one JSON object"), c.Flags().Bool("csv", false, "comma-separated text with a heading")}
	c.RunE = func(*cobra.Command, []string) error {
		by := read(g, "by", func(s string) (string, error) {
			if _, ok := results.Named(s); ok || s == byCause {
				return s, nil
			}
			return "", &unit.Error{Given: s, Accepted: "one of " + strings.Join(names, ", ")}
		})
		season, name := g.whole("season", 1900, 2999), ""
		if g.has("block") {
			name = g.text("block", "the name of a block")
		}
		if g.err != nil {
			return g.err
		}
		form, err := oneForm([]string{"--json", "--csv"}, forms)
		if err != nil {
			return err
		}
		book, err := a.openBook(g, true)
		if err != nil {
			return err
		}
		defer book.Close()
		cols, sys, err := columnsOf(book, name)
		if err != nil {
			return err
		}
		key, _ := results.Named(by)
		t := cols.By(key, season)
		losses := cols.Losses(&t, nil)
		switch {
		case form == "--json" && by == byCause:
			return a.writeJSON(causesOf(season, losses))
		case form == "--json":
			return a.writeJSON(tallyOf(&t))
		case form == "--csv":
			return a.tallyCSV(&t, losses, by == byCause)
		case by == byCause:
			a.printLosses(losses)
		default:
			a.printTally(&t, losses, sys)
		}
		return nil
	}
	return c
}

// columnsOf is the grafts of the block named, or of all that are listed; units are
// those of the first.
func columnsOf(book *store.Book, name string) (*results.Columns, unit.System, error) {
	blocks, cols := book.Folded().List(), &results.Columns{}
	if name != "" {
		b, err := findBlock(book, name)
		if err != nil {
			return nil, unit.US, err
		}
		if b == nil {
			return nil, unit.US, mistaken("--block", name, "the name of a block of the book")
		}
		blocks = []*record.Block{b}
	}
	sys := unit.US
	for i, b := range blocks {
		sums, err := book.Summaries(b.ID)
		if err != nil {
			return nil, sys, err
		}
		cols.Add(book.Folded(), b, sums)
		if i == 0 {
			sys = b.Units
		}
	}
	return cols, sys, nil
}

// tallyRow is a tally in machine-readable form.
type tallyRow struct {
	Season *int         `json:"season"` // null for all
	By     string       `json:"by"`
	Groups []groupRow   `json:"groups"`
	Total  groupRow     `json:"total"`
	Differ *tally.Alike `json:"differ"`
}

type groupRow struct {
	Key      *string  `json:"key,omitempty"` // not of the total
	Stumps   int      `json:"stumps"`
	Grafts   int      `json:"grafts"`
	Known    int      `json:"known"`
	Took     int      `json:"took"`
	Rate     *float64 `json:"rate"` // null where none is known
	Low      float64  `json:"low"`
	High     float64  `json:"high"`
	Standing int      `json:"standing"`
	Deff     float64  `json:"deff"`
}

type causesRow struct {
	Season *int       `json:"season"`
	Causes []causeRow `json:"causes"`
}

type causeRow struct {
	Cause  string `json:"cause"`
	Grafts int    `json:"grafts"`
	Stumps int    `json:"stumps"`
}

func seasonOf(season int) *int {
	if season == 0 {
		return nil
	}
	return &season
}

func groupOf(g *results.Group) groupRow {
	i := g.Rate()
	row := groupRow{Stumps: g.Stumps, Grafts: g.Grafts, Known: g.Known, Took: g.Took, Low: i.Low, High: i.High, Standing: g.Standing, Deff: g.Design()}
	if g.Known > 0 {
		rate := float64(g.Took) / float64(g.Known)
		row.Rate = &rate
	}
	return row
}

func tallyOf(t *results.Tally) tallyRow {
	out := tallyRow{Season: seasonOf(t.Season), By: t.By.String(), Groups: []groupRow{}, Total: groupOf(&t.Total), Differ: t.Differ}
	for i := range t.Groups {
		row := groupOf(&t.Groups[i])
		row.Key = &t.Groups[i].Key
		out.Groups = append(out.Groups, row)
	}
	return out
}

func causesOf(season int, losses []results.Loss) causesRow {
	out := causesRow{Season: seasonOf(season), Causes: []causeRow{}}
	for _, l := range losses {
		out.Causes = append(out.Causes, causeRow(l))
	}
	return out
}

// tallyCSV writes RFC 4180 text, a line a group or a cause.
func (a *app) tallyCSV(t *results.Tally, losses []results.Loss, causes bool) error {
	w := csv.NewWriter(a.out)
	w.UseCRLF = true
	rows := [][]string{{"key", "stumps", "grafts", "known", "took", "rate", "low", "high", "standing", "deff"}}
	number := func(f float64) string { return strconv.FormatFloat(f, 'g', -1, 64) }
	for i := range t.Groups {
		g, rate := groupOf(&t.Groups[i]), ""
		if g.Rate != nil {
			rate = number(*g.Rate)
		}
		rows = append(rows, []string{guarded(t.Groups[i].Key), strconv.Itoa(g.Stumps), strconv.Itoa(g.Grafts), strconv.Itoa(g.Known), strconv.Itoa(g.Took),
			rate, number(g.Low), number(g.High), strconv.Itoa(g.Standing), number(g.Deff)})
	}
	if causes {
		rows = [][]string{{"cause", "grafts", "stumps"}}
		for _, l := range losses {
			rows = append(rows, []string{guarded(l.Cause), strconv.Itoa(l.Grafts), strconv.Itoa(l.Stumps)})
		}
	}
	return w.WriteAll(rows)
}
