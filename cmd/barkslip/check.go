package main

import (
	"fmt"

	"github.com/spf13/cobra"
)

func (a *app) check() *cobra.Command {
	c := &cobra.Command{
		Use: "check", Short: "Go over a book from end to end",
		Long: "Goes over every page and every record of a book and says what it finds wrong.\n" +
			"It only reads, and works while the screens are open.",
		Example: "  barkslip check\n  barkslip check --book orchard.bark", Args: noArguments,
	}
	g := declare(c.Flags(), bookOption)
	c.RunE = func(*cobra.Command, []string) error {
		book, err := openBook(g, true)
		if err != nil {
			return err
		}
		defer book.Close()
		found, err := book.Check()
		if err != nil {
			return err
		}
		if len(found) > 0 {
			for _, says := range found {
				a.complain(says)
			}
			a.complain("bring the book back from a copy with: barkslip restore FILE")
			return errFindings
		}
		events, stumps := book.Count()
		fmt.Fprintf(a.out, "The book is sound: %s of %s.\n", count(events, "record"), count(stumps, "stump"))
		return nil
	}
	return c
}

// count is a number with its noun.
func count(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}
