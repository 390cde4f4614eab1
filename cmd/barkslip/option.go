package main

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

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
	var either *unit.EitherDay
	switch {
	case errors.As(err, &fault):
		return fault.Accepted
	case errors.As(err, &either):
		return fmt.Sprintf("which day is meant: %s or %s", either.First.Short(), either.Second.Short())
	case errors.As(err, &impossible):
		return impossible.Accepted
	case err != nil:
		return err.Error()
	}
	return "a value"
}
