package core

import (
	"fmt"
	"strconv"
	"strings"

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
			NotRight: "Over 4 in across it may decay before it closes: more scions, and seal with care.",
			Facts:    []trade.Fact{trade.StumpSizes, trade.ScionsByEye}, done: doneMeasure, ask: askMeasure},
		{ID: StepLongWay, Part: PartGraft, Name: "long way",
			LookFor: "The compass direction the longer diameter lies in.",
			Why:     "Slots are given as bearings from the middle of the stump.",
			applies: func(c *Case) bool { return c.oval() }, done: doneLongWay, ask: askLongWay},
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
		{ID: StepNodes, Part: PartGraft, Name: "buds",
			LookFor: "Two nodes to a scion, and whether a second bud sits under each first one.",
			Why:     "Two paired nodes are four chances.",
			Facts:   []trade.Fact{trade.TwoNodes, trade.NodeGroups, trade.WayUp}, done: doneNodes, ask: askNodes},
		{ID: StepScion, Part: PartGraft, Name: "scions",
			LookFor:  "Six things on every scion, each seen, none taken for granted.",
			Why:      "The back cut matters most: it must show cambium at the tip.",
			NotRight: "Recut a cut that is not flat; widen a slot that is tight; turn a scion that is upside down.",
			Cautions: []trade.Caution{trade.SawKnifeDrill, trade.NailsStay},
			Facts:    []trade.Fact{trade.BackCutTip, trade.LongCutLength, trade.SlotSpare, trade.SlotTight, trade.TwoNails, trade.NailSizes, trade.LittleProud, trade.ProudBy, trade.WayUp}, done: doneScions, ask: askScion},
	}
}

func askNewGashes(c *Case, a *Ask) {
	a.Question = "Renew the gashes. How many?"
	a.Because = c.gashWhy()
	if c.Advice.Verdict == Gash {
		a.Because = c.Advice.Reasons[0]
	}
	c.gashChoices(a)
}

// doneNewGashes is gashes renewed since the day of the cut-back.
func doneNewGashes(c *Case) string {
	g := last(c.A.Gashes)
	if g.At.IsZero() || c.A.CutBack == nil || c.B.Day(g.At) == c.B.Day(c.A.CutBack.At) || !c.today(g.At) && len(c.A.Grafts) == 0 {
		return ""
	}
	return c.when(g.At)
}

// graftHeight is where the fresh cut goes: 6 in under the cut-back, or 2 in
// under an earlier fresh cut of this attempt.
func (c *Case) graftHeight() (unit.Length, string) {
	if n := len(c.A.FreshCuts); n > 0 && c.A.FreshCuts[n-1].What.Height.Given() {
		old := c.A.FreshCuts[n-1].What.Height.Length
		return old - trade.RecutBelow, fmt.Sprintf("%s under the last cut; after a wait 1 to 2 in is enough.", c.length(trade.RecutBelow))
	}
	if c.A.CutBack == nil || !c.A.CutBack.What.Height.Given() {
		return 0, "Down to moist wood."
	}
	return c.A.CutBack.What.Height.Length - trade.FreshCutBelow, fmt.Sprintf("%s under the cut-back at %s, down to moist wood.", c.length(trade.FreshCutBelow), c.length(c.A.CutBack.What.Height.Length))
}

func askFreshCut(c *Case, a *Ask) {
	height, why := c.graftHeight()
	a.Because = why
	at, where := Measure{}, ""
	if height > 0 {
		at, where = Measured(height, c.B.Units), " at "+c.length(height)
	}
	a.Question = "Cut the top fresh" + where + ". Is the bark whole?"
	a.choose("1", "whole", "cut"+where+", no tear", &FreshCut{Height: at})
	a.choose("2", "torn", "cut"+where+", then say where", &FreshCut{Height: at, Torn: []Arc{{Why: "torn"}}})
	a.choice(Choice{Key: "3", Word: "other height", Meaning: "type where it was cut", Entry: &Entry{Asks: "height of the new face", Read: func(text string) ([]Body, error) {
		m, err := c.readLength(text, 0, 6*unit.Metre)
		return []Body{&FreshCut{Height: m}}, err
	}}})
	a.Likely = "1"
	if b := c.B.Browse; b.Given() && height > 0 && height < b.Length {
		a.Warn = fmt.Sprintf("%s is below the browse height of %s.", c.length(height), c.length(b.Length))
	}
}

func doneFreshCut(c *Case) string {
	n := len(c.A.FreshCuts)
	if n == 0 || !c.today(c.A.FreshCuts[n-1].At) && len(c.A.Grafts) == 0 {
		return ""
	}
	cut := c.A.FreshCuts[n-1]
	if !cut.What.Height.Given() {
		return c.when(cut.At)
	}
	return fmt.Sprintf("%s, %s", c.when(cut.At), c.length(cut.What.Height.Length))
}

func askTorn(c *Case, a *Ask) {
	a.Question = "Where is the bark torn?"
	a.Because = "Bearing of the middle and length along the bark; slots keep clear of it."
	a.Entry = &Entry{Asks: "bearing:length, such as 120:2in; more with a space", Read: c.readTorn}
}

func (c *Case) readTorn(text string) ([]Body, error) {
	blocked, err := c.readArcs(text, "torn")
	if err != nil {
		return nil, err
	}
	cut := c.A.FreshCuts[len(c.A.FreshCuts)-1].What
	cut.Torn = blocked
	return []Body{&cut}, nil
}

// readArcs reads stretches of bark: 120:2in 270:1.
func (c *Case) readArcs(text, why string) ([]Arc, error) {
	var out []Arc
	for _, word := range strings.Fields(text) {
		at, long, ok := strings.Cut(word, ":")
		if !ok {
			return nil, &unit.Error{Given: word, Accepted: "bearing:length, such as 120:2in"}
		}
		bearing, err := unit.ParseBearing(at)
		if err != nil {
			return nil, err
		}
		width, err := c.readLength(long, 0, 3*unit.Metre)
		if err != nil {
			return nil, err
		}
		out = append(out, Arc{bearing, width, why})
	}
	if len(out) == 0 {
		return nil, &unit.Error{Given: text, Accepted: "bearing:length, such as 120:2in"}
	}
	return out, nil
}

func doneTorn(c *Case) string {
	n := len(c.A.FreshCuts)
	if n == 0 || c.torn() {
		return ""
	}
	var words []string
	for _, t := range c.A.FreshCuts[n-1].What.Torn {
		words = append(words, fmt.Sprintf("%s at %03.0f", c.length(t.Width.Length), t.Bearing.Deg()))
	}
	return strings.Join(words, ", ")
}

func askNewFace(c *Case, a *Ask) {
	wiped := c.Advice.Verdict == Wipe
	a.Question = "Is the new face dry?"
	if wiped {
		a.Question = "Wipe the new face. Does it wet again?"
	}
	if len(c.Advice.Reasons) > 0 {
		a.Because = c.Advice.Reasons[0]
	}
	a.Until = c.Advice.Until
	c.bleedingChoices(a, wiped)
}

func doneNewFace(c *Case) string {
	for i := len(c.A.Looks) - 1; i >= 0; i-- {
		l := c.A.Looks[i]
		if l.What.Bleeding != "" && len(c.A.FreshCuts) > 0 && newer(l, last(c.A.FreshCuts)) {
			return string(l.What.Bleeding) + " " + c.when(l.At)
		}
	}
	return ""
}

// readMeasured reads one or two diameters and the bearing of the longer one.
func (c *Case) readMeasured(text string) ([]Body, error) {
	sizes, way, said := text, "", false
	if before, after, ok := strings.Cut(text, "@"); ok {
		sizes, way, said = before, after, true
	}
	parts, err := c.readLengths(sizes, 2, 100*unit.Metre)
	if err != nil {
		return nil, err
	}
	m := &StumpMeasured{Across: parts[0], LongWaySaid: said}
	for _, p := range parts {
		if err := c.checkAcross(text, p.Length); err != nil {
			return nil, err
		}
	}
	if len(parts) == 2 {
		m.Across, m.Across2 = parts[0], parts[1]
		if m.Across2.Length > m.Across.Length {
			m.Across, m.Across2 = m.Across2, m.Across
		}
	}
	if said {
		if m.LongWay, err = unit.ParseBearing(way); err != nil {
			return nil, err
		}
	}
	return []Body{m}, nil
}

func askMeasure(c *Case, a *Ask) {
	a.Question = "How far across, and at right angles?"
	a.Because = "One number for a round stump, two for an oval one."
	if c.Found.Across > 0 && c.A.Measured == nil {
		a.Because = fmt.Sprintf("It was put down as %s; measure the face you cut.", c.length(c.Found.Across))
	}
	a.Entry = &Entry{Asks: "across, then at right angles: 3.4 3.1", Read: c.readMeasured}
}

func doneMeasure(c *Case) string {
	m := c.A.Measured
	switch {
	case m == nil || len(c.A.FreshCuts) > 0 && newer(last(c.A.FreshCuts), *m):
		return ""
	case m.What.Across2.Given():
		return fmt.Sprintf("%s x %s", strings.TrimSuffix(c.B.Units.Exact(m.What.Across.Length), " in"), c.B.Units.Exact(m.What.Across2.Length))
	}
	return c.B.Units.Exact(m.What.Across.Length)
}

func askLongWay(c *Case, a *Ask) {
	a.Question = "Which way does the longer diameter lie?"
	a.Because = fmt.Sprintf("It is %s one way and %s the other.", c.B.Units.Exact(c.A.Measured.What.Across.Length), c.B.Units.Exact(c.A.Measured.What.Across2.Length))
	for i, w := range []struct {
		word    string
		bearing unit.Bearing
	}{{"north-south", 0}, {"NE to SW", 45}, {"east-west", 90}, {"SE to NW", 135}} {
		m := c.A.Measured.What
		m.LongWay, m.LongWaySaid = w.bearing, true
		a.choose(strconv.Itoa(i+1), w.word, "", &m)
	}
	a.choice(Choice{Key: "5", Word: "a bearing", Meaning: "type the degrees", Entry: &Entry{Asks: "degrees from north", Read: func(text string) ([]Body, error) {
		b, err := unit.ParseBearing(text)
		m := c.A.Measured.What
		m.LongWay, m.LongWaySaid = b, true
		return []Body{&m}, err
	}}})
	a.Likely = "1"
}

func doneLongWay(c *Case) string {
	if c.A.Measured == nil || !c.A.Measured.What.LongWaySaid {
		return ""
	}
	return fmt.Sprintf("%03.0f", c.A.Measured.What.LongWay.Deg())
}
