package walk

import (
	"barkslip/core/record"
	"barkslip/core/record/recordtest"
)

// anyBody is an answer of any kind, as may be given for a whole row.
func (w *stroll) anyBody() record.Body {
	slot := 1 + w.IntN(3)
	long := recordtest.Inches(float64(4 + w.IntN(60)))
	shoot := []string{"", "upper"}[w.IntN(2)]
	if w.one(15) {
		return w.ending()
	}
	bodies := []record.Body{
		&record.NurseJudged{Limbs: w.IntN(3)}, &record.CutBack{Height: recordtest.Inches(36)}, &record.Gashed{Number: 2}, &record.Drilled{Number: 1},
		&record.LimbTakenOff{Left: w.IntN(2)}, &record.Looked{Bleeding: record.Bleedings[w.IntN(4)], Slip: record.Slips[w.IntN(3)]},
		&record.Looked{Bleeding: record.Dry, Slip: record.SlipsClean}, &record.Looked{Slip: record.Drags}, &record.FreshCut{}, &record.StumpMeasured{Across: recordtest.Inches(3)},
		&record.SlotsMarked{Slots: []record.Slot{{Bearing: 20}, {Bearing: 140}}}, &record.WoodChosen{Variety: "Lantern"},
		&record.ScionSet{Slot: slot, Checks: record.AllGood}, &record.SlotEmpty{Slot: slot}, &record.AgainstAdvice{Verdict: "wait", Why: "no time"},
		&record.Sealed{Cover: record.Covers[w.IntN(2)]}, &record.StillWet{}, &record.PaintedWhite{}, &record.RingSet{}, &record.WashedOff{},
		&record.SealChecked{Cracked: w.one(2)}, &record.Resealed{}, &record.Staked{Height: recordtest.Inches(float64(36 + w.IntN(36)))},
		w.visit(), w.visit(), w.visit(), &record.SproutsRubbed{Near: w.IntN(3), Leaf: []string{"", "some"}[w.IntN(2)]}, &record.SproutsKept{Number: w.IntN(3)},
		&record.LeaderChosen{Slot: slot, Shoot: shoot}, &record.Pinched{}, &record.Tied{Shoot: long, Broken: w.one(6)}, &record.Tied{},
		&record.LeaderBroken{Cause: "wind", Promoted: w.IntN(3), Shoot: shoot}, &record.Twined{Loop: recordtest.Inches(12), Stem: recordtest.Inches(4)}, &record.Twined{},
		&record.TwineChecked{Stem: recordtest.Inches(float64(4 + w.IntN(8))), Tight: w.one(4)}, &record.TwineMoved{Loop: recordtest.Inches(20), Stem: recordtest.Inches(7)}, &record.TwineCut{},
		&record.TapesLoosened{}, &record.HeadedBack{Short: w.one(2), Height: recordtest.Inches(60)}, &record.RivalCut{}, &record.SecondShootOff{None: w.one(2)},
		&record.NurseLimbOff{Left: w.IntN(2)}, &record.AnotherYear{Work: record.PutOff[w.IntN(len(record.PutOff))]}, &record.SeasonsEnd{Word: "fair"}, &record.Noted{Text: "by the gate"},
	}
	return bodies[w.IntN(len(bodies))]
}

// ending is an answer that ends an attempt.
func (w *stroll) ending() record.Body {
	return []record.Body{&record.Failed{Cause: "wind"}, &record.GivenUp{Why: "wet", Season: true}, &record.GivenUp{Why: "dead"}, &record.Untied{}, &record.SeasonsEnd{Word: "dead"}}[w.IntN(5)]
}

// visit sees some of the grafts, in any state.
func (w *stroll) visit() *record.Visited {
	v := &record.Visited{}
	for _, g := range w.s.Now().Grafts {
		if w.one(6) {
			continue
		}
		f := record.Finding{Slot: g.Slot, State: record.GraftStates[min(w.IntN(9), 8)%5]}
		if w.one(5) {
			f.Scratch = record.Green
		}
		if w.one(4) {
			f.Shoot = recordtest.Inches(float64(2 + w.IntN(40)))
		}
		v.Found = append(v.Found, f)
	}
	return v
}
