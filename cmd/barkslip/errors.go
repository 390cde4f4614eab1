package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"strconv"
	"strings"
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
	bare     bool    // the option stands there without its value
	at       string  // the part at fault, where what was given has several
	accepted string
}

func (b *badInput) Error() string {
	switch {
	case b.bare:
		return fmt.Sprintf("%s: a value is missing; accepted: %s", b.option, b.accepted)
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
		value, given := strings.CutPrefix(arg, "--json=")
		yes, _ := strconv.ParseBool(value)
		switch {
		case arg == "--":
			return false
		case arg == "--json", given && yes:
			return true
		}
	}
	return false
}
