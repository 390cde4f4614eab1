package due

import (
	"cmp"
	"slices"
	"time"
)

// Job is one kind of work on one stump: the call of the stump, and which of its
// dues it is.
type Job struct {
	Call *Call
	Due  *Due
}

// Group is the stumps of a round on which one kind of work is to be done. A stump
// stands in a group for each work it needs.
type Group struct {
	Kind Kind
	Jobs []Job
	Late int // jobs that should have been done before now
}

// ByWork is a round by the kinds of its work. The groups are in the order of the
// next: the parts of a round, in each what is late before what is not, then as the
// work is done on one visit. In a group what runs out comes first, then up one row
// and down the next; what cannot be begun yet stands last, as it opens.
func ByWork(calls []Call, now time.Time) []Group {
	var jobs [256][]Job // by kind
	for i := range calls {
		c := &calls[i]
		for n := range c.Dues {
			d := &c.Dues[n]
			jobs[d.Kind] = append(jobs[d.Kind], Job{c, d})
		}
	}
	type ranked struct {
		Group
		part int
	}
	var groups []ranked
	for _, w := range table {
		if len(jobs[w.Kind]) == 0 {
			continue
		}
		g := ranked{Group{Kind: w.Kind, Jobs: jobs[w.Kind]}, lastPart}
		inOrder(g.Jobs, now)
		g.part = g.Jobs[0].Due.part(now)
		for _, j := range g.Jobs {
			if j.Due.Late(now) {
				g.Late++
			}
		}
		groups = append(groups, g)
	}
	slices.SortStableFunc(groups, func(a, b ranked) int {
		return cmp.Or(cmp.Compare(a.part, b.part), cmp.Compare(min(b.Late, 1), min(a.Late, 1)))
	})
	out := make([]Group, len(groups))
	for i, g := range groups {
		out[i] = g.Group
	}
	return out
}

// inOrder sorts the jobs of one kind: what is open by the part of a round it belongs
// to and as it is walked, then what opens later.
func inOrder(jobs []Job, now time.Time) {
	opens := func(j Job) time.Time {
		if j.Due.Opens.After(now) {
			return j.Due.Opens
		}
		return now
	}
	order := func(a, b Job) int {
		return cmp.Or(opens(a).Compare(opens(b)), cmp.Compare(a.Due.part(now), b.Due.part(now)), a.Call.Stump.WalkCompare(b.Call.Stump))
	}
	if !slices.IsSortedFunc(jobs, order) {
		slices.SortFunc(jobs, order)
	}
}
