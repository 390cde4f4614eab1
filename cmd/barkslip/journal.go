package main

import (
	"errors"

	"github.com/spf13/cobra"

	"barkslip/store"
)

func (a *app) journal() *cobra.Command {
	c := &cobra.Command{
		Use: "journal COMMAND", Short: "Write the journal out, or join journals and books",
		Long: "The journal is all that was ever recorded in a book, one event a line. Journals\n" +
			"of two laptops are joined in any order and as often as you like, with the same\n" +
			"result.",
		Example: "  barkslip journal export > may.jsonl\n  barkslip journal join may.jsonl other.bark",
	}
	holds(c)
	c.AddCommand(a.journalExport(), a.journalJoin())
	return c
}

func (a *app) journalExport() *cobra.Command {
	c := &cobra.Command{
		Use: "export", Short: "Write the journal to standard output as JSON Lines",
		Example: "  barkslip journal export > may.jsonl", Args: noArguments,
	}
	g := declare(c.Flags(), bookOption)
	c.RunE = func(*cobra.Command, []string) error {
		book, err := openQuietly(g)
		if err == nil && book.Halved() { // page by page more may be found
			err = errors.Join(lastLost(book.Path()), book.Close())
		}
		if isBroken(err) {
			return a.exportSalvaged(g, err)
		}
		if err != nil {
			return err
		}
		defer book.Close()
		return store.WriteLines(a.out, book)
	}
	return c
}

// exportSalvaged writes what holds of a book that cannot be opened; it is damaged
// whatever is missing.
func (a *app) exportSalvaged(g *given, opening error) error {
	path, err := bookPath(g)
	if err != nil {
		return err
	}
	saved, err := store.Salvage(path)
	if err != nil {
		return opening
	}
	if err := store.WriteLines(a.out, saved); err != nil {
		return err
	}
	a.complain(opening.Error())
	_ = a.sayLost(saved)
	return errFindings
}
