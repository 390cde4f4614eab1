package unit

import (
	"fmt"
	"strconv"
	"strings"
	"time"
)

// EitherDay is a date that may be meant in two ways, as 5/6 where a day may
// stand before its month or behind it.
type EitherDay struct {
	Given         string
	First, Second Date // day before month; month before day
}

func (e *EitherDay) Error() string {
	return fmt.Sprintf("%q may be %s or %s; give %s or %s", e.Given, e.First.Long(), e.Second.Long(), e.First.Short(), e.Second.Short())
}

// acceptedDate is what ReadDate takes, by the system.
func acceptedDate(sys System) string {
	slashed := "5/4 (month/day)"
	if sys == Metric {
		slashed = "4.5."
	}
	return "a date such as 4 May, May 4, " + slashed + ", 2027-05-04, today, yesterday, tomorrow, or -2 for two days ago"
}

// ReadDate reads a date as people write it: 2027-05-04, 05-04, 4 May, May 4, 4.5.,
// 5/4, each with or without a year, also today, yesterday, tomorrow, -2 for two
// days ago and +2 for in two days. Without a year it is the one nearest to today.
// Behind a slash stands the day where the system is that of inches; in metric it
// may be either, and is an *EitherDay where both can be. Other faults are *Error.
func ReadDate(text string, today Date, sys System) (Date, error) {
	bad := &Error{Given: text, Accepted: acceptedDate(sys)}
	word := strings.ToLower(strings.TrimSpace(text))
	switch word {
	case "today":
		return today, nil
	case "yesterday":
		return today.Add(-1), nil
	case "tomorrow":
		return today.Add(1), nil
	}
	if d, err := ParseDate(word); err == nil {
		return inReach(d, bad)
	}
	if len(word) > 1 && (word[0] == '-' || word[0] == '+') {
		n, err := strconv.Atoi(word)
		if err != nil || n < -mostDaysOff || n > mostDaysOff {
			return 0, bad
		}
		return inReach(today.Add(n), bad)
	}
	parts, sign := dateParts(word)
	var d Date
	var ok bool
	switch sign {
	case '/':
		return readSlashed(parts, today, sys, bad)
	case '.':
		d, ok = parts.day(0, 1, today)
	case '-':
		d, ok = parts.day(1, 0, today)
	case ' ':
		d, ok = parts.named(today)
	}
	if !ok {
		return 0, bad
	}
	return inReach(d, bad)
}

// mostDaysOff is how many days ago, or to come, are told by their number.
const mostDaysOff = 366

// The days that a date may name: a slip of the hand lies outside.
var (
	FirstDay = MakeDate(1971, time.January, 1)
	LastDay  = MakeDate(2199, time.December, 31)
)

func inReach(d Date, bad *Error) (Date, error) {
	if d < FirstDay || d > LastDay {
		bad.Accepted += ", from 1971 to 2199"
		return 0, bad
	}
	return d, nil
}

// written is a date in parts: day and month in either order, then a year or
// none.
type written []string

// dateParts takes a date apart at the one sign that stands in it; 0 where it has
// none, or several.
func dateParts(word string) (parts written, sign byte) {
	for _, s := range []byte{'/', '.', '-'} {
		if strings.Contains(word, string(s)) && !strings.ContainsAny(word, "abcdefghijklmnopqrstuvwxyz") {
			parts = strings.Split(strings.ReplaceAll(word, " ", ""), string(s))
			if s == '.' && len(parts) == 3 && parts[2] == "" {
				parts = parts[:2] // 4.5.
			}
			return parts, s
		}
	}
	return strings.Fields(strings.NewReplacer(",", " ", ".", " ").Replace(word)), ' '
}

// day is the date whose day and month stand at two places.
func (w written) day(day, month int, today Date) (Date, bool) {
	if len(w) != 2 && len(w) != 3 {
		return 0, false
	}
	d, okDay := wholeNumber(w[day])
	m, okMonth := wholeNumber(w[month])
	if !okDay || !okMonth {
		return 0, false
	}
	return w.of(time.Month(m), d, today)
}

// named is the date whose month is a word.
func (w written) named(today Date) (Date, bool) {
	if len(w) != 2 && (len(w) != 3 || len(w[2]) != 4) {
		return 0, false
	}
	for i, other := range []int{1, 0} {
		m, isMonth := monthNamed(w[i])
		d, isDay := wholeNumber(strings.TrimRight(w[other], "stndrh")) // 4th
		if isMonth && isDay {
			return w.of(m, d, today)
		}
	}
	return 0, false
}

// of is a day of a month, in the year that is written or else the nearest.
func (w written) of(month time.Month, day int, today Date) (Date, bool) {
	if len(w) == 3 {
		year, ok := wholeNumber(w[2])
		if ok && len(w[2]) == 2 {
			year += 2000
		}
		if !ok || len(w[2]) != 2 && len(w[2]) != 4 {
			return 0, false
		}
		return exactDay(year, month, day)
	}
	var best Date
	found := false
	for year := today.Year() - nearestLeap; year <= today.Year()+nearestLeap; year++ {
		d, ok := exactDay(year, month, day)
		if ok && (!found || away(d, today) < away(best, today)) {
			best, found = d, true
		}
	}
	return best, found
}

// nearestLeap is how many years off the nearest 29 February may lie.
const nearestLeap = 8

func away(d, from Date) Date { return max(d-from, from-d) }

// exactDay is a day that the calendar has.
func exactDay(year int, month time.Month, day int) (Date, bool) {
	if month < time.January || month > time.December || day < 1 || day > 31 {
		return 0, false
	}
	d := MakeDate(year, month, day)
	_, m, n := d.Parts()
	return d, m == month && n == day
}

func wholeNumber(s string) (int, bool) {
	if s == "" || len(s) > 4 || strings.Trim(s, "0123456789") != "" {
		return 0, false
	}
	n, err := strconv.Atoi(s)
	return n, err == nil
}

// monthNamed finds a month by its name, or by its first three letters or more.
func monthNamed(word string) (time.Month, bool) {
	for m := time.January; m <= time.December; m++ {
		if len(word) >= 3 && strings.HasPrefix(strings.ToLower(m.String()), word) || m == time.September && word == "sept" {
			return m, true
		}
	}
	return 0, false
}

// readSlashed reads 5/4: month and day in inches; in metric whichever can be.
func readSlashed(parts written, today Date, sys System, bad *Error) (Date, error) {
	monthFirst, okMonth := parts.day(1, 0, today)
	dayFirst, okDay := parts.day(0, 1, today)
	if sys != Metric {
		okDay = false
	}
	switch {
	case okMonth && okDay && monthFirst != dayFirst:
		return 0, &EitherDay{Given: bad.Given, First: dayFirst, Second: monthFirst}
	case okDay:
		return inReach(dayFirst, bad)
	case okMonth:
		return inReach(monthFirst, bad)
	}
	return 0, bad
}
