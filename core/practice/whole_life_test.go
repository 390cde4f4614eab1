package practice

import (
	"errors"
	"strings"
	"testing"
	"time"

	"barkslip/core/record"
	"barkslip/core/walk"
)

// answers of one who sees all go well, where the walk takes none for likely.
var goesWell = map[walk.StepID]string{walk.StepBleeding: "1", walk.StepSlip: "1", walk.StepNewFace: "1"}

// walked answers what a life asks now, or has its clock go on.
func walked(t *testing.T, l *Life) {
	t.Helper()
	s := l.standing()[0]
	c := walk.NewCase(s, l.site(), l.book, l.now, walk.Habit{})
	ask := c.Ask(c.Present(), false)
	give := func(refines []record.ID, bodies []record.Body) {
		events, err := s.Answer(record.Given{Bodies: bodies, At: l.now, Hand: "MK", Zone: l.site().Zone, Refines: refines})
		if err == nil {
			_, err = l.Append(events...)
		}
		if err != nil {
			t.Fatalf("%s: %v", ask.Step.ID, err)
		}
	}
	typed := func(e *walk.Entry) {
		text := e.Likely
		if text == "" {
			text = map[bool]string{true: "9in", false: "3in"}[strings.Contains(e.Asks, "shoot")]
		}
		bodies, err := e.Read(text)
		var doubt *walk.Doubt
		if errors.As(err, &doubt) {
			give(nil, doubt.Ways[len(doubt.Ways)-1].Bodies)
			return
		}
		if err != nil {
			t.Fatalf("%s, %q: %v", ask.Step.ID, text, err)
		}
		give(e.Refines, bodies)
	}
	switch key := ask.Likely; {
	case ask.Until != nil && ask.Until.After(l.now):
		l.GoOn()
	case ask.Entry != nil:
		typed(ask.Entry)
	case ask.Checks != nil:
		good := make([]bool, len(ask.Checks.Items))
		for i := range good {
			good[i] = true
		}
		give(nil, ask.Checks.Record(good))
	default:
		if key == "" {
			key = goesWell[ask.Step.ID]
		}
		for _, ch := range ask.Choices {
			if ch.Key == key && ch.Entry != nil {
				typed(ch.Entry)
				return
			}
			if (ch.Key == key || key == "") && len(ch.Bodies) > 0 {
				give(ch.Refines, ch.Bodies)
				return
			}
		}
		l.GoOn()
	}
}

// TestWholeLife: one stump is walked from standing to untied, with the clock moved on.
func TestWholeLife(t *testing.T) {
	l, err := NewLife(1, 2027, time.LoadLocation)
	if err != nil {
		t.Fatal(err)
	}
	for n := 0; !l.Over(); n++ {
		if n > 600 {
			t.Fatalf("no end by %s", l.now)
		}
		walked(t, l)
	}
	s := l.standing()[0]
	if s.Stage() != record.StageUntied {
		t.Errorf("it ends %s on %s", s.Stage(), l.now)
	}
	t.Logf("%d events, to %s", len(l.events), l.now)
	if said := l.GoOn(); !strings.Contains(said, "at its end") {
		t.Error(said)
	}
}
