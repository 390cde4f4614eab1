// Command barkslip walks a grafter through every stump of a block. Without a
// command it opens the screens; the commands answer single questions, move
// records in and out of a book, and look after the book itself.
package main

import (
	"bufio"
	"fmt"
	"io"
	"os"
	"strings"
	"sync/atomic"
	"time"
	_ "time/tzdata" // zones on machines that have none

	"github.com/mattn/go-isatty"
	"github.com/spf13/cobra"

	"barkslip/core/record"
)

func main() {
	collectLater()
	os.Exit(run(os.Args[1:], os.Stdout, os.Stderr))
}

// app is what every command needs: where to write and what time it is.
type app struct {
	out   *bufio.Writer
	err   io.Writer
	clock func() time.Time
	set   bool // the clock is a file's

	holdsTerminal atomic.Bool // see heedQuit
}

// run carries out one command line and returns the exit code: 0 done, 1 failed,
// 2 bad input.
func run(args []string, out, errs io.Writer) (code int) {
	if screen, ok := out.(*os.File); ok && isatty.IsTerminal(screen.Fd()) {
		out = &tame{to: out}
	}
	errs = &tame{to: errs}
	a := &app{out: bufio.NewWriterSize(out, 1<<16), err: errs}
	defer func() {
		if p := recover(); p != nil {
			fmt.Fprint(errs, trace())
			fmt.Fprintln(errs, oneLine(fmt.Sprintf("barkslip: a fault in the program, nothing more was done: %v", p)))
			code = exitFailed
		}
	}()
	err := a.execute(args)
	if flushed := a.out.Flush(); err == nil && flushed != nil {
		err = fmt.Errorf("the answer cannot be written: %w", flushed)
	}
	code = a.report(err, wantsJSON(args))
	if flushed := a.out.Flush(); flushed != nil {
		code = max(code, exitFailed)
	}
	return code
}

func (a *app) execute(args []string) (err error) {
	if a.clock, err = clock(os.Getenv(clockVariable)); err != nil {
		return err
	}
	a.set = os.Getenv(clockVariable) != ""
	root := a.root()
	root.SetArgs(args)
	root.SetOut(a.out)
	root.SetErr(a.err)
	if err := misnamed(root, args); err != nil {
		return err
	}
	ctx, done := a.heedQuit()
	defer done()
	return root.ExecuteContext(ctx)
}

// misnamed finds a command that does not exist before options are read: they
// may be those of what was meant.
func misnamed(root *cobra.Command, args []string) error {
	if len(args) > 0 && strings.HasPrefix(args[0], cobra.ShellCompRequestCmd) {
		return nil // a shell asks what could stand next
	}
	c, left, _ := root.Find(args)
	if !c.HasSubCommands() || len(left) == 0 || strings.HasPrefix(left[0], "-") {
		return nil
	}
	return subcommandsOnly(c, left)
}

// root is the whole tree of commands.
func (a *app) root() *cobra.Command {
	cobra.EnableCommandSorting = false
	cobra.MousetrapHelpText = "" // a double click opens the screens
	root := a.screens()
	root.Version = version
	root.SetVersionTemplate("barkslip {{.Version}}, " + revision().words() + "\n")
	root.SilenceErrors, root.SilenceUsage = true, true
	root.CompletionOptions.DisableDefaultCmd = true
	root.SetFlagErrorFunc(flagError)
	root.AddGroup(&cobra.Group{ID: "work", Title: "Sums:"}, &cobra.Group{ID: "block", Title: "Blocks and records:"}, &cobra.Group{ID: "book", Title: "The book:"})
	add := func(group string, commands ...*cobra.Command) {
		for _, c := range commands {
			c.GroupID = group
		}
		root.AddCommand(commands...)
	}
	add("work", a.reckon(), a.facts())
	add("block", a.due(), a.plan(), a.tally(), a.changes(), a.sheet(), a.block(), a.journal(), a.sample(), a.practice())
	add("book", a.check(), a.copy(), a.restore(), a.salvage(), a.meet())
	add("", a.completion(), a.man())
	root.SetHelpCommand(a.help())
	root.InitDefaultHelpCmd()
	root.SetUsageTemplate(usage)
	plainHelp(root)
	return root
}

// plainHelp words the help of every command alike.
func plainHelp(c *cobra.Command) {
	c.DisableFlagsInUseLine = true
	if c.HasAvailableLocalFlags() {
		c.Use += " [options]"
	}
	c.InitDefaultHelpFlag()
	if f := c.Flags().Lookup("help"); f != nil {
		f.Usage = "this help"
	}
	c.InitDefaultVersionFlag()
	if f := c.Flags().Lookup("version"); f != nil {
		f.Usage = "the version of barkslip"
	}
	for _, sub := range c.Commands() {
		plainHelp(sub)
	}
}

// oneLine keeps a text to one line without control characters.
func oneLine(s string) string {
	return record.Clean(strings.Join(strings.FieldsFunc(s, func(r rune) bool { return r < 0x20 || r >= 0x7f && r < 0xa0 }), " "))
}
