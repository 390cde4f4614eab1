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
	return run(a.lookOptions(l, prefs, plain))
}

// looksOn asks, of a book that is open elsewhere, whether to look on at it.
func looksOn(path string, in io.Reader, out io.Writer) bool {
	fmt.Fprintf(out, "%s is open in another program.\nLook on beside it? All screens, kept up to date; nothing is written.  y/n ", oneLine(record.Clean(path)))
	line, _ := bufio.NewReader(in).ReadString('\n')
	return strings.HasPrefix(strings.ToLower(strings.TrimSpace(line)), "y")
}
