package main

import (
	"context"
	"errors"
	"fmt"
	"os"

	"github.com/spf13/cobra"

	"barkslip/store"
)

func (a *app) journalJoin() *cobra.Command {
	const accepted = "journals or books to join"
	c := &cobra.Command{
		Use: "join FILE…", Short: "Take the records of journals or other books into a book",
		Long: "Takes in what the book does not know yet. The book is made if there is none.\n" +
			"A journal may be packed (.zst, .gz). A line that does not hold and a book that is\n" +
			"damaged are named, the rest joins.",
		Example: "  barkslip journal join may.jsonl\n  barkslip journal join --book ours.bark theirs.bark",
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				return missing("FILE", accepted)
			}
			return nil
		},
	}
	g := declare(c.Flags(), bookOption)
	c.RunE = func(_ *cobra.Command, args []string) error {
		if err := notItself(g, args); err != nil {
			return err
		}
		sources, damaged, err := openSources(args)
		defer closeAll(sources)
		if err != nil {
			return err
		}
		for _, says := range damaged {
			a.complain(says)
		}
		if len(sources) == 0 {
			return errFindings
		}
		return a.joinInto(g, sources, len(damaged) > 0)
	}
	return c
}

// notItself refuses to join a book to itself.
func notItself(g *given, files []string) error {
	path, err := bookPath(g)
	if err != nil {
		return err
	}
	book, err := os.Stat(path)
	if err != nil {
		return nil // there is none yet, or opening it tells
	}
	for _, file := range files {
		if info, err := os.Stat(file); err == nil && os.SameFile(info, book) {
			return mistaken("FILE", file, "journals or books other than the one they are joined to; a book is not joined to itself")
		}
	}
	return nil
}

// joinInto joins the sources to the book, which is made if there is none.
func (a *app) joinInto(g *given, sources []source, damaged bool) error {
	book, err := openOrMakeBook(g)
	if err != nil {
		return err
	}
	before, err := clashesOf(book)
	if err != nil {
		return errors.Join(err, book.Close())
	}
	total, wrong, err := a.join(book, sources)
	fmt.Fprintf(a.out, "%d added, %d known.\n", total.Added, total.Known)
	if err == nil {
		err = a.sayClashes(book, before)
	}
	err = errors.Join(err, book.Close())
	if err == nil && (damaged || wrong) {
		return errFindings
	}
	return err
}

// join takes the sources into the book one by one. What is wrong with one of
// them is complained of and the next has its turn; the error is the book's.
func (a *app) join(book *store.Book, sources []source) (total store.JoinReport, wrong bool, err error) {
	for _, s := range sources {
		report, err := book.JoinEntries(context.Background(), a.namingBad(s, &wrong))
		total.Added, total.Known = total.Added+report.Added, total.Known+report.Known
		for _, id := range report.Clashing {
			fmt.Fprintf(a.err, "%sthe event %s came with two contents; one of them is kept\n", s.name, id)
		}
		for _, refused := range report.Refused {
			wrong = true
			fmt.Fprintln(a.err, s.name+oneLine(refused.Error()))
		}
		if err != nil {
			return total, wrong, fmt.Errorf("%s%w", s.name, err)
		}
	}
	return total, wrong, nil
}

// namingBad passes the events of a source on, writes out its bad lines, and
// ends where the source cannot be read further.
func (a *app) namingBad(s source, wrong *bool) store.Entries {
	return func(yield func(store.Entry, error) bool) {
		for e, err := range s.events {
			var line *store.LineError
			var refused *store.RefusedError
			switch {
			case errors.As(err, &line):
				*wrong = true
				fmt.Fprintln(a.err, s.name+oneLine(line.Error()))
			case errors.As(err, &refused):
				if !yield(e, err) {
					return
				}
			case err != nil:
				*wrong = true
				a.complain(s.name + err.Error())
				return
			case !yield(e, nil):
				return
			}
		}
	}
}
