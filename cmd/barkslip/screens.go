package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"time"

	"github.com/mattn/go-isatty"
	"github.com/spf13/cobra"

	"barkslip/store"
	"barkslip/ui"
)

// themeVariable names the environment variable that sets the theme.
const themeVariable = "BARKSLIP_THEME"

var themes = []string{"dark", "sunlight"}

var errNoTerminal = errors.New("the screens need a terminal, for keys and for drawing; barkslip --lines works without, and barkslip --help lists what else does")

// screens is barkslip without a command.
func (a *app) screens() *cobra.Command {
	c := &cobra.Command{
		Use: "barkslip", Short: "Walks a walnut grafter through every stump of a block",
		Long: "Barkslip walks a walnut grafter through every stump of a block: cutting back,\n" +
			"draining, grafting, sealing and the care of the seasons after. It does the sums,\n" +
			"says why, and knows what every stump needs next.\n\n" +
			"Without a command it opens the screens. The book is made on first use.\n\n" +
			"With --lines, and where TERM is dumb or not set, it asks line by line: question,\n" +
			"numbered answers, prompt; nothing is drawn or coloured. ? lists the words.\n\n" +
			"Environment:\n" +
			"  " + themeVariable + "   dark or sunlight, where --theme is not given\n" +
			"  " + clockVariable + "   a file with one instant (2027-05-04T14:30:00-07:00) to take for\n" +
			"                   the time, read anew whenever the time is asked\n" +
			"  " + traceVariable + "   set to anything: a trace where the program has a fault\n" +
			"  NO_COLOR         no colours",
		Example: "  barkslip\n  barkslip --lines < answers.txt\n  barkslip --book orchard.bark --theme sunlight\n  barkslip sample --book try.bark\n" +
			"  barkslip reckon ready --help",
	}
	holds(c)
	c.FParseErrWhitelist.UnknownFlags = false
	g := declare(c.Flags(), bookOption, option{name: "theme", value: "NAME", says: "dark, or sunlight: black on white"})
	plain := c.Flags().Bool("plain", false, "figures in plain characters, for terminals without braille dots")
	inLines := c.Flags().Bool("lines", false, "question, numbered answers, prompt; for screen readers, serial lines and scripts")
	look := c.Flags().Bool("look", false, "look on beside a book that is open elsewhere: kept up to date, nothing written")
	c.RunE = func(c *cobra.Command, args []string) error {
		if len(args) > 0 {
			return subcommandsOnly(c, args)
		}
		prefs := loadPrefs()
		if theme, err := chosenTheme(g); err != nil {
			return err
		} else if theme != "" {
			prefs.Theme = theme
		}
		terminal := isatty.IsTerminal(os.Stdin.Fd()) && isatty.IsTerminal(os.Stdout.Fd())
		if !terminal && !*inLines {
			return errNoTerminal
		}
		run := func(o ui.Options) error { return a.holding(func() error { return ui.Run(c.Context(), o) }) }
		in := bufio.NewReader(os.Stdin)
		if *inLines || dumb(os.Getenv("TERM")) {
			run = func(o ui.Options) error { return a.runLines(o, in) }
		}
		if *look {
			return a.lookOn(g, prefs, *plain, run)
		}
		book, err := a.openOwn(g, in)
		if errors.Is(err, errLeft) {
			return nil
		}
		if cannotWrite(err) {
			if path, there := placeForBook(g); there == nil && looksOn(path, err, in, os.Stderr) {
				return a.lookOn(g, prefs, *plain, run)
			}
		}
		if err != nil {
			return err
		}
		d := &desk{app: a, own: book, prefs: prefs, plain: *plain}
		defer func() { _ = d.close() }()
		left := make(chan struct{})
		defer close(left)
		go d.keepCopies(left)
		options, err := d.atOwn()
		if err != nil {
			return err
		}
		return run(options)
	}
	return c
}

// dumb says whether a terminal, by its name, can only write lines.
func dumb(term string) bool {
	return runtime.GOOS != "windows" && term == "" || term == "dumb" // Windows names none
}

// runLines tells the screens in words, line by line. Where the input is no terminal
// it is written with what is told.
func (a *app) runLines(o ui.Options, in io.Reader) error {
	o.Bell = nil
	err := ui.RunLines(o, in, a.out, !isatty.IsTerminal(os.Stdin.Fd()))
	var left *ui.NotTaken
	if errors.As(err, &left) {
		a.complain(left.Error())
		return errFindings
	}
	return err
}

// chosenTheme is the theme asked for, "" if none was.
func chosenTheme(g *given) (string, error) {
	theme := word(g, "theme", themes...)
	if g.err != nil || theme != "" {
		return theme, g.err
	}
	theme = os.Getenv(themeVariable)
	for _, t := range append(themes, "") {
		if strings.EqualFold(theme, t) {
			return t, nil
		}
	}
	return "", mistaken(themeVariable, theme, strings.Join(themes, ", "))
}

// screenOptions wires the screens to the book and to this computer.
func (a *app) screenOptions(book *store.Book, prefs ui.Prefs, plain bool) ui.Options {
	_, stumps := book.Count()
	return ui.Options{
		Stumps: stumps,
		Book:   book, Now: a.clockOf(book), Tick: time.Now, Prefs: prefs, SavePrefs: savePrefs, Plain: plain,
		NoColour: os.Getenv("NO_COLOR") != "", LocalZone: localZone(), Zones: time.LoadLocation,
		OpenFile: func(path string) (io.ReadCloser, error) { return store.OpenPlain(path) },
		SaveText: func(name, text string) (string, error) {
			return saveText(filepath.Join(filepath.Dir(book.Path()), name), text)
		},
		Work:      func() (done, of int) { w := book.Work(); return w.Done, w.Of },
		OwnDay:    func() bool { return a.ownDay(book) },
		EndOwnDay: func() error { return book.SetApart(0) },
		Learners:  store.Learners{Folder: filepath.Dir(book.Path())},
		Bell:      func() { _, _ = os.Stderr.WriteString("\a") },
	}
}

// saveText writes a text for the user beside the book and gives its path. Nothing
// is written over and no link is followed: where the name is taken, a number goes
// behind it.
func saveText(path, text string) (string, error) {
	ext := filepath.Ext(path)
	free, n := path, 1
	err := writeNew(free, []byte(text))
	for ; errors.Is(err, fs.ErrExist) && n < mostFiles; err = writeNew(free, []byte(text)) {
		n++
		free = fmt.Sprintf("%s-%d%s", strings.TrimSuffix(path, ext), n, ext)
	}
	if err != nil {
		return "", fmt.Errorf("%s cannot be written: %s", free, cause(err))
	}
	return free, nil
}

// mostFiles is how many files of one name are written.
const mostFiles = 1000
