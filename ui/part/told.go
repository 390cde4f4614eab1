package part

import (
	"barkslip/core/due"
	"barkslip/core/record"
)

// GraftTold is what the record tells of one graft that was set.
type GraftTold struct {
	Lot      record.ID // record.None if of no recorded lot
	Variety  string
	Hand     string          // that set it
	Bleeding record.Bleeding // last seen before the first scion of its attempt; "" where nobody looked
	Outcome  record.Outcome
}

// StumpTold is what the record tells of a stump beyond its summary.
type StumpTold struct {
	Planned string // the variety it is to become
	Grafts  []GraftTold
}

// toldAs is what was told of a stump when its journal was so long.
type toldAs struct {
	clock  uint64
	events int
	told   StumpTold
}

// Told is what the record tells of the stump of a summary. It is read once, and
// again after the stump has another answer. What cannot be read is kept as trouble.
func (x *Session) Told(s due.Summary) StumpTold {
	if have, ok := x.told[s.ID]; ok && have.clock == s.Clock && have.events == s.Events {
		return have.told
	}
	stump, err := x.Book.Stump(s.ID)
	if err != nil {
		x.trouble = err
		return StumpTold{}
	}
	if x.told == nil {
		x.told = map[record.StumpID]toldAs{}
	}
	told := toldOf(stump, x.Book.Folded().Blocks[s.ID.Block])
	x.told[s.ID] = toldAs{s.Clock, s.Events, told}
	return told
}

// toldOf reads a stump's record, with what was grafted on its trunk where it is
// the limb that tells of that.
func toldOf(s *record.Stump, b *record.Block) (out StumpTold) {
	if out.Planned = b.Variety; s.Added != nil && s.Added.What.Variety != "" {
		out.Planned = s.Added.What.Variety
	}
	attempts := s.Attempts
	if s.TellsTrunk() {
		attempts = append(s.Trunk.Attempts[:len(s.Trunk.Attempts):len(s.Trunk.Attempts)], attempts...)
	}
	for _, a := range attempts {
		bleeding := bleedingAtFirst(a)
		for _, g := range a.Grafts {
			out.Grafts = append(out.Grafts, GraftTold{g.Set.What.Lot, g.Set.What.Variety, g.Set.Hand, bleeding, a.OutcomeOf(g, b)})
		}
	}
	return out
}

// bleedingAtFirst is how the face bled when it was last seen before the first
// scion of the attempt.
func bleedingAtFirst(a *record.Attempt) (seen record.Bleeding) {
	if len(a.Grafts) == 0 {
		return ""
	}
	first := *a.Grafts[0].Set
	for _, g := range a.Grafts[1:] {
		if record.Newer(first, *g.Set) {
			first = *g.Set
		}
	}
	for _, l := range a.Looks {
		if l.What.Bleeding != "" && record.Newer(first, l) {
			seen = l.What.Bleeding
		}
	}
	return seen
}
