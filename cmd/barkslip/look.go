package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
	"time"

	"barkslip/core/record"
	"barkslip/store"
	"barkslip/ui"
)

// lookOptions wires the screens to a look: nothing is written, not even what the
// program remembers of its user.
func (a *app) lookOptions(l *store.Look, prefs ui.Prefs, plain bool) ui.Options {
	return ui.Options{
		Book: l, Now: func() time.Time { return a.clockOf(l.Book())() }, Tick: time.Now, Prefs: prefs, Plain: plain,
		NoColour: os.Getenv("NO_COLOR") != "", LocalZone: localZone(), Zones: time.LoadLocation,
		OpenFile:  func(string) (io.ReadCloser, error) { return nil, errLookWrites },
		SaveText:  func(string, string) (string, error) { return "", errLookWrites },
		OwnDay:    func() bool { return a.ownDay(l.Book()) },
		EndOwnDay: func() error { return errLookWrites },
		Refresh:   l.Refresh,
		Bell:      func() { _, _ = os.Stderr.WriteString("\a") },
	}
}

var errLookWrites = errors.New("looking on: nothing is written here; answer in the program that has the book open")

// lookOn opens the screens, as they are run, beside a book that may be open elsewhere.
func (a *app) lookOn(g *given, prefs ui.Prefs, plain bool, run func(ui.Options) error) error {
	path, err := bookPath(g)
	if err != nil {
		return err
	}
	l, err := store.OpenLook(path, store.Options{})
	if err != nil {
		return err
	}
	defer l.Close()
	if l.Book().Halved() {
		a.complain(store.HalvedWords(path) + "; barkslip check tells more")
	}
	return run(a.lookOptions(l, prefs, plain))
}

// cannotWrite says whether a book could not be opened only since it cannot be written now:
// it is open elsewhere, or the disk is full or read-only, so that older summaries cannot be
// made anew in it. It can be looked at.
func cannotWrite(err error) bool {
	for _, kind := range []error{store.ErrLocked, store.ErrFull, store.ErrReadOnly, store.ErrNoAccess} {
		if errors.Is(err, kind) {
			return true
		}
	}
	return false
}

// looksOn asks, of a book that cannot be written, whether to look on at it.
func looksOn(path string, why error, in io.Reader, out io.Writer) bool {
	says := oneLine(why.Error())
	if errors.Is(why, store.ErrLocked) {
		says = oneLine(record.Clean(path)) + " is open in another program."
	}
	fmt.Fprintf(out, "%s\nLook on beside it? All screens, kept up to date; nothing is written.  y/n ", says)
	line, _ := bufio.NewReader(in).ReadString('\n')
	return strings.HasPrefix(strings.ToLower(strings.TrimSpace(line)), "y")
}
