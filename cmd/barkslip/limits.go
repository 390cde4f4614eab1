package main

import (
	"strconv"
	"strings"

	"barkslip/core/unit"
)

// What options of a kind take, where their size can be at fault.
const (
	lengthLimits = "a length from 0 to 20000m, with its unit: 4in, 3 1/2in, 3ft, 10.2cm, 100mm or 1.2m"
	rateLimits   = "the girth gained a year, 0 to 1m, with its unit: 3in, 8cm or 80mm"
	clockLimits  = "a time from 00:00 to 23:59, such as 14:30"
)

// within reads as parse does, but of a value that is understood and too small
// or too large it says what the limits are.
func within[T any](parse func(string) (T, error), limits string) func(string) (T, error) {
	return func(s string) (T, error) {
		v, err := parse(s)
		if err != nil && understood(s, parse) {
			return v, &unit.Error{Given: s, Accepted: limits}
		}
		return v, err
	}
}

// understood says whether a value that parse does not take would be taken with
// another number: without its sign, or with a 1.
func understood[T any](s string, parse func(string) (T, error)) bool {
	text := strings.TrimSpace(s)
	if bare, negative := strings.CutPrefix(text, "-"); negative {
		if _, err := parse(bare); err == nil {
			return true
		}
	}
	name := strings.TrimLeft(text, "+-.0123456789")
	if _, err := strconv.ParseFloat(strings.TrimSuffix(text, name), 64); err != nil {
		return false
	}
	_, err := parse("1" + name)
	return err == nil
}

func parseLength(s string) (unit.Length, error) { return unit.ParseLength(s, 0) }

// plainNumber reads a number in decimals or as JSON may write it, 1e-06; words
// such as NaN are no number.
func plainNumber(s string) (float64, bool) {
	text := strings.TrimSpace(s)
	n, err := strconv.ParseFloat(text, 64)
	return n, err == nil && strings.Trim(text, "+-.0123456789eE") == ""
}
