package main

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"time"

	"barkslip/core/trade"
	"barkslip/core/unit"
	"barkslip/core/weather"
)

// The kinds of value an option may have. Each reader returns nought, and keeps
// the fault, where the value cannot be taken.

func (g *given) length(name string) unit.Length {
	return read(g, name, within(parseLength, lengthLimits))
}

// size is a length that wood has: above 0 and up to the widest stump.
func (g *given) size(name string) unit.Length {
	return read(g, name, func(s string) (unit.Length, error) {
		l, err := unit.ParseLength(s, 0)
		if err != nil || l <= 0 || l > trade.WidestStump {
			return 0, &unit.Error{Given: s, Accepted: "a length above 0 and up to 40in (1016mm), with its unit: 4in, 3 1/2in, 0.3ft, 10.2cm, 100mm or 0.1m"}
		}
		return l, nil
	})
}

func (g *given) bearing(name string) unit.Bearing {
	return read(g, name, func(s string) (unit.Bearing, error) {
		if n, ok := plainNumber(s); ok && n >= 0 && n <= 360 {
			return unit.Bearing(n).Normal(), nil
		}
		return unit.ParseBearing(s)
	})
}

func (g *given) temperature(name string) unit.Temperature {
	parse := func(s string) (unit.Temperature, error) { return unit.ParseTemperature(s, 0) }
	return read(g, name, within(parse, weather.AirLimits))
}

func (g *given) speed(name string) unit.Speed {
	parse := func(s string) (unit.Speed, error) { return unit.ParseSpeed(s, 0) }
	return read(g, name, within(parse, weather.WindLimits))
}

func (g *given) clock(name string) unit.Clock {
	return read(g, name, func(s string) (unit.Clock, error) {
		c, err := unit.ParseClock(s)
		if err != nil {
			err = &unit.Error{Given: s, Accepted: clockLimits}
		}
		return c, err
	})
}

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
	n, ok := plainNumber(s)
	if !ok || !(n >= least && n <= most) {
		return 0, &unit.Error{Given: s, Accepted: fmt.Sprintf("a number from %g to %g", least, most)}
	}
	return n, nil
}

// day is a date as people write it, of which today is the day of now. One that
// may be meant in two ways is refused, and both are named.
func (g *given) day(name string, today unit.Date, sys unit.System) unit.Date {
	return read(g, name, func(s string) (unit.Date, error) { return unit.ReadDate(s, today, sys) })
}

// dayLike refuses what is no date in any block, before the block is known.
func (g *given) dayLike(name string) {
	read(g, name, func(s string) (unit.Date, error) {
		d, err := unit.ReadDate(s, unit.FirstDay+mostDays, unit.Metric)
		var either *unit.EitherDay
		if errors.As(err, &either) {
			return either.First, nil
		}
		return d, err
	})
}

func (g *given) date(name string) unit.Date {
	return read(g, name, func(s string) (unit.Date, error) {
		d, err := unit.ParseDate(strings.TrimSpace(s))
		if err == nil && (d < unit.FirstDay || d > unit.LastDay) {
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
	if err != nil || unit.DateOf(t) < unit.FirstDay || unit.DateOf(t) > unit.LastDay {
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
