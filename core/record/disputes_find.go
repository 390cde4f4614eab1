package record

import (
	"cmp"
	"fmt"
	"slices"
)

// claimed is a claim with the event that makes it, by its place in the list.
type claimed struct {
	claim
	event int
}

// dispute is events that contradict on a matter about one slot, in order.
type dispute struct {
	*matter
	slot   int
	claims []claimed
}

// disputes finds what contradicts among the events that stand, which are in
// order. Neither repetition nor the order in which they came makes a difference.
func disputes(live []Event) (out []dispute) {
	if !anyApart(live) {
		return nil
	}
	aware := awareOf(live)
	for i := range matters {
		m, bySlot := &matters[i], map[int][]claimed{}
		for j, e := range live {
			for _, c := range m.says(e.Body) {
				bySlot[c.slot] = append(bySlot[c.slot], claimed{c, j})
			}
		}
		for slot, claims := range bySlot {
			for _, group := range m.groups(live, claims, aware) {
				out = append(out, dispute{m, slot, group})
			}
		}
	}
	slices.SortFunc(out, func(a, b dispute) int {
		return cmp.Or(cmp.Compare(a.claims[0].event, b.claims[0].event), cmp.Compare(a.name, b.name), cmp.Compare(a.slot, b.slot))
	})
	return out
}

// aware is what each act was said with at hand that says otherwise.
type aware map[ID][]ID

func awareOf(live []Event) aware {
	out := aware{}
	for _, e := range live {
		if a, ok := e.Body.(*Aware); ok && e.Act != None {
			out[e.Act] = append(out[e.Act], a.Of)
		}
	}
	return out
}

// of says whether one of two events was said with the other at hand.
func (a aware) of(x, y Event) bool {
	return slices.Contains(a[x.Act], y.ID) || slices.Contains(a[y.Act], x.ID)
}

// apart says whether two events may have been put down without knowledge of one
// another: by two hands, or at one place of the clock. One hand that says two things
// one after the other has seen the matter change.
func apart(x, y Event) bool { return x.Hand != y.Hand || x.Clock == y.Clock }

// anyApart says whether two of the events can contradict at all: most journals are
// of one hand.
func anyApart(live []Event) bool {
	for i := range live[min(1, len(live)):] {
		if apart(live[i], live[i+1]) {
			return true
		}
	}
	return false
}

// against says whether two claims of two events contradict.
func (m *matter) against(x, y claim, a, b Event) bool {
	return x.slot == y.slot && x.says != y.says && apart(a, b) && m.near(a.At, b.At)
}

// aware is the events that say, of answers about to be given, which of those that
// stand say otherwise: whoever gives them has these at hand.
func (s *Stump) aware(given []Event) (out []Event) {
	for _, e := range given {
		for i := range matters {
			out = append(out, matters[i].aware(s.Live, e)...)
		}
	}
	return out
}

func (m *matter) aware(live []Event, e Event) (out []Event) {
	for _, mine := range m.says(e.Body) {
		for _, old := range live {
			if slices.Contains(e.Replaces, old.ID) {
				continue
			}
			for _, other := range m.says(old.Body) {
				if m.against(mine, other, e, old) {
					out = append(out, Event{At: e.At, Hand: e.Hand, Stump: e.Stump, Body: &Aware{Of: old.ID}})
				}
			}
		}
	}
	return out
}

// groups is the claims that contradict, each group those that hang together.
func (m *matter) groups(live []Event, claims []claimed, aware aware) (out [][]claimed) {
	group := make([]int, len(claims)) // the place of the first that it hangs together with
	for i := range group {
		group[i] = i
	}
	for i, x := range claims {
		for j, y := range claims[:i] {
			a, b := live[x.event], live[y.event]
			if group[i] == group[j] || !m.against(x.claim, y.claim, a, b) || aware.of(a, b) {
				continue
			}
			from, to := max(group[i], group[j]), min(group[i], group[j])
			for k := range group {
				if group[k] == from {
					group[k] = to
				}
			}
		}
	}
	for first := range claims {
		var of []claimed
		for i, g := range group {
			if g == first {
				of = append(of, claims[i])
			}
		}
		if len(of) > 1 {
			out = append(out, of)
		}
	}
	return out
}

// holds is the claims of a dispute that hold until it is settled: those with the
// most care, none where these contradict too.
func (d dispute) holds() (out []claimed) {
	most := slices.MaxFunc(d.claims, func(x, y claimed) int { return x.care - y.care })
	for _, c := range d.claims {
		if c.care < most.care {
			continue
		}
		if c.says != most.says {
			return nil
		}
		out = append(out, c)
	}
	return out
}

// question names a dispute, as a standing answer's question would.
func (d dispute) question() string {
	if d.slot > 0 {
		return fmt.Sprint(d.name, "/", d.slot)
	}
	return d.name
}

// dispute takes the disputes among the events that stand into the record. It
// gives the events that hold: without what is disputed and less careful.
func (s *Stump) dispute() []Event {
	found := disputes(s.Live)
	if len(found) == 0 {
		return s.Live
	}
	holding := slices.Clone(s.Live)
	for _, d := range found {
		c := Clash{Question: d.question(), matter: d.matter, slot: d.slot}
		holds := d.holds()
		for _, x := range d.claims {
			c.Events, c.says = append(c.Events, s.Live[x.event]), append(c.says, x.says)
			if body := holding[x.event].Body; body != nil && !slices.Contains(holds, x) {
				holding[x.event].Body = d.without(body, d.slot)
			}
		}
		if len(holds) > 0 {
			c.Holds = s.Live[holds[len(holds)-1].event].ID
		}
		s.Clashes = append(s.Clashes, c)
	}
	return slices.DeleteFunc(holding, func(e Event) bool { return e.Body == nil })
}
