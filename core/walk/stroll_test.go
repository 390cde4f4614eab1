package walk

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"strconv"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/record/recordtest"
	"barkslip/core/trade"
)

// stroll goes along one stump at random, as a crew might on its worst days:
// mostly it answers what is asked, but also out of order, late, wrongly, twice,
// and on two laptops at once.
type stroll struct {
	*rand.Rand
	b     *record.Block
	book  *record.Book
	l     *recordtest.Laptop
	now   time.Time
	s     *record.Stump // the record as it stands
	gone  StepID        // the step gone to, "" for the one asked now
	again bool
	habit Habit
	trail []string // what was done, the newest last
}

func newStroll(seed uint64, b *record.Block) *stroll {
	w := &stroll{Rand: rand.New(rand.NewPCG(seed, 417)), b: b, book: record.FoldBook(nil, recordtest.UTC), l: recordtest.NewLaptop("AB")}
	w.now = recordtest.DayOf("2027-01-01").At(9, 0, b.Zone).AddDate(0, 0, w.IntN(365))
	w.s = w.l.Fold()
	switch w.IntN(3) {
	case 0:
		w.say(w.now, &record.StumpAdded{})
	case 1:
		w.say(w.now, &record.StumpAdded{Across: recordtest.Inches([]float64{0.8, 2, 3.5, 5}[w.IntN(4)])})
	}
	return w
}

// one in n.
func (w *stroll) one(n int) bool { return w.IntN(n) == 0 }

func (w *stroll) sees() *Case { return NewCase(w.s, w.b, w.book, w.now, w.habit) }

func (w *stroll) note(format string, args ...any) {
	w.trail = append(w.trail, w.now.Format("2006-01-02 15:04 ")+fmt.Sprintf(format, args...))
}

// say puts an answer down.
func (w *stroll) say(at time.Time, body record.Body, replaces ...record.ID) {
	words := fmt.Sprintf("%s %+v", body.Kind(), body)
	if !at.Equal(w.now) {
		words += " for " + at.Format("2006-01-02 15:04")
	}
	if len(replaces) > 0 {
		words += fmt.Sprintf(" in place of %d", len(replaces))
	}
	w.note("%s", words)
	w.l.Say(at.Truncate(time.Second), body, replaces...)
	w.s = w.l.Fold()
}

// write gives answers as the screen does: each where it can have been given, in
// place of what it corrects.
func (w *stroll) write(at time.Time, refines []record.ID, bodies ...record.Body) {
	for _, b := range bodies {
		if err := record.BeforeCause(w.s, b, at, w.b.Zone); err != nil {
			w.note("refused: %s: %v", b.Kind(), err)
			break
		}
		if err := record.Check(record.Event{Body: b, Stump: recordtest.Stump417}); err != nil {
			panic(fmt.Sprintf("%s is offered and cannot be: %v", b.Kind(), err))
		}
		replaces := refines
		if q := (record.Event{Body: b}).Question(); q != "" {
			replaces = w.s.Answers(q)
		}
		w.say(at, b, replaces...)
	}
	w.gone, w.again = "", false
}

// goOn is one thing that happens: time passes and something is done.
func (w *stroll) goOn() {
	w.pass()
	switch n := w.IntN(100); {
	case n < 74:
		w.answer(w.now)
	case n < 80: // out of order, or corrected
		knots := w.sees().Knots()
		w.gone, w.again = knots[w.IntN(len(knots))].Step.ID, w.one(2)
		w.answer(w.now)
	case n < 88: // as for a whole row
		w.write(w.now, nil, w.anyBody())
	case n < 92:
		w.takeBack()
	case n < 96:
		w.answer(w.earlier())
	case n < 98:
		w.write(w.earlier(), nil, w.anyBody())
	default:
		w.join()
	}
}

// earlier is some minutes, hours or days ago.
func (w *stroll) earlier() time.Time {
	return w.now.Add(-time.Duration(1+w.IntN(60)) * []time.Duration{time.Minute, time.Hour, 24 * time.Hour}[w.IntN(3)])
}

// pass moves the clock on.
func (w *stroll) pass() {
	dues := due.At(due.Of(w.s, w.b), w.now)
	_, open := due.First(dues, w.now)
	switch n := w.IntN(20); {
	case open && n < 14:
		w.now = w.now.Add(time.Duration(w.IntN(120)) * time.Second)
	case !open && n < 15 && len(dues) > 0:
		w.now = dues[0].Opens.Add(time.Duration(w.IntN(12*60)) * time.Minute)
	case n < 17:
		w.now = w.now.Add(time.Duration(w.IntN(8*60)) * time.Minute)
	case n < 19:
		w.now = w.now.Add(time.Duration(w.IntN(12*24)) * time.Hour)
	case w.one(6):
		w.now = w.now.AddDate(0, 0, w.IntN(150))
	}
	w.now = w.now.Truncate(time.Second)
}

// answer answers the step that is asked, or the one gone to.
func (w *stroll) answer(at time.Time) {
	c := w.sees()
	step := w.gone
	if step == "" {
		step, w.again = c.Present(), false
	}
	a := c.Ask(step, w.again)
	if len(w.habits()) > 0 && w.one(4) {
		w.habit = w.habits()[0]
	}
	switch {
	case a.Checks != nil && (len(a.Choices) == 0 || w.one(6)):
		good := seen(len(a.Checks.Items))
		if w.one(8) {
			good[w.IntN(len(good))] = false
		}
		w.write(at, nil, a.Checks.Record(good)...)
	case a.Entry != nil && (len(a.Choices) == 0 || w.one(2)):
		w.typed(at, step, *a.Entry)
	case a.Checks != nil:
		w.write(at, nil, a.Checks.Record(seen(len(a.Checks.Items)))...)
	case len(a.Choices) > 0:
		ch := a.Choices[w.IntN(len(a.Choices))]
		if w.one(2) {
			ch = a.Choices[0] // most often all is well
		}
		if ch.Leave && !w.one(3) {
			ch = a.Choices[w.IntN(len(a.Choices))]
		}
		if ends(ch) && !w.one(12) {
			return
		}
		w.choose(at, step, ch)
	}
}

// ends says whether a choice ends the stump's history early.
func ends(ch Choice) bool {
	for _, b := range ch.Bodies {
		switch b.(type) {
		case *record.GivenUp, *record.Failed:
			return true
		}
	}
	return false
}

func (w *stroll) habits() []Habit {
	if h := HabitOf(w.s); h.Wood != nil {
		return []Habit{h}
	}
	return nil
}

func (w *stroll) choose(at time.Time, step StepID, ch Choice) {
	if ch.Doubt != nil && w.one(2) {
		w.choose(at, step, ch.Doubt.Ways[w.IntN(len(ch.Doubt.Ways))])
		return
	}
	switch {
	case ch.Entry != nil:
		w.typed(at, step, *ch.Entry)
	case ch.Pick == PickReason:
		w.write(at, nil, &record.AgainstAdvice{Verdict: w.sees().Advice.Verdict, Why: "no time"})
	case ch.Picked != nil:
		w.write(at, ch.Refines, ch.Picked(trade.Causes[w.IntN(len(trade.Causes))])...)
	case ch.Go != "":
		w.gone = ch.Go
	case ch.Leave:
		w.gone, w.again = "", false
		w.now = w.now.Add(time.Duration(w.IntN(60)) * time.Minute)
	default:
		w.write(at, ch.Refines, ch.Bodies...)
	}
}

// typed types something plausible, or what Enter takes.
func (w *stroll) typed(at time.Time, step StepID, e Entry) {
	text := w.text(step)
	if e.Likely != "" && w.one(2) {
		text = e.Likely
	}
	bodies, err := e.Read(text)
	var doubt *Doubt
	switch {
	case errors.As(err, &doubt):
		w.choose(at, step, doubt.Ways[w.IntN(len(doubt.Ways))])
	case err != nil:
		if err.Error() == "" {
			panic(fmt.Sprintf("%s refuses %q without a word", step, text))
		}
		w.gone, w.again = "", false
	default:
		w.write(at, e.Refines, bodies...)
	}
}

// takeBack takes back the newest answer with what was given with it, puts it
// back, or takes back any answer at all, as another laptop may have.
func (w *stroll) takeBack() {
	if taken, _ := w.s.Redoable(); len(taken) > 0 && w.one(2) {
		for _, e := range taken {
			w.say(w.now, &record.Withdrawn{Of: e.ID})
		}
		return
	}
	e, ok := w.s.Undoable()
	if !ok {
		return
	}
	if w.one(4) {
		e = w.s.Live[w.IntN(len(w.s.Live))]
	}
	with := w.s.GivenWith(e)
	w.say(w.now, &record.Withdrawn{Of: e.ID})
	for _, o := range with {
		w.say(w.now, &record.Withdrawn{Of: o.ID})
	}
	w.gone, w.again = "", false
}

// join lets two laptops go on apart for a while, then unites their journals.
func (w *stroll) join() {
	w.note("apart")
	here, now := w.l, w.now
	there := here.Apart("CD")
	for _, l := range []*recordtest.Laptop{here, there} {
		w.l, w.now, w.gone = l, now, ""
		w.s = w.l.Fold()
		for range 1 + w.IntN(5) {
			w.pass()
			w.answer(w.now)
		}
	}
	w.note("united")
	w.l.Events = union(here.Events, there.Events)
	w.s = w.l.Fold()
}

// union is all events of two journals, each once.
func union(a, b []record.Event) []record.Event {
	known := map[record.ID]bool{}
	var out []record.Event
	for _, e := range append(append([]record.Event{}, a...), b...) {
		if !known[e.ID] {
			known[e.ID] = true
			out = append(out, e)
		}
	}
	return out
}

// text is something that may be typed at a step.
func (w *stroll) text(step StepID) string {
	pick := func(texts ...string) string { return texts[w.IntN(len(texts))] }
	switch step {
	case StepReach:
		return pick("24in", "12in", "20in")
	case StepHeight:
		return pick("36in 3in", "42", "30in")
	case StepSmall, StepMeasure:
		return pick("2in", "3.4in 3.1in", "2.5in", "4.5in 3in", "0.9in")
	case StepLongWay:
		return pick("45", "n")
	case StepSlots, StepTorn:
		return pick("120:2in", "90:1in 270:1in")
	case StepWood:
		return "Lantern"
	case StepThick:
		return pick("3/8in", "0.4in 2in")
	case StepNodes:
		return "24in 4:ps 5.2:ps 7:x 11:ps 12.5:p"
	case StepSplit:
		return pick("2in", "0")
	case StepStake:
		return pick("5ft w", "3ft n")
	case StepShoots:
		return pick(w.long(), w.long()+" "+w.long(), w.long()+" "+w.long()+" "+w.long())
	case StepTie, StepHeadBack:
		return w.long()
	case StepTwine, StepTwineMove:
		return pick("12in 4in", "20in 7in", "10in 7in")
	case StepTwineCheck:
		return pick("5in", "9in", "13in")
	case StepFreshCut:
		return pick("30in", "34in")
	}
	return strconv.Itoa(w.IntN(8))
}

// long is how long a shoot may be by now.
func (w *stroll) long() string {
	day := w.b.Day(w.now)
	grown := max(int(day-w.b.InSeason(w.b.SeasonOf(day), time.May, 10)), 1)
	return fmt.Sprintf("%dmm", 50+grown*(1+w.IntN(12)))
}
