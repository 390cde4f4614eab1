package record

// Undoable is the newest standing answer on the stump, which is what is taken
// back next; adding the stump itself is not.
func (s *Stump) Undoable() (Event, bool) {
	for i := len(s.Live) - 1; i >= 0; i-- {
		if _, added := s.Live[i].Body.(*StumpAdded); !added {
			return s.Live[i], true
		}
	}
	return Event{}, false
}

// together are the kinds of answers that one key may give as one: the first in
// the journal, and what comes right behind it.
var together = map[string]string{"seasons-end": "visited", "twine-cut": "untied", "headed-back": "rival-cut", "seal-checked": "resealed"}

// givenAsOne says whether two events were given as one answer.
func givenAsOne(first, then Event) bool {
	return first.Body != nil && then.Body != nil && together[first.Body.Kind()] == then.Body.Kind() &&
		then.Clock == first.Clock+1 && then.At.Equal(first.At) && then.Hand == first.Hand
}

// GivenWith is what else stands of the answer that an event is part of.
func (s *Stump) GivenWith(e Event) (out []Event) {
	for _, other := range s.Live {
		if givenAsOne(other, e) || givenAsOne(e, other) {
			out = append(out, other)
		}
	}
	return out
}

// Stands says whether an event was neither taken back nor replaced.
func (s *Stump) Stands(id ID) bool {
	_, ok := find(s.Live, id)
	return ok
}

// withdrawals are those that could be taken back, the next one last: the newest
// with no newer answer behind them.
func withdrawals(sorted []Event) []Event {
	var stack []Event
	for _, e := range sorted {
		w, taking := e.Body.(*Withdrawn)
		switch {
		case !taking:
			stack = stack[:0]
		case len(stack) > 0 && stack[len(stack)-1].ID == w.Of:
			stack = stack[:len(stack)-1]
		default:
			stack = append(stack, e)
		}
	}
	return stack
}

// find is the event of an id among events.
func find(events []Event, id ID) (Event, bool) {
	for _, e := range events {
		if e.ID == id {
			return e, true
		}
	}
	return Event{}, false
}

// Redoable is the withdrawals that redo takes back, the next one first, and the
// answers they restore: one, or those given as one.
func (s *Stump) Redoable() (taken, answers []Event) {
	stack := withdrawals(s.All)
	for i := len(stack) - 1; i >= 0 && len(taken) < 2; i-- {
		answer, ok := find(s.All, stack[i].Body.(*Withdrawn).Of)
		if !ok || len(answers) > 0 && !givenAsOne(answer, answers[0]) && !givenAsOne(answers[0], answer) {
			break
		}
		taken, answers = append(taken, stack[i]), append(answers, answer)
	}
	return taken, answers
}
