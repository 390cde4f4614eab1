package main

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/spf13/cobra"

	"barkslip/core/record"
	"barkslip/store"
)

func (a *app) block() *cobra.Command {
	c := &cobra.Command{
		Use: "block COMMAND", Short: "Add stumps from a list; list the blocks; write them out",
		Example: "  barkslip block add \"Hollow Lane.csv\" --zone America/Los_Angeles --lat 38.5 --lon -121.8\n  barkslip block list",
	}
	holds(c)
	c.AddCommand(a.blockAdd(), a.blockList(), a.blockExport())
	return c
}

// listed is one block in machine-readable form.
type listed struct {
	ID     string         `json:"id"`
	Name   string         `json:"name"`
	Zone   string         `json:"zone"`
	Units  string         `json:"units"`
	Rows   int            `json:"rows"`
	Stumps int            `json:"stumps"`
	Stages map[string]int `json:"stages"` // how many stumps are at each
}

func (a *app) blockList() *cobra.Command {
	c := &cobra.Command{
		Use: "list", Short: "The blocks of a book and how far they are",
		Example: "  barkslip block list\n  barkslip block list --json", Args: noArguments,
	}
	g := declare(c.Flags(), bookOption)
	asJSON := c.Flags().Bool("json", false, "one JSON object")
	c.RunE = func(*cobra.Command, []string) error {
		book, err := a.openBook(g, true)
		if err != nil {
			return err
		}
		defer book.Close()
		blocks, err := listBlocks(book)
		if err != nil {
			return err
		}
		if *asJSON {
			return a.writeJSON(map[string]any{"blocks": blocks})
		}
		a.printBlocks(blocks)
		return nil
	}
	return c
}

func listBlocks(book *store.Book) ([]listed, error) {
	out := []listed{}
	for _, b := range book.Folded().List() {
		stumps, err := book.Summaries(b.ID)
		if err != nil {
			return nil, err
		}
		l := listed{ID: b.ID.String(), Name: b.Name, Zone: b.ZoneName, Units: b.Units.String(), Stumps: len(stumps), Stages: map[string]int{}}
		rows := map[uint16]bool{}
		for _, s := range stumps {
			rows[s.ID.Row] = true
			l.Stages[s.Stage.String()]++
		}
		l.Rows = len(rows)
		out = append(out, l)
	}
	return out, nil
}

func (a *app) printBlocks(blocks []listed) {
	if len(blocks) == 0 {
		fmt.Fprintln(a.out, "No blocks yet. Add one from a list: barkslip block add FILE.csv")
		return
	}
	for _, b := range blocks {
		name := b.Name + strings.Repeat(" ", max(0, 24-utf8.RuneCountInString(b.Name)))
		zone := b.Zone
		if zone == "" {
			zone = "no time zone set (UTC)"
		}
		fmt.Fprintf(a.out, "%s  %s in %s  %s  %s\n", name, count(b.Stumps, "stump"), count(b.Rows, "row"), zone, b.ID)
		var stages []string
		for _, s := range record.Stages() {
			if n := b.Stages[s.String()]; n > 0 {
				stages = append(stages, fmt.Sprintf("%d %s", n, s))
			}
		}
		if len(stages) > 0 {
			fmt.Fprintln(a.out, wrap("  ", strings.Join(stages, ", "), 4))
		}
	}
}
