package ui

import (
	"fmt"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/walk"
)

// undo takes back the newest answer on this stump.
func (s *stumpScreen) undo() {
	e, ok := s.s.Undoable()
	if !ok {
		s.x.say("Nothing to take back on this stump.")
		return
	}
	s.takeBack("Took back", e)
}

// takeBack takes back an answer, and what was given with it as one answer.
func (s *stumpScreen) takeBack(word string, e record.Event) {
	events := s.s.Act(e)
	s.withdraw(word, events, events)
}

// redo puts back what was taken back last.
func (s *stumpScreen) redo() {
	withdrawals, answers := s.s.Redoable()
	if len(withdrawals) == 0 {
		s.x.say("Nothing to put back on this stump.")
		return
	}
	s.withdraw("Put back", withdrawals, answers)
}

// withdraw takes back events in one transaction and names the answers that come
// or go with them.
func (s *stumpScreen) withdraw(word string, events, answers []record.Event) {
	out, err := s.x.write(s.id, record.Undo(events, s.x.Now(), s.x.hand)...)
	if err != nil {
		s.x.fail(err)
		return
	}
	s.x.before, s.x.earlier = walk.Habit{}, walk.Habit{} // it may have been wood or a seal
	s.focus, s.again = "", false
	s.clear()
	if err := s.loadAfter(out); err != nil {
		s.x.fail(err)
		return
	}
	s.x.say(fmt.Sprintf("%s: %s.", word, record.SayAct(answers, s.x.site().Units)))
}

// move goes along the stake to the next step that was answered, or back to the
// one asked now; with open, to the next that is still open.
func (s *stumpScreen) move(by int, open bool) {
	knots := s.c.Knots()
	at := 0
	for i, k := range knots {
		if k.Step == s.q.Step {
			at = i
		}
	}
	for next := at + by; next >= 0 && next < len(knots); next += by {
		if k := knots[next]; k.Present || open == (k.Answer == "") {
			at = next
			break
		}
	}
	k := knots[at]
	s.focus, s.again = k.Step.ID, k.Answer != ""
	if k.Present {
		s.focus, s.again = "", false
	}
	s.ask()
	switch {
	case s.again:
		s.x.say("Correcting " + k.Step.Name + ": " + k.Answer + ". Esc goes back to the walk.")
	default:
		s.x.say("")
	}
}

// back leaves a step gone to, or the stump.
func (s *stumpScreen) back() {
	if s.focus != "" {
		s.focus, s.again = "", false
		s.ask()
		s.x.say("")
		return
	}
	s.x.say("")
	if s.r.rounds != nil {
		s.r.openRounds()
		return
	}
	s.r.openBlock()
}

// meet goes to the step that meets the first of the dues, unless it is asked
// anyway.
func (s *stumpScreen) meet(dues []due.Due) {
	present := s.c.Present()
	for _, d := range dues {
		if d.Kind.Step() == present || d.Kind == due.Look || d.Kind == due.LookAgain || d.Kind == due.Graft {
			return // the walk itself leads there
		}
	}
	if step := dues[0].Kind.Step(); step != "" {
		s.focus, s.again = step, false
		s.ask()
	}
}
