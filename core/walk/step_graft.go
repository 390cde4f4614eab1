package walk

import (
	"fmt"
	"strings"
	"time"

	"barkslip/core/ready"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

func graftSteps() []*Step {
	return []*Step{
		{ID: StepNewGashes, Part: PartGraft, Name: "fresh gashes",
			LookFor:  "New cuts or the old ones opened, before the top is touched.",
			Why:      "Gashes close within days; fresh ones keep the sap off the new face.",
			NotRight: "More than six gashes on one stem: bore a drain hole instead.",
			Cautions: []trade.Caution{trade.SawKnifeDrill, trade.CleanBlades},
			Facts:    []trade.Fact{trade.GashesLow, trade.GashLimits}, done: doneNewGashes, ask: askNewGashes},
		{ID: StepFreshCut, Part: PartGraft, Name: "fresh cut",
			LookFor:  "Saw or pare down to moist wood, the bark edge whole all round.",
			Why:      "The old face has dried; the scion's cambium meets only living bark.",
			NotRight: "Torn bark takes no slot: say where, and the slots keep clear of it.",
			Cautions: []trade.Caution{trade.SawKnifeDrill, trade.CleanBlades},
			Facts:    []trade.Fact{trade.FreshCut, trade.Recut, trade.LowBleedsMore}, done: doneFreshCut, ask: askFreshCut},
		{ID: StepTorn, Part: PartGraft, Name: "torn bark",
			LookFor: "The middle of each tear as a bearing, and how long it is along the bark.",
			Why:     "A slot over torn bark lifts and dries.",
			Facts:   []trade.Fact{trade.FreshCut},
			applies: func(c *Case) bool {
				n := len(c.A.FreshCuts)
				return n > 0 && len(c.A.FreshCuts[n-1].What.Torn) > 0
			}, done: doneTorn, ask: askTorn},
		{ID: StepNewFace, Part: PartGraft, Name: "new face",
			LookFor:  "Wipe the new face and watch it a minute; a fresh face always looks moist.",
			Why:      "Sap shows 10 to 15 minutes after a cut.",
			NotRight: "It wets again: wipe and wait; if it weeps, gash or drill and look in half an hour.",
			Facts:    []trade.Fact{trade.FaceMoist, trade.DryFace}, done: doneNewFace, ask: askNewFace},
		{ID: StepMeasure, Part: PartGraft, Name: "measure",
			LookFor:  "The longer diameter inside the bark edge to edge, then the one at right angles.",
			Why:      "Girth decides how many scions; the shape decides where.",
			NotRight: "Over 4 in (10 cm) across it closes slowly and may decay: set more scions, and seal well.",
			Facts:    []trade.Fact{trade.StumpSizes, trade.ScionsByEye}, done: doneMeasure, ask: askMeasure},
		{ID: StepLongWay, Part: PartGraft, Name: "long way",
			LookFor: "The compass direction the longer diameter lies in.",
			Why:     "Slots are given as bearings from the middle of the stump.",
			applies: func(c *Case) bool { return c.oval() && (len(c.A.Grafts) == 0 || c.longWayGiven()) }, done: doneLongWay, ask: askLongWay},
		{ID: StepSlots, Part: PartGraft, Name: "slots",
			LookFor:  "Sound smooth bark at each bearing, slots as far apart as they can be.",
			Why:      "Even spacing closes the stump soonest; one on the shade side is spared the sun.",
			NotRight: "A knot or torn bark where a slot should go: block that stretch and the others move.",
			Facts:    []trade.Fact{trade.ScionSpacing, trade.ScionCap, trade.ScionClosest, trade.ShadeSide, trade.WindSide, trade.EvenGaps}, done: doneSlots, ask: askSlots},
		{ID: StepWood, Part: PartGraft, Name: "wood",
			LookFor:  "The label, plump green wood, tight buds, second buds under the first.",
			Why:      "Dried, warm or started wood is a wasted stump.",
			NotRight: "Wrinkled bark, brown under it, or swollen buds: take another stick.",
			Cautions: []trade.Caution{trade.MovingWood},
			Facts:    []trade.Fact{trade.StoreCold, trade.StoreLimits, trade.TwoNodes, trade.SingleBudded}, done: doneWood, ask: askWood},
		{ID: StepThick, Part: PartGraft, Name: "thickness",
			LookFor: "The scion in the middle, bark and all.",
			Why:     "Thinner wood for a smaller stump; slot width and nails follow from it.",
			Facts:   []trade.Fact{trade.ScionThickness, trade.ThicknessClasses, trade.ScionThickest, trade.Pith}, done: doneThick, ask: askThick},
		{ID: StepNodes, Part: PartGraft, Name: "nodes",
			LookFor: "Two nodes to a scion, a second bud under each first one; a short cone-like catkin bud above a leaf bud is no pair.",
			Why:     "Two paired nodes are four chances.",
			Facts:   []trade.Fact{trade.TwoNodes, trade.NodeGroups, trade.WayUp}, done: doneNodes, ask: askNodes},
		{ID: StepScion, Part: PartGraft, Name: "scions",
			LookFor:  "Six things on every scion, and its slit: each seen, none taken for granted.",
			Why:      "The back cut matters most: it must show cambium at the tip.",
			NotRight: "Recut a cut that is not flat; widen a slot that is tight; turn a scion that is upside down.",
			Cautions: []trade.Caution{trade.SawKnifeDrill, trade.NailsStay},
			Facts:    []trade.Fact{trade.BackCutTip, trade.LongCutLength, trade.SlotSpare, trade.SlotTight, trade.TwoNails, trade.NailSizes, trade.LittleProud, trade.ProudBy, trade.WayUp}, done: doneScions, ask: askScion},
		{ID: StepSplit, Part: PartGraft, Name: "split",
			LookFor: "The lowest end of the split, under the bark beside the slot.",
			Why:     "A split left open below the sealer dries the graft from beneath.",
			Facts:   []trade.Fact{trade.Slit, trade.SealBelow},
			applies: func(c *Case) bool { return c.split(false) != nil }, done: doneSplit, ask: askSplit},
	}
}

func askNewGashes(c *Case, a *Ask) {
	a.Question = "Renew the gashes. How many?"
	a.Because = c.gashWhy()
	if c.Advice.Verdict == ready.Gash {
		a.Because = c.Advice.Reasons[0]
	}
	var old *record.Said[record.Gashed]
	if n := len(c.A.Gashes); c.again && n > 0 {
		old = &c.A.Gashes[n-1]
	}
	c.gashChoices(a, old)
	c.beforeCut(a, 0)
}

// doneNewGashes is gashes renewed since the day of the cut-back.
func doneNewGashes(c *Case) answer {
	g := record.Last(c.A.Gashes)
	if g.At.IsZero() || c.A.CutBack == nil || c.B.Day(g.At) == c.B.Day(c.A.CutBack.At) || !c.today(g.At) && len(c.A.Grafts) == 0 {
		return open
	}
	return told(c.when(g.At))
}

// graftHeight is where the fresh cut goes: 6 in under the cut-back, or 2 in
// under an earlier fresh cut of this attempt; where that cut is corrected it is
// its own height.
func (c *Case) graftHeight() (unit.Length, string) {
	if n := len(c.A.FreshCuts); n > 0 && c.A.FreshCuts[n-1].What.Height.Given() {
		old := c.A.FreshCuts[n-1].What.Height.Length
		if c.again {
			return old, fmt.Sprintf("Recorded earlier as %s.", c.length(old))
		}
		return old - c.round(trade.RecutBelow), fmt.Sprintf("%s under the last cut, as is usual after a wait.", c.B.Units.Figure(trade.RecutBelow))
	}
	if c.A.CutBack == nil || !c.A.CutBack.What.Height.Given() {
		return 0, "Down to moist wood."
	}
	return c.A.CutBack.What.Height.Length - c.round(trade.FreshCutBelow), fmt.Sprintf("%s under the cut-back at %s, down to moist wood.", c.B.Units.Figure(trade.FreshCutBelow), c.length(c.A.CutBack.What.Height.Length))
}

// cutToCorrect is the fresh cut that is being corrected, one not yet made where
// there is none.
func (c *Case) cutToCorrect() record.FreshCut {
	if n := len(c.A.FreshCuts); c.again && n > 0 {
		return c.A.FreshCuts[n-1].What
	}
	return record.FreshCut{}
}

func askFreshCut(c *Case, a *Ask) {
	height, why := c.graftHeight()
	a.Because = why
	old := c.cutToCorrect()
	at, where := old.Height, ""
	if height > 0 {
		where = " at " + c.length(height)
	}
	if height > 0 && !at.Given() {
		at = record.Measured(height, c.B.Units)
	}
	torn, likely := []record.Arc{{Why: "torn"}}, "1"
	if len(old.Torn) > 0 {
		torn, likely = old.Torn, "2"
	}
	a.Question = "Cut the top fresh" + where + ". Is the bark whole?"
	a.choose("1", "whole", "cut"+where+", no tear", &record.FreshCut{Height: at})
	a.choose("2", "torn", "cut"+where+", then say where", &record.FreshCut{Height: at, Torn: torn})
	a.choice(Choice{Key: "3", Word: "other height", Meaning: "type where it was cut", Entry: &Entry{Asks: "height of the new face", Read: func(text string) ([]record.Body, error) {
		m, err := c.readLength(text, 0, 6*unit.Metre)
		cut := &record.FreshCut{Height: m, Torn: old.Torn}
		if err == nil {
			err = c.mindNails(m.Length, cut)
		}
		return []record.Body{cut}, err
	}}})
	a.Likely = likely
	a.Warn = c.nearOldNails(height)
	c.beforeCut(a, 0)
	if b := c.B.Browse; b.Given() && height > 0 && height < b.Length {
		a.Warn = strings.TrimSpace(a.Warn + " " + fmt.Sprintf("%s is below the browse height of %s.", c.length(height), c.length(b.Length)))
	}
}

func doneFreshCut(c *Case) answer {
	n := len(c.A.FreshCuts)
	if n == 0 || !c.today(c.A.FreshCuts[n-1].At) && len(c.A.Grafts) == 0 {
		return open
	}
	cut := c.A.FreshCuts[n-1]
	if !cut.What.Height.Given() {
		return told(c.when(cut.At))
	}
	return told(fmt.Sprintf("%s, %s", c.when(cut.At), c.length(cut.What.Height.Length)))
}

func askNewFace(c *Case, a *Ask) {
	wiped := c.Advice.Verdict == ready.Wipe
	a.Question = "Is the new face dry?"
	if wiped {
		a.Question = "Wipe the new face. Does it wet again?"
	}
	if len(c.Advice.Reasons) > 0 {
		a.Because = c.Advice.Reasons[0]
	}
	if a.Until = c.Advice.Until; c.AgainstToday() {
		a.Until = nil
		if cut, ok := c.cutToday(); ok && !wiped {
			shows := cut.Add(trade.FaceMinutes * time.Minute)
			a.Until = &shows
			a.Because = fmt.Sprintf("The face was cut at %s: sap shows 10 to 15 minutes after a cut.", c.when(cut))
		}
	}
	c.bleedingChoices(a, wiped)
}

// cutToday is when the face was cut fresh today and not looked at since; ok is false
// if it was not.
func (c *Case) cutToday() (at time.Time, ok bool) {
	at = c.Found.FreshCut
	return at, c.today(at) && at.After(c.Found.Looked)
}

func doneNewFace(c *Case) answer {
	for i := len(c.A.Looks) - 1; i >= 0; i-- {
		l := c.A.Looks[i]
		if l.What.Bleeding != "" && len(c.A.FreshCuts) > 0 && record.Newer(l, record.Last(c.A.FreshCuts)) {
			return told(string(l.What.Bleeding) + " " + c.when(l.At))
		}
	}
	return open
}
