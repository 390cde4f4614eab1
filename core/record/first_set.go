package record

import "time"

// FirstSet is the first scion set of the attempt, by its time; at nought where
// none is set.
func (a *Attempt) FirstSet() (first Said[ScionSet]) {
	for i, g := range a.Grafts {
		if i == 0 || Newer(first, *g.Set) {
			first = *g.Set
		}
	}
	return first
}

// BleedingBefore is how the face bled when it was last seen before a scion was
// set; "" where nobody looked.
func (a *Attempt) BleedingBefore(set Said[ScionSet]) (last Bleeding) {
	for _, look := range a.Looks {
		if look.What.Bleeding != "" && Newer(set, look) {
			last = look.What.Bleeding
		}
	}
	return last
}

// FirstGrew is the visit that first saw a graft push or grow, zero before.
func (a *Attempt) FirstGrew(g *Graft) time.Time {
	for i := range a.Visits {
		v := &a.Visits[i]
		if f := FindingOf(v, g.Slot); f != nil && f.State.grows() && Newer(*v, *g.Set) {
			return v.At
		}
	}
	return time.Time{}
}
