package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// sum is one question the command line answers.
type sum struct {
	name    string
	short   string
	long    string
	example string
	options []option
	// work reads the options and answers: the answer is written as JSON, the
	// working is printed for people.
	work func(g *given, sys unit.System) (answer any, work trade.Worked, err error)
}

// reckon holds the sums.
func (a *app) reckon() *cobra.Command {
	c := &cobra.Command{
		Use: "reckon NAME", Short: "Answer one question: scions, slots, cuts, heat and more",
		Long: "Answers one question without opening a book. People get text with the reasons;\n" +
			"--json gives one object in SI units.\n\n" +
			"Values carry their unit: 4in, 3 1/2in, 10.2cm, 100mm, 88F, 31C, 5mph, 2m/s.",
		Example: "  barkslip reckon scions --across 4in\n  barkslip reckon take --alive 81 --of 263 --json",
	}
	holds(c)
	for _, s := range []sum{scionsSum, slotsSum, readySum, cutSum, stickSum, heatSum, callusSum, chanceSum, takeSum, twineSum} {
		c.AddCommand(a.sum(s))
	}
	return c
}

func (a *app) sum(s sum) *cobra.Command {
	c := &cobra.Command{Use: s.name, Short: s.short, Long: s.long, Example: indent(s.example), Args: noArguments}
	g := declare(c.Flags(), append(s.options, option{name: "units", value: "SYSTEM", says: "units of the text: us or metric", usual: unit.US})...)
	asJSON := c.Flags().Bool("json", false, "one JSON object in SI units")
	c.RunE = func(*cobra.Command, []string) error {
		sys := g.system("units")
		answer, work, err := s.work(g, sys)
		if g.err != nil {
			return g.err
		}
		if err != nil {
			return g.impossible(err)
		}
		if *asJSON {
			return a.writeJSON(answer)
		}
		a.printWork(work, sys)
		return nil
	}
	return c
}

func indent(lines string) string { return "  " + strings.ReplaceAll(lines, "\n", "\n  ") }

// impossible names the option behind a combination that cannot be.
func (g *given) impossible(err error) error {
	var fault *trade.Impossible
	if !errors.As(err, &fault) {
		return err
	}
	return g.fault(fault.Option, fault.Given, fault.Accepted)
}

// printWork prints a working for people: each heading once, what belongs to it
// below.
func (a *app) printWork(work trade.Worked, sys unit.System) {
	heading := ""
	for i, line := range work.Lines(sys) {
		label, text, labelled := strings.Cut(line, ": ")
		switch {
		case i == 0:
			fmt.Fprintln(a.out, line)
		case strings.HasPrefix(line, " "):
			fmt.Fprintln(a.out, wrap("  ", line, 4))
		case !labelled:
			fmt.Fprintln(a.out, wrap("", line, 2))
		default:
			if label != heading {
				fmt.Fprintln(a.out, label+":")
			}
			heading = label
			fmt.Fprintln(a.out, wrap("  ", text, 4))
		}
	}
}
