package part

import (
	"barkslip/core/due"
	"barkslip/core/plan"
)

// NextStump opens the next stump that needs work after one, in the order of a
// round; where there is none it goes to the block.
func (x *Session) NextStump(n Next) Msgs {
	sums := x.Summaries(x.Block)
	ask := due.Now(x.Time())
	ask.CutBack = plan.CutBackOn(x.Site(), sums, x.Time())
	if id, ok := due.After(due.Round(sums, ask), n.After, n.AtHand, x.Time()); ok {
		return Msgs{Open{Stump: id}}
	}
	return Msgs{OpenBlock{x.Block}, Say{"No more work is due now."}}
}
