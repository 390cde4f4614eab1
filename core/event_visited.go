package core

import "errors"

// Finding is what a visit found on one graft.
type Finding struct {
	Slot    int
	State   GraftState
	Cause   string  // of death
	Scratch Scratch // under scratched bark, if it was tried
	Shoot   Measure // length of its longest shoot, if measured
}

// Visited is a visit to the grafts of a stump, one finding each.
type Visited struct{ Found []Finding }

// Kind is visited.
func (*Visited) Kind() string { return "visited" }

func (b *Visited) fields(f fields) {
	listOf(f, "found", &b.Found, func(g *Finding, f fields) {
		f.number("slot", &g.Slot)
		word(f, "state", &g.State)
		f.text("cause", &g.Cause)
		word(f, "scratch", &g.Scratch)
		f.length("shoot", &g.Shoot)
	})
}

func (b *Visited) check() error {
	for _, g := range b.Found {
		err := errors.Join(oneOf("state", g.State, false, GraftStates...), oneOf("scratch", g.Scratch, true, Green, Brown))
		if err != nil {
			return err
		}
	}
	return nil
}

func (b *Visited) apply(_ *Stump, a *Attempt, e Event) { a.Visits = append(a.Visits, said(e, *b)) }
