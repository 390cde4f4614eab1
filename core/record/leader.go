package record

import "time"

// Leading is the shoot that leads now: the one chosen, or promoted after a
// break.
type Leading struct {
	Slot  int // 0 if a break left none
	Shoot string
	Since time.Time // chosen, promoted, or lost
}

// Leads is the shoot that leads now; ok is false before one was chosen.
func (a *Attempt) Leads() (l Leading, ok bool) {
	if a.Leader == nil {
		return l, false
	}
	l = Leading{a.Leader.What.Slot, a.Leader.What.Shoot, a.Leader.At}
	for _, b := range a.Broken {
		if Newer(b, *a.Leader) {
			l = Leading{b.What.Promoted, b.What.Shoot, b.At}
		}
	}
	return l, true
}

// ChangedLeader is when the shoot that leads took over from another: after a
// break, or was chosen after another graft had died, with which its shoot went;
// zero where neither was, and before a leader was chosen.
func (a *Attempt) ChangedLeader() (at time.Time) {
	leads, ok := a.Leads()
	if !ok {
		return at
	}
	for _, b := range a.Broken {
		if !b.At.After(leads.Since) && b.At.After(at) {
			at = b.At
		}
	}
	for _, g := range a.Grafts {
		if g.State == Dead && g.Slot != leads.Slot && g.Since.Before(leads.Since) && g.Since.After(at) {
			at = g.Since
		}
	}
	return at
}

// LeaderLost is when the leader was lost, by a break with none promoted or with
// its graft, dead or taken back; ok is false while one leads, and before one was chosen.
func (a *Attempt) LeaderLost() (at time.Time, ok bool) {
	l, chosen := a.Leads()
	if !chosen {
		return at, false
	}
	if l.Slot == 0 {
		return l.Since, len(a.Broken) > 0
	}
	switch g := a.Graft(l.Slot); {
	case g == nil: // its scion was taken back
		return l.Since, true
	case g.State == Dead && g.Since.After(l.Since):
		return g.Since, true
	case g.State == Dead:
		return l.Since, true
	}
	return at, false
}

// Graft is the graft in a slot, nil if there is none.
func (a *Attempt) Graft(slot int) *Graft {
	for _, g := range a.Grafts {
		if g.Slot == slot {
			return g
		}
	}
	return nil
}

// Living is the grafts not seen dead.
func (a *Attempt) Living() (out []*Graft) {
	for _, g := range a.Grafts {
		if g.State != Dead {
			out = append(out, g)
		}
	}
	return out
}

// WholeSince is when the leader was last broken or headed back; what was
// measured before says nothing of its growth since.
func (a *Attempt) WholeSince() (at time.Time) {
	if b := LastOf(a.Broken); b != nil {
		at = b.At
	}
	if leads, ok := a.Leads(); ok { // with a graft that died before another was chosen its shoot went
		for _, g := range a.Grafts {
			if g.State == Dead && !g.Since.After(leads.Since) && g.Since.After(at) {
				at = g.Since
			}
		}
	}
	if h := LastOf(a.Headed); h != nil && h.At.After(at) {
		at = h.At
	}
	for _, t := range a.Ties {
		if t.What.Broken && t.At.After(at) {
			at = t.At
		}
	}
	return at
}
