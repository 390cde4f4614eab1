package weather

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"barkslip/core/bounded"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// mostDays is how long a list of temperatures may be: a good century.
const mostDays = 40000

// ReadTemps reads a list of daily extremes: comma-separated, a heading with
// date and low_c,high_c or low_f,high_f in any order, then a line for each day.
// Other columns are passed over; where both units are given Celsius is taken.
// The list comes back by date. The error is a *trade.Impossible naming line and
// column, or the cause the reader gave.
func ReadTemps(r io.Reader) ([]Extremes, error) {
	lines := csv.NewReader(bounded.Text(r))
	lines.FieldsPerRecord = -1
	lines.TrimLeadingSpace = true
	heading, err := lines.Read()
	if errors.Is(err, io.EOF) {
		return nil, badTemps("an empty file", headingAccepted)
	}
	if err != nil {
		return nil, badLine(err)
	}
	columns, err := readHeading(heading)
	if err != nil {
		return nil, err
	}
	seen := map[unit.Date]int{}
	var list []Extremes
	for {
		row, err := lines.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, badLine(err)
		}
		line, _ := lines.FieldPos(0)
		e, err := columns.read(row, line)
		if err != nil {
			return nil, err
		}
		if first, twice := seen[e.Date]; twice {
			return nil, badTemps(fmt.Sprintf("line %d, date: %s again after line %d", line, e.Date, first), "each date once")
		}
		seen[e.Date] = line
		if list = append(list, e); len(list) > mostDays {
			return nil, badTemps(fmt.Sprintf("line %d and more", line), fmt.Sprintf("at most %d days", mostDays))
		}
	}
	if len(list) == 0 {
		return nil, badTemps("a file without days", "a line for each day under the heading")
	}
	slices.SortFunc(list, func(a, b Extremes) int { return int(a.Date) - int(b.Date) })
	return list, nil
}

const headingAccepted = "a first line with the columns date,low_c,high_c or date,low_f,high_f"

// tempColumns tells where in a line the figures stand.
type tempColumns struct {
	date, low, high int
	unit            byte // 'C' or 'F'
}

func readHeading(names []string) (c tempColumns, err error) {
	at := map[string]int{}
	for i, name := range names {
		name = strings.ToLower(strings.TrimSpace(strings.TrimPrefix(name, "\ufeff")))
		if _, twice := at[name]; twice && slices.Contains([]string{"date", "low_c", "high_c", "low_f", "high_f"}, name) {
			return c, badTemps("line 1: the column "+name+" twice", "each column once")
		}
		at[name] = i
	}
	has := func(name string) bool { _, ok := at[name]; return ok }
	if !has("date") {
		return c, badTemps("line 1: no column date", headingAccepted)
	}
	c.date = at["date"]
	switch {
	case has("low_c") && has("high_c"):
		c.low, c.high, c.unit = at["low_c"], at["high_c"], 'C'
	case has("low_f") && has("high_f"):
		c.low, c.high, c.unit = at["low_f"], at["high_f"], 'F'
	default:
		return c, badTemps("line 1: no pair of columns for low and high", headingAccepted)
	}
	return c, nil
}

// read takes a day from a line of the file.
func (c tempColumns) read(row []string, line int) (e Extremes, err error) {
	suffix := "_" + strings.ToLower(string(c.unit))
	text, err := cell(row, c.date, line, "date")
	if err != nil {
		return e, err
	}
	if e.Date, err = unit.ParseDate(text); err != nil {
		return e, badCell(line, "date", text, err)
	}
	if e.Low, err = c.temperature(row, c.low, line, "low"+suffix); err != nil {
		return e, err
	}
	if e.High, err = c.temperature(row, c.high, line, "high"+suffix); err != nil {
		return e, err
	}
	if e.Low > e.High {
		return e, badTemps(fmt.Sprintf("line %d, low%s: the low is above the high", line, suffix), "a low no higher than the high")
	}
	return e, nil
}

func (c tempColumns) temperature(row []string, column, line int, name string) (unit.Temperature, error) {
	text, err := cell(row, column, line, name)
	if err != nil {
		return 0, err
	}
	t, err := unit.ParseTemperature(text, c.unit)
	if err != nil {
		return 0, badCell(line, name, text, err)
	}
	var nowhere *trade.Impossible
	if errors.As(checkAir(t, t), &nowhere) {
		return 0, badTemps(fmt.Sprintf("line %d, %s: %q", line, name, short(text)), nowhere.Accepted)
	}
	return t, nil
}

// cell is the text of a column in a line; a line that ends before it is an
// error.
func cell(row []string, column, line int, name string) (string, error) {
	if column >= len(row) {
		return "", badTemps(fmt.Sprintf("line %d: nothing in column %s", line, name), "a value in every column of the heading")
	}
	return strings.TrimSpace(row[column]), nil
}

func badCell(line int, column, text string, err error) error {
	accepted := "another value"
	var parse *unit.Error
	if errors.As(err, &parse) {
		accepted = parse.Accepted
	}
	return badTemps(fmt.Sprintf("line %d, %s: %q", line, column, short(text)), accepted)
}

// badLine names the line on which the quotes of the file went wrong; other
// causes pass as they are.
func badLine(err error) error {
	var parse *csv.ParseError
	var over *bounded.Error
	if errors.As(err, &over) {
		return badTemps(fmt.Sprintf("line %d", over.Line), fmt.Sprintf("lines of at most %d bytes, and at most %d MB of them", bounded.LongestLine, bounded.LongestText>>20))
	}
	if errors.As(err, &parse) {
		return badTemps(fmt.Sprintf("line %d, character %d: %v", parse.Line, parse.Column, parse.Err), "comma-separated text with closed quotes")
	}
	return err
}

func badTemps(given, accepted string) error {
	return &trade.Impossible{Option: "temps", Given: given, Accepted: accepted}
}

// short keeps a mistaken value to a length that can be shown.
func short(s string) string {
	if r := []rune(s); len(r) > 30 {
		return string(r[:30]) + "…"
	}
	return s
}
