package girth

import (
	"strconv"

	"barkslip/core/trade"
)

// work is the working of a layout for the number of slots asked.
func (p SlotPlan) work(out Layout, asked int) trade.Worked {
	w := trade.Worked{
		Question: "Where do the slots go?",
		Answer:   []trade.Input{{Name: "slots placed", Value: out.Scions}, {Name: "smallest gap", Value: out.Gap}},
		Formula:  "of all ways to place the slots' centres on free bark, the one whose smallest gap along the bark, all the way round, is largest",
		Inputs:   append(p.Oval().inputs(), trade.Input{Name: "girth", Value: out.Girth}, trade.Input{Name: "slots asked", Value: asked}),
		Assumed:  p.Oval().assumed(),
		Facts:    []trade.Fact{trade.EvenGaps, trade.OvalStump, trade.EllipseGirth, trade.ScionClosest},
	}
	for i, s := range out.Slots {
		w.Answer = append(w.Answer, trade.Input{Name: "slot " + strconv.Itoa(i+1), Value: s.Bearing})
	}
	if p.Across2 > 0 {
		w.Inputs = append(w.Inputs, trade.Input{Name: "longer way", Value: p.LongWay})
	}
	for _, arc := range p.Blocked {
		w.Inputs = append(w.Inputs, trade.Input{Name: "blocked around", Value: arc.Bearing}, trade.Input{Name: "blocked along the bark", Value: arc.Width})
	}
	if len(p.Blocked) > 0 {
		w.Inputs = append(w.Inputs, trade.Input{Name: "slot width", Value: p.slot()})
		w.Facts = append(w.Facts, trade.WholeBark)
	}
	if p.Scions == 0 {
		w.Assumed = append(w.Assumed, "as many scions as the stump's size asks for")
		w.Facts = append(w.Facts, trade.ScionSpacing, trade.ScionCap)
	}
	if p.Toward != nil {
		w.Inputs = append(w.Inputs, trade.Input{Name: "one slot nearest", Value: *p.Toward})
		w.Facts = append(w.Facts, trade.ShadeSide, trade.WindSide)
	}
	return w
}
