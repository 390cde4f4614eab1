package stump

import (
	"fmt"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/ui/part"
)

// undo takes back the newest answer on this stump, with all that was given as one
// act with it.
func (s *Screen) undo() part.Msgs {
	if id := s.before(); id != record.NoStump && id != s.id {
		taken := s.x.TakeBack()
		return append(part.Msgs{part.Open{Stump: id}}, taken...)
	}
	e, ok := s.record.Undoable()
	if !ok {
		return part.Says("Nothing to take back on this stump.")
	}
	if adds(e) {
		return s.x.TakeLimbBack(s.record, e)
	}
	act, err := s.actOf(e)
	if err != nil {
		return part.Fails(err)
	}
	return s.changed("Took back", act, act)
}

// actOf is the act that an event is of, on the stump at which it was given: that
// may be another limb of the tree.
func (s *Screen) actOf(e record.Event) ([]record.Event, error) {
	if !s.record.Elsewhere(e.ID) {
		return s.record.Act(e), nil
	}
	other, err := s.x.Book.Stump(e.Stump)
	if err != nil {
		return nil, err
	}
	return other.Act(e), nil
}

func adds(e record.Event) bool {
	_, adding := e.Body.(*record.StumpAdded)
	return adding
}

// says is an answer in a few words.
func (s *Screen) says(e record.Event) string {
	if adds(e) {
		return part.LimbAdded(s.id)
	}
	return record.Say(e.Body, s.x.Site().Units)
}

// addLimb adds a limb of the tree and opens it.
func (s *Screen) addLimb() part.Msgs {
	id, words, err := s.x.AddLimb(s.id)
	if err != nil {
		return part.Fails(err)
	}
	return part.Msgs{part.Open{Stump: id}, part.Say{Text: words}}
}

// before is the stump answered last on a round that went on to this one, on which
// nothing was answered yet: it is that answer which u takes back.
func (s *Screen) before() record.StumpID {
	if !s.inRound || s.wrote {
		return record.NoStump
	}
	return s.x.LastStump()
}

// redo puts back what was taken back last.
func (s *Screen) redo() part.Msgs {
	withdrawals, answers := s.record.Redoable()
	if len(withdrawals) == 0 {
		return part.Says("Nothing to put back on this stump.")
	}
	return s.changed("Put back", withdrawals, answers)
}

// changed takes events back and names the answers that come or go with them.
func (s *Screen) changed(word string, events, answers []record.Event) part.Msgs {
	out, err := s.x.Withdraw(events)
	if err != nil {
		return part.Fails(err)
	}
	if err := s.anew(out); err != nil {
		return part.Fails(err)
	}
	return part.Says(fmt.Sprintf("%s: %s.", word, s.x.Words(answers)))
}

// move goes along the stake to the next step that was answered, or back to the
// one asked now; with open, to the next that is still open.
func (s *Screen) move(by int, open bool) part.Msgs {
	knots := s.walk.Knots()
	at := 0
	for i, k := range knots {
		if k.Step == s.asked.Step {
			at = i
		}
	}
	for next := at + by; next >= 0 && next < len(knots); next += by {
		if k := knots[next]; k.Present || open != answered(k) {
			at = next
			break
		}
	}
	k := knots[at]
	if k.Present {
		s.goTo("", false)
		return part.Says("")
	}
	s.goTo(k.Step.ID, answered(k))
	if s.again {
		return part.Says("Correcting " + k.Step.Name + ": " + k.Answer + ". Esc goes back to the walk.")
	}
	return part.Says("")
}

// back leaves a step gone to, or the stump.
func (s *Screen) back() part.Msgs {
	if s.focus != "" {
		s.goTo("", false)
		return part.Says("")
	}
	return part.Msgs{part.Say{}, part.Back{}}
}

// Done says whether nothing that is open here is unanswered, nor anything begun.
func (s *Screen) Done() bool {
	if s.focus != "" {
		return false
	}
	_, open := due.First(s.walk.Dues(), s.walk.Now)
	return !open && !s.walk.Begun()
}

// Meet goes to the step that meets the first of the dues, where it is open or the
// walk itself asks nothing, as on a round for a day to come. What is begun goes on.
func (s *Screen) Meet(dues []due.Due) {
	if len(dues) == 0 || s.walk.Begun() {
		return
	}
	step := s.walk.Meets(dues[0].Kind)
	first, open := due.First(s.walk.Dues(), s.walk.Now)
	if open && (!dues[0].Open(s.walk.Now) || s.walk.Meets(first.Kind) == step || first.Kind.Urgent()) {
		return
	}
	s.goTo(step, false)
}
