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
		Use: "restore FILE", Short: "Bring a book back from a copy",
		Long: "Checks a copy from end to end and puts it in the place of the book. A book that\n" +
			"stands there is kept beside it under another name.",
		Example: "  barkslip restore /media/stick/book-2027-05-04.bark",
		Args:    oneArgument("FILE", "the copy to bring back"),
	}
	g := declare(c.Flags(), bookOption)
	c.RunE = func(_ *cobra.Command, args []string) error {
		path, err := placeForBook(g)
		if err != nil {
			return err
		}
		if err := store.Restore(args[0], path, store.Options{}); err != nil {
			return err
		}
		book, err := store.Open(path, store.Options{ReadOnly: true})
		if err != nil {
			return err
		}
		defer book.Close()
		events, stumps := book.Count()
		fmt.Fprintf(a.out, "Restored %s: %s of %s.\n", path, count(events, "record"), count(stumps, "stump"))
		return nil
	}
	return c
}
