package record

import (
	"time"

	"barkslip/core/trade"
)

// course is how an attempt fares, as its events are gone through by time, as far
// as it tells whether the next cutting back begins another.
type course struct {
	over   bool               // failed, given up or untied
	grafts map[int]GraftState // of the scions set, by slot
	at     time.Time          // of the event at hand
	hand   Event              // the event at hand
	cut    Event              // the cutting back that stands, none before
	closed time.Time          // since when the attempt is over, zero while it is not
}

// fares is a body that may bring an attempt towards its end.
type fares interface{ fare(c *course) }

// beginning is a body of the work of cutting back: the first after an attempt
// that ended begins another.
type beginning interface{ begins(c *course) bool }

// ended says whether the attempt is over: said to be, or every graft seen dead.
func (c *course) ended() bool {
	if c.over {
		return true
	}
	for _, state := range c.grafts {
		if state != Dead {
			return false
		}
	}
	return len(c.grafts) > 0
}

// stale says whether the stump was cut back for an earlier season and never
// grafted in it.
func (c *course) stale() bool {
	return c.cut.Body != nil && len(c.grafts) == 0 && c.at.Sub(c.cut.At) > trade.CutBackStale*24*time.Hour
}

// take goes on by one event; it says whether that begins another attempt.
func (c *course) take(e Event) bool {
	c.at, c.hand = e.At, e
	b, ok := e.Body.(beginning)
	begun := ok && b.begins(c)
	if begun {
		c.over, c.cut, c.closed = false, Event{}, time.Time{}
		clear(c.grafts)
	}
	if b, ok := e.Body.(fares); ok {
		b.fare(c)
	}
	switch ended := c.ended(); {
	case !ended:
		c.closed = time.Time{}
	case c.closed.IsZero():
		c.closed = c.at
	}
	return begun
}

// closedAt is since when the attempt is over, or too old to be gone on with; zero
// while it is neither.
func (c *course) closedAt() time.Time {
	if c.closed.IsZero() && c.cut.Body != nil && len(c.grafts) == 0 {
		return c.cut.At.Add(trade.CutBackStale * 24 * time.Hour)
	}
	return c.closed
}

// attemptStarts is where later attempts begin: the first work of cutting back,
// by time, or the first scion, after a stump failed, was given up, was untied or
// lost its last graft; cutting back again above or through grafts that live; and
// cutting back again a stump that an earlier season left ungrafted. Closed is
// since when the attempt before each was over, zero where it was not.
func attemptStarts(dated []Event) (starts []Event, closed []time.Time) {
	c := course{grafts: map[int]GraftState{}}
	for _, e := range dated {
		before := c.closedAt()
		if c.take(e) {
			starts, closed = append(starts, e), append(closed, before)
		}
	}
	return starts, closed
}

// beginsAt says whether a body given for a time begins an attempt.
func (s *Stump) beginsAt(b Body, at time.Time) bool {
	start, ok := b.(beginning)
	if !ok {
		return false
	}
	c := course{grafts: map[int]GraftState{}}
	for _, e := range byTime(s.own(s.holding)) {
		if !e.At.After(at) {
			c.take(e)
		}
	}
	c.at = at
	return start.begins(&c)
}

// Again is the events that begin a later attempt: where the stump was cut back to
// be grafted again.
func (s *Stump) Again() []Event { return s.starts }

// attemptOf is the attempt an event belongs to by its time. What was given at
// another limb after an attempt was over belongs to the next, if there is one: it
// begins none.
func (s *Stump) attemptOf(e Event) int {
	n := 0
	for _, start := range s.starts {
		if e.ID == start.ID || e.At.After(start.At) || e.At.Equal(start.At) && e.Compare(start) > 0 {
			n++
		}
	}
	if s.elsewhere[e.ID] && n < len(s.starts) && !s.closed[n].IsZero() && !e.At.Before(s.closed[n]) {
		n++
	}
	return n
}

// Now is the attempt under way.
func (s *Stump) Now() *Attempt { return s.Attempts[len(s.Attempts)-1] }
