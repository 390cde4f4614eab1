package main

import (
	"bufio"
	"bytes"
	"encoding/csv"
	"encoding/json"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	ics "github.com/arran4/golang-ical"
	"pgregory.net/rapid"

	"barkslip/core/record"
)

// awkward are names of blocks that have to be escaped, folded or guarded.
var awkward = []string{
	"Hollow Lane",
	"Nußhain Mühle — südlich der alten Straße, am großen Weiher; Nußbäume für die Nachzucht \\ Versuch 3",
	strings.Repeat("ñ木 ", 60) + "end",
	strings.Repeat("x", 300),
	"=SUM(A1:A9)", "+1", "-1,5", "@home", `say "walnut"`,
}

type dueAnswer struct {
	On  string   `json:"on"`
	Due []dueRow `json:"due"`
}

// TestDueFormsAgree reads JSON, CSV and calendar with readers that are not our
// own: they hold the same dues.
func TestDueFormsAgree(t *testing.T) {
	for _, name := range awkward {
		path := dueBook(t, name, dueStump(1, 1, 0), dueStump(2, 3, 0), dueStump(2, 9, 2))
		var answer dueAnswer
		if err := json.Unmarshal([]byte(dueRun(t, path, "--days", "40", "--json")), &answer); err != nil {
			t.Fatal(err)
		}
		if len(answer.Due) < 9 || answer.On != "2027-05-04" {
			t.Fatalf("%s: %d dues on %s", name, len(answer.Due), answer.On)
		}
		sheet, err := csv.NewReader(strings.NewReader(dueRun(t, path, "--days", "40", "--csv"))).ReadAll()
		if err != nil || len(sheet) != len(answer.Due)+1 {
			t.Fatalf("%d lines: %v", len(sheet), err)
		}
		text := dueRun(t, path, "--days", "40", "--ics")
		checkFolding(t, text)
		checkEntries(t, readCalendar(t, text), answer, name)
		for i, row := range answer.Due {
			checkCells(t, sheet[i+1], row, name)
		}
	}
}

func checkCells(t *testing.T, cells []string, row dueRow, name string) {
	t.Helper()
	if strings.ContainsAny(name[:1], "=+-@") {
		name = "'" + name
	}
	late := map[bool]string{true: "true", false: "false"}[row.Late]
	want := []string{row.Stump, row.Kind, row.Opens, row.By, late, row.Why, name}
	if strings.Join(cells, "\x00") != strings.Join(want, "\x00") {
		t.Errorf("%q, want %q", cells, want)
	}
}

// checkFolding holds the lines of a calendar against RFC 5545, 3.1.
func checkFolding(t testing.TB, text string) {
	t.Helper()
	if !strings.HasSuffix(text, "\r\n") || strings.Count(text, "\n") != strings.Count(text, "\r\n") || strings.Count(text, "\r") != strings.Count(text, "\r\n") {
		t.Fatal("lines do not end with CRLF")
	}
	for _, line := range strings.Split(text, "\r\n") {
		if len(line) > 75 || !utf8.ValidString(line) {
			t.Errorf("%d octets, whole characters %v: %q", len(line), utf8.ValidString(line), line)
		}
	}
}

func readCalendar(t *testing.T, text string) []*ics.VEvent {
	t.Helper()
	cal, err := ics.ParseCalendar(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range cal.CalendarProperties {
		if p.IANAToken == "VERSION" && p.Value != "2.0" {
			t.Errorf("version %s", p.Value)
		}
	}
	return cal.Events()
}

// checkEntries holds the calendar against the dues it tells of: an entry for each
// day and kind, worked out here anew from the rows, and each white clock by itself.
func checkEntries(t *testing.T, events []*ics.VEvent, answer dueAnswer, name string) {
	t.Helper()
	told := map[string][]dueRow{} // by kind, start and, for a white clock, its place
	for _, row := range answer.Due {
		key := row.Kind + " " + max(strings.ReplaceAll(row.Opens, "-", "")[:8], strings.ReplaceAll(answer.On, "-", ""))
		if row.Kind == "white" {
			key = row.Kind + " " + start(row) + " " + place(row)
		}
		told[key] = append(told[key], row)
	}
	if len(events) != len(told) {
		t.Fatalf("%d entries for %d days of work", len(events), len(told))
	}
	for _, e := range events {
		kind, _, _ := strings.Cut(value(e, ics.ComponentPropertySummary), ":")
		key := kind + " " + value(e, ics.ComponentPropertyDtStart)
		if kind == "white" {
			key += value(e, ics.ComponentPropertySummary)[strings.LastIndex(value(e, ics.ComponentPropertySummary), " "):]
		}
		rows := told[key]
		if len(rows) == 0 {
			t.Errorf("an entry of no due: %s", key)
			continue
		}
		checkEntry(t, e, rows, name)
		delete(told, key)
	}
}

func place(row dueRow) string {
	id, err := record.ParseStumpID(row.Stump)
	if err != nil {
		return err.Error()
	}
	return id.Place()
}

func value(e *ics.VEvent, p ics.ComponentProperty) string {
	if got := e.GetProperty(p); got != nil {
		return got.Value
	}
	return "none"
}

// checkEntry holds an entry against its dues.
func checkEntry(t *testing.T, e *ics.VEvent, rows []dueRow, name string) {
	t.Helper()
	summary, text := value(e, ics.ComponentPropertySummary), value(e, ics.ComponentPropertyDescription)
	if !strings.HasPrefix(summary, rows[0].Kind+": "+name+", ") || value(e, ics.ComponentPropertyDtstamp) != "20270504T213000Z" {
		t.Errorf("%q", summary)
	}
	if lines := strings.Split(text, "\n"); len(lines) != len(rows) {
		t.Errorf("%d lines for %d stumps: %q", len(lines), len(rows), text)
	}
	for _, row := range rows {
		if !strings.Contains(text, place(row)+", ") || !strings.Contains(text, row.Why) {
			t.Errorf("%s does not tell of %s, %s", summary, place(row), row.Why)
		}
	}
	alarms := 0
	if rows[0].Kind == "white" {
		alarms = 2
		if value(e, ics.ComponentPropertyDtEnd) != end(rows[0]) {
			t.Errorf("%s ends %s", summary, value(e, ics.ComponentPropertyDtEnd))
		}
	}
	if len(e.Alarms()) != alarms {
		t.Errorf("%d alarms for %s", len(e.Alarms()), summary)
	}
}

func start(row dueRow) string {
	if at, err := time.Parse(time.RFC3339, row.Opens); err == nil {
		return at.UTC().Format("20060102T150405Z")
	}
	return strings.ReplaceAll(row.Opens, "-", "")
}

// end is the end of an entry: the day after the last where it takes whole days.
func end(row dueRow) string {
	if at, err := time.Parse(time.RFC3339, row.By); err == nil {
		return at.UTC().Format("20060102T150405Z")
	}
	last, _ := time.Parse(time.DateOnly, row.By)
	return last.AddDate(0, 0, 1).Format("20060102")
}

// TestImportingAgainReplaces: as long as its cause stands a due keeps its UID,
// and SEQUENCE grows once the journal has.
func TestImportingAgainReplaces(t *testing.T) {
	path := dueBook(t, "Hollow Lane", dueStump(1, 1, 0), dueStump(1, 2, 2), dueStump(1, 2, 1))
	before := readCalendar(t, dueRun(t, path, "--days", "400", "--ics"))
	sequences := map[string]string{}
	for _, e := range before {
		sequences[e.Id()] = e.GetProperty(ics.ComponentPropertySequence).Value
	}
	if len(sequences) != len(before) {
		t.Fatalf("%d UIDs for %d entries", len(sequences), len(before))
	}
	painted(t, path, dueStump(1, 1, 0))
	after := readCalendar(t, dueRun(t, path, "--days", "400", "--ics"))
	if len(after) != len(before)-1 {
		t.Fatalf("%d entries, %d before", len(after), len(before))
	}
	for _, e := range after {
		was, known := sequences[e.Id()]
		if now := e.GetProperty(ics.ComponentPropertySequence).Value; !known || len(now) < len(was) || len(now) == len(was) && now <= was {
			t.Errorf("%s: known before %v, sequence %s after %s", e.Id(), known, now, was)
		}
	}
}

// TestLinesFold: any text comes back whole from lines that keep to 75 octets.
func TestLinesFold(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		text := record.Clean(rapid.String().Draw(r, "text")) + strings.Repeat(rapid.SampledFrom([]string{"x", "é", "木", "😀", `\`, ";", ", "}).Draw(r, "part"), rapid.IntRange(0, 200).Draw(r, "times"))
		var out bytes.Buffer
		c := calendar{bufio.NewWriter(&out)}
		c.lines("BEGIN:VCALENDAR", "BEGIN:VEVENT", "UID:1")
		c.text("SUMMARY", text)
		c.lines("END:VEVENT", "END:VCALENDAR")
		_ = c.out.Flush()
		checkFolding(t, out.String())
		events := readCalendar(t, out.String())
		if got := events[0].GetProperty(ics.ComponentPropertySummary).Value; strings.TrimSpace(got) != strings.TrimSpace(text) {
			r.Fatalf("%q came back as %q", text, got)
		}
	})
}
