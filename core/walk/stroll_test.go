package walk

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"strconv"
	"strings"
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
	dues  []due.Due     // of the record, at any time
	gone  StepID        // the step gone to, "" for the one asked now
	again bool
	habit Habit
	care  bool   // a careful crew: most is answered as it is asked, and well
	runs  bool   // a stump that runs whatever is done
	limb  bool   // it is a limb; now and then something of the tree is given at another
	trail []deed // what was done, the newest last

	steps int
	open  map[due.Kind]int
	asked map[StepID]int
}

func newStroll(seed uint64, b *record.Block) *stroll {
	w := &stroll{Rand: rand.New(rand.NewPCG(seed, 417)), b: b, book: record.FoldBook(nil, recordtest.UTC), l: recordtest.NewLaptop("AB"),
		open: map[due.Kind]int{}, asked: map[StepID]int{}}
	if w.limb = seed%4 == 3; w.limb {
		w.l.At(1)
	}
	w.now = recordtest.DayOf("2027-01-01").At(9, 0, b.Zone).AddDate(0, 0, w.IntN(365))
	w.s, w.care, w.runs = w.l.Fold(), w.one(2), w.one(16)
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

// deed is what was done at a time, for an earlier one where that is another.
type deed struct {
	now, at time.Time
	what    any
}

func (d deed) String() string {
	words := fmt.Sprintf("%s %+v", d.now.Format("2006-01-02 15:04"), d.what)
	if b, ok := d.what.(record.Body); ok {
		words = fmt.Sprintf("%s %s %+v", d.now.Format("2006-01-02 15:04"), b.Kind(), b)
	}
	if !d.at.Equal(d.now) {
		words += " for " + d.at.Format("2006-01-02 15:04")
	}
	return words
}

// story is the newest deeds, each on a line.
func (w *stroll) story(most int) string {
	var lines []string
	for _, d := range w.trail[max(0, len(w.trail)-most):] {
		lines = append(lines, d.String())
	}
	return strings.Join(lines, "\n")
}

func (w *stroll) note(at time.Time, what any) { w.trail = append(w.trail, deed{w.now, at, what}) }

// say puts an answer down.
func (w *stroll) say(at time.Time, body record.Body, replaces ...record.ID) {
	w.note(at, body)
	w.l.Say(at.Truncate(time.Second), body, replaces...)
	w.s = w.l.Fold()
}

// write gives answers as the screen does: by the rule of what an answer becomes.
func (w *stroll) write(at time.Time, refines []record.ID, bodies ...record.Body) {
	for _, b := range bodies {
		if err := record.Check(record.Event{Body: b, Stump: recordtest.Stump417}); err != nil {
			panic(fmt.Sprintf("%s is offered and cannot be: %v", b.Kind(), err))
		}
	}
	given, err := w.l.Give(record.Given{Bodies: bodies, At: at, Earlier: !at.Equal(w.now), Again: w.again, Refines: refines, Zone: w.b.Zone})
	if err != nil {
		w.note(at, err)
	}
	for _, e := range given {
		w.note(e.At, e.Body)
	}
	w.s = w.l.Fold()
	w.gone, w.again = "", false
}

// atAnother gives something of the whole tree at another limb, or at the trunk.
func (w *stroll) atAnother() {
	bodies := []record.Body{
		&record.Gashed{Number: 2}, &record.Drilled{Number: 1}, &record.Looked{Slip: record.Slips[w.IntN(3)]},
		&record.NurseJudged{Limbs: w.IntN(3), Other: w.one(2)}, &record.Looked{Bleeding: record.Running, Slip: record.Slips[w.IntN(3)]},
		&record.NurseLimbOff{}, &record.AnotherYear{Work: record.PutOffNurse}, &record.LimbTakenOff{}, &record.StumpAdded{}, &record.CutBack{},
	}
	w.l.At([]uint8{0, 2, 3}[w.IntN(3)])
	body := bodies[w.IntN(len(bodies))]
	var replaces []record.ID
	if q := (record.Event{Body: body}).Question(); q != "" {
		replaces = w.l.Fold().Answers(q)
	}
	w.note(w.now, w.l.Stump.Place())
	w.note(w.now, body)
	w.l.Say(w.now, body, replaces...)
	w.s = w.l.At(1).Fold()
}

// goOn is one thing that is done on the stump as it is seen.
func (w *stroll) goOn(c *Case) {
	if w.limb && w.one(10) {
		w.atAnother()
	}
	if w.care && !w.one(8) {
		w.answer(c, w.now)
		return
	}
	switch n := w.IntN(100); {
	case n < 74:
		w.answer(c, w.now)
	case n < 80: // out of order, or corrected
		knots := c.Knots()
		w.gone, w.again = knots[w.IntN(len(knots))].Step.ID, w.one(2)
		w.answer(c, w.now)
	case n < 88: // as for a whole row
		w.write(w.now, nil, w.anyBody())
	case n < 92:
		w.takeBack()
	case n < 96:
		w.answer(c, w.earlier())
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
	dues := due.At(w.dues, w.now)
	_, open := due.First(dues, w.now)
	switch n := w.IntN(20); {
	case n < 6:
		return
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
func (w *stroll) answer(c *Case, at time.Time) {
	step := w.gone
	if step == "" {
		step, w.again = c.Present(), false
	}
	a := c.Ask(step, w.again)
	w.asked[step]++
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
		if w.one(2) || w.care && !w.one(6) {
			ch = a.Choices[0] // most often all is well
		}
		if w.runs && (step == StepBleeding || step == StepNewFace) {
			ch = a.Choices[3]
		}
		if ch.Leave && !w.one(3) {
			ch = a.Choices[w.IntN(len(a.Choices))]
		}
		if w.ends(ch) && !w.one(12) {
			return
		}
		w.choose(at, step, ch)
	}
}

// ends says whether a choice ends the stump's history early.
func (w *stroll) ends(ch Choice) bool {
	for _, b := range ch.Bodies {
		switch b.(type) {
		case *record.GivenUp:
			return true
		case *record.Failed:
			return !w.s.Now().AllDead()
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
	w.note(w.now, "apart")
	here, now, latest := w.l, w.now, w.now
	there := here.Apart("CD")
	for _, l := range []*recordtest.Laptop{here, there} {
		w.l, w.now, w.gone = l, now, ""
		w.s = w.l.Fold()
		w.dues = due.Of(w.s, w.b)
		for range 1 + w.IntN(5) {
			w.pass()
			w.answer(w.sees(), w.now)
		}
		if w.now.After(latest) {
			latest = w.now
		}
	}
	w.now = latest
	w.note(w.now, "united")
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
		return pick("24in", "12in", "20in", "4in", "1in")
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
