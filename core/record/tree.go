package record

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
)

// A tree may carry several stumps: its limbs. What is done low on the stem or
// tried on its bark is the tree's, whichever limb it was given at: gashes, drain
// holes, nurse limbs, looks at the bark. So a limb is folded from what was given
// at it together with what of the tree was given at the others and, before it had
// limbs, at the trunk. Taking back and saying anew reach over the tree in the same
// way, and the order of the events makes no difference here either. What was
// given elsewhere begins no attempt: it belongs to the one it finds.

// ofTree is a body that tells of the whole tree: what of it holds at the other
// limbs, nil where nothing does.
type ofTree interface{ forTree() Body }

func (b *Gashed) forTree() Body       { return b }
func (b *Drilled) forTree() Body      { return b }
func (b *NurseJudged) forTree() Body  { return b }
func (b *LimbTakenOff) forTree() Body { return b }
func (b *NurseLimbOff) forTree() Body { return b }
func (b *Aware) forTree() Body        { return b }

func (b *AnotherYear) forTree() Body {
	if b.Work == PutOffNurse {
		return b
	}
	return nil
}

// forTree: the bark is the stem's, the bleeding is of one face.
func (b *Looked) forTree() Body {
	switch {
	case b.Slip == "":
		return nil
	case b.Bleeding == "":
		return b
	}
	return &Looked{Slip: b.Slip}
}

// forTree is what of an event holds at the other limbs, nil for nothing.
func (e Event) forTree() Body {
	if b, ok := e.Body.(ofTree); ok {
		return b.forTree()
	}
	return nil
}

// OfTree says whether all that a body says is of the whole tree.
func OfTree(b Body) bool { return b != nil && (Event{Body: b}).forTree() == b }

// otherOf says whether a stump is another of the same tree, whatever the name of
// its block.
func (s StumpID) otherOf(o StumpID) bool {
	return s.Row == o.Row && s.Tree == o.Tree && s.Limb != o.Limb
}

// Trunk is the trunk of the stump's tree.
func (s StumpID) Trunk() StumpID {
	s.Limb = 0
	return s
}

// divide takes of a tree's events those that are the stump's own and those that
// hold for the whole tree. Both lists are in order, standing without what does
// not stand anywhere on the tree.
func (s *Stump) divide(all, standing []Event) {
	s.All, s.Live = all, standing
	if s.ID.Limb > 0 && len(standing) > 0 {
		s.Limbs = []uint8{s.ID.Limb}
	}
	if !slices.ContainsFunc(all, func(e Event) bool { return e.Stump.otherOf(s.ID) }) {
		return
	}
	s.All, s.Live, s.Limbs, s.elsewhere = nil, nil, nil, map[ID]bool{}
	kept, trunk, limbs := map[ID]bool{}, []Event(nil), map[uint8]bool{}
	for _, e := range all {
		other := e.Stump.otherOf(s.ID)
		if w, taking := e.Body.(*Withdrawn); !other || e.forTree() != nil || taking && kept[w.Of] {
			kept[e.ID], s.All = true, append(s.All, e)
			if other {
				s.elsewhere[e.ID] = true
			}
		}
		if s.ID.Limb > 0 && e.Stump == s.trunkOf(e) {
			trunk = append(trunk, e)
		}
	}
	for _, e := range standing {
		if e.Stump.Row == s.ID.Row && e.Stump.Tree == s.ID.Tree && e.Stump.Limb > 0 {
			limbs[e.Stump.Limb] = true
		}
		if !e.Stump.otherOf(s.ID) {
			s.Live = append(s.Live, e)
		} else if part := e.forTree(); part != nil {
			e.Body = part
			s.Live = append(s.Live, e)
		}
	}
	for n := range limbs {
		s.Limbs = append(s.Limbs, n)
	}
	slices.SortFunc(s.Limbs, cmp.Compare[uint8])
	if len(trunk) > 0 {
		s.Trunk = Fold(s.ID.Trunk(), trunk)
	}
}

// trunkOf is the trunk of the stump's tree, by the name of the block that an
// event has.
func (s *Stump) trunkOf(e Event) StumpID { return StumpID{e.Stump.Block, s.ID.Row, s.ID.Tree, 0} }

// Elsewhere says whether an event that stands here was given at another limb of
// the tree, or at its trunk.
func (s *Stump) Elsewhere(id ID) bool { return s.elsewhere[id] }

// own is the events that were given at the stump itself.
func (s *Stump) own(events []Event) []Event {
	if len(s.elsewhere) == 0 {
		return events
	}
	return slices.DeleteFunc(slices.Clone(events), func(e Event) bool { return s.elsewhere[e.ID] })
}

// inPart says whether only a part of an event that stands here holds for the
// tree: what it says besides is another limb's, so it is not said anew from here.
func (s *Stump) inPart(e Event) bool {
	if !s.elsewhere[e.ID] {
		return false
	}
	whole, _ := find(s.All, e.ID)
	return !OfTree(whole.Body)
}

// Divided says whether the trunk has limbs that are stumps: it is no stump of its
// own then, and its history is told with theirs.
func (s *Stump) Divided() bool { return s.ID.Limb == 0 && len(s.Limbs) > 0 }

// Standing says whether there is a stump at all: something that was given at it
// stands, and it is no trunk that has limbs.
func (s *Stump) Standing() bool { return !s.Divided() && len(s.own(s.Live)) > 0 }

// TellsTrunk says whether the stump is the one of its tree with which what was
// done on the trunk is counted: the first of its limbs.
func (s *Stump) TellsTrunk() bool {
	return s.Trunk != nil && len(s.Limbs) > 0 && s.Limbs[0] == s.ID.Limb
}

// Others is the other limbs of the tree.
func (s *Stump) Others() (out []StumpID) {
	for _, n := range s.Limbs {
		if n != s.ID.Limb {
			id := s.ID
			id.Limb = n
			out = append(out, id)
		}
	}
	return out
}

// carries says whether grafts that were not lost stand on the stump.
func (s *Stump) carries() bool {
	a := s.Now()
	return len(a.Grafts) > 0 && a.LostAt().IsZero() && a.GivenUp == nil
}

// TrunkCarries says whether grafts stand on the trunk of the tree, as a join may
// bring them to a tree that has limbs.
func (s *Stump) TrunkCarries() bool { return s.Trunk != nil && s.Trunk.carries() }

// TakesLimbs says why a trunk cannot have limbs as stumps; nil where it can.
func (s *Stump) TakesLimbs() error {
	if s.ID.Limb == 0 && !s.Divided() && s.carries() {
		return fmt.Errorf("grafts stand on the trunk of %s, so its limbs are no stumps; if they are lost, record that first", s.ID.Place())
	}
	return nil
}

// NextLimb is the limb that is added next to the tree: the first letter that is
// free, and what is known of its tree. The error is a sentence.
func (s *Stump) NextLimb() (StumpID, *StumpAdded, error) {
	if err := s.TakesLimbs(); err != nil {
		return NoStump, nil, err
	}
	id, says := s.ID, &StumpAdded{}
	for id.Limb = 1; slices.Contains(s.Limbs, id.Limb); id.Limb++ {
		if id.Limb == Letters {
			return NoStump, nil, errors.New("a tree has no more limbs than letters, a to z")
		}
	}
	known := s.Added
	if known == nil && s.Trunk != nil {
		known = s.Trunk.Added
	}
	if known != nil {
		says.Stock, says.Variety = known.What.Stock, known.What.Variety
	}
	return id, says, nil
}
