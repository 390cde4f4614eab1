package record

import (
	"time"

	"barkslip/core/trade"
)

// Outcome is what is known of one graft.
//
// A graft is known from the visit that saw it dead, from the first visit that saw
// it push or grow on the thirtieth day after its stump's first push or later, or
// from the end of its first season, whichever is first. It took if it was alive
// and growing then, and stays so whatever comes later; it stands if it took and is
// alive now. One that had not moved on the thirtieth day waits to be known.
type Outcome struct {
	Known    bool
	Took     bool
	Standing bool
	At       time.Time // since when it is known, zero while it is not
	Died     time.Time // when it was first seen dead, zero while it lives
	Cause    string    // of death, "" where none was told
}

// OutcomeOf is what is known of a graft of the attempt on a block, in whose days
// the thirty are counted.
func (a *Attempt) OutcomeOf(g *Graft, b *Block) (o Outcome) {
	for _, s := range a.sights(g) {
		switch {
		case s.state == Dead && o.Died.IsZero():
			o.Died, o.Cause = s.at, s.cause
		case s.state != Dead:
			o.Died, o.Cause = time.Time{}, "" // seen alive after all
		}
		if !o.Known && a.settles(s, b) {
			o.Known, o.At, o.Took = true, s.at, s.state.grows()
		}
	}
	if f := a.Failed; f != nil {
		if !o.Known {
			o.Known, o.At = true, f.At
		}
		if o.Died.IsZero() || f.At.Before(o.Died) {
			o.Died = f.At
		}
		if o.Cause == "" {
			o.Cause = f.What.Cause
		}
	}
	o.Standing = o.Took && o.Died.IsZero()
	return o
}

// sight is a graft seen in a state.
type sight struct {
	at    time.Time
	state GraftState
	cause string
	ends  bool // at the end of a season
}

// sights is how a graft was seen, in order of time: on visits, and as it had last
// been seen when a season ended.
func (a *Attempt) sights(g *Graft) (out []sight) {
	ends := a.Seasons
	last := NoChange
	endsBefore := func(at time.Time) {
		for ; len(ends) > 0 && (at.IsZero() || ends[0].At.Before(at)); ends = ends[1:] {
			if e := ends[0]; Newer(e, *g.Set) {
				if e.What.Word == "dead" {
					last = Dead
				}
				out = append(out, sight{e.At, last, "", true})
			}
		}
	}
	for i := range a.Visits {
		v := &a.Visits[i]
		if f := FindingOf(v, g.Slot); f != nil && Newer(*v, *g.Set) {
			endsBefore(v.At)
			out, last = append(out, sight{v.At, f.State, f.Cause, false}), f.State
		}
	}
	endsBefore(time.Time{})
	return out
}

// settles says whether a graft is known from this sight on.
func (a *Attempt) settles(s sight, b *Block) bool {
	if s.state == Dead || s.ends {
		return true
	}
	push := a.FirstPush()
	return s.state.grows() && !push.IsZero() && b.Day(s.at) >= b.Day(push).Add(trade.TakenDays)
}

// grows says whether a graft in this state is alive and moving.
func (s GraftState) grows() bool { return s == Pushing || s == Growing }

// Take is how many grafts of the attempt took, and of how many it is known.
func (a *Attempt) Take(b *Block) (taken, known int) {
	for _, g := range a.Grafts {
		o := a.OutcomeOf(g, b)
		if o.Known {
			known++
		}
		if o.Took {
			taken++
		}
	}
	return taken, known
}

// Take is how many grafts of the stump took, of how many it is known, over all
// its attempts: grafting again wipes out no loss.
func (s *Stump) Take(b *Block) (taken, known int) {
	for _, a := range s.Attempts {
		t, k := a.Take(b)
		taken, known = taken+t, known+k
	}
	return taken, known
}
