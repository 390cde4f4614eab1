package part

import (
	"slices"

	"barkslip/core/due"
	"barkslip/core/record"
)

// act is what was written in one go in this session, or taken back.
type act struct {
	words  string // what it is called; "" for its events in words
	events []record.Event
	taken  []record.Event // the withdrawals that took it back
}

// acts are those of a session: what was answered, what of it was taken back since,
// and what was taken back on its stump; the newest last.
type acts struct{ given, taken, gone []act }

// acted notes what was answered about stumps. Nothing older is put back over it.
func (x *Session) acted(events []record.Event) {
	for _, e := range events {
		if _, taking := e.Body.(*record.Withdrawn); taking || e.Stump == record.NoStump {
			return
		}
	}
	if len(events) > 0 {
		x.acts.given, x.acts.taken = append(x.acts.given, act{events: events}), nil
	}
}

// nameAct says what the newest act is called.
func (x *Session) nameAct(words string) { x.acts.given[len(x.acts.given)-1].words = words }

// Withdraw takes back events in one transaction, as one act.
func (x *Session) Withdraw(events []record.Event) (due.Appended, error) {
	out, err := x.withdraw(events)
	if err == nil && !x.regained(events) {
		x.forget(events)
	}
	return out, err
}

// regained has what was taken back on a stump, and is put back there, be of this
// session again; false where the events take back no taking back.
func (x *Session) regained(events []record.Event) bool {
	back := map[record.ID]bool{}
	for _, e := range events {
		if w, taking := e.Body.(*record.Withdrawn); taking {
			back[w.Of] = true
		}
	}
	x.acts.gone = slices.DeleteFunc(x.acts.gone, func(a act) bool {
		again := slices.ContainsFunc(a.events, func(e record.Event) bool { return back[e.ID] })
		if again {
			x.acts.given = append(x.acts.given, a)
		}
		return again
	})
	return len(back) > 0
}

// forget has what was taken back on a stump be no more a part of its act.
func (x *Session) forget(events []record.Event) {
	x.acts.taken = nil
	gone := map[record.ID]bool{}
	for _, e := range events {
		gone[e.ID] = true
	}
	kept := x.acts.given[:0]
	for _, a := range x.acts.given {
		if lost := slices.DeleteFunc(slices.Clone(a.events), func(e record.Event) bool { return !gone[e.ID] }); len(lost) > 0 {
			x.acts.gone = append(x.acts.gone, act{events: lost})
		}
		a.events = slices.DeleteFunc(slices.Clone(a.events), func(e record.Event) bool { return gone[e.ID] })
		if len(a.events) > 0 {
			kept = append(kept, a)
		}
	}
	x.acts.given = kept
}

func (x *Session) withdraw(events []record.Event) (due.Appended, error) {
	out, err := x.Write(record.Undo(events, x.Now(), x.Hand)...)
	if err == nil {
		x.ForgetHabit()
	}
	return out, err
}

// standing is the events of an act that stand, with what they took the place of
// in it; none where all of it was taken back or said anew since.
func (x *Session) standing(a act) (out []record.Event, err error) {
	seen := map[record.StumpID]bool{}
	for _, e := range a.events {
		if seen[e.Stump] {
			continue
		}
		s, err := x.Book.Stump(e.Stump)
		if err != nil {
			return nil, err
		}
		if s.Stands(e.ID) {
			seen[e.Stump] = true
			out = append(out, s.Act(e)...)
		}
	}
	return out, nil
}

// lastAct is the newest act of the session of which something stands; what was
// taken back elsewhere is forgotten.
func (x *Session) lastAct() (a act, standing []record.Event, ok bool) {
	for n := len(x.acts.given); n > 0; n = len(x.acts.given) {
		a = x.acts.given[n-1]
		standing, err := x.standing(a)
		if err != nil {
			x.trouble = err
			return a, nil, false
		}
		if len(standing) > 0 {
			return a, standing, true
		}
		x.acts.given = x.acts.given[:n-1]
	}
	return act{}, nil, false
}

// LastAct names what TakeBack takes back, "" where that is nothing.
func (x *Session) LastAct() string {
	if n := len(x.acts.given); n > 0 {
		return x.actWords(x.acts.given[n-1], x.acts.given[n-1].events)
	}
	return ""
}

// LastStump is the stump of the act that TakeBack takes back, where it is of one
// alone.
func (x *Session) LastStump() record.StumpID {
	n := len(x.acts.given)
	if n == 0 {
		return record.NoStump
	}
	events := x.acts.given[n-1].events
	for _, e := range events {
		if e.Stump != events[0].Stump {
			return record.NoStump
		}
	}
	return events[0].Stump
}

func (x *Session) actWords(a act, events []record.Event) string {
	if a.words != "" {
		return a.words
	}
	return events[0].Stump.Place() + ", " + x.Words(events)
}

// TakeBack takes back the newest act of this session, for all of its stumps.
func (x *Session) TakeBack() Msgs {
	a, events, ok := x.lastAct()
	if !ok {
		return Says("Nothing more was answered since the program was opened; open a stump to take back its answers.")
	}
	words := x.actWords(a, events)
	out, err := x.withdraw(events)
	if err != nil {
		return Fails(err)
	}
	x.acts.given = x.acts.given[:len(x.acts.given)-1]
	x.acts.taken = append(x.acts.taken, act{words: words, events: a.events, taken: out.Events})
	return Msgs{Reload{}, Say{"Took back: " + words + "."}}
}

// PutBack puts back what TakeBack took back last, as long as nothing was answered
// since.
func (x *Session) PutBack() Msgs {
	n := len(x.acts.taken)
	if n == 0 {
		return Says("Nothing was taken back here that could be put back.")
	}
	a := x.acts.taken[n-1]
	if _, err := x.withdraw(a.taken); err != nil {
		return Fails(err)
	}
	x.acts.taken = x.acts.taken[:n-1]
	x.acts.given = append(x.acts.given, act{words: a.words, events: a.events})
	return Msgs{Reload{}, Say{"Put back: " + a.words + "."}}
}

// Words are events in the block's words.
func (x *Session) Words(events []record.Event) string {
	return record.SayAct(events, x.Site().Units)
}
