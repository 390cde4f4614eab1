package main

import (
	"errors"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// flagError words what cobra finds wrong with the options of a command.
func flagError(c *cobra.Command, err error) error {
	var unknown *pflag.NotExistError
	var valueless *pflag.ValueRequiredError
	var invalid *pflag.InvalidValueError
	var syntax *pflag.InvalidSyntaxError
	switch {
	case errors.As(err, &valueless):
		f := valueless.GetFlag()
		return &badInput{option: "--" + f.Name, bare: true, accepted: acceptedAs(f)}
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

// forms is how values of each kind are written.
var forms = map[string]string{
	"LENGTH":      "a length with its unit: 4in, 3 1/2in, 3ft, 10.2cm, 100mm or 1.2m",
	"BEARING":     "degrees from 0 to 360 clockwise from north, or n, ne, e, se, s, sw, w, nw",
	"TEMPERATURE": "a temperature with its unit: 88F or 31C",
	"SPEED":       "a speed with its unit: 5mph, 2m/s or 7km/h",
	"DATE":        "a date such as 2027-05-04",
	"TIME":        clockLimits,
	"INSTANT":     "an instant with its offset such as 2027-05-04T14:30:00-07:00",
	"DEGREES":     "degrees such as 38.5 or -121.8",
	"SYSTEM":      "us or metric",
	"SHARE":       "a number from 0 to 1",
	"N":           "a whole number",
}

// acceptedAs says of an option what its value means and how it is written.
func acceptedAs(f *pflag.Flag) string {
	means := strings.TrimSuffix(f.Usage, needed)
	if form := forms[f.Value.Type()]; form != "" {
		return form + " (" + means + ")"
	}
	return f.Value.Type() + ", " + means
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
