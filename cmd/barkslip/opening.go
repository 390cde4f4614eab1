package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"

	"barkslip/core/record"
	"barkslip/store"
)

// errLeft is a question on opening that was answered with leaving.
var errLeft = errors.New("left")

// openOwn opens the book for the screens, or makes it. Of one that may have lost its last
// change it is asked first whether to check it, of one that is damaged whether to save what
// holds; nothing is written before that.
func (a *app) openOwn(g *given, in *bufio.Reader) (*store.Book, error) {
	path, err := placeForBook(g)
	if err != nil {
		return nil, err
	}
	if store.Halved(path) {
		if err := a.askHalved(path, in, os.Stderr); err != nil {
			return nil, err
		}
	}
	book, err := store.OpenOrCreate(path, store.Options{GoOn: true})
	if !isBroken(err) {
		return book, err
	}
	saved, failed := store.Salvage(path)
	if failed != nil {
		return nil, err
	}
	return a.askSalvage(path, err, saved, in, os.Stderr)
}

// askHalved tells that one of a book's first pages does not hold.
func (a *app) askHalved(path string, in *bufio.Reader, out io.Writer) error {
	fmt.Fprintf(out, "barkslip: %s.\nNothing was written to it.\n", store.HalvedWords(shownPath(path)))
	for {
		switch answer(in, out, "1 check it now  2 go on with it  3 leave") {
		case "1":
			if err := a.checkPath(path); err != nil && !errors.Is(err, errFindings) {
				return err
			}
		case "2":
			return nil
		default:
			return errLeft
		}
	}
}

// askSalvage tells of a damaged book, and opens a new one of what holds where that is
// wanted.
func (a *app) askSalvage(path string, opening error, saved *store.Salvaged, in *bufio.Reader, out io.Writer) (*store.Book, error) {
	ext := filepath.Ext(path)
	to := strings.TrimSuffix(path, ext) + "-saved" + ext
	fmt.Fprintln(out, oneLine(opening.Error()))
	for _, says := range saved.Say() {
		fmt.Fprintln(out, oneLine(says))
	}
	copies := store.DatedCopies(path)
	if len(copies) > 0 {
		fmt.Fprintf(out, "A copy of %s stands beside it: barkslip restore --newest brings it back.\n", copies[0].Day.Format("2 January 2006"))
	}
	if answer(in, out, fmt.Sprintf("1 save what holds to %s and open that  2 leave", shownPath(to))) != "1" {
		return nil, opening
	}
	if err := store.SalvageInto(saved, to, store.Options{}); err != nil {
		return nil, err
	}
	return store.Open(to, store.Options{})
}

// answer asks until a line comes; at the end of the input it is "".
func answer(in *bufio.Reader, out io.Writer, choices string) string {
	fmt.Fprintf(out, "%s\n> ", choices)
	line, _ := in.ReadString('\n')
	return strings.TrimSpace(line)
}

func shownPath(path string) string { return oneLine(record.Clean(path)) }

// copiesAfter is how long the screens are open before a dated copy is made: it must not
// stand in the way of the first answers.
const copiesAfter = 20 * time.Second

// keepCopies makes the day's copy beside a book, once the screens are up.
func (d *desk) keepCopies(stop <-chan struct{}) {
	select {
	case <-stop:
	case <-time.After(copiesAfter):
		if _, err := store.KeepDated(d.own.Path(), time.Now(), store.Options{}); err != nil {
			d.notCopied.Store(&err)
		}
	}
}

// copies are the days of the copies kept beside the book, and why today's was not made
// where it was to be.
func (d *desk) copies() (days []time.Time, err error) {
	for _, c := range store.DatedCopies(d.own.Path()) {
		days = append(days, c.Day)
	}
	if failed := d.notCopied.Load(); failed != nil {
		err = *failed
	}
	return days, err
}
