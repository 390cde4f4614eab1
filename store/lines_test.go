package store

import (
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"
	"testing/iotest"

	"barkslip/core/record"
)

func reader(text string) io.Reader { return strings.NewReader(text) }

func TestReadLines(t *testing.T) {
	good := string(record.Line(numbered(3, []record.Event{on(stumpAt(1, 1, 1), day, &record.PaintedWhite{})})[0]))
	long := string(record.Line(numbered(4, []record.Event{on(stumpAt(1, 1, 1), day, &record.Noted{Text: strings.Repeat("x", record.LongestText)})})[0]))
	for _, c := range []struct {
		name, text string
		events     int
		bad        []int
	}{
		{"empty", "", 0, nil},
		{"only a newline", "\n", 0, nil},
		{"one without newline", good, 1, nil},
		{"blank last line", good + "\n\n", 1, nil},
		{"byte order mark", "\ufeff" + good + "\n", 1, nil},
		{"windows line ends", good + "\r\n" + good + "\r\n", 2, nil},
		{"a bad one between", good + "\nnonsense\n" + good + "\n{}\n", 2, []int{2, 4}},
		{"cut in the middle", good + "\n" + good[:40], 1, []int{2}},
		{"a long one", long + "\n" + good + "\n", 2, nil},
		{"one too long", good + "\n" + strings.Repeat("y", record.LongestLine+1) + "\n" + good, 2, []int{2}},
		{"noughts", "\x00\x00\n" + good, 1, []int{1}},
	} {
		events, bad := 0, []int(nil)
		for _, err := range ReadLines(reader(c.text)) {
			var line *LineError
			switch {
			case err == nil:
				events++
			case errors.As(err, &line):
				bad = append(bad, line.Line)
				if !strings.HasPrefix(err.Error(), fmt.Sprintf("line %d: ", line.Line)) {
					t.Errorf("%s: %v", c.name, err)
				}
			default:
				t.Errorf("%s: %v", c.name, err)
			}
		}
		if events != c.events || fmt.Sprint(bad) != fmt.Sprint(c.bad) {
			t.Errorf("%s: %d events and bad lines %v", c.name, events, bad)
		}
	}
}

// A device that gives noughts for ever ends the reading; what came before it is read.
func TestALineWithoutEndEndsTheReading(t *testing.T) {
	good := string(record.Line(numbered(4, []record.Event{on(stumpAt(1, 1, 1), day, &record.Noted{Text: "stands"})})[0]))
	var last error
	events := 0
	for _, err := range ReadLines(io.MultiReader(strings.NewReader(good+"\n"), noughts{})) {
		if last = err; err == nil {
			events++
		}
	}
	if events != 1 || last == nil || !strings.Contains(last.Error(), "has no end") {
		t.Errorf("%d events, then %v", events, last)
	}
}

// noughts is a text of noughts without end.
type noughts struct{}

func (noughts) Read(p []byte) (int, error) {
	clear(p)
	return len(p), nil
}

func TestReadLinesEndsWhenTheDiskFails(t *testing.T) {
	broken := errors.New("unplugged")
	var last error
	for _, err := range ReadLines(iotest.ErrReader(broken)) {
		last = err
	}
	if !errors.Is(last, broken) {
		t.Errorf("got %v", last)
	}
}
