package main

import (
	"errors"
	"fmt"
	"io"
	"iter"
	"os"

	"github.com/spf13/cobra"

	"barkslip/core"
	"barkslip/store"
)

func (a *app) journalJoin() *cobra.Command {
	const accepted = "journals or books to join"
	c := &cobra.Command{
		Use: "join FILE…", Short: "Take the records of journals or other books into a book",
		Long: "Takes in what the book does not know yet. The book is made if there is none. A\n" +
			"line that does not hold is named, the rest joins.",
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
		sources, err := openSources(args, len(args) > 1)
		defer closeAll(sources)
		if err != nil {
			return err
		}
		book, err := openOrMakeBook(g)
		if err != nil {
			return err
		}
		return errors.Join(a.join(book, sources), book.Close())
	}
	return c
}

// source is one file to join.
type source struct {
	name   string
	events iter.Seq2[core.Event, error]
	from   io.Closer
}

// openSources opens all files before anything is joined. Names are kept for
// complaints where there are several.
func openSources(files []string, named bool) (sources []source, err error) {
	for _, file := range files {
		s, err := openSource(file)
		if err != nil {
			return sources, err
		}
		if named {
			s.name = file + ": "
		}
		sources = append(sources, s)
	}
	return sources, nil
}

// openSource opens a book, or a journal as text.
func openSource(file string) (source, error) {
	book, err := store.Open(file, store.Options{ReadOnly: true})
	if err == nil {
		return source{events: book.All(), from: book}, nil
	}
	if !errors.Is(err, store.ErrNotABook) && !errors.Is(err, store.ErrMissing) {
		return source{}, err
	}
	text, err := openFile("FILE", file)
	if err != nil {
		return source{}, err
	}
	return source{events: store.ReadLines(text), from: text}, nil
}

// openFile opens a file that an option or argument names.
func openFile(option, name string) (*os.File, error) {
	file, err := os.Open(name)
	if err == nil {
		var info os.FileInfo
		if info, err = file.Stat(); err == nil && !info.IsDir() {
			return file, nil
		}
		_ = file.Close()
		if err == nil {
			err = errors.New("it is a folder")
		}
	}
	return nil, mistaken(option, name, "a file that can be read ("+cause(err)+")")
}

func closeAll(sources []source) {
	for _, s := range sources {
		_ = s.from.Close()
	}
}

// join takes the sources into the book one by one and reports what was new.
func (a *app) join(book *store.Book, sources []source) error {
	total, bad := store.JoinReport{}, false
	for _, s := range sources {
		report, err := book.Join(a.namingBad(s, &bad))
		total.Added, total.Known = total.Added+report.Added, total.Known+report.Known
		for _, id := range report.Clashing {
			fmt.Fprintf(a.err, "%sthe event %s came with two contents; one of them is kept\n", s.name, id)
		}
		if err != nil {
			return fmt.Errorf("%s%w", s.name, err)
		}
	}
	fmt.Fprintf(a.out, "%d added, %d known.\n", total.Added, total.Known)
	if bad {
		return errFindings
	}
	return nil
}

// namingBad passes the events of a source on and writes its bad lines out.
func (a *app) namingBad(s source, bad *bool) iter.Seq2[core.Event, error] {
	return func(yield func(core.Event, error) bool) {
		for e, err := range s.events {
			var line *store.LineError
			if errors.As(err, &line) {
				*bad = true
				fmt.Fprintln(a.err, s.name+oneLine(line.Error()))
			}
			if !yield(e, err) {
				return
			}
		}
	}
}
