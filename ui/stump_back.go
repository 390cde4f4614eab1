package ui

import (
	"fmt"

	"barkslip/core"
)

// undo takes back the newest answer on this stump.
func (s *stumpScreen) undo() {
	e, ok := s.s.Undoable()
	if !ok {
		s.x.say("Nothing to take back on this stump.")
		return
	}
	s.takeBack(e, "Took back")
}

func (s *stumpScreen) takeBack(e core.Event, word string) {
	if _, err := s.x.write(s.id, core.Event{At: s.x.Now(), Body: &core.Withdrawn{Of: e.ID}}); err != nil {
		s.x.fail(err)
		return
	}
	said := e
	if w, answer, ok := s.s.Redoable(); ok && w.ID == e.ID {
		said = answer
	}
	s.focus, s.again = "", false
	s.clear()
	if err := s.load(); err != nil {
		s.x.fail(err)
		return
	}
	s.x.say(fmt.Sprintf("%s: %s.", word, core.Say(said.Body, s.x.site().Units)))
}

// redo puts back what was taken back last.
func (s *stumpScreen) redo() {
	w, _, ok := s.s.Redoable()
	if !ok {
		s.x.say("Nothing to put back on this stump.")
		return
	}
	s.takeBack(w, "Put back")
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
func (s *stumpScreen) meet(dues []core.Due) {
	present := s.c.Present()
	for _, d := range dues {
		if d.Kind.Step() == present || d.Kind == core.DueLook || d.Kind == core.DueLookAgain || d.Kind == core.DueGraft {
			return // the walk itself leads there
		}
	}
	if step := dues[0].Kind.Step(); step != "" {
		s.focus, s.again = step, false
		s.ask()
	}
}
