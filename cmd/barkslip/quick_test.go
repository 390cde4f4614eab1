package main

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/spf13/pflag"
	"pgregory.net/rapid"
)

// likely are values that options take, by the option's name or, failing that,
// by what the help calls its value; unlikely ones may stand anywhere.
var (
	likely = map[string][]string{
		"LENGTH":        {"4in", "3.4in", "0.4in", "10mm", "100mm", "1in", "16in", "3 1/2in", "24in", "0in", "0mm", "1e-9mm", "0.0001mm", "40in"},
		"BEARING":       {"0", "30", "359.999", "360", "ne"},
		"BEARING:WIDTH": {"120:2in", "0:1mm", "ne:4in", "90:0.001mm", "10:12in"},
		"N":             {"0", "1", "2", "3", "10", "24", "100", "1000"},
		"DEGREES":       {"38.5", "-121.8", "90", "-90", "0", "180"},
		"ZONE":          {"America/Los_Angeles", "UTC", "Pacific/Apia"},
		"DATE":          {"2027-05-04", "2028-02-29", "1971-01-01", "2199-12-31"},
		"TIME":          {"00:00", "23:59", "10:30"},
		"INSTANT":       {"2027-05-04T14:30:00-07:00", "2027-05-04T13:00:00-07:00", "1971-01-01T00:00:00Z", "2199-12-31T23:59:59+14:00"},
		"TEMPERATURE":   {"52F", "91F", "-40C", "35C", "60C", "-90C"},
		"SPEED":         {"3mph", "0m/s", "6m/s", "100m/s"},
		"OKTAS":         {"0", "8", "3.5"},
		"SHARE":         {"0", "1", "0.5", "1e-9", "0.999999999999"},
		"ALIVE/OF":      {"48/80", "0/1", "1/1"},
		"NODES":         {"1.5in:ps 3.2in:ps 5in:p", "4in:x", "3in:ps 4in:ps 9in:ps 11in:ps"},
		"READINGS": {"2027-06-01=4.1in 2027-10-01=5.0in", "2027-06-01=4in", "2027-06-01=4in 2027-07-01=4in 2027-08-01=4in", "2027-06-01=4in " +
			"2027-10-01=6in 2028-10-01=7in 2029-10-01=7.2in"},
		"SYSTEM":   {"us", "metric"},
		"bleeding": {"dry", "damp", "weeping", "running"},
		"slip":     {"clean", "drags", "stuck"},
		"now":      {"2027-05-04T14:30:00-07:00", "2027-05-06T01:00:00+05:30", "2199-12-31T23:59:59+14:00"},
		"length":   {"24in", "12in", "1m"},
		"thick":    {"0.4in", "10mm", "1in"},
		"NAME":     {"walnut", "olive"},
	}
	unlikely = []string{"", " ", "-1", "NaN", "Inf", "-Inf", "1e309", "0x10", "4", "4in 5in", "--json", "-", "\x00", "\x1b[2J", "é:\u202e", "99999999999999999999", "1/0in", "10:", ":1in", "9999-12-31", "0000-01-01", "25:00"}
)

// TestAnyOptions gives every sum all sorts of values: it answers, or refuses on
// one line, and never fails otherwise.
func TestAnyOptions(t *testing.T) {
	commands := (&app{}).reckon().Commands()
	rapid.Check(t, func(t *rapid.T) {
		c := rapid.SampledFrom(commands).Draw(t, "command")
		args := []string{"reckon", c.Name()}
		c.Flags().VisitAll(func(f *pflag.Flag) {
			values, ok := likely[f.Name]
			if !ok {
				values, ok = likely[f.Value.Type()]
			}
			needed := strings.HasSuffix(f.Usage, needed)
			if !ok || !needed && rapid.IntRange(0, 2).Draw(t, "take") > 0 {
				return
			}
			if rapid.IntRange(0, 30).Draw(t, "odd") == 0 {
				values = unlikely
			}
			args = append(args, "--"+f.Name, rapid.SampledFrom(values).Draw(t, f.Name))
		})
		args = append(args, "--json")
		var out, errs bytes.Buffer
		code := run(args, &out, &errs)
		if code != 0 && code != exitBad {
			t.Fatalf("%q: exit %d: %s", args, code, errs.String())
		}
		if !json.Valid(out.Bytes()) || strings.Count(out.String(), "\n") != 1 {
			t.Fatalf("%q: not one JSON object: %s", args, out.String())
		}
		if lines := strings.Count(errs.String(), "\n"); lines != code/exitBad {
			t.Fatalf("%q: %d lines on standard error: %s", args, lines, errs.String())
		}
	})
}
