package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"barkslip/store"
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
		path, err := bookPath(g)
		if err != nil {
			return err
		}
		return a.checkPath(path)
	}
	return c
}

// checkPath goes over the book at a path and says what it finds.
func (a *app) checkPath(path string) error {
	book, err := store.Open(path, store.Options{ReadOnly: true})
	if isBroken(err) {
		return a.checkBroken(path, err)
	}
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
		a.complain(waysBack)
		return errFindings
	}
	events, stumps := book.Count()
	fmt.Fprintf(a.out, "The book is sound: %s of %s.\n", count(events, "record"), count(stumps, "stump"))
	return nil
}

const waysBack = "bring the book back from a copy with: barkslip restore FILE; or save what holds with: barkslip salvage FROM --book NEW"

// checkBroken tells of a book that cannot be opened what can be read of it.
func (a *app) checkBroken(path string, opening error) error {
	a.complain(opening.Error())
	if saved, err := store.Salvage(path); err == nil {
		_ = a.sayLost(saved)
	}
	a.complain(waysBack)
	return errFindings
}

// count is a number with its noun.
func count(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}
