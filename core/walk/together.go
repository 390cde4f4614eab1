package walk

import (
	"slices"

	"barkslip/core/record"
	"barkslip/core/trade"
)

// Together is an answer that can be given to many stumps at once. What it says
// of each, and whether it may be said there, is asked of the walk on that stump.
type Together struct {
	Word    string
	Meaning string

	steps []StepID // of which it is an answer
	key   string   // the choice at such a step
	typed string   // what is typed there, where there is no choice
	says  func(c *Case) []record.Body
	once  StepID // it is told there: once a day is enough
}

// Allowed is a Together as it is said of one stump.
type Allowed struct {
	Bodies  []record.Body
	Refines []record.ID
	Left    string // why the stump is left out; "" where it is not
	Seen    bool   // it is left out for what was seen there
}

// Togethers lists the answers that can be given to many stumps, in the order in
// which the work is done.
func Togethers() []Together {
	return []Together{
		{Word: "painted white", Meaning: "all that are sealed", steps: []StepID{StepWhite}, key: "1"},
		{Word: "still wet", Meaning: "look again in 30 min", steps: []StepID{StepWhite}, key: "2"},
		{Word: "rained on", Meaning: "look again in 30 min", steps: []StepID{StepWhite}, key: "3"},
		{Word: "hard rain", Meaning: "then check each seal", steps: []StepID{StepRest}, key: "5"},
		{Word: "cut back", Meaning: "at the block's height", steps: []StepID{StepLimbs, StepHeight}, once: StepHeight, says: usualCut},
		{Word: "gashed", Meaning: "two gashes each", steps: []StepID{StepGashes, StepNewGashes}, says: usualGashes},
		{Word: "dry", Meaning: "seen dry, each face", steps: []StepID{StepBleeding, StepNewFace}, key: "1"},
		{Word: "bark slips", Meaning: "tried on each", steps: []StepID{StepSlip}, key: "1"},
		{Word: "earwig ring set", steps: []StepID{StepRing, StepRingAgain}, key: "1"},
		{Word: "seal whole", Meaning: "no crack, wrap down", steps: []StepID{StepSealCheck}, key: "1"},
		{Word: "resealed", steps: []StepID{StepReseal}, key: "1"},
		{Word: "no change", Meaning: "each living graft as before", steps: []StepID{StepVisit}, key: "0"},
		{Word: "staked", Meaning: "as the stump before", steps: []StepID{StepStake}, key: "1"},
		{Word: "sprouts rubbed", Meaning: "none near, leaf below as before", steps: []StepID{StepSprouts}, says: rubbedAsBefore},
		{Word: "tied", Meaning: "not measured", steps: []StepID{StepTie}, typed: notMeasured},
		{Word: "pinched", Meaning: "all tips but the leader's", steps: []StepID{StepPinch}, key: "1"},
		{Word: "twine loose", Meaning: "room all round", steps: []StepID{StepTwineCheck}, key: "1"},
		{Word: "season's end, strong", Meaning: "the living counted", steps: []StepID{StepSeason}, key: "1"},
		{Word: "season's end, fair", Meaning: "the living counted", steps: []StepID{StepSeason}, key: "2"},
		{Word: "season's end, weak", Meaning: "the living counted", steps: []StepID{StepSeason}, key: "3"},
		{Word: "tapes loosened", Meaning: "for the winter", steps: []StepID{StepTapes}, key: "1"},
		{Word: "headed back", Meaning: "each above its stake", steps: []StepID{StepHeadBack}, says: aboveStake},
		{Word: "nurse limbs off", Meaning: "none stays", steps: []StepID{StepNurseOff}, key: "0"},
	}
}

// Answers says whether it is an answer to one of the steps.
func (t Together) Answers(steps ...StepID) bool {
	return slices.ContainsFunc(steps, func(id StepID) bool { return slices.Contains(t.steps, id) })
}

// On is the answer as it is said of the stump: only where that work can be done
// now or its step is asked, and never over what was told there the same day.
func (t Together) On(c *Case) Allowed {
	step := c.asks(t.steps)
	if step == "" {
		if said := c.saidOf(t.steps); said != "" {
			return Allowed{Left: said, Seen: true}
		}
		return Allowed{Left: "not due"}
	}
	if said := c.saidOf([]StepID{step, t.once}); said != "" {
		return Allowed{Left: said, Seen: true}
	}
	a := c.Ask(step, false)
	switch {
	case t.says != nil:
		if bodies := t.says(c); len(bodies) > 0 {
			return Allowed{Bodies: bodies}
		}
	case t.typed != "" && a.Entry != nil:
		if bodies, err := a.Entry.Read(t.typed); err == nil {
			return Allowed{Bodies: bodies, Refines: a.Entry.Refines}
		}
	}
	for _, ch := range a.Choices {
		switch {
		case t.key == "" || ch.Key != t.key || len(ch.Bodies) == 0:
		case ch.Doubt != nil:
			return Allowed{Left: ch.Doubt.Says, Seen: true}
		default:
			return Allowed{Bodies: ch.Bodies, Refines: ch.Refines}
		}
	}
	return Allowed{Left: "open the stump: this is not known there yet"}
}

// asks is the first of the steps that is asked now, or that meets work which can
// be done now; "" if none is.
func (c *Case) asks(steps []StepID) StepID {
	if id := c.Present(); slices.Contains(steps, id) {
		return id
	}
	if c.A.CutBack != nil && c.inCutBack() && slices.Contains(steps, StepGashes) {
		return StepGashes // whatever else of that part is still to be told
	}
	for _, d := range c.Dues() {
		if id := c.Meets(d.Kind); d.Open(c.Now) && slices.Contains(steps, id) {
			return id
		}
	}
	return ""
}

// saidOf is what was told at one of the steps today, "" if nothing was.
func (c *Case) saidOf(steps []StepID) string {
	for _, id := range steps {
		s := stepByID(id)
		if s == nil || s.done == nil || !c.toldToday(id) {
			continue
		}
		if a := s.done(c); a.done {
			return a.words
		}
	}
	return ""
}

// toldToday says whether the newest answer at a step is of today.
func (c *Case) toldToday(id StepID) bool {
	switch id {
	case StepBleeding, StepSlip, StepNewFace:
		look := record.LastOf(c.A.Looks)
		return look != nil && c.today(look.At)
	case StepGashes, StepNewGashes:
		return len(c.A.Gashes) > 0 && c.today(record.Last(c.A.Gashes).At)
	case StepSealCheck:
		check := record.LastOf(c.A.SealChecks)
		return check != nil && c.today(check.At)
	case StepLimbs, StepHeight:
		return c.A.CutBack != nil && c.today(c.A.CutBack.At)
	case StepStake:
		return c.A.Stake != nil && c.today(c.A.Stake.At)
	case StepWhite:
		return c.A.White != nil && c.today(c.A.White.At)
	}
	return true // it tells no other day's answer
}

// usualCut is the cut-back at the height that the block asks for.
func usualCut(c *Case) []record.Body {
	cut, ok := UsualCut(c.B)
	if !ok || c.A.Nurse != nil && c.limbTooNear() {
		return nil
	}
	return []record.Body{cut}
}

// usualGashes is the usual number of gashes, as deep as the stem bears.
func usualGashes(c *Case) []record.Body {
	return []record.Body{&record.Gashed{Number: trade.GashesAtATime, Depth: record.Measured(c.gashDepth(), c.B.Units)}}
}

// rubbedAsBefore is no sprout near the graft and the leaf below as it was told
// last; nothing where it never was.
func rubbedAsBefore(c *Case) []record.Body {
	leaf := c.leafBefore()
	if leaf == "" {
		return nil
	}
	return []record.Body{&record.SproutsRubbed{Leaf: leaf}}
}

// aboveStake is the leader headed back at the height of its stake, where it has
// grown past it.
func aboveStake(c *Case) []record.Body {
	if c.A.Stake == nil || !c.A.PastStake() {
		return nil
	}
	return []record.Body{&record.HeadedBack{Height: c.A.Stake.What.Height}}
}
