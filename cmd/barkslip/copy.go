package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"barkslip/store"
)

func (a *app) copy() *cobra.Command {
	c := &cobra.Command{
		Use: "copy FILE", Short: "Write a safe copy of a book, also while it is in use",
		Long: "Writes a copy of the book as it stands at this moment, and checks it from end to\n" +
			"end before it gets its name: a damaged book is not called safe. Nothing is\n" +
			"written over.",
		Example: "  barkslip copy /media/stick/book-2027-05-04.bark",
		Args:    oneArgument("FILE", "the name of the copy to write"),
	}
	g := declare(c.Flags(), bookOption)
	c.RunE = func(_ *cobra.Command, args []string) error {
		path, err := bookPath(g)
		if err != nil {
			return err
		}
		if err := store.CopyFile(path, args[0], store.Options{}); err != nil {
			return err
		}
		book, err := store.Open(args[0], store.Options{ReadOnly: true})
		if err != nil {
			return err
		}
		defer book.Close()
		events, stumps := book.Count()
		fmt.Fprintf(a.out, "Copied to %s: %s of %s.\n", args[0], count(events, "record"), count(stumps, "stump"))
		return nil
	}
	return c
}

func (a *app) restore() *cobra.Command {
	c := &cobra.Command{
		Use: "restore [FILE]", Short: "Bring a book back from a copy",
		Long: "Checks a copy from end to end and puts it in the place of the book. A book that\n" +
			"stands there is kept beside it under another name.\n\n" +
			"The screens keep a handful of dated copies beside the book, fewer the older they\n" +
			"are: --list lists them, --newest brings the newest back.",
		Example: "  barkslip restore /media/stick/book-2027-05-04.bark\n  barkslip restore --newest",
		Args:    cobra.MaximumNArgs(1),
	}
	g := declare(c.Flags(), bookOption)
	list := c.Flags().Bool("list", false, "list the dated copies beside the book")
	newest := c.Flags().Bool("newest", false, "bring back the newest of the dated copies beside the book")
	c.RunE = func(_ *cobra.Command, args []string) error {
		path, err := placeForBook(g)
		if err != nil {
			return err
		}
		copies := store.DatedCopies(path)
		switch {
		case (*newest || *list) && len(args) > 0:
			return mistaken("FILE", args[0], "no file with --newest or --list")
		case *newest && len(copies) == 0:
			return fmt.Errorf("there is no dated copy beside %s", path)
		case *newest:
			return a.restoreFrom(copies[0].Path, path)
		case *list:
			a.listCopies(path, copies)
			return nil
		case len(args) == 0:
			return missing("FILE", "the copy to bring back; or --newest or --list, for the copies beside the book")
		}
		return a.restoreFrom(args[0], path)
	}
	return c
}

// listCopies lists the dated copies beside a book.
func (a *app) listCopies(path string, copies []store.Dated) {
	if len(copies) == 0 {
		fmt.Fprintf(a.out, "There is no dated copy beside %s.\n", path)
	}
	for _, c := range copies {
		fmt.Fprintf(a.out, "%s  %s\n", c.Day.Format("2 January 2006"), c.Path)
	}
}

func (a *app) restoreFrom(from, path string) error {
	if err := store.Restore(from, path, store.Options{}); err != nil {
		return err
	}
	book, err := store.Open(path, store.Options{ReadOnly: true})
	if err != nil {
		return err
	}
	defer book.Close()
	events, stumps := book.Count()
	fmt.Fprintf(a.out, "Restored %s: %s of %s, from %s.\n", path, count(events, "record"), count(stumps, "stump"), from)
	return nil
}
