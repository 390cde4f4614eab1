package main

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"barkslip/store"
)

func (a *app) salvage() *cobra.Command {
	c := &cobra.Command{
		Use: "salvage FROM --book NEW", Short: "Make a sound book of what holds in a damaged one",
		Long: "Reads a damaged book page by page, whatever its pages lead to, takes each record\n" +
			"that holds, and makes a new book of them. What is missing is counted and named.\n" +
			"The damaged book is not changed.",
		Example: "  barkslip salvage orchard.bark --book saved.bark",
		Args:    oneArgument("FROM", "the damaged book"),
	}
	g := declare(c.Flags(), option{name: "book", value: "NEW", says: "the book to make; it must not be there yet"})
	c.RunE = func(_ *cobra.Command, args []string) error {
		if !g.has("book") {
			return missing("--book", "the name of the book to make")
		}
		to := g.text("book", "the name of the book to make")
		if g.err != nil {
			return g.err
		}
		saved, err := store.Salvage(args[0])
		if err != nil {
			return err
		}
		if err := store.SalvageInto(saved, to, store.Options{}); err != nil {
			return err
		}
		fmt.Fprintf(a.out, "Saved to %s: %s.\n", to, count(len(saved.Events), "record"))
		return a.sayLost(saved)
	}
	return c
}

// sayLost tells what was found of a damaged book, and is a finding where any is missing.
func (a *app) sayLost(saved *store.Salvaged) error {
	for _, says := range saved.Say() {
		a.complain(says)
	}
	if saved.Missing() > 0 || saved.Of == 0 {
		return errFindings
	}
	return nil
}

// isBroken says whether a book that could not be opened may still give what holds.
func isBroken(err error) bool {
	return errors.Is(err, store.ErrDamaged) || errors.Is(err, store.ErrCutShort)
}
