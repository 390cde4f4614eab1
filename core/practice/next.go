package practice

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/walk"
)

// scene is a stump of which a step comes next.
type scene struct {
	step  walk.StepID // that is to come next, by the rules
	skill Skill
	tell  func(t *tale)
}

// scenes are in the order of the walk; each step that can come next has one or
// more.
var scenes = []scene{
	{walk.StepLimbs, Draining, func(t *tale) { t.at(-8, 9, 0) }},
	{walk.StepReach, Draining, func(t *tale) { t.on(-8, 9, 0, &record.NurseJudged{Limbs: 2}) }},
	{walk.StepLeaf, Draining, func(t *tale) { t.on(-8, 9, 0, &record.NurseJudged{Limbs: 1, Nearest: t.inches(30)}) }},
	{walk.StepHeight, Draining, func(t *tale) { t.limbs(8) }},
	{walk.StepGashes, Draining, func(t *tale) { t.limbs(8).did(&record.CutBack{Height: t.inches(36)}) }},
	{walk.StepLimbOff, Draining, func(t *tale) {
		t.on(-8, 9, 0, &record.NurseJudged{Limbs: 2, Nearest: t.inches(float64(t.of(8, 15))), Leaf: "some"})
	}},
	{walk.StepSmall, Draining, func(t *tale) {
		t.on(-8, 8, 50, &record.StumpAdded{Across: t.inches(0.75)}).on(-8, 9, 0)
	}},
	{walk.StepBleeding, Draining, func(t *tale) { t.cutBack(8).at(0, 9, 0) }},
	{walk.StepWait, Draining, func(t *tale) { t.cutBack(8).at(-8+t.of(1, 5), 9, 0) }},
	{walk.StepDrill, Draining, func(t *tale) {
		t.cutBack(8).on(0, 9, 0, &record.Gashed{Number: 2}).later(31).did(&record.Looked{Bleeding: record.Running}, &record.Looked{Slip: record.SlipsClean})
	}},
	{walk.StepNewGashes, Draining, func(t *tale) {
		t.cutBack(8).on(0, 9, 0, &record.Looked{Bleeding: record.Dry}, &record.Looked{Slip: record.SlipsClean})
	}},
	{walk.StepLeave, Draining, func(t *tale) {
		t.runs(-6).runs(-3).runs(0)
	}},
	{walk.StepSlip, Slip, func(t *tale) { t.cutBack(8).on(0, 9, 0, &record.Looked{Bleeding: record.Dry}) }},
	{walk.StepSlip, Slip, func(t *tale) {
		t.cutBack(8).on(-1, 15, 0, &record.Looked{Slip: record.SlipsClean}).on(0, 9, 0, &record.Looked{Bleeding: record.Dry})
	}},
	{walk.StepWait, Slip, func(t *tale) {
		t.cutBack(8).on(0, 9, 0, &record.Looked{Bleeding: record.Dry}, &record.Looked{Slip: record.Drags})
	}},
	{walk.StepFreshCut, Cuts, func(t *tale) {
		t.cutBack(9).on(0, 9, 0, &record.Looked{Bleeding: record.Dry}, &record.Looked{Slip: record.SlipsClean}, &record.Gashed{Number: 2})
	}},
	{walk.StepTorn, Places, func(t *tale) {
		t.cutBack(9).on(0, 9, 0, &record.Looked{Bleeding: record.Dry}, &record.Looked{Slip: record.SlipsClean}, &record.Gashed{Number: 2}, &record.FreshCut{Torn: []record.Arc{{}}})
	}},
	{walk.StepNewFace, Slip, func(t *tale) {
		t.cutBack(9).on(0, 9, 0, &record.Looked{Bleeding: record.Dry}, &record.Looked{Slip: record.SlipsClean}, &record.Gashed{Number: 2}, &record.FreshCut{})
		t.later(t.of(2, 18))
	}},
	{walk.StepMeasure, Places, func(t *tale) { t.ready() }},
	{walk.StepLongWay, Places, func(t *tale) {
		t.ready().did(&record.StumpMeasured{Across: t.inches(3.5), Across2: t.inches(3)})
	}},
	{walk.StepSlots, Places, func(t *tale) { t.measured() }},
	{walk.StepWood, Wood, func(t *tale) { t.marked() }},
	{walk.StepThick, Wood, func(t *tale) { t.marked().did(&record.WoodChosen{Variety: t.b.Variety}) }},
	{walk.StepNodes, Wood, func(t *tale) {
		t.marked().did(&record.WoodChosen{Variety: t.b.Variety, Thickness: t.fine(0.4375)})
	}},
	{walk.StepScion, Cuts, func(t *tale) {
		t.wooded()
		for n := range t.of(0, 2) {
			t.did(t.scion(n + 1))
		}
	}},
	{walk.StepSplit, Cuts, func(t *tale) {
		s := t.scion(1)
		s.Split = record.SplitUnmeasured
		t.wooded().did(s)
	}},
	{walk.StepSeal, Seal, func(t *tale) { t.set().later(t.of(1, 20)) }},
	{walk.StepWhite, Seal, func(t *tale) { t.sealed(record.Wrapped).later(t.of(122, 150)) }},
	{walk.StepWhite, Seal, func(t *tale) { t.sealed(record.Bare).later(t.of(10, 60)) }},
	{walk.StepRing, Seal, func(t *tale) {
		t.b.Earwigs = true
		t.sealed(record.Wrapped).later(125).did(&record.PaintedWhite{})
	}},
	{walk.StepSealCheck, Seal, func(t *tale) {
		t.sealed(record.Bare).later(125).did(&record.PaintedWhite{}).at(t.of(2, 4), 9, 0)
	}},
	{walk.StepReseal, Seal, func(t *tale) { t.white(record.Bare).at(t.of(5, 6), 9, 0) }},
	{walk.StepRingAgain, Seal, func(t *tale) {
		t.b.Earwigs = true
		t.sealed(record.Wrapped).later(125).did(&record.PaintedWhite{}, &record.RingSet{}).on(2, 9, 0, &record.SealChecked{}).at(13, 9, 0)
	}},
	{walk.StepRest, Seal, func(t *tale) { t.white(record.Wrapped).at(t.of(5, 9), 9, 0) }},
	{walk.StepVisit, Buds, func(t *tale) {
		t.white(record.Wrapped).on(14, 8, 0, rubbed()).at(t.of(14, 19), 9, 0)
	}},
	{walk.StepVisit, Buds, func(t *tale) { t.led(18).on(38, 9, 0, rubbed(), &record.Tied{}).at(48, 9, 0) }},
	{walk.StepDeath, Buds, func(t *tale) {
		v := visit(record.Pushing, record.Growing, record.Dead)
		v.Found[2].Cause = ""
		t.white(record.Wrapped).on(24, 9, 0, v)
	}},
	{walk.StepScratch, Buds, func(t *tale) {
		t.white(record.Wrapped).on(21, 9, 0, visit(record.NoChange, record.NoChange, record.NoChange), rubbed()).
			on(t.of(43, 50), 9, 0, visit(record.NoChange, record.NoChange, record.NoChange))
	}},
	{walk.StepFailed, Buds, func(t *tale) { t.white(record.Wrapped).on(40, 9, 0, visit(record.Dead, record.Dead, record.Dead)) }},
	{walk.StepEnded, Buds, func(t *tale) {
		t.white(record.Wrapped).on(40, 9, 0, visit(record.Dead, record.Dead, record.Dead), &record.Failed{Cause: "never moved"}, &record.SproutsKept{Number: 2})
		t.at(50, 9, 0)
	}},
	{walk.StepSprouts, Sprouts, func(t *tale) {
		t.white(record.Wrapped).on(18, 9, 0, visit(record.Swelling, record.Swelling, record.Swelling)).at(t.of(18, 22), 10, 0)
	}},
	{walk.StepSprouts, Sprouts, func(t *tale) {
		t.cutBack(24).at(-1, 9, 0).did(&record.Looked{Bleeding: record.Dry}, &record.Looked{Slip: record.Drags})
	}},
	{walk.StepSproutLeaf, Sprouts, func(t *tale) {
		t.white(record.Wrapped).on(18, 9, 0, visit(record.Swelling, record.Swelling, record.Swelling), &record.SproutsRubbed{Near: 3, Below: 1})
	}},
	{walk.StepKeep, Sprouts, func(t *tale) {
		t.white(record.Wrapped).on(40, 9, 0, visit(record.Dead, record.Dead, record.Dead), &record.Failed{Cause: "never moved"})
		t.at(42, 9, 0)
	}},
	{walk.StepStake, Ties, func(t *tale) { t.pushed(t.of(17, 20)) }},
	{walk.StepLeader, Leader, func(t *tale) {
		t.staked(18).on(32, 9, 0, visit(record.Growing, record.Growing, record.Growing), rubbed())
	}},
	{walk.StepLeaderShoot, Leader, func(t *tale) {
		t.staked(18).on(32, 9, 0, visit(record.Growing, record.Growing, record.Growing), rubbed(), &record.LeaderChosen{Slot: 2})
	}},
	{walk.StepPinch, Leader, func(t *tale) {
		t.staked(18).on(32, 9, 0, visit(record.Growing, record.Growing, record.Growing), rubbed(), &record.Tied{}, &record.LeaderChosen{Slot: 2, Shoot: "upper"})
	}},
	{walk.StepLeader, Leader, func(t *tale) { // the leader broke, and none took over
		t.summer(18).on(50, 9, 0, &record.LeaderBroken{Cause: "wind"})
		t.at(51, 9, 0)
	}},
	{walk.StepTie, Ties, func(t *tale) {
		t.staked(18).on(32, 9, 0, visit(record.Growing, record.Growing, record.Growing), rubbed(), &record.LeaderChosen{Slot: 2, Shoot: "upper"}, &record.Pinched{})
	}},
	{walk.StepTwine, Ties, func(t *tale) {
		t.summer(18).inSeason(0, time.August, 3, 9)
		t.did(rubbed(), &record.Tied{Shoot: t.inches(54)}, &record.Pinched{})
	}},
	{walk.StepTwineKind, Ties, func(t *tale) {
		t.summer(18).inSeason(0, time.August, 3, 9)
		t.did(rubbed(), &record.Tied{Shoot: t.inches(54)}, &record.Pinched{}, &record.Twined{Loops: 2, Loop: t.inches(9), Stem: t.inches(3)})
	}},
	{walk.StepTwineCheck, Ties, func(t *tale) { t.headed(18).inSeason(1, time.April, t.of(2, 20), 9) }},
	{walk.StepTwineCut, Ties, func(t *tale) {
		t.headed(18).inSeason(1, time.July, 3, 9)
		t.did(rubbed(), &record.TwineChecked{Stem: t.inches(8.5), Tight: true})
	}},
	{walk.StepSeason, Winter, func(t *tale) { t.twined(18).inSeason(0, time.October, t.of(3, 28), 9) }},
	{walk.StepTapes, Winter, func(t *tale) {
		t.twined(18).inSeason(0, time.October, 5, 9)
		t.did(&record.SeasonsEnd{Alive: 3, Word: "strong"}, &record.TwineChecked{Stem: t.inches(3.5)})
		t.inSeason(0, time.November, t.of(2, 28), 9)
	}},
	{walk.StepHeadBack, Winter, func(t *tale) { t.autumn(18).inSeason(1, time.March, t.of(2, 20), 9) }},
	{walk.StepNurseOff, Winter, func(t *tale) {
		t.autumn(18).inSeason(1, time.March, 5, 9)
		t.did(&record.HeadedBack{Height: t.inches(70)})
	}},
	{walk.StepSecond, Winter, func(t *tale) { t.second(18).inSeason(2, time.March, t.of(3, 20), 9) }},
	{walk.StepUntie, Winter, func(t *tale) {
		t.second(18).inSeason(2, time.March, 3, 9)
		t.did(&record.SecondShootOff{}, &record.TwineCut{})
		t.inSeason(2, time.April, 10, 9)
	}},
	{walk.StepEnded, Winter, func(t *tale) {
		t.second(18).inSeason(2, time.March, 3, 9)
		t.did(&record.SecondShootOff{}, &record.TwineCut{}, &record.Untied{})
		t.inSeason(2, time.May, 3, 9)
	}},
}

// runs is a day on which it runs with gashes made that day and a drain hole.
func (t *tale) runs(day int) *tale {
	if len(t.events) == 0 {
		t.cutBack(14)
		t.on(day-1, 9, 0, &record.Drilled{Number: 1})
	}
	return t.on(day, 8, 0, &record.Gashed{Number: 2}).later(35).did(&record.Looked{Slip: record.SlipsClean}, &record.Looked{Bleeding: record.Running})
}

// nextStep makes a kind of case for a skill: which step comes next.
func nextStep(of Skill) maker {
	var mine []scene
	for _, s := range scenes {
		if s.skill == of {
			mine = append(mine, s)
		}
	}
	return maker{"next-step", func(seed uint64) Case {
		t := newTale(seed)
		s := pick(&t.dice, mine...)
		s.tell(t)
		return t.next()
	}}
}

// next asks which step comes next. The others offered are steps near it in the
// walk, of which none is open now.
func (t *tale) next() Case {
	w := t.walk()
	is := w.Present()
	t.sayNow().sayDone(4)
	if len(t.events) == 0 {
		t.say("Nothing was done on this stump yet.")
	}
	options := []option{{string(is), deeds[is], ""}}
	for _, id := range t.near(w, is) {
		options = append(options, option{string(id), deeds[id], t.notNow(w, id)})
	}
	right, work := t.whyNext(w, is)
	c := t.asked("Which step comes next?", string(is), right, work, options)
	c.Rule.Step = is
	if d, open := due.First(w.Dues(), t.now); open {
		c.Rule.Due, c.Rule.IsDue = d.Kind, true
	}
	return c
}

// near is three other steps to tempt with: those nearest in the walk that are not
// open now, and not among those told to be done today.
func (t *tale) near(w *walk.Case, is walk.StepID) (out []walk.StepID) {
	steps := walk.Steps()
	at := slices.IndexFunc(steps, func(s *walk.Step) bool { return s.ID == is })
	var of []walk.StepID
	for far := 1; far < len(steps) && len(of) < 5; far++ {
		for _, i := range []int{at - far, at + far} {
			if i >= 0 && i < len(steps) && !t.alsoOpen(w, steps[i].ID) {
				of = append(of, steps[i].ID)
			}
		}
	}
	shuffle(&t.dice, of)
	return of[:3]
}

// alsoOpen says whether work of a step is open as well, or the step says the same as
// another in other words.
func (t *tale) alsoOpen(w *walk.Case, id walk.StepID) bool {
	if id == walk.StepGiveUp || id == walk.StepRest || id == walk.StepEnded || id == walk.StepLeave {
		return true // a person may do so whenever it seems right
	}
	for _, d := range w.Dues() {
		if d.Open(t.now) && (d.Kind.Step() == id || w.Meets(d.Kind) == id) {
			return true
		}
	}
	return false
}

// notNow says why a step does not come next.
func (t *tale) notNow(w *walk.Case, id walk.StepID) string {
	for _, k := range w.Knots() {
		switch {
		case k.Step.ID != id:
		case k.Done && k.Answer != "":
			return fmt.Sprintf("That is done: %s. %s", strings.TrimSuffix(k.Answer, "."), t.here(k.Step.Why))
		case k.Due != nil && k.Due.Opens.After(t.now):
			return fmt.Sprintf("Not before %s. %s", t.when(*k.Due), k.Due.Why(t.b))
		}
	}
	for _, s := range walk.Steps() {
		if s.ID == id {
			return "Nothing asks for that now. " + t.here(s.Why)
		}
	}
	return ""
}

// whyNext is why a step comes next, and what that rests on.
func (t *tale) whyNext(w *walk.Case, is walk.StepID) (string, trade.Worked) {
	work := trade.Worked{Question: "Why does that step come next?"}
	why := ""
	for _, s := range walk.Steps() {
		if s.ID == is {
			why, work.Facts = t.here(s.Why), s.Facts
		}
	}
	if d, open := due.First(w.Dues(), t.now); open && w.Meets(d.Kind) == is {
		why = d.Sentence(t.b, t.now) + " " + why
		work.Facts = append(slices.Clone(work.Facts), d.Facts()...)
	}
	if len(work.Facts) == 0 {
		work.Facts = w.Advice.Work.Facts
	}
	work.Answer = []trade.Input{{Value: why}}
	return strings.TrimSpace(why), work
}
