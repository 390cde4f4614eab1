package sample

import (
	"cmp"
	"fmt"
	"slices"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/core/walk"
)

// life is one stump while its history is made up: what is true of it, and what
// the crew has put down of it so far.
type life struct {
	*ground
	chance
	stump   record.StumpID
	index   int
	entries []entry

	s       *record.Stump // as put down so far
	journal []record.Event

	across  int // eighths of an inch
	wood    *lot
	hand    hand
	staged  staged // the part it has to play today
	planned unit.Date
	tries   int // graftings begun
	sap     float64
	sapAt   time.Time
	drags   bool
	vigour  float64
	scions  []scion
	lostIn  int       // the year in which it dies in a later season, 0 if it does not
	given   bool      // it is given up when it is looked at again
	hurried bool      // on this visit it is grafted whatever is advised
	whim    float64   // what the hand does by itself on this visit falls by it
	regrows time.Time // since when its leader grows anew, zero if it never broke
}

func (l *life) beginBlock() {
	l.chance, l.stump, l.entries = seeded(l.Seed, 1<<50), record.NoStump, l.entries[:0]
}

func (l *life) begin(i int) {
	*l = life{
		ground: l.ground, chance: seeded(l.Seed, uint64(i)), stump: l.place(i), index: i,
		entries: l.entries[:0], scions: l.scions[:0], journal: l.journal[:0],
	}
	l.hand = l.grafter(i)
	l.across = l.between(14, 30)
	if l.odds(0.08) {
		l.across = l.between(31, 44)
	}
	l.vigour = 0.6 + 0.8*l.real()
	if l.sap = l.real(); l.odds(0.02) { // it stands in the wet
		l.sap = 2
	}
	l.planned = l.graftDay(i)
	if l.odds(0.04) {
		l.lostIn = l.planned.Year() + l.between(1, 3)
	}
	if l.staged = l.stagedAt(i); l.staged != asItFalls {
		l.play()
	}
	l.wood = l.lotFor(l.planned.Year(), i)
}

// live tells the whole life of a stump: at each time somebody comes to it, all
// that its walk asks is answered as it is, and the next time follows from what
// is due.
func (l *life) live() {
	seasons, _ := l.age(l.index)
	t := l.add(seasons)
	for {
		next, ok := due.Next(due.Of(l.s, l.blockAs), t)
		if !ok {
			return
		}
		if t = l.comes(next, t); l.toCome(t) || l.skips(next) {
			return
		}
		put := len(l.journal)
		if t = l.visit(t); len(l.journal) == put { // it was left as it is: another day
			t = unit.DateOf(t).Add(1).At(8, l.between(0, 59), l.Zone)
		}
		l.dispute()
	}
}

// visit answers what is asked from one time on, until nothing more is open or
// what is open has to wait, and says when that is.
func (l *life) visit(t time.Time) time.Time {
	l.befalls(t)
	l.hurried, l.whim = l.tempted(), l.real()
	for range mostAnswers {
		if l.toCome(t) {
			return t
		}
		c := walk.NewCase(l.s, l.blockAs, l.bookAs, t, walk.Habit{})
		ask, asked := l.asks(c)
		if !asked {
			return t
		}
		id := ask.Step.ID
		if paced := l.paced(id, t); paced.After(t) {
			t = paced
			continue
		}
		bodies, refines := l.answer(c, ask, t)
		if len(bodies) == 0 {
			panic(fmt.Sprintf("the sample has no answer to %q on %s", id, l.stump.Place()))
		}
		l.give(t, refines, bodies...)
		t = t.Add(l.takes(id))
	}
	return t
}

// mostAnswers is more than one visit ever takes.
const mostAnswers = 60

// asks is what is answered now, ok false where the stump is left until later:
// nothing is open, or what is has to wait and nobody is in a hurry.
func (l *life) asks(c *walk.Case) (ask walk.Ask, ok bool) {
	if id, ok := l.opens(c); ok {
		return c.Ask(id, false), true
	}
	id := c.Present()
	d, open := due.First(c.Dues(), c.Now)
	switch id {
	case walk.StepRest:
		return ask, false
	case walk.StepEnded:
		ok = open && d.Kind == due.Regraft
	case walk.StepWait:
		ok = l.hurried && len(c.A.Looks) > 0
	default:
		ok = !l.leaves(id, c.Now)
	}
	if !ok {
		return ask, false
	}
	ask = c.Ask(id, false)
	if id != walk.StepWait && ask.Until != nil && ask.Until.Truncate(time.Second).After(c.Now) {
		return ask, false
	}
	if open && l.onWork != nil {
		l.onWork(d.Kind)
	}
	return ask, true
}

// takes is how long the work of a step takes.
func (l *life) takes(id walk.StepID) time.Duration {
	switch id {
	case walk.StepScion:
		return 7 * time.Minute
	case walk.StepFreshCut, walk.StepNewGashes, walk.StepDrill, walk.StepSeal, walk.StepHeight:
		return time.Duration(l.between(2, 4)) * time.Minute
	}
	return time.Minute
}

// give puts an answer down as the screens would, at a time.
func (l *life) give(t time.Time, refines []record.ID, bodies ...record.Body) {
	written := t
	if _, white := bodies[0].(*record.PaintedWhite); white && l.odds(0.04) { // entered from paper in the evening
		written = later(t, unit.DateOf(t).At(20, l.between(0, 59), l.Zone))
	}
	act := l.id()
	for _, e := range l.answered(t, refines, bodies) {
		if e.Act == record.None {
			e.Act = act
		}
		l.put(written, e)
	}
	l.fold()
}

// put puts one event down.
func (l *life) put(written time.Time, e record.Event) {
	e.ID, e.Stump = l.id(), l.stump
	if written.After(l.Now) {
		return
	}
	l.entries = append(l.entries, entry{written.Unix(), e})
	if l.stump == record.NoStump {
		return
	}
	e.Clock = uint64(len(l.journal) + 1)
	l.journal = append(l.journal, e)
}

// fold is the stump as put down by now.
func (l *life) fold() {
	if l.stump != record.NoStump {
		l.s = record.Fold(l.stump, l.journal)
	}
}

// say puts down what no walk asks: what is told of the block, a note, an answer
// of another hand.
func (l *life) say(at time.Time, hand string, body record.Body) {
	l.put(at, record.Event{At: at, Hand: hand, Body: body})
	l.fold()
}

// told is all that was said, by the time of writing.
func (l *life) told() []entry {
	slices.SortStableFunc(l.entries, func(a, b entry) int { return cmp.Compare(a.written, b.written) })
	return l.entries
}

// toCome says whether a time is not yet reached.
func (l *life) toCome(t time.Time) bool { return t.After(l.Now) }

// add puts the stump into the block in the winter before its season.
func (l *life) add(seasons int) time.Time {
	day := unit.MakeDate(l.today.Year()-seasons, time.February, 20)
	at := day.At(14, 0, l.Zone).Add(time.Duration(l.index%usualStumps) * 2 * time.Minute)
	body := &record.StumpAdded{Stock: "seedling black walnut"}
	if l.odds(0.6) {
		body.Across = eighths(l.across + l.between(-1, 2))
	}
	if l.wood.Variety != varieties[0] {
		body.Variety = l.wood.Variety
	}
	l.say(at, office, body)
	if l.odds(0.04) {
		text := l.one("leans to the lane", "old wire in the bark at knee height", "two stems, the east one kept", "wet foot, drains badly", "deer path beside it")
		l.say(at.Add(time.Minute), office, &record.Noted{Text: text})
	}
	return at.Add(2 * time.Minute)
}

// later is the later of two times.
func later(a, b time.Time) time.Time {
	if a.After(b) {
		return a
	}
	return b
}
