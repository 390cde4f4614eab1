package record

import (
	"fmt"
	"slices"
	"strings"
	"time"
)

// Given is an answer as a person gives it: what it says, when that was, and
// whether it says something anew. Answer makes events of it.
type Given struct {
	Bodies  []Body
	At      time.Time      // when it was done or seen: now, or the earlier time that was set
	Earlier bool           // At was set by hand, as from notes on paper
	Again   bool           // it corrects what was answered
	Refines []ID           // what was seen earlier on the same visit and is said more exactly
	Hand    string         // initials
	Zone    *time.Location // of the block, for the words of an error; nil for UTC
}

// Bodies that have a rule of their own for being said anew say so beside their
// fields, by one of these.
type (
	// stepped is a body that answers one of several steps by what it holds.
	stepped interface{ sameStep(other Body) bool }
	// remade is a body that may stand for work done anew rather than told anew: it
	// is then of the time it is given for.
	remade interface{ doneAnew(a *Attempt) bool }
	// single is a standing answer about what is done once: said anew it keeps its
	// time, whether or not it is called a correction.
	single interface{ oneDeed() }
	// placed is a body that other work may have followed: its time is then not
	// moved behind that.
	placed interface{ followed(a *Attempt) bool }
	// companion is a body that one key gives together with another as one answer.
	companion interface{ goesWith(first Body) bool }
)

// Answer is the events that an answer about the stump becomes, ready for the
// journal: which earlier answers they replace, which time they keep, and what
// they are one act with. None of them has an id yet. The error is a sentence
// about an answer that does not hold, or cannot have been given at its time.
//
//   - A standing answer replaces all that stand to its question in the attempt it
//     belongs to.
//   - An observation that says an earlier one more exactly replaces it, keeps its
//     time, and is one act with it.
//   - A correction replaces the newest observation that answers the same step, with
//     what was given together with it, and keeps its time.
//   - An earlier time that was set by hand holds, but where it would turn the
//     order of the work round.
func (s *Stump) Answer(g Given) ([]Event, error) {
	g.At = g.At.Truncate(time.Second)
	if g.Zone == nil {
		g.Zone = time.UTC
	}
	var out []Event
	act := None
	for _, b := range g.Bodies {
		e := Event{At: g.At, Hand: g.Hand, Stump: s.ID, Body: b, Replaces: s.replaces(g, b)}
		a := s.attemptAt(e.At)
		if g.Again {
			a = s.Now()
		}
		if old, ok := s.keepsTimeOf(g, e); ok {
			e.At, a = old.At, s.Attempts[s.attemptOf(old)]
		}
		if err := Check(e); err != nil {
			return nil, err
		}
		if err := s.beforeBegun(g, e); err != nil {
			return nil, err
		}
		if err := a.beforeCause(b, e.At, g.Zone); err != nil {
			return nil, err
		}
		if old, ok := s.refined(g, b); ok && !g.Again {
			act = old.Act
		}
		out = append(out, e)
	}
	out = append(s.aware(out), out...)
	for i := range out {
		out[i].Act = act
	}
	return out, nil
}

// beforeBegun refuses a correction that would put an answer about the grafting
// under way into the one before.
func (s *Stump) beforeBegun(g Given, e Event) error {
	last := len(s.starts)
	if !g.Again || last == 0 {
		return nil
	}
	begun := s.starts[last-1]
	if !e.At.Before(begun.At) || s.beginsAt(e.Body, e.At) { // or it begins earlier
		return nil
	}
	return fmt.Errorf("that cannot have been %s: this grafting began only on %s", e.At.In(g.Zone).Format(fullTime), begun.At.In(g.Zone).Format(fullTime))
}

// replaces is the answers that a new one takes the place of.
func (s *Stump) replaces(g Given, b Body) []ID {
	if q := (Event{Body: b}).Question(); q != "" {
		return s.answersFor(g, b, q)
	}
	if old, ok := s.refined(g, b); ok {
		return s.whole(g, old)
	}
	if !g.Again {
		return nil
	}
	for i := len(s.Live) - 1; i >= 0; i-- {
		if old := s.Live[i]; answersSameStep(old.Body, b) && s.attemptOf(old) == len(s.starts) && !s.inPart(old) {
			return s.whole(g, old)
		}
	}
	return nil
}

// refined is the observation that a body says more exactly. What could not have
// been seen then, as of a scion set since, is another.
func (s *Stump) refined(g Given, b Body) (Event, bool) {
	for _, id := range g.Refines {
		if old, ok := find(s.Live, id); ok && answersSameStep(old.Body, b) && !s.inPart(old) && s.attemptAt(old.At).beforeCause(b, old.At, time.UTC) == nil {
			return old, true
		}
	}
	return Event{}, false
}

// whole is an observation and, where it is corrected, what was given with it as
// its outcome, such as the failing of a stump whose grafts were seen dead.
func (s *Stump) whole(g Given, old Event) []ID {
	out := []ID{old.ID}
	if !g.Again {
		return out
	}
	for _, e := range s.GivenWith(old) {
		if pair(old.Body, e.Body) || pair(e.Body, old.Body) {
			out = append(out, e.ID)
		}
	}
	return out
}

// keepsTimeOf is the answer whose time a new one keeps: what was refined or
// corrected was done when it was done.
func (s *Stump) keepsTimeOf(g Given, e Event) (old Event, keeps bool) {
	now := s.Now()
	if r, ok := e.Body.(remade); len(e.Replaces) == 0 || ok && r.doneAnew(now) {
		return old, false
	}
	old, found := find(s.Live, e.Replaces[0])
	if !found || e.Question() != "" && !g.Again && !toldAgain(old.Body, e.Body) {
		return old, false
	}
	if !g.Earlier {
		return old, true
	}
	p, ok := e.Body.(placed)
	return old, ok && !g.At.Before(old.At) && p.followed(now)
}

// toldAgain says whether a body tells again of what is done once.
func toldAgain(old, b Body) bool {
	_, once := b.(single)
	return once && old.Kind() == b.Kind()
}

func answersSameStep(a, b Body) bool {
	if a.Kind() != b.Kind() {
		return false
	}
	s, ok := a.(stepped)
	return !ok || s.sameStep(b)
}

// pair says whether two bodies are given by one key, the first and what goes
// with it.
func pair(first, then Body) bool {
	c, ok := then.(companion)
	return ok && c.goesWith(first)
}

// answersFor is the standing answers that a new one replaces: those of the
// attempt that it belongs to by its time. One that begins an attempt replaces
// what that one begins with already. A correction is of the attempt under way.
func (s *Stump) answersFor(g Given, b Body, question string) []ID {
	n := s.numberAt(g.At)
	switch {
	case g.Again:
		n = len(s.starts)
	case s.beginsAt(b, g.At):
		n++
	}
	return s.answersIn(n, question)
}

// Answers is the ids of the standing answers to a question in the attempt
// under way, as an answer given now would replace them: after an attempt that is
// over, cutting back begins another and replaces nothing.
func (s *Stump) Answers(question string) []ID {
	a := s.Now()
	over := a.GivenUp != nil || a.Untied != nil || !a.LostAt().IsZero()
	if over && begun(question) && !s.sharesAnswers(question) {
		return nil
	}
	return s.answersIn(len(s.starts), question)
}

// begun says whether an answer to a question begins another attempt after one
// that is over.
func begun(question string) bool {
	return question == (*NurseJudged)(nil).question() || question == (*CutBack)(nil).question() || strings.HasPrefix(question, "scion/")
}

func (s *Stump) answersIn(attempt int, question string) (out []ID) {
	whenever := question == (*StumpAdded)(nil).question() || s.sharesAnswers(question) // whatever is grafted on it
	for _, e := range s.Live {
		if e.Question() == question && (whenever || s.attemptOf(e) == attempt) {
			out = append(out, e.ID)
		}
	}
	return out
}

// sharesAnswers says whether the answers to a question are those of a tree with
// limbs: the limbs' attempts begin at other times, so a new answer takes the place
// of all of them.
func (s *Stump) sharesAnswers(question string) bool {
	return len(s.Limbs) > 0 && question == (*NurseJudged)(nil).question()
}

// Answer is the events that an answer about blocks, lots or weather becomes: each
// replaces the answers that stand to its question. The error is a sentence about
// one that does not hold.
func (b *Book) Answer(g Given) ([]Event, error) {
	var out []Event
	for _, body := range g.Bodies {
		e := Event{At: g.At.Truncate(time.Second), Hand: g.Hand, Body: body}
		if err := Check(e); err != nil {
			return nil, err
		}
		if q := e.Question(); q != "" {
			e.Replaces = slices.Clone(b.Answers(q))
		}
		out = append(out, e)
	}
	return out, nil
}
