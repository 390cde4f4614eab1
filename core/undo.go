package core

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

// redoable is the withdrawal that would be taken back next: the newest one with
// no newer answer behind it.
func redoable(sorted []Event) (Event, bool) {
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
	if len(stack) == 0 {
		return Event{}, false
	}
	return stack[len(stack)-1], true
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

// Redoable is the withdrawal that redo takes back, and the answer it restores.
func (s *Stump) Redoable() (withdrawal, answer Event, ok bool) {
	if s.redo.Body == nil {
		return Event{}, Event{}, false
	}
	return s.redo, s.redone, true
}
