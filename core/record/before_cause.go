package record

import (
	"errors"
	"fmt"
	"time"
)

// cause is what must have been done before an answer can have been given: when,
// and in words. A zero time says that it was never done.
type cause struct {
	at    time.Time
	done  string // "it was sealed"
	never string // the sentence where it was never done
}

// BeforeCause says in a plain sentence why an answer cannot have been given at a
// time, shown in a zone: what it follows from was done later, or never. It is
// nil where the answer can stand.
func BeforeCause(s *Stump, b Body, at time.Time, zone *time.Location) error {
	a := s.attemptAt(at)
	if err := a.onGrafts(b, at); err != nil {
		return err
	}
	need, asked := a.causeOf(b)
	switch {
	case !asked:
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
func (s *Stump) attemptAt(at time.Time) *Attempt {
	n := 0
	for _, start := range attemptStarts(s.Live) {
		if !at.Before(start.At) {
			n++
		}
	}
	return s.Attempts[n]
}

// causeOf is what an answer follows from; asked is false for an answer that may
// stand alone.
func (a *Attempt) causeOf(b Body) (need cause, asked bool) {
	switch b.(type) {
	case *Looked, *FreshCut, *Drilled, *ScionSet, *SproutsRubbed:
		if a.CutBack == nil {
			return need, false // the record may begin with the work of the day
		}
		return cause{at: a.CutBack.At, done: "it was cut back"}, true
	case *LimbTakenOff:
		return answered(a.Nurse, "its limbs were judged", "no limbs were put down to take off"), true
	case *Sealed, *Visited, *Staked, *LeaderChosen, *Tied, *Pinched, *RingSet, *SeasonsEnd, *SproutsKept, *Untied:
		return cause{a.SetAt(), "the last scion was set", "no scion was set yet"}, true
	case *StillWet, *PaintedWhite, *SealChecked, *Resealed:
		return answered(a.Sealed, "it was sealed", "it was not sealed yet"), true
	case *LeaderBroken, *SecondShootOff, *RivalCut, *Twined:
		return answered(a.Leader, "the leader was chosen", "no leader was chosen yet"), true
	case *TwineChecked, *TwineMoved, *TwineCut:
		return answered(a.Twine, "the twine was put on", "no twine was put on"), true
	case *TapesLoosened:
		return cause{firstOf(a.Ties), "the first tie was put on", "no tie was put on"}, true
	case *HeadedBack:
		return cause{a.FirstPush(), "the first push was seen", "no graft was seen pushing yet"}, true
	case *NurseLimbOff:
		return answered(a.Nurse, "its limbs were judged", "no nurse limbs were put down to take off"), true
	}
	return need, false
}

func answered[T any](s *Said[T], done, never string) cause {
	if s == nil {
		return cause{never: never}
	}
	return cause{s.At, done, never}
}

func firstOf[T any](list []Said[T]) time.Time {
	if len(list) == 0 {
		return time.Time{}
	}
	return list[0].At
}

// onGrafts refuses what is said of a graft that is not there, and a leader that
// is dead.
func (a *Attempt) onGrafts(b Body, at time.Time) error {
	switch b := b.(type) {
	case *Visited:
		for _, f := range b.Found {
			if a.Graft(f.Slot) == nil {
				return fmt.Errorf("no scion was set in slot %d", f.Slot)
			}
		}
	case *LeaderChosen:
		return a.canLead(b.Slot, at)
	case *LeaderBroken:
		if b.Promoted > 0 {
			return a.canLead(b.Promoted, at)
		}
	}
	return nil
}

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
