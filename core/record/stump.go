package record

import (
	"slices"
	"time"
)

// Stump is the record of one stump, folded from its events.
type Stump struct {
	ID       StumpID
	Added    *Said[StumpAdded]
	Notes    []Said[Noted]
	Attempts []*Attempt // oldest first; never empty
	Clashes  []Clash
	Live     []Event   // the events that stand, in order
	Last     Event     // the newest event of all by order
	Newest   time.Time // the latest time any standing event was given for
	All      []Event   // every event in order, those taken back and replaced too
}

// Clash is two or more standing answers to one question, none of which
// replaces the others.
type Clash struct {
	Question string
	Events   []Event
}

// Attempt is one grafting of the stump, from cutting back to its end.
type Attempt struct {
	Nurse    *Said[NurseJudged]
	LimbsOff []Said[LimbTakenOff]
	CutBack  *Said[CutBack]
	Gashes   []Said[Gashed]
	Holes    []Said[Drilled]
	Looks    []Said[Looked]

	FreshCuts []Said[FreshCut]
	Measured  *Said[StumpMeasured]
	Slots     *Said[SlotsMarked]
	Wood      *Said[WoodChosen]
	Grafts    []*Graft          // by slot
	Empty     []Said[SlotEmpty] // slots that take none
	Against   []Said[AgainstAdvice]

	Sealed   *Said[Sealed]
	StillWet []Said[StillWet]
	White    *Said[PaintedWhite]
	Rings    []Said[RingSet]
	Washed   []Said[WashedOff]

	SealChecks  []Said[SealChecked]
	Reseals     []Said[Resealed]
	Stake       *Said[Staked]
	Visits      []Said[Visited]
	Rubbed      []Said[SproutsRubbed]
	Kept        *Said[SproutsKept]
	Leader      *Said[LeaderChosen]
	Pinches     []Said[Pinched]
	Ties        []Said[Tied]
	Broken      []Said[LeaderBroken]
	Twine       *Said[Twined]
	TwineChecks []Said[TwineChecked]
	TwineMoves  []Said[TwineMoved]
	TwineCut    *Said[TwineCut]
	TapesOff    []Said[TapesLoosened]
	Headed      []Said[HeadedBack]
	RivalsCut   []Said[RivalCut]
	SecondOff   *Said[SecondShootOff]
	NurseOff    []Said[NurseLimbOff]
	AnotherYear []Said[AnotherYear]
	Seasons     []Said[SeasonsEnd]
	Failed      *Said[Failed]
	GivenUp     *Said[GivenUp]
	Untied      *Said[Untied]
}

// Graft is one scion in one slot and how it fares.
type Graft struct {
	Slot  int
	Set   *Said[ScionSet]
	State GraftState // as last seen, "" before the first visit
	Since time.Time  // when it was first seen in that state
	Cause string     // of death
	Seen  time.Time  // at the last visit that told of it
}

// Fold folds the events of one stump into its record. Neither the order in
// which they are given nor repetition makes a difference.
func Fold(id StumpID, events []Event) *Stump {
	s := &Stump{ID: id, Attempts: []*Attempt{{}}}
	s.All = InOrder(events)
	s.Live = live(s.All)
	if n := len(s.All); n > 0 {
		s.Last = s.All[n-1]
	}
	starts := attemptStarts(s.Live)
	for range starts {
		s.Attempts = append(s.Attempts, &Attempt{})
	}
	type asking struct {
		attempt  int
		question string
	}
	asked := map[asking][]Event{}
	for _, e := range s.Live {
		body, ok := e.Body.(onStump)
		if !ok {
			continue
		}
		n := attemptOf(starts, e)
		body.apply(s, s.Attempts[n], e)
		if q := e.Question(); q != "" {
			key := asking{n, q}
			asked[key] = append(asked[key], e)
		}
		if e.At.After(s.Newest) {
			s.Newest = e.At
		}
	}
	for key, es := range asked {
		if len(es) > 1 && !sameAnswer(es) {
			s.Clashes = append(s.Clashes, Clash{key.question, es})
		}
	}
	slices.SortStableFunc(s.Notes, byTime)
	slices.SortFunc(s.Clashes, func(a, b Clash) int { return a.Events[0].Compare(b.Events[0]) })
	for _, a := range s.Attempts {
		a.settle()
	}
	return s
}

// sameAnswer says whether several answers say the very same thing, which is no
// clash: two laptops that add the same tree of the same list agree.
func sameAnswer(es []Event) bool {
	for _, e := range es[1:] {
		if string(Pack(nil, Event{Body: e.Body})) != string(Pack(nil, Event{Body: es[0].Body})) {
			return false
		}
	}
	return true
}

// attemptStarts is where later attempts begin: the first work of cutting back,
// by time, after a stump failed, was given up, was untied or lost its last graft;
// and cutting back again above or through grafts that live.
func attemptStarts(live []Event) []Event {
	if !slices.ContainsFunc(live, ends) {
		return nil
	}
	dated := slices.Clone(live)
	slices.SortStableFunc(dated, func(a, b Event) int { return a.At.Compare(b.At) })
	var starts []Event
	over, grafts := false, map[int]GraftState{} // of the scions set
	for _, e := range dated {
		switch b := e.Body.(type) {
		case *Failed, *GivenUp, *Untied:
			over = true
		case *SeasonsEnd:
			for slot := range grafts {
				if b.Word == "dead" {
					grafts[slot] = Dead
				}
			}
		case *ScionSet:
			grafts[b.Slot] = NoChange
		case *Visited:
			for _, f := range b.Found {
				if _, set := grafts[f.Slot]; set {
					grafts[f.Slot] = f.State
				}
			}
		case *NurseJudged, *CutBack, *Gashed:
			_, cut := e.Body.(*CutBack)
			if over || allDead(grafts) || cut && len(grafts) > 0 {
				starts = append(starts, e)
				over = false
				clear(grafts)
			}
		}
	}
	return starts
}

// Again is the events that begin a later attempt: where the stump was cut back to
// be grafted again.
func (s *Stump) Again() []Event { return attemptStarts(s.Live) }

// ends says whether an event may end an attempt.
func ends(e Event) bool {
	switch b := e.Body.(type) {
	case *Failed, *GivenUp, *Untied, *SeasonsEnd, *ScionSet:
		return true
	case *Visited:
		return slices.ContainsFunc(b.Found, func(f Finding) bool { return f.State == Dead })
	}
	return false
}

func allDead(grafts map[int]GraftState) bool {
	for _, state := range grafts {
		if state != Dead {
			return false
		}
	}
	return len(grafts) > 0
}

// attemptOf is the attempt an event belongs to by its time.
func attemptOf(starts []Event, e Event) int {
	n := 0
	for _, s := range starts {
		if e.ID == s.ID || e.At.After(s.At) || e.At.Equal(s.At) && e.Compare(s) > 0 {
			n++
		}
	}
	return n
}

// Now is the attempt under way.
func (s *Stump) Now() *Attempt { return s.Attempts[len(s.Attempts)-1] }

// Answers is the ids of the standing answers to a question in the attempt
// under way; a new answer names them as replaced. After an attempt that is over,
// cutting back begins another and replaces nothing.
func (s *Stump) Answers(question string) []ID {
	if a := s.Now(); (a.GivenUp != nil || a.Untied != nil || !a.LostAt().IsZero()) && (question == "nurse-limbs" || question == "cut-back") {
		return nil
	}
	starts := attemptStarts(s.Live)
	var out []ID
	for _, e := range s.Live {
		if e.Question() == question && (question == "added" || attemptOf(starts, e) == len(starts)) {
			out = append(out, e.ID)
		}
	}
	return out
}

func (a *Attempt) scion(slot int) *Graft {
	for _, g := range a.Grafts {
		if g.Slot == slot {
			return g
		}
	}
	g := &Graft{Slot: slot}
	a.Grafts = append(a.Grafts, g)
	return g
}

// settle sorts what is dated by time and works out how each graft fares.
func (a *Attempt) settle() {
	slices.SortStableFunc(a.LimbsOff, byTime)
	slices.SortStableFunc(a.Gashes, byTime)
	slices.SortStableFunc(a.Holes, byTime)
	slices.SortStableFunc(a.Looks, byTime)
	slices.SortStableFunc(a.FreshCuts, byTime)
	slices.SortStableFunc(a.Against, byTime)
	slices.SortStableFunc(a.StillWet, byTime)
	slices.SortStableFunc(a.Rings, byTime)
	slices.SortStableFunc(a.SealChecks, byTime)
	slices.SortStableFunc(a.Reseals, byTime)
	slices.SortStableFunc(a.Visits, byTime)
	slices.SortStableFunc(a.Rubbed, byTime)
	slices.SortStableFunc(a.Pinches, byTime)
	slices.SortStableFunc(a.Ties, byTime)
	slices.SortStableFunc(a.Broken, byTime)
	slices.SortStableFunc(a.TwineChecks, byTime)
	slices.SortStableFunc(a.TwineMoves, byTime)
	slices.SortStableFunc(a.TapesOff, byTime)
	slices.SortStableFunc(a.Headed, byTime)
	slices.SortStableFunc(a.RivalsCut, byTime)
	slices.SortStableFunc(a.NurseOff, byTime)
	slices.SortStableFunc(a.Seasons, byTime)
	slices.SortStableFunc(a.Washed, byTime)
	slices.SortStableFunc(a.AnotherYear, byTime)
	for _, v := range a.Visits {
		for _, f := range v.What.Found {
			g := a.scion(f.Slot)
			if g.Set != nil && !Newer(v, *g.Set) {
				continue // it cannot have been seen before it was set
			}
			if g.State != f.State {
				g.State, g.Since = f.State, v.At
			}
			g.Seen = v.At
			g.Cause = f.Cause
		}
	}
	for _, e := range a.Seasons {
		for _, g := range a.Grafts {
			if e.What.Word == "dead" && g.Set != nil && g.State != Dead && e.At.After(g.Seen) {
				g.State, g.Since, g.Seen = Dead, e.At, e.At
			}
		}
	}
	if a.White != nil && a.Sealed != nil && a.Sealed.At.After(a.White.At) {
		a.White = nil // of the coat before
	}
	// A slot that was looked at but never set is no graft.
	a.Grafts = slices.DeleteFunc(a.Grafts, func(g *Graft) bool { return g.Set == nil })
	slices.SortFunc(a.Grafts, func(x, y *Graft) int { return x.Slot - y.Slot })
}
