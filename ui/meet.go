package ui

import (
	"barkslip/ui/part"
	"barkslip/ui/stump"
)

// met is what the router knows of the meetings with the crew.
type met struct {
	asked int // how many were held when somebody asked for one; -1: nobody waits
	came  int // records that the screens have taken in
}

// meetNow waits for a meeting that somebody asked for.
func (r *root) meetNow() {
	r.met.asked = r.x.Meeting.Met().Round
	r.say("Meeting "+r.x.Meeting.Crew().Name+". Go on working meanwhile.", false)
}

// meetBeat takes in what came from the crew, and says what came of a meeting that
// somebody asked for. What came is not put under the hands of one who walks a stump or
// answers a question: it is seen once that is done.
func (r *root) meetBeat() {
	if r.x.Meeting == nil {
		return
	}
	m := r.x.Meeting.Met()
	_, walking := upon[*stump.Screen](&r.mode)
	if m.Came != r.met.came && !walking && r.over == nil && r.top().Field() == nil {
		r.met.came = m.Came
		r.x.Reread()
		r.renewed()
	}
	if r.met.asked >= 0 && m.Round > r.met.asked {
		r.met.asked = -1
		if m.Err != nil {
			r.fail(m.Err)
			return
		}
		r.do(part.Say{Text: m.Report})
	}
}
