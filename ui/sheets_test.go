package ui

import (
	"errors"
	"strings"
	"testing"
)

// Paper is asked for on rounds and on the plan, by one key and one more.
func TestPaperFromRoundsAndPlan(t *testing.T) {
	d := onSample(t, "2027-05-20 10:12")
	var name, data string
	d.root.x.SaveText = func(n, s string) (string, error) { name, data = n, s; return n, nil }
	d.press("g", "ctrl-p")
	d.sees("Which sheet of paper?", "day's sheet", "cutting card", "20 May 2027")
	d.press("1")
	d.sees("Written: day-hollow-lane-2027-05-20.pdf")
	if !strings.HasPrefix(data, "%PDF-") || !strings.HasSuffix(strings.TrimSpace(data), "%%EOF") {
		t.Errorf("%s is no whole PDF", name)
	}
	d.press("esc", "p", "ctrl-p", "2")
	d.sees("Written: day-hollow-lane-2027-05-20-" + strings.ToLower(d.root.x.Hand) + ".pdf")
	d.root.x.SaveText = func(string, string) (string, error) { return "", errors.New("no space left on device") }
	d.press("ctrl-p", "5")
	d.sees("no space left on device")
	d.root.x.SaveText = nil
	d.press("ctrl-p", "enter")
	d.sees("barkslip sheet makes paper.")
}

// A round of one row makes a sheet of that row; where nothing was grafted no tag
// is made.
func TestPaperOfARow(t *testing.T) {
	d := newDriver(t, "2027-05-20 09:00")
	d.plant("Hollow Lane", rows(3, 4)...)
	wrote := ""
	d.root.x.SaveText = func(n, _ string) (string, error) { wrote = n; return n, nil }
	d.press("g", "f", "2", "2", "enter", "ctrl-p")
	d.sees("20 May 2027, row 2.")
	d.press("1")
	if wrote != "day-hollow-lane-2027-05-20-row-2.pdf" {
		t.Errorf("wrote %q", wrote)
	}
	wrote = ""
	d.press("ctrl-p", "4")
	d.sees("no graft stands there")
	if wrote != "" {
		t.Errorf("wrote %q", wrote)
	}
}
