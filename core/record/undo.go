package record

import (
	"slices"
	"strings"
	"time"

	"barkslip/core/unit"
)

// Undoable is the newest standing answer on the stump, which is what is taken
// back next, with all that is one act with it; adding the stump itself is not,
// but adding a limb at which nothing was answered yet. Of an answer that holds
// for the tree only in part no part is taken back here.
func (s *Stump) Undoable() (Event, bool) {
	for i := len(s.Live) - 1; i >= 0; i-- {
		_, added := s.Live[i].Body.(*StumpAdded)
		if !s.inPart(s.Live[i]) && (!added || s.ID.Limb > 0 && len(s.own(s.Live)) == 1) {
			return s.Live[i], true
		}
	}
	return Event{}, false
}

// Act is what is taken back together with an event that stands, it among them,
// the newest first: what stands of its act, and what in the same act those took
// the place of, so that no earlier wording comes back in their stead.
func (s *Stump) Act(e Event) []Event {
	if e.Act == None {
		return append([]Event{e}, s.GivenWith(e)...)
	}
	return s.act(e.Act)
}

func (s *Stump) act(act ID) (out []Event) {
	void, replaced := voided(s.All), map[ID]bool{}
	for i := len(s.All) - 1; i >= 0; i-- {
		e := s.All[i]
		if _, taking := e.Body.(*Withdrawn); taking || void[i] || e.Act != act || !replaced[e.ID] && !s.Stands(e.ID) {
			continue
		}
		out = append(out, e)
		for _, id := range e.Replaces {
			replaced[id] = true
		}
	}
	return out
}

// GivenWith is what else stands of the answer that an event is part of.
func (s *Stump) GivenWith(e Event) (out []Event) {
	for _, other := range s.Live {
		if other.ID != e.ID && givenTogether(e, other) {
			out = append(out, other)
		}
	}
	return out
}

// givenTogether says whether two events are one act. Journals of version 1 name
// no acts: there it is a pair that one key gives, one right behind the other in
// the journal, for one time and by one hand.
func givenTogether(a, b Event) bool {
	if a.Act != None || b.Act != None {
		return a.Act == b.Act
	}
	if a.Clock > b.Clock {
		a, b = b, a
	}
	return a.Body != nil && b.Body != nil && pair(a.Body, b.Body) && b.Clock == a.Clock+1 && b.At.Equal(a.At) && b.Hand == a.Hand
}

// ActOn is the events of an act that stand, over the stumps given, and what in
// the act those took the place of: what Undo takes back. An act of which a part
// has not come yet by a join is taken back as far as it is there.
func ActOn(stumps []*Stump, act ID) (out []Event) {
	if act == None {
		return nil
	}
	for _, s := range stumps {
		out = append(out, s.act(act)...)
	}
	return out
}

// Undo is the withdrawals that take events back, or withdrawals themselves, in
// which case they put back: one act, as they are written in one go.
func Undo(events []Event, at time.Time, hand string) []Event {
	out := make([]Event, len(events))
	for i, e := range events {
		out[i] = Event{At: at.Truncate(time.Second), Hand: hand, Stump: e.Stump, Body: &Withdrawn{Of: e.ID}}
	}
	return out
}

// SayAct is an act in a few words: what it says of one stump, or once what it
// says of many and how many they are. Wordings that others in the act took the
// place of are passed over.
func SayAct(events []Event, sys unit.System) string {
	replaced, stumps := map[ID]bool{}, map[StumpID]bool{}
	for _, e := range events {
		for _, id := range e.Replaces {
			replaced[id] = true
		}
		stumps[e.Stump] = true
	}
	var words []string
	for _, e := range events {
		if said := Say(e.Body, sys); !replaced[e.ID] && (len(stumps) == 1 || !slices.Contains(words, said)) {
			words = append(words, said)
		}
	}
	if len(stumps) > 1 {
		if len(words) > mostSaid {
			words = append(words[:mostSaid-1], "and others")
		}
		words = append(words, unit.Count(len(stumps), "stump"))
	}
	return strings.Join(words, ", ")
}

// mostSaid is how many wordings of an act on many stumps are told.
const mostSaid = 3

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
		if !taking {
			stack = stack[:0]
			continue
		}
		if i := slices.IndexFunc(stack, func(e Event) bool { return e.ID == w.Of }); i >= 0 {
			stack = slices.Delete(stack, i, i+1)
			continue
		}
		stack = append(stack, e)
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
// answers they restore: all of one act.
func (s *Stump) Redoable() (taken, answers []Event) {
	stack := withdrawals(s.All)
	for i := len(stack) - 1; i >= 0; i-- {
		w := stack[i]
		answer, ok := find(s.All, w.Body.(*Withdrawn).Of)
		if !ok {
			break
		}
		if len(taken) > 0 && !takenTogether(taken[0], w, answers[0], answer) {
			break
		}
		taken, answers = append(taken, w), append(answers, answer)
		if w.Act == None && len(taken) == 2 {
			break // version 1 knows no more than pairs
		}
	}
	return taken, answers
}

// takenTogether says whether two withdrawals are one act, or in version 1 what
// they took back was.
func takenTogether(w, v, ofW, ofV Event) bool {
	if w.Act != None || v.Act != None {
		return w.Act == v.Act
	}
	return givenTogether(ofW, ofV)
}
