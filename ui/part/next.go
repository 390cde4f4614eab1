package part

import (
	"barkslip/core/due"
	"barkslip/core/plan"
)

// NextStump opens the next stump that needs work after one, in the order of a
// round; where there is none it goes to the block. It keeps to the stumps the
// screens keep to.
func (x *Session) NextStump(n Next) Msgs {
	sums := x.Summaries(x.Block)
	ask := due.Now(x.Time())
	ask.CutBack = plan.CutBackOn(x.Site(), sums, x.Time())
	if id, ok := due.After(due.Round(x.Kept(), ask), n.After, n.AtHand, x.Time()); ok {
		return Msgs{Open{Stump: id}}
	}
	if only := x.OnlyHere(); only != nil {
		return Msgs{OpenBlock{x.Block}, Say{"No more work is due now on those shown: only " + only.Words + ". Esc shows all."}}
	}
	return Msgs{OpenBlock{x.Block}, Say{"No more work is due now."}}
}

// NextClash opens the next stump behind one, in walking order and round to the
// beginning, on which answers disagree.
func (x *Session) NextClash(n NextClash) Msgs {
	id, ok := due.NextClash(x.Summaries(x.Block), n.After)
	if !ok {
		return Says("Nowhere in this block do answers disagree.")
	}
	return Msgs{Open{Stump: id}}
}
