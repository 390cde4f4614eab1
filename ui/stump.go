package ui

import (
	"errors"
	"strings"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/core/walk"
)

// stumpScreen is the walk on one stump: one question, its answers, and the
// stake of steps beside it.
type stumpScreen struct {
	r        *root
	x        *shared
	id       record.StumpID
	s        *record.Stump
	c        *walk.Case
	q        walk.Ask
	focus    walk.StepID // a step gone to; "" for the one that is asked now
	again    bool        // focus corrects what was answered
	field    field
	sub      *walk.Choice // a choice whose answer is being typed
	good     []bool       // marks of a list of checks
	doubt    *walk.Doubt  // what was typed is unlikely: its ways on stand in place
	wasEarly bool         // the doubt is that it is too early
	fig      int          // 0 beside the answers, else which figure is shown large
}

func newStump(r *root, id record.StumpID) (*stumpScreen, error) {
	s := &stumpScreen{r: r, x: r.x, id: id}
	return s, s.load()
}

// load reads the record from the book: what is shown as taken is on disk.
func (s *stumpScreen) load() error {
	stump, err := s.x.Book.Stump(s.id)
	if err != nil {
		return err
	}
	s.s = stump
	s.ask()
	return nil
}

// loadAfter takes the record as the book gave it back after an answer.
func (s *stumpScreen) loadAfter(out due.Appended) error {
	if s.s = out.Of(s.id); s.s == nil {
		return s.load()
	}
	s.ask()
	return nil
}

// ask puts the present question anew; what is being typed stays if the question
// is still the same.
func (s *stumpScreen) ask() {
	before, slot := s.q.Step, 0
	if s.c != nil {
		slot = s.c.Slot()
	}
	s.c = walk.NewCase(s.s, s.x.site(), s.x.Book.Folded(), s.x.now(), s.x.habit(s.id))
	s.c.Odds = s.x.oddsOf()
	id := s.focus
	if id == "" {
		id = s.c.Present()
	}
	s.q = s.c.Ask(id, s.again)
	if s.q.Step != before || s.c.Slot() != slot {
		s.clear()
	}
}

// tick asks anew as time goes on; what was too early before is so no longer.
func (s *stumpScreen) tick() {
	waited := s.doubt != nil && s.entry() == nil && s.q.Until != nil && s.q.Until.Truncate(time.Second).After(s.x.now())
	s.wasEarly = s.wasEarly || waited
	s.ask()
	if s.wasEarly && s.doubt != nil && s.q.Until != nil && !s.q.Until.Truncate(time.Second).After(s.x.now()) {
		s.clear()
		s.x.say("")
	}
}

// clear forgets what was typed or marked for the question before.
func (s *stumpScreen) clear() {
	s.field, s.sub, s.good, s.fig, s.doubt, s.wasEarly = field{}, nil, nil, 0, nil, false
	if s.q.Entry != nil {
		s.field.any = s.q.Entry.Text
	}
	if s.q.Checks != nil {
		s.good = make([]bool, len(s.q.Checks.Items))
		for i := range s.good {
			s.good[i] = true
		}
	}
}

// entry is the text asked for, if any.
func (s *stumpScreen) entry() *walk.Entry {
	if s.sub != nil {
		return s.sub.Entry
	}
	return s.q.Entry
}

func (s *stumpScreen) key(key string) {
	if s.doubt == nil && s.entry() != nil && s.field.typed(key) {
		return
	}
	if key == "enter" || len(key) == 1 && key[0] >= '0' && key[0] <= '9' {
		s.x.pressed = s.x.pressed.then(key, s.x.Tick())
		s.answer(key)
		return
	}
	if key == "esc" && s.doubt != nil {
		s.doubt, s.field.text = nil, ""
		s.x.say("")
		return
	}
	if key == "esc" && (s.sub != nil || s.field.text != "") {
		s.clear()
		return
	}
	if !press(s.table(), key) && !press(s.r.common(s.help), key) {
		s.x.say(noSuchKey)
	}
}

// answer takes a digit or Enter.
func (s *stumpScreen) answer(key string) {
	switch {
	case s.doubt != nil:
		s.choose(key)
	case s.entry() != nil:
		s.take(s.entry(), key)
	case s.q.Checks != nil:
		s.check(key)
	default:
		s.choose(key)
	}
}

// take reads what was typed.
func (s *stumpScreen) take(e *walk.Entry, key string) {
	if key != "enter" {
		return
	}
	text := strings.TrimSpace(s.field.text)
	if text == "" {
		text = e.Likely
	}
	if text == "" {
		s.x.fail(errors.New("type the answer first: " + e.Asks))
		return
	}
	bodies, err := e.Read(text)
	if errors.As(err, &s.doubt) {
		s.x.say(s.doubt.Says + " Esc types it again.")
		return
	}
	if err != nil {
		s.x.fail(err)
		return
	}
	s.write(e.Refines, bodies...)
}

// check marks one thing as not good, or takes the list as it stands.
func (s *stumpScreen) check(key string) {
	if key == "enter" {
		s.write(nil, s.q.Checks.Record(s.good)...)
		return
	}
	if i := int(key[0] - '1'); i >= 0 && i < len(s.good) {
		s.good[i] = !s.good[i]
		if !s.good[i] {
			s.x.say(s.q.Checks.Items[i].If)
		} else {
			s.x.say("")
		}
	}
}

// choose takes a choice by its key; Enter takes the likely one.
func (s *stumpScreen) choose(key string) {
	if key == "enter" {
		if key = s.q.Likely; s.doubt != nil {
			key = ""
		}
		if key == "" {
			s.x.say("Look first, then answer with a digit: nothing here is likelier than the rest.")
			return
		}
	}
	for _, ch := range s.choices() {
		if ch.Key == key {
			s.chosen(ch)
			return
		}
	}
	s.x.say(key + " is no answer here.")
}

// choices are the answers offered: the ways on where what was typed is in
// doubt.
func (s *stumpScreen) choices() []walk.Choice {
	if s.doubt != nil {
		return s.doubt.Ways
	}
	return s.q.Choices
}

func (s *stumpScreen) chosen(ch walk.Choice) {
	switch {
	case ch.Doubt != nil && s.doubt == nil:
		s.doubt = ch.Doubt
		s.x.say(s.doubt.Says + " Esc goes back.")
	case ch.Leave:
		s.r.nextStump(s.id)
	case ch.Pick != walk.PickNone:
		s.pick(ch)
	case ch.Entry != nil:
		s.sub, s.fig = &ch, 0
		s.field = field{any: ch.Entry.Text}
		s.x.say("")
	case ch.Go != "":
		s.focus, s.again = ch.Go, false
		s.ask()
	default:
		s.write(ch.Refines, ch.Bodies...)
	}
}

// write puts the answer on disk and says what is wrong if it cannot.
func (s *stumpScreen) write(refines []record.ID, bodies ...record.Body) {
	if err := s.keep(refines, bodies...); err != nil {
		s.x.fail(err)
	}
}

// keep puts the answer on disk in one transaction, then shows the record as
// read back. refines names observations that the answer takes the place of.
func (s *stumpScreen) keep(refines []record.ID, bodies ...record.Body) error {
	now := s.x.now()
	events, err := s.s.Answer(record.Given{Bodies: bodies, At: now, Earlier: !s.x.at.IsZero(), Again: s.again, Refines: refines, Zone: s.x.site().Zone})
	if err != nil {
		return err
	}
	out, err := s.x.write(s.id, events...)
	if err != nil {
		return err
	}
	var words []string
	for _, e := range events {
		s.x.noteHabit(s.id, e.Body)
		words = append(words, record.Say(e.Body, s.x.site().Units))
	}
	if len(events) > 0 {
		taken := "Taken"
		if s.r.rounds != nil {
			taken += " on " + s.id.Place()
		}
		s.x.say(taken + ": " + strings.Join(words, ", ") + ", " + unit.When(events[0].At, now, s.x.site().Zone) + ".")
	}
	s.focus, s.again = "", false
	s.clear()
	s.x.pressed.events = append(s.x.pressed.events, out.Events...)
	if s.r.rounds != nil {
		s.r.rounds.done = append(s.r.rounds.done, out.Events...)
	}
	if err := s.loadAfter(out); err != nil {
		return err
	}
	s.met()
	return nil
}

// met goes back to the round once nothing of it is left to do here.
func (s *stumpScreen) met() {
	r := s.r.rounds
	if r == nil || s.x.wrong {
		return
	}
	for _, d := range due.Of(s.s, s.x.site()) {
		if d.OpenBetween(r.judged(), r.until()) && r.keep(d) {
			s.meet([]due.Due{d})
			return
		}
	}
	s.r.openRounds()
}

// pick opens the list of causes or of reasons; what is picked becomes the
// answer.
func (s *stumpScreen) pick(ch walk.Choice) {
	if ch.Pick == walk.PickReason {
		s.r.pickReason(s)
		return
	}
	picked := ch.Picked
	if picked == nil {
		picked = func(cause string) []record.Body { return []record.Body{&record.Failed{Cause: cause}} }
	}
	s.r.pickCause(func(cause string) { s.write(ch.Refines, picked(cause)...) })
}
