package walk

import (
	"fmt"
	"math"
	"strconv"

	"barkslip/core/ready"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

func init() {
	steps = append(steps, cutBackSteps()...)
	steps = append(steps, lookSteps()...)
	steps = append(steps, graftSteps()...)
	steps = append(steps, sealSteps()...)
	steps = append(steps, afterSteps()...)
}

func cutBackSteps() []*Step {
	small := []*Step{
		{ID: StepSmall, Part: PartCutBack, Name: "size",
			LookFor:  "The diameter where the graft would stand.",
			Why:      "A stem under an inch (25 mm) has too little bark to hold a scion.",
			NotRight: "Bud it or graft it another way, or let it grow a year.",
			Facts:    []trade.Fact{trade.SmallStump, trade.StumpSizes},
			applies:  func(c *Case) bool { return c.Advice.Verdict == ready.OtherGraft }, ask: askSmall},
	}
	return append(append(small, limbSteps()...), heightSteps()...)
}

func heightSteps() []*Step {
	return []*Step{
		{ID: StepHeight, Part: PartCutBack, Name: "height",
			LookFor:  "A straight, sound stretch of stem with smooth bark where the graft will stand.",
			Why:      "The fresh cut on graft day takes about 6 in (15 cm) more; lower bleeds more, browsing asks for higher.",
			NotRight: "Rot or a knot there: move the cut up or down past it.",
			Cautions: []trade.Caution{trade.SawKnifeDrill, trade.CleanBlades},
			Facts:    []trade.Fact{trade.FreshCut, trade.LowBleedsMore, trade.BrowseHeight, trade.BrowseDeerHeight, trade.BrowseWhitetail, trade.UsualGraftHeight}, done: doneHeight, ask: askHeight},
		{ID: StepGashes, Part: PartCutBack, Name: "gashes",
			LookFor:  "Two cuts low on the stem into sapwood, at staggered heights, not opposite, above soil splash.",
			Why:      "They let the sap out below, so that the top drains before graft day.",
			NotRight: "On a stem under 2 1/2 in (6 cm) go no deeper than a quarter of the diameter.",
			Cautions: []trade.Caution{trade.SawKnifeDrill, trade.CleanBlades},
			Facts:    []trade.Fact{trade.GashesLow, trade.GashLimits}, done: doneGashes, ask: askGashes},
	}
}

func askSmall(c *Case, a *Ask) {
	a.Question = fmt.Sprintf("It is %s across. Graft it another way?", c.across(c.Found.Across))
	a.Because = fmt.Sprintf("Under %s across a bark graft has too little bark to hold it.", c.B.Units.Figure(trade.LeastAcross))
	a.choose("1", "leave it", "another graft, or another year", &record.GivenUp{Why: "too small for a bark graft"})
	a.choice(Choice{Key: "2", Word: "measure again", Meaning: "type its width", Entry: &Entry{Asks: "width across", Read: c.readMeasured}})
	a.choice(Choice{Key: "3", Word: "go on", Meaning: "against advice, with a reason", Pick: PickReason})
}

// wantedGraft is the height at which the graft is wanted: the block's, or the
// browse height if that is more. Where the block sets neither it is the usual
// one, which settled denies.
func (c *Case) wantedGraft() (height unit.Length, why string, settled bool) {
	height, why, settled = c.B.GraftHeight.Length, "Graft height wanted", true
	if height == 0 {
		height, why, settled = c.round(trade.GraftHeightUsual), "Usual graft height", false
	}
	if c.B.Browse.Length > height {
		height, why, settled = c.B.Browse.Length, "Browse height", true
	}
	return height, why, settled
}

// plannedHeight is where the graft will stand: a fresh cut under the cut-back
// once that is made, else where it is wanted.
func (c *Case) plannedHeight() (height unit.Length, settled bool) {
	if cut := c.A.CutBack; cut != nil && cut.What.Height.Length > c.round(trade.FreshCutBelow) {
		return cut.What.Height.Length - c.round(trade.FreshCutBelow), true
	}
	height, _, settled = c.wantedGraft()
	return height, settled
}

// wantedCut is the height of the cut-back: where the graft is wanted, and the
// fresh cut.
func (c *Case) wantedCut() (unit.Length, string) {
	graft, why, settled := c.wantedGraft()
	words := c.length(graft)
	if !settled {
		words = c.B.Units.Figure(trade.GraftHeightUsual) + " (from memory)"
	}
	return graft + c.round(trade.FreshCutBelow), fmt.Sprintf("%s %s, plus %s for the fresh cut.", why, words, c.B.Units.Figure(trade.FreshCutBelow))
}

// UsualCut is the cut-back at the height that a block asks for; ok is false where
// it asks for none.
func UsualCut(b *record.Block) (cut *record.CutBack, ok bool) {
	c := Case{B: b}
	if _, _, settled := c.wantedGraft(); !settled {
		return nil, false
	}
	height, _ := c.wantedCut()
	return &record.CutBack{Height: record.Measured(height, b.Units)}, true
}

func askHeight(c *Case, a *Ask) {
	height, why := c.wantedCut()
	a.Question = "Cut it back. At what height?"
	a.Because = why
	a.Entry = &Entry{Asks: "height, then width across if you like", Likely: c.length(height), Read: c.readCutBack}
	if top := c.standsAt(); top > 0 && height >= top {
		height = max(c.belowNails(top-c.round(trade.RecutBelow)), top/2)
		a.Because = fmt.Sprintf("It stands at %s%s: a new graft wants fresh wood below.", c.length(top), c.nailsToo())
		a.Entry.Likely = c.length(height)
	}
	a.Warn = joined(a.Warn, c.nearOldNails(height))
	c.beforeCut(a, trade.CutBackOpens)
	if old, ok := c.cutBefore(); ok {
		a.Entry.startFrom(c.exact(old.Height, old.Across), &old)
		if old.Across.Given() {
			a.Because += fmt.Sprintf(" Type a height alone to keep the %s across.", c.exact(old.Across))
		}
	}
}

// cutBefore is the cut-back that is being corrected.
func (c *Case) cutBefore() (record.CutBack, bool) {
	if !c.again || c.A.CutBack == nil {
		return record.CutBack{}, false
	}
	return c.A.CutBack.What, true
}

// readCutBack reads the height and, behind it, the diameter. A height alone
// keeps the diameter of the answer it corrects.
func (c *Case) readCutBack(text string) ([]record.Body, error) {
	parts, err := c.readLengths(text, 2, 6*unit.Metre)
	if err != nil {
		return nil, err
	}
	b, _ := c.cutBefore()
	b.Height = parts[0]
	if len(parts) > 1 {
		if err := c.checkAcross(text, parts[1].Length); err != nil {
			return nil, err
		}
		b.Across = parts[1]
	}
	return c.doubtCut(b)
}

// doubtCut is the cut-back, or a doubt where its height can hardly be.
func (c *Case) doubtCut(b record.CutBack) ([]record.Body, error) {
	wanted, _ := c.wantedCut()
	says, meaning := "", ""
	switch top := c.standsAt(); {
	case top > 0 && b.Height.Length > top:
		says, meaning = fmt.Sprintf("The stump stands at %s: it cannot be cut at %s.", c.length(top), c.length(b.Height.Length)), "it was mismeasured before"
	case top == 0 && b.Height.Length < wanted/2:
		says, meaning = fmt.Sprintf("%s is under half of the %s wanted: look at the tape again.", c.length(b.Height.Length), c.length(wanted)), "it is cut that low"
	case b.Height.Length > 2*wanted:
		says, meaning = fmt.Sprintf("%s is over twice the %s wanted: look at the tape again.", c.length(b.Height.Length), c.length(wanted)), "it is cut that high"
	default:
		if err := c.mindNails(b.Height.Length, &b); err != nil {
			return nil, err
		}
		return []record.Body{&b}, nil
	}
	return nil, &Doubt{says, []Choice{{Key: "1", Word: "as typed", Meaning: meaning, Bodies: []record.Body{&b}}}}
}

// standsAt is the height at which the stump was cut before it is cut back again,
// 0 if it was not.
func (c *Case) standsAt() (height unit.Length) {
	for _, a := range c.S.Attempts {
		if a == c.A && !c.over() && !c.cutAgain() {
			continue
		}
		if a.CutBack != nil && a.CutBack.What.Height.Given() {
			height = a.CutBack.What.Height.Length
		}
		if cut := record.LastOf(a.FreshCuts); cut != nil && cut.What.Height.Given() {
			height = cut.What.Height.Length
		}
	}
	return height
}

func doneHeight(c *Case) answer {
	if c.A.CutBack == nil {
		return open
	}
	day := c.B.Day(c.A.CutBack.At)
	if day.Year() != c.B.Day(c.Now).Year() {
		return told(fmt.Sprintf("%s, %s", c.length(c.A.CutBack.What.Height.Length), day.Long()))
	}
	return told(fmt.Sprintf("%s, %s", c.length(c.A.CutBack.What.Height.Length), day.Short()))
}

// gashDepth is half an inch, or a quarter of a stem under 2 1/2 in, never more
// than that.
func (c *Case) gashDepth() unit.Length {
	if d := c.Found.Across; d > 0 && d < trade.SmallStem {
		return c.roundDown(min(trade.GashDepth, d*trade.SmallStemShare))
	}
	return trade.GashDepth
}

// roundDown is a length as it is printed, never more than it is: by sixteenths
// of an inch or by millimetres.
func (c *Case) roundDown(l unit.Length) unit.Length {
	step := unit.Inch / 16
	if c.B.Units == unit.Metric {
		step = unit.Millimetre
	}
	const hair = 1e-9 // what the reckoning in millimetres may lose
	return unit.Length(math.Floor(float64(l/step)+hair)) * step
}

func askGashes(c *Case, a *Ask) {
	a.Question = "Gash it low on the stem. How many?"
	a.Because = c.gashWhy()
	var old *record.Said[record.Gashed]
	if c.again && len(c.A.Gashes) > 0 {
		old = &c.A.Gashes[0]
	}
	c.gashChoices(a, old)
}

func (c *Case) gashWhy() string {
	deep := c.gashDepth()
	if deep < trade.GashDepth {
		return fmt.Sprintf("%s deep: no more than a quarter of a stem %s across, which is under %s.", c.length(deep), c.length(c.Found.Across), c.B.Units.Figure(trade.SmallStem))
	}
	return fmt.Sprintf("At least %s into sapwood, at staggered heights, %d at a time.", c.length(deep), trade.GashesAtATime)
}

// gashChoices offers numbers of gashes; old is the answer they correct, nil if
// there is none.
func (c *Case) gashChoices(a *Ask, old *record.Said[record.Gashed]) {
	deep, likely := record.Measured(c.gashDepth(), c.B.Units), trade.GashesAtATime
	var refines []record.ID
	if old != nil {
		deep, likely, refines = old.What.Depth, old.What.Number, []record.ID{old.ID}
	}
	for n, word := range []string{"one", "two", "three", "four"} {
		ch := Choice{Key: strconv.Itoa(n + 1), Word: word, Bodies: []record.Body{&record.Gashed{Number: n + 1, Depth: deep}}, Refines: refines}
		if n+1 == trade.GashesAtATime {
			ch.Meaning = c.length(deep.Length) + " deep, as usual"
		}
		if n+1 == likely {
			a.Likely = ch.Key
		}
		a.choice(ch)
	}
	if old == nil && c.Found.Gashes+trade.GashesAtATime > trade.GashesMost {
		a.Warn = fmt.Sprintf("It has %d gashes already; think again after the %dth.", c.Found.Gashes, trade.GashesMost)
	}
}

func doneGashes(c *Case) answer {
	if c.A.CutBack == nil {
		return open
	}
	for _, g := range c.A.Gashes {
		return told(fmt.Sprintf("%d, %s deep", g.What.Number, c.length(g.What.Depth.Length)))
	}
	return open
}
