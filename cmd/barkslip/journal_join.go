package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"sync/atomic"
	"time"

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
func (a *app) joinInto(g *given, sources []*source, damaged bool) error {
	book, err := openOrMakeBook(g, store.Options{Much: true})
	if err != nil {
		return err
	}
	before, err := clashesOf(book)
	if err != nil {
		return errors.Join(err, book.Close())
	}
	j := join{a: a, book: book}
	err = a.watched(j.far, func(ctx context.Context) error { return j.all(ctx, sources) })
	fmt.Fprintf(a.out, "%d added, %d known.\n", j.total.Added, j.total.Known)
	if err == nil {
		err = a.sayClashes(book, before)
	}
	if j.stopped != nil {
		a.complain("stopped before the end of " + j.stopped.file + "; what came is kept, join again for the rest")
	}
	err = errors.Join(err, book.Close())
	if err == nil && (damaged || j.wrong || j.stopped != nil) {
		return errFindings
	}
	return err
}

// join is a joining under way.
type join struct {
	a       *app
	book    *store.Book
	total   store.JoinReport
	wrong   bool
	stopped *source // in the middle of which it was stopped

	now atomic.Pointer[source] // the one that is read
}

// all takes the sources into the book one by one, up to the end of ctx. What is wrong with
// one of them is complained of and the next has its turn; the error is the book's.
func (j *join) all(ctx context.Context, sources []*source) error {
	for _, s := range sources {
		s.began = time.Now()
		j.now.Store(s)
		report, err := j.joinOne(ctx, s)
		j.total.Added, j.total.Known = j.total.Added+report.Added, j.total.Known+report.Known
		for _, id := range report.Clashing {
			fmt.Fprintf(j.a.err, "%sthe event %s came with two contents; one of them is kept\n", s.name, id)
		}
		for _, refused := range report.Refused {
			j.wrong = true
			fmt.Fprintln(j.a.err, s.name+oneLine(refused.Error()))
		}
		if report.More > 0 {
			j.a.complain(fmt.Sprintf("%sand %s more were left out", s.name, count(report.More, "event")))
		}
		if err != nil {
			return fmt.Errorf("%s%w", s.name, err)
		}
		if ctx.Err() != nil && !s.whole.Load() {
			j.stopped = s
			return nil
		}
	}
	return nil
}

func (j *join) joinOne(ctx context.Context, s *source) (store.JoinReport, error) {
	if s.book != nil {
		return j.book.JoinBook(ctx, s.book, j.namingBad(ctx, s))
	}
	return j.book.JoinEntries(ctx, j.namingBad(ctx, s))
}

// far says how far the joining is.
func (j *join) far() string {
	s := j.now.Load()
	if s == nil {
		return "Opening the journals."
	}
	if w := j.book.Work(); w.Of > 0 {
		return fmt.Sprintf("%s is read. Working out what is due: %d of %s.", oneLine(s.file), w.Done, count(w.Of, "stump"))
	}
	if s.whole.Load() {
		return oneLine(s.file) + " is read. Writing it into the book."
	}
	read, what := s.read.Load(), "records"
	if s.inBytes {
		read, what = read>>20, "MB"
	}
	of := s.of
	if s.inBytes {
		of >>= 20
	}
	if s.of == 0 {
		return fmt.Sprintf("Reading %s: %d %s.", oneLine(s.file), read, what)
	}
	says := fmt.Sprintf("Reading %s: %d of %d %s", oneLine(s.file), min(read, of), of, what)
	if rest := left(float64(s.read.Load())/float64(s.of), time.Since(s.began)); rest != "" {
		says += ", " + rest
	}
	return says + "."
}

// namingBad passes the events of a source on, writes out its bad lines, and
// ends where the source cannot be read further.
func (j *join) namingBad(ctx context.Context, s *source) store.Entries {
	return func(yield func(store.Entry, error) bool) {
		for e, err := range s.events(ctx) {
			var line *store.LineError
			var refused *store.RefusedError
			switch {
			case errors.As(err, &line):
				j.wrong = true
				fmt.Fprintln(j.a.err, s.name+oneLine(line.Error()))
			case errors.As(err, &refused):
				if !yield(e, err) {
					return
				}
			case err != nil:
				j.wrong = true
				j.a.complain(s.name + err.Error())
				return
			case !yield(e, nil):
				return
			}
		}
		s.whole.Store(ctx.Err() == nil)
	}
}
