package walk

import (
	"errors"
	"strings"
	"testing"
	"time"

	"barkslip/core/record"
	"barkslip/core/record/recordtest"
)

// walker goes along the walk of one stump by its keys, as a screen would.
type walker struct {
	*recordtest.Diary
	t    *testing.T
	book *record.Book
	now  time.Time
	gone StepID // the step gone to, "" for the one asked now

	again bool // what was answered there is corrected
}

func walkerOn(t *testing.T, b *record.Block, date string, hour int) *walker {
	w := &walker{Diary: recordtest.DiaryOn(b), t: t, book: record.FoldBook(nil, recordtest.UTC)}
	w.clock(date, hour, 0)
	return w
}

func (w *walker) clock(date string, hour, minute int) {
	w.now = recordtest.DayOf(date).At(hour, minute, w.B.Zone)
}

func (w *walker) sees() *Case { return NewCase(w.Fold(), w.B, w.book, w.now, Habit{}) }

// asked is the question put now.
func (w *walker) asked() (*Case, Ask) {
	c := w.sees()
	if w.gone != "" {
		return c, c.Ask(w.gone, w.again)
	}
	return c, c.Ask(c.Present(), false)
}

// press answers in turn: a digit, enter, or a text to be typed.
func (w *walker) press(keys ...string) *walker {
	w.t.Helper()
	for _, key := range keys {
		w.answer(key)
	}
	return w
}

func (w *walker) answer(key string) {
	w.t.Helper()
	c, a := w.asked()
	switch {
	case a.Entry != nil:
		w.typed(*a.Entry, key)
	case a.Checks != nil:
		w.write(nil, a.Checks.Record(seen(len(a.Checks.Items)))...)
	default:
		if key == "enter" {
			key = a.Likely
		}
		digit, text, _ := strings.Cut(key, ":")
		for _, ch := range a.Choices {
			if ch.Key == digit {
				w.choose(ch, text)
				return
			}
		}
		w.t.Fatalf("%s, %s: %q is no answer to %q (%s)", w.now.Format("2 Jan 2006 15:04"), c.Present(), key, a.Question, a.Step.ID)
	}
}

func seen(n int) []bool {
	good := make([]bool, n)
	for i := range good {
		good[i] = true
	}
	return good
}

// choose takes a choice; text is what is typed or picked after it.
func (w *walker) choose(ch Choice, text string) {
	w.t.Helper()
	switch {
	case ch.Entry != nil:
		w.typed(*ch.Entry, text)
	case ch.Pick == PickCause:
		w.write(ch.Refines, ch.Picked(text)...)
	case ch.Go != "":
		w.gone = ch.Go
	case ch.Leave:
		w.gone = ""
	default:
		w.write(ch.Refines, ch.Bodies...)
	}
}

// typed reads a text; "text|1" takes the first way on where it is doubted.
func (w *walker) typed(e Entry, text string) {
	w.t.Helper()
	text, way, _ := strings.Cut(text, "|")
	if text == "enter" {
		text = e.Likely
	}
	bodies, err := e.Read(text)
	var doubt *Doubt
	if errors.As(err, &doubt) && way != "" {
		for _, ch := range doubt.Ways {
			if ch.Key == way {
				w.choose(ch, "")
				return
			}
		}
	}
	if err != nil {
		w.t.Fatalf("%s: %q: %v", w.now.Format("2 Jan 2006 15:04"), text, err)
	}
	w.write(e.Refines, bodies...)
}

func (w *walker) write(refines []record.ID, bodies ...record.Body) {
	w.t.Helper()
	for _, b := range bodies {
		s := w.Fold()
		if err := record.BeforeCause(s, b, w.now, w.B.Zone); err != nil {
			w.t.Fatalf("%s: %s: %v", w.now.Format("2 Jan 2006 15:04"), b.Kind(), err)
		}
		replaces := refines
		if q := (record.Event{Body: b}).Question(); q != "" {
			replaces = s.Answers(q)
		}
		if err := record.Check(w.Say(w.now, b, replaces...)); err != nil {
			w.t.Fatalf("%s: %v", b.Kind(), err)
		}
	}
	w.gone, w.again = "", false
}

// correct goes back to a step and answers it anew.
func (w *walker) correct(step StepID, keys ...string) *walker {
	w.t.Helper()
	w.gone, w.again = step, true
	return w.press(keys...)
}

// asks is the question as it is put when a step is corrected.
func (w *walker) asks(step StepID) Ask { return w.sees().Ask(step, true) }

// refuses types an answer that is not taken, and gives what is said.
func (w *walker) refuses(text string) string {
	w.t.Helper()
	_, a := w.asked()
	_, err := a.Entry.Read(text)
	if err == nil {
		w.t.Fatalf("%q is taken at %s", text, a.Step.ID)
	}
	return err.Error()
}

// says fails unless the text holds each of the words.
func (w *walker) says(text string, words ...string) {
	w.t.Helper()
	for _, word := range words {
		if !strings.Contains(text, word) {
			w.t.Errorf("%q lacks %q", text, word)
		}
	}
}

// at goes to a step and answers it.
func (w *walker) at(step StepID, keys ...string) *walker {
	w.t.Helper()
	w.gone = step
	return w.press(keys...)
}

func (w *walker) present(want StepID) {
	w.t.Helper()
	if got := w.sees().Present(); got != want {
		w.t.Errorf("%s: asked %s, want %s", w.now.Format("2 Jan 2006 15:04"), got, want)
	}
}

// in is the block's date for one of the north, in the year of a season.
func in(b *record.Block, season int, month time.Month, day int) string {
	return b.InSeason(season, month, day).String()
}

func daysFrom(date string, n int) string { return recordtest.DayOf(date).Add(n).String() }
