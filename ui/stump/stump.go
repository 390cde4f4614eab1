// Package stump is the screen of the walk on one stump. It may import core and
// ui/part with its leaves, and no other screen.
package stump

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/core/record"
	"barkslip/core/walk"
	"barkslip/ui/part"
)

// Screen is the walk on one stump: one question, its answers, and the stem of
// steps beside it.
type Screen struct {
	x        *part.Session
	id       record.StumpID
	inRound  bool // opened from a round, which goes on when it is left
	wrote    bool // something was answered here since it was opened
	record   *record.Stump
	walk     *walk.Case
	asked    walk.Ask
	focus    walk.StepID // a step gone to; "" for the one that is asked now
	again    bool        // focus corrects what was answered
	field    part.Field
	sub      *walk.Choice // a choice whose answer is being typed
	good     []bool       // marks of a list of checks
	doubt    *walk.Doubt  // what was typed is unlikely: its ways on stand in place
	wasEarly bool         // the doubt is that it is too early
	fig      int          // 0 beside the answers, else which figure is shown large

	cautioned map[string]walk.StepID // by caution, the step of this stump that says it
	read      int                    // the line from which the coach's lesson is read
	seen      int                    // how many of its lines were shown, where there are more
	more      bool                   // it has more than is shown
}

// New is the walk on a stump of the session's block, by itself or in a round.
func New(x *part.Session, id record.StumpID, inRound bool) *Screen {
	return &Screen{x: x, id: id, inRound: inRound, cautioned: map[string]walk.StepID{}}
}

// ID is the stump.
func (s *Screen) ID() record.StumpID { return s.id }

// Record is the stump's record as shown.
func (s *Screen) Record() *record.Stump { return s.record }

// Case is what the walk knows of the stump.
func (s *Screen) Case() *walk.Case { return s.walk }

// Asked is the present question.
func (s *Screen) Asked() walk.Ask { return s.asked }

// Load reads the record from the book: what is shown as taken is on disk.
func (s *Screen) Load() error {
	stump, err := s.x.Book.Stump(s.id)
	if err == nil && stump.Divided() { // its limbs are the stumps: the first is shown
		s.id.Limb = stump.Limbs[0]
		stump, err = s.x.Book.Stump(s.id)
	}
	if err != nil {
		return err
	}
	s.record = stump
	s.ask()
	return nil
}

// ask puts the present question anew; what is being typed stays if the question
// is still the same.
func (s *Screen) ask() {
	before, slot, listed := s.asked.Step, 0, s.asked.Checks != nil
	if s.walk != nil {
		slot = s.walk.Slot()
	}
	s.walk = walk.NewCase(s.record, s.x.Site(), s.x.Book.Folded(), s.x.Time(), s.x.Habit(s.id))
	s.walk.Odds, s.walk.Used, s.walk.Coach = s.x.Odds(), s.x.Used(), s.x.Prefs.Coach
	id := s.focus
	if id == "" {
		id = s.walk.Present()
	}
	s.asked = s.walk.Ask(id, s.again)
	if s.asked.Step != before || s.walk.Slot() != slot || listed != (s.asked.Checks != nil) {
		s.clear()
	}
	s.caution()
}

// goTo asks a step out of turn; the walk is back at its own with "".
// What was typed, marked or doubted before goes with its question.
func (s *Screen) goTo(step walk.StepID, again bool) {
	s.focus, s.again = step, again
	s.ask()
	s.clear()
}

// Tick asks anew as time goes on; what was too early before is so no longer.
func (s *Screen) Tick() part.Msgs {
	early := func() bool { return s.asked.Until != nil && s.asked.Until.Truncate(time.Second).After(s.x.Time()) }
	s.wasEarly = s.wasEarly || s.doubt != nil && s.entry() == nil && early()
	s.ask()
	if s.wasEarly && s.doubt != nil && s.asked.Until != nil && !early() {
		s.clear()
		return part.Says("")
	}
	return nil
}

// clear forgets what was typed or marked for the question before.
func (s *Screen) clear() {
	s.sub, s.good, s.fig, s.doubt, s.wasEarly, s.read = nil, nil, 0, nil, false, 0
	s.field = part.NewField(s.asked.Entry != nil && s.asked.Entry.Text, "")
	if s.asked.Checks != nil {
		s.good = make([]bool, len(s.asked.Checks.Items))
		for i := range s.good {
			s.good[i] = !s.asked.Checks.Items[i].Not
		}
	}
}

// entry is the text asked for, if any.
func (s *Screen) entry() *walk.Entry {
	if s.sub != nil {
		return s.sub.Entry
	}
	return s.asked.Entry
}

// Field is where text goes while text is asked for.
func (s *Screen) Field() *part.Field {
	if s.doubt != nil || s.entry() == nil {
		return nil
	}
	return &s.field
}

// Key types, answers, or takes a key of the table.
func (s *Screen) Key(k tea.KeyMsg) part.Msgs {
	if f := s.Field(); f != nil && f.Key(k) {
		return nil
	}
	key := k.String()
	switch {
	case key == "enter", len(key) == 1 && key[0] >= '0' && key[0] <= '9':
		return s.answer(key)
	case key == "esc" && s.fig > 0:
		s.fig = 0
		return part.Says("")
	case key == "esc" && s.doubt != nil:
		s.doubt = nil
		s.field.Clear()
		return part.Says("")
	case key == "esc" && (s.sub != nil || s.field.Text() != ""):
		s.clear()
		return part.Says("")
	}
	return part.Press(append(s.Table(), s.x.Common(s.help)...), k, part.Useless)
}
