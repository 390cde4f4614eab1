package sample

import (
	"slices"

	"barkslip/core/record"
)

// livesOfTheirOwn is how many stumps of a large block live a life of their own;
// the others live one of these again under other ids.
const livesOfTheirOwn = 1000

// copied is a large block laid out over so many lives of a smaller one.
func copied(p Plan, lives int) *ground {
	g := layOut(p)
	stumps := p.Stumps
	p.Stumps = lives
	g.of, g.was = layOut(p), -1
	g.block = g.of.block
	for i := range g.of.lots {
		g.of.lots[i].Sticks *= stumps / lives
	}
	return g
}

// copies tells the i-th stump of a large block as a stump of the smaller one that
// stands where it does was told.
func (g *ground) copies(l *life, i int) {
	if j := i * g.of.Stumps / g.Stumps; j != g.was {
		l.begin(j)
		l.live()
		g.was, g.model = j, slices.Clone(l.told())
	}
	c := seeded(g.Seed, uint64(i)|1<<45)
	ids := make(map[record.ID]record.ID, len(g.model))
	anew := func(id record.ID) record.ID {
		if id == record.None {
			return id
		}
		if _, known := ids[id]; !known {
			ids[id] = c.id()
		}
		return ids[id]
	}
	l.entries = l.entries[:0]
	for _, e := range g.model {
		e.event.Stump = g.place(i)
		e.event.ID, e.event.Act = anew(e.event.ID), anew(e.event.Act)
		e.event.Replaces = slices.Clone(e.event.Replaces)
		for n, id := range e.event.Replaces {
			e.event.Replaces[n] = anew(id)
		}
		if w, ok := e.event.Body.(*record.Withdrawn); ok {
			e.event.Body = &record.Withdrawn{Of: anew(w.Of)}
		}
		l.entries = append(l.entries, e)
	}
}
