package record

import (
	"errors"
	"fmt"
	"time"
)

// cause is what must have been done before an answer can have been given: when,
// and in words. A zero time says that it was never done; without words nothing
// is asked for.
type cause struct {
	at    time.Time
	done  string // "it was sealed"
	never string // the sentence where it was never done
}

// caused is a body that follows from what was done before it.
type caused interface{ cause(a *Attempt) cause }

// ofGrafts is a body that tells of grafts, which may not be there, or be dead.
type ofGrafts interface {
	onGrafts(a *Attempt, at time.Time) error
}

// BeforeCause says in a plain sentence why an answer cannot have been given at a
// time, shown in a zone: what it follows from was done later, or never. It is
// nil where the answer can stand.
func BeforeCause(s *Stump, b Body, at time.Time, zone *time.Location) error {
	return s.attemptAt(at).beforeCause(b, at, zone)
}

func (a *Attempt) beforeCause(b Body, at time.Time, zone *time.Location) error {
	if b, ok := b.(ofGrafts); ok {
		if err := b.onGrafts(a, at); err != nil {
			return err
		}
	}
	c, ok := b.(caused)
	if !ok {
		return nil
	}
	switch need := c.cause(a); {
	case need == cause{}:
		return nil
	case need.at.IsZero():
		return errors.New(need.never)
	case at.Before(need.at):
		return fmt.Errorf("that cannot have been %s: %s only on %s", at.In(zone).Format(fullTime), need.done, need.at.In(zone).Format(fullTime))
	}
	return nil
}

const fullTime = "2 Jan 2006 15:04"

// attemptAt is the attempt that an answer for a time belongs to.
func (s *Stump) attemptAt(at time.Time) *Attempt { return s.Attempts[s.numberAt(at)] }

// numberAt is the number of that attempt, from 0.
func (s *Stump) numberAt(at time.Time) (n int) {
	for _, start := range s.starts {
		if !at.Before(start.At) {
			n++
		}
	}
	return n
}

// wasCutBack is no cause where nobody put a cutting back down: the record may
// begin with the work of the day.
func (a *Attempt) wasCutBack() cause {
	if a.CutBack == nil {
		return cause{}
	}
	return cause{at: a.CutBack.At, done: "it was cut back"}
}

func (a *Attempt) wasSet() cause {
	return cause{a.SetAt(), "the last scion was set", "no scion was set yet"}
}

func (a *Attempt) wasSealed() cause {
	return answered(a.Sealed, "it was sealed", "it was not sealed yet")
}

func (a *Attempt) wasLed() cause {
	return answered(a.Leader, "the leader was chosen", "no leader was chosen yet")
}

func (a *Attempt) wasTwined() cause {
	return answered(a.Twine, "the twine was put on", "no twine was put on")
}

func answered[T any](s *Said[T], done, never string) cause {
	if s == nil {
		return cause{never: never}
	}
	return cause{s.At, done, never}
}

// canLead refuses a leader that is not there or is dead.
func (a *Attempt) canLead(slot int, at time.Time) error {
	g := a.Graft(slot)
	switch {
	case g == nil:
		return fmt.Errorf("no scion was set in slot %d", slot)
	case g.State == Dead && !at.Before(g.Since):
		return fmt.Errorf("graft %d is dead: it cannot lead", slot)
	}
	return nil
}
