package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"barkslip/core/trade"
)

// topicTitles are the headings of the table of facts.
var topicTitles = map[string]string{
	"ready": "Getting a stump ready", "wood": "How many scions, which wood", "cuts": "Cuts, slot and nails",
	"seal": "Seal and paint", "care": "Care afterwards", "practice": "Practice", "sums": "Formulas of the sums",
}

// fact is one fact in machine-readable form.
type fact struct {
	ID       string         `json:"id"`
	Topic    string         `json:"topic"`
	Fact     string         `json:"fact"`
	Standing trade.Standing `json:"standing"`
	Source   string         `json:"source"`
}

func (a *app) facts() *cobra.Command {
	c := &cobra.Command{
		Use: "facts", Short: "Every figure the program states, with its standing and source",
		Example: "  barkslip facts\n  barkslip facts --json", Args: noArguments,
	}
	asJSON := c.Flags().Bool("json", false, "one JSON object")
	c.RunE = func(*cobra.Command, []string) error {
		if *asJSON {
			facts := []fact{}
			for _, f := range trade.Facts() {
				facts = append(facts, fact{f.ID, f.Topic, f.Says, f.Standing, f.Source})
			}
			return a.writeJSON(map[string]any{"facts": facts})
		}
		a.printFacts()
		return nil
	}
	return c
}

func (a *app) printFacts() {
	topic := ""
	for _, f := range trade.Facts() {
		if f.Topic != topic {
			if topic != "" {
				fmt.Fprintln(a.out)
			}
			topic = f.Topic
			fmt.Fprintln(a.out, topicTitles[topic])
		}
		fmt.Fprintln(a.out, wrap("  ", f.Says+" ("+f.Cite()+")", 4))
	}
	fmt.Fprintln(a.out)
	fmt.Fprintln(a.out, wrap("", trade.AidsOnly.Says, 0))
}
