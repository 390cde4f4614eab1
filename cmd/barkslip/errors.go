package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"strconv"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// The exit codes; 0 is done.
const (
	exitFailed = 1 // damaged, locked, disk; findings of a check, bad lines of a join
	exitBad    = 2 // bad input
)

// badInput is an option, an argument or a command that cannot be taken.
type badInput struct {
	option   string  // as it is typed: --across, FILE, command
	given    *string // nil where it is missing
	at       string  // the part at fault, where what was given has several
	accepted string
}

func (b *badInput) Error() string {
	switch {
	case b.given == nil:
		return fmt.Sprintf("%s is missing; accepted: %s", b.option, b.accepted)
	case b.at != "" && b.at != *b.given:
		return fmt.Sprintf("%s: given %s, at fault %s; accepted: %s", b.option, quote(*b.given), quote(b.at), b.accepted)
	}
	return fmt.Sprintf("%s: given %s; accepted: %s", b.option, quote(*b.given), b.accepted)
}

// mistaken is what was given for an option, and what would be taken.
func mistaken(option, given, accepted string) error {
	return &badInput{option: option, given: &given, accepted: accepted}
}

// missing is an option or argument that must be given.
func missing(option, accepted string) error { return &badInput{option: option, accepted: accepted} }

// quote shows what was given on one line, cut where it is long.
func quote(s string) string {
	if r := []rune(s); len(r) > 120 {
		s = string(r[:120]) + "…"
	}
	return strconv.Quote(s)
}

// errFindings ends a command that did its work but found something wrong; each
// line has been written already.
var errFindings = errors.New("told already")

// errBadLines refuses input whose faults have been written line by line.
var errBadLines = errors.New("told already")

// report writes an error as one line, and as JSON where that was asked for, and
// returns the exit code.
func (a *app) report(err error, asJSON bool) int {
	var bad *badInput
	switch {
	case err == nil:
		return 0
	case errors.Is(err, errBadLines):
		return exitBad
	case errors.Is(err, errFindings):
		return exitFailed
	case errors.As(err, &bad):
		a.complain(bad.Error())
		if asJSON {
			a.writeJSON(map[string]any{"error": struct {
				Option   string  `json:"option"`
				Given    *string `json:"given"`
				Accepted string  `json:"accepted"`
			}{bad.option, bad.given, bad.accepted}})
		}
		return exitBad
	}
	a.complain(err.Error())
	return exitFailed
}

func (a *app) complain(says string) { fmt.Fprintln(a.err, oneLine("barkslip: "+says)) }

// writeJSON writes one object and a newline.
func (a *app) writeJSON(v any) error {
	enc := json.NewEncoder(a.out)
	enc.SetEscapeHTML(false)
	return enc.Encode(v)
}

// wantsJSON looks for --json among the arguments themselves: they may be too
// wrong to be read as options.
func wantsJSON(args []string) bool {
	for _, arg := range args {
		switch arg {
		case "--":
			return false
		case "--json", "--json=true":
			return true
		}
	}
	return false
}

// flagError words what cobra finds wrong with the options of a command.
func flagError(c *cobra.Command, err error) error {
	var unknown *pflag.NotExistError
	var valueless *pflag.ValueRequiredError
	var invalid *pflag.InvalidValueError
	var syntax *pflag.InvalidSyntaxError
	switch {
	case errors.As(err, &valueless):
		f := valueless.GetFlag()
		return missing("--"+f.Name, f.Value.Type()+": "+strings.TrimSuffix(f.Usage, needed))
	case errors.As(err, &invalid):
		return mistaken("--"+invalid.GetFlag().Name, invalid.GetValue(), "the option alone, without a value")
	case errors.As(err, &unknown):
		name := "--" + unknown.GetSpecifiedName()
		if short := unknown.GetSpecifiedShortnames(); short != "" {
			name = "-" + short
		}
		return mistaken(name, name, "the options of "+c.CommandPath()+": "+strings.Join(optionNames(c), ", "))
	case errors.As(err, &syntax):
		return mistaken(syntax.GetSpecifiedFlag(), syntax.GetSpecifiedFlag(), "the options of "+c.CommandPath()+": "+strings.Join(optionNames(c), ", "))
	}
	return err
}

func optionNames(c *cobra.Command) []string {
	var names []string
	c.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, "--"+f.Name) })
	return names
}

// noArguments is for commands that take options alone.
func noArguments(c *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	return mistaken("argument", args[0], "options alone: "+strings.Join(optionNames(c), ", "))
}

// oneArgument is for commands that take one argument, called name.
func oneArgument(name, accepted string) cobra.PositionalArgs {
	return func(_ *cobra.Command, args []string) error {
		switch {
		case len(args) == 0 || args[0] == "":
			return missing(name, accepted)
		case len(args) > 1:
			return mistaken(name, strings.Join(args, " "), accepted+", and one of them")
		}
		return nil
	}
}

// holds makes a command that only holds others; whatever else stands behind it
// is a mistake in the name of one.
func holds(c *cobra.Command) {
	c.RunE, c.Args = subcommandsOnly, cobra.ArbitraryArgs
	c.FParseErrWhitelist.UnknownFlags = true
}

// subcommandsOnly is the work of a command that only holds others.
func subcommandsOnly(c *cobra.Command, args []string) error {
	var names []string
	for _, sub := range c.Commands() {
		if sub.IsAvailableCommand() {
			names = append(names, sub.Name())
		}
	}
	accepted := "one of " + strings.Join(names, ", ")
	if len(args) > 0 {
		return mistaken("command", args[0], accepted)
	}
	return missing("command", accepted+", after "+c.CommandPath())
}
