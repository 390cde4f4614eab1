package part

import (
	"barkslip/core/due"
	"barkslip/core/record"
)

// GraftTold is what is told of one graft that was set.
type GraftTold struct {
	Lot               record.ID       // record.None if of no recorded lot
	Variety, Hand     string          // of the scion, and who set it
	Cause             string          // of death
	Bleeding          record.Bleeding // last seen before the first scion of its grafting; "" where nobody looked
	Known, Took, Dead bool
}

// StumpTold is what is told of a stump that filters go by.
type StumpTold struct {
	Planned string // the variety it is to become; told only where nothing was grafted
	Grafts  []GraftTold
}

// toldAs is what was told of a stump when its journal was so long.
type toldAs struct {
	clock  uint64
	events int
	told   StumpTold
}

// Told is what is told of the stump of a summary. It is made once, and again after
// the stump has another answer. What cannot be read is kept as trouble.
func (x *Session) Told(s *due.Summary) StumpTold {
	if have, ok := x.told[s.ID]; ok && have.clock == s.Clock && have.events == s.Events {
		return have.told
	}
	var told StumpTold
	for g := range s.Grafts {
		told.Grafts = append(told.Grafts, GraftTold{g.Lot, string(g.Variety), string(g.Hand), string(g.Cause), g.Bleeding, g.Known, g.Took, g.Dead})
	}
	if len(told.Grafts) == 0 {
		told.Planned = x.planned(s.ID)
	}
	if x.told == nil {
		x.told = map[record.StumpID]toldAs{}
	}
	x.told[s.ID] = toldAs{s.Clock, s.Events, told}
	return told
}

// planned is the variety planned for a stump: its own, or its block's.
func (x *Session) planned(id record.StumpID) string {
	stump, err := x.Book.Stump(id)
	if err != nil {
		x.trouble = err
		return ""
	}
	if stump.Added != nil && stump.Added.What.Variety != "" {
		return stump.Added.What.Variety
	}
	return x.Book.Folded().Blocks[id.Block].Variety
}
