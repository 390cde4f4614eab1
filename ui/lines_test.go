package ui

import (
	"bytes"
	"fmt"
	"io"
	"slices"
	"strings"
	"testing"

	"barkslip/core/record"
)

// spokenOn talks to the screens line by line on a driver's book and clock, and gives
// what was told.
func spokenOn(t *testing.T, d *driver, lines ...string) string {
	t.Helper()
	var out bytes.Buffer
	o := d.root.x.Options
	if err := RunLines(o, strings.NewReader(strings.Join(lines, "\n")+"\n"), &out, false); err != nil {
		t.Errorf("%v:\n%s", err, out.String())
	}
	if i := strings.IndexFunc(out.String(), steers); i >= 0 {
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
	answers := []string{"1", "1", "", "1", "1", "5", "3.3", "", "9", "Lantern", "0.5", "2", "", "", "", "1"}
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
	if !strings.Contains(told, "row 1 tree 2") || !strings.Contains(told, "Recorded on 1/2: painted white") {
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

// returning is a stump whose graft was painted three weeks ago, and which was not looked
// at since.
func returning(t *testing.T) *driver {
	d := atWhite(t)
	d.did(tree(1, 2), "2027-05-20 12:30", &record.PaintedWhite{})
	d.did(tree(1, 2), "2027-05-23 09:00", &record.SealChecked{})
	d.clock("2027-06-10 09:00")
	d.open()
	return d
}

// bothWays answers a stump by keys and line by line, and wants the same in the record,
// with this many answers more than stood there.
func bothWays(t *testing.T, make func(*testing.T) *driver, more int, keys, lines []string) string {
	t.Helper()
	byKeys, byLines := make(t), make(t)
	byKeys.goTo(1, 2)
	before := len(givenOn(byKeys))
	byKeys.press(keys...)
	told := spokenOn(t, byLines, append(lines, "q")...)
	byLines.open()
	byLines.goTo(1, 2)
	byKeys.open()
	byKeys.goTo(1, 2)
	a, b := givenOn(byKeys), givenOn(byLines)
	if !slices.Equal(a, b) || len(a) != before+more {
		t.Errorf("by keys %d:\n%s\nby lines %d:\n%s\ntold:\n%s", len(a), strings.Join(a, "\n"), len(b), strings.Join(b, "\n"), told)
	}
	return told
}

// A return visit is answered line by line as it is by keys.
func TestAReturnVisitByLines(t *testing.T) {
	told := bothWays(t, returning, 2, []string{"1", "2", "5", "2", "2", "2"}, []string{"1/2", "1", "2", "5", "2", "2", "2"})
	for _, says := range []string{"Graft 1 of 3, at 23°, NNE", "Graft 3 of 3", "Rub the sprouts"} {
		if !strings.Contains(told, says) {
			t.Errorf("it does not tell %q:\n%s", says, told)
		}
	}
}

// A round is walked line by line with the answers that keys give.
func TestARoundByLinesAsByKeys(t *testing.T) {
	late := func(t *testing.T) *driver {
		d := atWhite(t)
		d.clock("2027-05-20 12:30")
		return d
	}
	bothWays(t, late, 1, []string{"g", "enter", "1"}, []string{"rounds", "", "1"})
}

// An input that never ends a line, or never a wrong one, is left in good time.
func TestLinesWithoutEnd(t *testing.T) {
	d := readyForLines(t)
	long := strings.Repeat("x", 1<<20)
	for _, in := range []io.Reader{strings.NewReader(long), strings.NewReader(long + "\n1/1\n"), endless("\n"), endless("wrong\n")} {
		var out bytes.Buffer
		_ = RunLines(d.root.x.Options, in, &out, false)
		if out.Len() > 1<<20 {
			t.Errorf("%d bytes were told", out.Len())
		}
	}
	d.open()
	d.goTo(1, 1)
	if given := givenOn(d); len(given) != len(cut()) {
		t.Errorf("%d answers stand", len(given))
	}
}

// endless is a text that comes again and again.
type endless string

func (e endless) Read(b []byte) (n int, _ error) {
	for n < len(b) {
		n += copy(b[n:], e[:min(len(e), len(b)-n)])
	}
	return n, nil
}

// A terminal is never steered by what is told, whatever was typed before.
func FuzzLines(f *testing.F) {
	for _, text := range []string{"1/1\n1\n1\n", "m a\x1b[31m note\n", "?\nmap\nrow 1\nq\n", "learn\n\n1\n\n", "t 13:40\n2\n\xff\xfe\n", "g\n\n\n\n\n"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 2000 {
			return
		}
		d := readyForLines(t)
		var out bytes.Buffer
		_ = RunLines(d.root.x.Options, strings.NewReader(text), &out, true)
		if i := strings.IndexFunc(out.String(), steers); i >= 0 {
			t.Errorf("%q tells %q", text, out.String()[max(0, i-40):min(out.Len(), i+40)])
		}
	})
}

// steers says whether a sign would steer a terminal.
func steers(r rune) bool { return r < ' ' && r != '\n' || r >= 0x7f && r < 0xa0 || r == 0x202e }
