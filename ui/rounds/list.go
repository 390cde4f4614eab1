package rounds

import (
	"slices"
	"sort"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/ui/part"
)

// line is one line of the list: the heading of a group, one of its jobs, or air.
type line struct {
	group int
	job   int // among all jobs; heading or air
}

const (
	heading = -1
	air     = -2
)

// workOn is one kind of work on one stump.
type workOn struct {
	stump record.StumpID
	kind  due.Kind
}

// arrange makes groups, jobs and lines of the calls.
func (s *Screen) arrange() {
	if s.inWalk {
		all := due.Group{Jobs: make([]due.Job, len(s.calls))}
		for i := range s.calls {
			c := &s.calls[i]
			all.Jobs[i] = due.Job{Call: c, Due: &c.Dues[soonest(c)]}
		}
		s.groups = nil
		if len(s.calls) > 0 {
			s.groups = []due.Group{all}
		}
	} else {
		s.groups = due.ByWork(s.calls, s.judged())
	}
	n := 0
	for _, g := range s.groups {
		n += len(g.Jobs)
	}
	s.jobs = make([]due.Job, 0, n)
	for _, g := range s.groups {
		s.jobs = append(s.jobs, g.Jobs...)
	}
	s.lay()
}

// lay makes the lines of the groups, with air between them where there is room.
func (s *Screen) lay() {
	s.aired = s.roomy()
	s.lines = make([]line, 0, len(s.jobs)+2*len(s.groups))
	first := 0
	for g, group := range s.groups {
		if !s.inWalk {
			if g > 0 && s.aired && !(s.isFolded(g-1) && s.isFolded(g)) {
				s.lines = append(s.lines, line{g, air})
			}
			s.lines = append(s.lines, line{g, heading})
		}
		if !s.isFolded(g) {
			for j := range group.Jobs {
				s.lines = append(s.lines, line{g, first + j})
			}
		}
		first += len(group.Jobs)
	}
}

func (s *Screen) isFolded(g int) bool { return !s.inWalk && s.folded[s.groups[g].Kind] }

// groupAt is the group of a job.
func (s *Screen) groupAt(job int) int {
	for g := range s.groups {
		if job -= len(s.groups[g].Jobs); job < 0 {
			return g
		}
	}
	return len(s.groups) - 1
}

// firstOf is the first job of a group.
func (s *Screen) firstOf(group int) (job int) {
	for _, g := range s.groups[:group] {
		job += len(g.Jobs)
	}
	return job
}

// lineAt is the line of a job: its own, or the heading of its folded group.
func (s *Screen) lineAt(job int) int {
	g := s.groupAt(job)
	at := sort.Search(len(s.lines), func(i int) bool {
		l := s.lines[i]
		return l.group > g || l.group == g && (l.job >= job || s.isFolded(g) && l.job == heading)
	})
	return min(at, len(s.lines)-1)
}

// stops says whether the cursor can stand on a line.
func (s *Screen) stops(l line) bool { return l.job >= 0 || l.job == heading && s.isFolded(l.group) }

// step moves the cursor by so many stumps or folded groups.
func (s *Screen) step(by int) part.Msgs {
	if len(s.lines) == 0 {
		return nil
	}
	way := 1
	if by < 0 {
		by, way = -by, -1
	}
	for at := s.lineAt(s.at) + way; at >= 0 && at < len(s.lines) && by > 0; at += way {
		if l := s.lines[at]; s.stops(l) {
			s.at = l.job
			if l.job == heading {
				s.at = s.firstOf(l.group)
			}
			by--
		}
	}
	return nil
}

// onward goes to the first stump of the next group or, where all are walked, of
// the next row; back to that before.
func (s *Screen) onward(by int) part.Msgs {
	if len(s.jobs) == 0 {
		return nil
	}
	if !s.inWalk {
		g := max(0, min(s.groupAt(s.at)+by, len(s.groups)-1))
		s.at = s.firstOf(g)
		return nil
	}
	row := s.jobs[s.at].Call.Stump.Row
	for at := s.at; at >= 0 && at < len(s.jobs); at += by {
		if s.jobs[at].Call.Stump.Row != row {
			s.at = at
			break
		}
	}
	return nil
}

// turn shows the round in walking order across the kinds of work, or by work again.
func (s *Screen) turn() part.Msgs {
	here, ok := s.job()
	s.inWalk = !s.inWalk
	s.arrange()
	if ok {
		s.at = max(s.find(here), 0)
	}
	s.unfoldHere()
	if s.inWalk {
		return part.Says("In walking order, whatever is to be done.")
	}
	return part.Says("By work.")
}

// fold folds the group under the cursor, or unfolds it.
func (s *Screen) fold(to bool) part.Msgs {
	if s.inWalk || len(s.groups) == 0 {
		return part.Says("Nothing folds in walking order; g groups by work.")
	}
	g := s.groupAt(s.at)
	s.folded[s.groups[g].Kind] = to
	s.foldedAnew(g)
	return nil
}

// foldAll folds all groups or, where all are folded, unfolds them.
func (s *Screen) foldAll() part.Msgs {
	if s.inWalk || len(s.groups) == 0 {
		return part.Says("Nothing folds in walking order; g groups by work.")
	}
	to := !s.allFolded()
	for _, g := range s.groups {
		s.folded[g.Kind] = to
	}
	s.foldedAnew(s.groupAt(s.at))
	return nil
}

func (s *Screen) allFolded() bool {
	return !slices.ContainsFunc(s.groups, func(g due.Group) bool { return !s.folded[g.Kind] })
}

func (s *Screen) foldedAnew(g int) {
	if s.isFolded(g) {
		s.at = s.firstOf(g)
	}
	s.lay()
}

// unfoldHere unfolds the group of the cursor, so that its stump is seen.
func (s *Screen) unfoldHere() {
	if len(s.groups) == 0 {
		return
	}
	if g := s.groupAt(s.at); s.isFolded(g) {
		delete(s.folded, s.groups[g].Kind)
		s.lay()
	}
}

// find is where the work of a job is listed, else another work of its stump, else
// -1.
func (s *Screen) find(j due.Job) int {
	if i := slices.IndexFunc(s.jobs, func(o due.Job) bool { return s.workOf(o) == s.workOf(j) }); i >= 0 {
		return i
	}
	return slices.IndexFunc(s.jobs, func(o due.Job) bool { return o.Call.Stump == j.Call.Stump })
}

// looked is how many of the jobs listed behind one that is gone are looked for.
const looked = 20

// nearest is where the cursor goes in a new list: to the work it was on, or the
// first after it that is listed still.
func (s *Screen) nearest(before []due.Job, at int) int {
	for _, j := range before[min(at, len(before)):min(at+looked, len(before))] {
		if i := slices.IndexFunc(s.jobs, func(o due.Job) bool { return s.workOf(o) == s.workOf(j) }); i >= 0 {
			at = i
			break
		}
	}
	at = max(0, min(at, len(s.jobs)-1))
	if len(s.groups) > 0 {
		if g := s.groupAt(at); s.isFolded(g) {
			at = s.firstOf(g)
		}
	}
	return at
}

// above is what is listed above a job: the jobs, and the stumps of them.
func (s *Screen) above(at int) (jobs map[workOn]bool, stumps map[record.StumpID]bool) {
	jobs, stumps = map[workOn]bool{}, map[record.StumpID]bool{}
	for _, j := range s.jobs[:min(at, len(s.jobs))] {
		jobs[s.workOf(j)] = true
		stumps[j.Call.Stump] = true
	}
	return jobs, stumps
}

// workOf tells one job from another; where all are walked a stump is one job.
func (s *Screen) workOf(j due.Job) workOn {
	if s.inWalk {
		return workOn{stump: j.Call.Stump}
	}
	return workOn{j.Call.Stump, j.Due.Kind}
}
