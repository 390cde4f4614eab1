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
	Limbs    []uint8   // the limbs of its tree that are stumps, in order
	Trunk    *Stump    // of a limb: what was done on the trunk, nil for nothing

	starts    []Event     // where later attempts begin
	closed    []time.Time // from when on the attempt before each of those was over
	holding   []Event     // of Live, what holds while answers disagree: bodies may say less
	elsewhere map[ID]bool // of All: given at another limb of the tree
}

// Attempt is one grafting of the stump, from cutting back to its end. What is
// named by a pointer is the standing answer, nil before one was given; what is a
// list is what was done or seen, in order of time; but Grafts and Empty are by what
// stands for each slot.
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
	WoodOf    []Said[WoodChosen] // of one scion each, where it is other wood
	Broke     []Said[ScionBroke]
	Seen      []Said[ScionSeen] // the things seen on a scion, one by one, before it is set
	Grafts    []*Graft          // by slot
	Empty     []Said[SlotEmpty] // slots that take none
	Against   []Said[AgainstAdvice]

	Sealed   *Said[Sealed]
	StillWet []Said[StillWet]
	White    *Said[PaintedWhite]
	Rings    []Said[RingSet]
	Washed   []Said[WashedOff]
	HardRain []Said[RainedHard]

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
	Followed    []Said[LotFollowed] // of each lot that was followed here, the answer that stands
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

// Fold folds the events of one stump into its record. The events of the other
// limbs of its tree are given with them: of those it takes what is the whole
// tree's. Neither the order in which they are given nor repetition makes a
// difference.
func Fold(id StumpID, events []Event) *Stump {
	s := &Stump{ID: id, Attempts: []*Attempt{{}}}
	all := InOrder(events)
	s.divide(all, live(all))
	if own := s.own(s.All); len(own) > 0 {
		s.Last = own[len(own)-1]
	}
	s.holding = s.dispute()
	dated := byTime(s.holding)
	s.starts, s.closed = attemptStarts(s.own(dated))
	for range s.starts {
		s.Attempts = append(s.Attempts, &Attempt{})
	}
	s.answer()
	s.observe(dated)
	for _, a := range s.Attempts {
		a.settle()
	}
	return s
}

// answer takes in the standing answers, in order: the latest stands, and of those
// that disagree the most careful.
func (s *Stump) answer() {
	type asking struct {
		attempt  int
		question string
	}
	asked := map[asking][]Event{}
	for _, e := range s.holding {
		body, ok := e.Body.(onStump)
		q := e.Question()
		if !ok || q == "" {
			continue
		}
		n := s.attemptOf(e)
		body.apply(s, s.Attempts[n], e)
		asked[asking{n, q}] = append(asked[asking{n, q}], e)
	}
	for key, es := range asked {
		if len(es) > 1 && !sameAnswer(es) {
			holds := mostCareful(es)
			if holds.ID != es[len(es)-1].ID {
				holds.Body.(onStump).apply(s, s.Attempts[key.attempt], holds)
			}
			s.Clashes = append(s.Clashes, Clash{Question: key.question, Events: es, Holds: holds.ID})
		}
	}
	s.sortClashes()
}

// observe takes in what was done or seen, in order of time, whenever it was put
// down: every list of an attempt is in that order.
func (s *Stump) observe(dated []Event) {
	for _, e := range dated {
		body, ok := e.Body.(onStump)
		if !ok {
			continue
		}
		if e.Question() == "" {
			body.apply(s, s.Attempts[s.attemptOf(e)], e)
		}
		if e.At.After(s.Newest) {
			s.Newest = e.At
		}
	}
}

// byTime is events that are in the journal's order by their times; of two at
// one time the one first in the journal comes first.
func byTime(events []Event) []Event {
	sooner := func(a, b Event) int { return a.At.Compare(b.At) }
	if slices.IsSortedFunc(events, sooner) {
		return events
	}
	dated := slices.Clone(events)
	slices.SortStableFunc(dated, sooner)
	return dated
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

// settle works out how each graft fares, from what was seen in order of time.
func (a *Attempt) settle() {
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
	// A slot that was looked at but never set is no graft, nor one whose scion broke.
	a.Grafts = slices.DeleteFunc(a.Grafts, func(g *Graft) bool { return g.Set == nil || a.broken(g) })
	slices.SortFunc(a.Grafts, func(x, y *Graft) int { return x.Slot - y.Slot })
}
