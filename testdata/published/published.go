// Package published holds published figures for tests to check against, one a
// row: what is checked, the inputs, the figure expected, how near the answer has
// to come (the source's own rounding), and where the figure is printed. A new
// check is a new row.
package published

import (
	"embed"
	"encoding/csv"
	"math"
	"strconv"
	"strings"
	"testing"
)

//go:embed proportions.csv survival.csv counts.csv scion.csv
var tables embed.FS

// Check is one row of a table.
type Check struct {
	Name      string
	Inputs    string
	Expected  []float64
	Tolerance float64
	Source    string
}

// Each runs one test a row, named by the check, its inputs and its source.
func Each(t *testing.T, file string, check func(t *testing.T, c Check)) {
	t.Helper()
	for _, c := range Checks(t, file) {
		t.Run(Title(c.Name, c.Inputs, c.Source), func(t *testing.T) { check(t, c) })
	}
}

// Title names a check so that a list of tests shows whose figure it is.
func Title(name, inputs, source string) string {
	return strings.ReplaceAll(strings.Join([]string{name, inputs, source}, " | "), "/", " of ")
}

// Checks reads a table.
func Checks(t *testing.T, file string) []Check {
	t.Helper()
	f, err := tables.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if head := strings.Join(rows[0], ","); head != "check,inputs,expected,tolerance,source" {
		t.Fatalf("%s begins with %q", file, head)
	}
	var checks []Check
	for _, r := range rows[1:] {
		tolerance := Numbers(t, r[3])
		c := Check{Name: r[0], Inputs: r[1], Expected: Numbers(t, r[2]), Source: r[4]}
		if len(tolerance) != 1 || !(tolerance[0] > 0) || len(c.Expected) == 0 || c.Source == "" {
			t.Fatalf("%s: the row %q lacks a figure, a tolerance over 0 or a source", file, r)
		}
		c.Tolerance = tolerance[0]
		checks = append(checks, c)
	}
	return checks
}

// Against fails the test where the answer is not the published figure.
func (c Check) Against(t *testing.T, got ...float64) {
	t.Helper()
	if len(got) != len(c.Expected) {
		t.Errorf("%s %s: %d figures, want %d (%s)", c.Name, c.Inputs, len(got), len(c.Expected), c.Source)
		return
	}
	for i, want := range c.Expected {
		if !(math.Abs(got[i]-want) <= c.Tolerance) {
			t.Errorf("%s %s: figure %d is %.12g, want %.12g within %g (%s)", c.Name, c.Inputs, i+1, got[i], want, c.Tolerance, c.Source)
		}
	}
}

// Values reads inputs written as name=value.
func (c Check) Values(t *testing.T) map[string]float64 {
	t.Helper()
	values := map[string]float64{}
	for _, field := range strings.Fields(c.Inputs) {
		name, text, _ := strings.Cut(field, "=")
		n, err := strconv.ParseFloat(text, 64)
		if err != nil {
			t.Fatalf("%s %s: %q is not name=value", c.Name, c.Inputs, field)
		}
		values[name] = n
	}
	return values
}

// Numbers reads numbers parted by spaces.
func Numbers(t *testing.T, text string) []float64 {
	t.Helper()
	var out []float64
	for _, field := range strings.Fields(text) {
		n, err := strconv.ParseFloat(field, 64)
		if err != nil {
			t.Fatalf("%q is not a row of numbers", text)
		}
		out = append(out, n)
	}
	return out
}
