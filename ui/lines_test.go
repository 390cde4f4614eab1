package ui

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"
)

// spokenOn talks to the screens line by line on a driver's book and clock, and gives
// what was told.
func spokenOn(t *testing.T, d *driver, lines ...string) string {
	t.Helper()
	var out bytes.Buffer
	o := d.root.x.Options
	if err := RunLines(o, strings.NewReader(strings.Join(lines, "\n")+"\n"), &out, false); err != nil {
		t.Fatal(err)
	}
	if i := strings.IndexFunc(out.String(), func(r rune) bool { return r < ' ' && r != '\n' || r == 0x7f }); i >= 0 {
		t.Errorf("a control character in what is told: %q", out.String()[max(0, i-40):min(out.Len(), i+40)])
	}
	return out.String()
}

// givenOn are the answers on a stump, kind and words, in order.
func givenOn(d *driver) (out []string) {
	for _, e := range d.live() {
		out = append(out, fmt.Sprintf("%T %+v", e.Body, e.Body))
	}
	return out
}

// ready is a block of two stumps, the first cut back eight days ago, the second
// grafted this morning, whose wood and method are the next one's.
func readyForLines(t *testing.T) *driver {
	d := newDriver(t, "2027-05-04 10:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.did(tree(1, 1), "2027-04-20 09:00", cut()...)
	d.open()
	return d
}

// A three-scion stump is walked line by line as it is by keys: the same answers are in
// the record, and no control character is ever told.
func TestLinesGiveTheSameAnswersAsKeys(t *testing.T) {
	answers := []string{"1", "1", "", "1", "1", "5", "3.3", "", "1", "0.5", "2", "", "", "", "1"}
	byKeys, byLines := readyForLines(t), readyForLines(t)
	byKeys.press("enter")
	for _, a := range answers {
		if len(a) != 1 {
			byKeys.press(a, "enter")
			continue
		}
		byKeys.press(a)
	}
	told := spokenOn(t, byLines, append([]string{"1/1"}, append(slices.Clone(answers), "q")...)...)
	byLines.open()
	byLines.goTo(1, 1)
	if a, b := givenOn(byKeys), givenOn(byLines); !slices.Equal(a, b) || len(a) < 10 {
		t.Errorf("by keys %d:\n%s\nby lines %d:\n%s\ntold:\n%s", len(a), strings.Join(a, "\n"), len(b), strings.Join(b, "\n"), told)
	}
}

// A round is walked line by line: what is asked on the stump is told with its place,
// and the answer is in the record.
func TestARoundByLines(t *testing.T) {
	d := atWhite(t)
	d.clock("2027-05-20 12:30")
	told := spokenOn(t, d, "g", "n", "1", "q")
	if !strings.Contains(told, "row 1 tree 2") || !strings.Contains(told, "Recorded: painted white") {
		t.Errorf("it tells\n%s", told)
	}
}

// What is wrong is said, with what can be answered, and nothing of it is taken; half a
// line at the end is not taken either.
func TestWrongLines(t *testing.T) {
	d := readyForLines(t)
	var out bytes.Buffer
	err := RunLines(d.root.x.Options, strings.NewReader("1/1\n9\n1\n2"), &out, false)
	d.open()
	d.goTo(1, 1)
	if given := givenOn(d); len(given) != len(cut()) {
		t.Errorf("%d answers stand, %v:\n%s", len(given), err, out.String())
	}
	for _, says := range []string{"Answer 1 to 4", "not taken"} {
		if !strings.Contains(out.String()+fmt.Sprint(err), says) {
			t.Errorf("it does not say %q: %v\n%s", says, err, out.String())
		}
	}
}
