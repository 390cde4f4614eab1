package main

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"time"

	"github.com/spf13/pflag"

	"barkslip/core/girth"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// option is one --name VALUE of a command. All are taken as text and read by
// the functions below, so that complaints about them are worded alike.
type option struct {
	name  string
	value string // what stands for the value in the help
	says  string
	need  bool
	many  bool // may be given more than once
	list  bool // its value holds several things
	usual any  // taken where it is not given; of the type the option is read as
}

// texts is an option's value as it was typed, once for each time.
type texts struct {
	value string
	given []string
}

func (t *texts) Set(s string) error { t.given = append(t.given, s); return nil }
func (t *texts) String() string     { return "" }
func (t *texts) Type() string       { return t.value }

// given is the options of one command line. The first that cannot be taken is
// kept in err; the readers then go on with nought.
type given struct {
	options map[string]option
	texts   map[string]*texts
	err     error
}

// declare gives a command its options.
func declare(flags *pflag.FlagSet, options ...option) *given {
	flags.SortFlags = false
	g := &given{options: map[string]option{}, texts: map[string]*texts{}}
	for _, o := range options {
		g.options[o.name] = o
		g.texts[o.name] = &texts{value: o.value}
		flags.Var(g.texts[o.name], o.name, o.help())
	}
	return g
}

// needed marks an option that must be given.
const needed = " (needed)"

// help is the option's line in the help.
func (o option) help() string {
	switch {
	case o.need:
		return o.says + needed
	case o.usual != nil:
		return fmt.Sprintf("%s (default %s)", o.says, showUsual(o.usual))
	}
	return o.says
}

// showUsual prints a default as it would be typed.
func showUsual(v any) string {
	exact := func(f float64) string { return strconv.FormatFloat(f, 'f', -1, 64) }
	if l, ok := v.(unit.Length); ok {
		if in := fmt.Sprintf("%.4g", l.Inches()); l != 0 && len(in) <= len(exact(l.MM())) {
			return in + "in"
		}
		return exact(l.MM()) + "mm"
	}
	return fmt.Sprint(v)
}

// has says whether an option was given.
func (g *given) has(name string) bool { return len(g.texts[name].given) > 0 }

// each is every value of an option.
func (g *given) each(name string) []string { return g.texts[name].given }

// fail keeps the first fault.
func (g *given) fail(err error) {
	if g.err == nil {
		g.err = err
	}
}

// refuse faults what was given for an option.
func (g *given) refuse(name, accepted string) { g.fail(g.fault(name, "", accepted)) }

// fault is an option with what was typed for it, if anything.
func (g *given) fault(name, at, accepted string) error {
	bad := &badInput{option: "--" + name, accepted: accepted}
	t := g.texts[name]
	if t == nil || len(t.given) == 0 {
		if at != "" {
			bad.given = &at
		}
		return bad
	}
	text := strings.Join(t.given, " ")
	bad.given = &text
	if g.options[name].list || g.options[name].many {
		bad.at = at
	}
	return bad
}

// read reads an option once: its value, its usual one, or nought.
func read[T any](g *given, name string, parse func(string) (T, error)) T {
	var none T
	o, all := g.options[name], g.each(name)
	switch {
	case len(all) > 1 && !o.many:
		g.refuse(name, "the option once")
		return none
	case len(all) == 0 && o.need:
		_, err := parse("")
		g.fail(g.fault(name, "", accepts(err)))
		return none
	case len(all) == 0:
		v, _ := o.usual.(T)
		return v
	}
	v, err := parse(strings.Join(all, " "))
	if err != nil {
		at := ""
		var fault *unit.Error
		if errors.As(err, &fault) {
			at = fault.Given
		}
		g.fail(g.fault(name, at, accepts(err)))
		return none
	}
	return v
}

// accepts is what an error says would be taken.
func accepts(err error) string {
	var fault *unit.Error
	var impossible *trade.Impossible
	switch {
	case errors.As(err, &fault):
		return fault.Accepted
	case errors.As(err, &impossible):
		return impossible.Accepted
	case err != nil:
		return err.Error()
	}
	return "a value"
}

func (g *given) length(name string) unit.Length {
	return read(g, name, func(s string) (unit.Length, error) { return unit.ParseLength(s, 0) })
}

// size is a length that wood has: above 0 and up to the widest stump.
func (g *given) size(name string) unit.Length {
	return read(g, name, func(s string) (unit.Length, error) {
		l, err := unit.ParseLength(s, 0)
		if err != nil || l <= 0 || l > girth.WidestStump {
			return 0, &unit.Error{Given: s, Accepted: "a length above 0 and up to 40in (1016mm), with its unit: 4in, 3 1/2in, 10.2cm or 100mm"}
		}
		return l, nil
	})
}

func (g *given) bearing(name string) unit.Bearing { return read(g, name, unit.ParseBearing) }

func (g *given) temperature(name string) unit.Temperature {
	return read(g, name, func(s string) (unit.Temperature, error) { return unit.ParseTemperature(s, 0) })
}

func (g *given) speed(name string) unit.Speed {
	return read(g, name, func(s string) (unit.Speed, error) { return unit.ParseSpeed(s, 0) })
}

func (g *given) clock(name string) unit.Clock { return read(g, name, unit.ParseClock) }

// whole is a whole number from least to most.
func (g *given) whole(name string, least, most int) int {
	return read(g, name, func(s string) (int, error) {
		n, err := strconv.Atoi(strings.TrimSpace(s))
		if err != nil || n < least || n > most {
			return 0, &unit.Error{Given: s, Accepted: fmt.Sprintf("a whole number from %d to %d", least, most)}
		}
		return n, nil
	})
}

// decimal is a number from least to most.
func (g *given) decimal(name string, least, most float64) float64 {
	return read(g, name, func(s string) (float64, error) { return parseDecimal(s, least, most) })
}

func parseDecimal(s string, least, most float64) (float64, error) {
	text := strings.TrimSpace(s)
	n, err := strconv.ParseFloat(text, 64)
	if err != nil || strings.Trim(text, "+-.0123456789") != "" || !(n >= least && n <= most) {
		return 0, &unit.Error{Given: s, Accepted: fmt.Sprintf("a number from %g to %g", least, most)}
	}
	return n, nil
}

// The days a date or an instant may name: a slip of the hand lies outside.
var (
	firstDay = unit.MakeDate(1971, time.January, 1)
	lastDay  = unit.MakeDate(2199, time.December, 31)
)

func (g *given) date(name string) unit.Date {
	return read(g, name, func(s string) (unit.Date, error) {
		d, err := unit.ParseDate(strings.TrimSpace(s))
		if err == nil && (d < firstDay || d > lastDay) {
			err = &unit.Error{Given: s, Accepted: "a date such as 2027-05-04, from 1971 to 2199"}
		}
		return d, err
	})
}

// instant is a time with its offset from UTC.
func (g *given) instant(name string) time.Time {
	return read(g, name, parseInstant)
}

func parseInstant(s string) (time.Time, error) {
	t, err := time.Parse(time.RFC3339, strings.TrimSpace(s))
	if err != nil || unit.DateOf(t) < firstDay || unit.DateOf(t) > lastDay {
		return time.Time{}, &unit.Error{Given: s, Accepted: "an instant with its offset such as 2027-05-04T14:30:00-07:00"}
	}
	return t, nil
}

// zone is a time zone by its name; the computer's own is no answer.
func (g *given) zone(name string) *time.Location { return read(g, name, parseZone) }

func parseZone(s string) (*time.Location, error) {
	z, err := time.LoadLocation(s)
	if err != nil || s == "" || s == "Local" {
		return nil, &unit.Error{Given: s, Accepted: "a time zone such as America/Los_Angeles"}
	}
	return z, nil
}

func (g *given) system(name string) unit.System { return read(g, name, unit.ParseSystem) }

// word is one of a few words.
func word[T ~string](g *given, name string, words ...T) T {
	return read(g, name, func(s string) (T, error) {
		var names []string
		for _, w := range words {
			if strings.EqualFold(strings.TrimSpace(s), string(w)) {
				return w, nil
			}
			names = append(names, string(w))
		}
		return "", &unit.Error{Given: s, Accepted: strings.Join(names, ", ")}
	})
}

// text is a text that must hold something.
func (g *given) text(name, accepted string) string {
	return read(g, name, func(s string) (string, error) {
		if strings.TrimSpace(s) == "" {
			return "", &unit.Error{Given: s, Accepted: accepted}
		}
		return s, nil
	})
}
