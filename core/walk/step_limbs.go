package walk

import (
	"fmt"
	"strconv"
	"strings"

	"barkslip/core/ready"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

func limbSteps() []*Step {
	return []*Step{
		{ID: StepLimbs, Part: PartCutBack, Name: "nurse limbs",
			LookFor:  "One or two limbs well below the graft, none close under it.",
			Why:      "Leaf below the cut draws sap, so the stump bleeds less.",
			NotRight: "A limb close under the graft comes off, even if it is the only one.",
			Cautions: []trade.Caution{trade.SawKnifeDrill},
			Facts:    []trade.Fact{trade.NurseLimbs, trade.LimbClearance, trade.LimbFromCutBack}, done: doneLimbs, ask: askLimbs},
		{ID: StepReach, Part: PartCutBack, Name: "nearest limb",
			LookFor:  "The clear stem from the planned graft height down to the nearest limb.",
			Why:      "A limb closer than 18 in (45 cm) takes the sap the graft needs and shades it.",
			NotRight: "Take that limb off now; it is asked next.",
			Facts:    []trade.Fact{trade.LimbClearance, trade.LimbFromCutBack, trade.UsualGraftHeight},
			applies:  func(c *Case) bool { return c.nurse().Limbs > 0 && c.A.Nurse != nil }, done: doneReach, ask: askReach},
		{ID: StepLimbOff, Part: PartCutBack, Name: "limb off",
			LookFor:  "The limb inside the clear length, and what stays below it.",
			Why:      "No limb stands within 18 in (45 cm) below the planned graft height.",
			NotRight: "If taking it off would leave no leaf at all, graft higher.",
			Cautions: []trade.Caution{trade.SawKnifeDrill}, Facts: []trade.Fact{trade.LimbClearance},
			applies: func(c *Case) bool { return len(c.A.LimbsOff) > 0 || c.Advice.Verdict == ready.TakeLimbOff }, done: doneLimbOff, ask: askLimbOff},
		{ID: StepLeaf, Part: PartCutBack, Name: "leaf below",
			LookFor: "How much leaf the limbs below will carry.",
			Why:     "Later, sprouts below may carry two to three times this leaf and no more.",
			Facts:   []trade.Fact{trade.StockSprouts},
			applies: func(c *Case) bool { return c.nurse().Limbs > 0 && c.A.Nurse != nil }, done: doneLeaf, ask: askLeaf},
	}
}

// nurse is the limbs as they stand now, to be said more exactly.
func (c *Case) nurse() record.NurseJudged {
	if c.A.Nurse == nil {
		return record.NurseJudged{Limbs: 1}
	}
	n := c.A.Nurse.What
	if off := c.A.LimbOff(); off != nil {
		n.Limbs, n.Nearest = off.What.Left, off.What.Nearest
	}
	return n
}

// limbTooNear says whether a limb is known to stand within the clear length.
func (c *Case) limbTooNear() bool {
	return c.Found.HasLimb && ready.LimbTooNear(c.Found.Limb, c.B.Units)
}

// nextLimbOpen says whether a limb was taken off and it is not yet said how near
// the next one stands.
func (c *Case) nextLimbOpen() bool {
	return c.A.LimbOff() != nil && c.Found.Limbs > 0 && !c.Found.HasLimb
}

func askLimbs(c *Case, a *Ask) {
	a.Question = "How many limbs stay below the graft?"
	a.Because = fmt.Sprintf("One or two limbs well below keep the tree vigorous; none within %s of the planned graft height.", c.B.Units.Figure(trade.LimbClear))
	a.Because = joined(c.lostBefore(), a.Because)
	meaning := []string{"no leaf is left on the stem", "one nurse limb", "two nurse limbs", "three", "four or more"}
	for n, m := range meaning {
		a.choose(strconv.Itoa(n), []string{"none", "one", "two", "three", "four"}[n], m, c.judged(n))
	}
	others := c.S.Others()
	if len(others) > 0 {
		a.choose(otherLimbKey, "the other limb", otherLimbs(others), &record.NurseJudged{Other: true})
		a.Because += " It is asked once for all limbs of the tree."
	}
	a.Likely = "2"
	switch {
	case c.again && c.nurse().Other && len(others) > 0:
		a.Likely = otherLimbKey
	case c.again:
		a.Likely = strconv.Itoa(min(c.nurse().Limbs, len(meaning)-1))
	}
}

// otherLimbKey is the answer that the tree's other limb, a stump itself, draws the
// sap.
const otherLimbKey = "5"

// otherLimbs names the other limbs of the tree.
func otherLimbs(others []record.StumpID) string {
	var places []string
	for _, id := range others[:min(len(others), mostNamed)] {
		places = append(places, id.Place())
	}
	words := strings.Join(places, ", ")
	if n := len(others) - mostNamed; n > 0 {
		words += fmt.Sprintf(" and %d more", n)
	}
	if len(others) == 1 {
		return words + " draws the sap"
	}
	return words + " draw the sap"
}

// mostNamed is how many other limbs are named in an answer.
const mostNamed = 3

// judged is a number of limbs; corrected, it keeps what was said of them.
func (c *Case) judged(n int) *record.NurseJudged {
	switch old := c.nurse(); {
	case n == 0:
		return &record.NurseJudged{Leaf: "none"}
	case c.again && old.Limbs > 0:
		old.Limbs, old.Other = n, false
		return &old
	}
	return &record.NurseJudged{Limbs: n}
}

func doneLimbs(c *Case) answer {
	switch {
	case c.A.Nurse == nil:
		return open
	case c.nurse().Limbs == 0 && c.nurse().Other:
		return told("the other limb")
	case c.nurse().Limbs == 0:
		return told("none left")
	}
	return told(fmt.Sprintf("%d left", c.nurse().Limbs))
}

func askReach(c *Case, a *Ask) {
	a.Question = "How far below the planned graft height is the nearest limb?"
	clear := c.round(trade.LimbClear) + c.round(trade.FreshCutBelow)
	a.Because = fmt.Sprintf("%s must be clear below the graft: %s below the cut-back, which stands %s higher.",
		c.B.Units.Figure(trade.LimbClear), c.B.Units.Figure(clear), c.B.Units.Figure(trade.FreshCutBelow))
	a.Entry = &Entry{Asks: "clear stem", Likely: c.B.Units.Figure(trade.LimbClear), Read: c.readReach}
	if height, settled := c.plannedHeight(); settled && height < c.round(trade.LimbClear) {
		a.Entry.Likely = "" // the whole stem is shorter
	}
	n := c.nurse()
	switch off := c.A.LimbOff(); {
	case off != nil && !n.Nearest.Given():
		a.Question = "How far below the planned graft height is the next limb?"
		a.Because = fmt.Sprintf("One limb came off at %s, %d left; %s must be clear below the graft.", c.when(off.At), n.Limbs, c.B.Units.Figure(trade.LimbClear))
		a.Entry.Likely = ""
	case c.again && n.Nearest.Given():
		a.Entry.startFrom(c.exact(n.Nearest), &n)
	case n.Nearest.Given():
		a.Entry.Likely = "" // measured again: its own figure is no guess
	}
}

// readReach reads the clear stem, which is no longer than the stem itself.
func (c *Case) readReach(text string) ([]record.Body, error) {
	m, err := c.readLength(text, 0, 20*unit.Metre)
	if err != nil {
		return nil, err
	}
	n := c.nurse()
	n.Nearest = m
	height, settled := c.plannedHeight()
	switch {
	case m.Length <= height:
		return []record.Body{&n}, nil
	case settled:
		return nil, fmt.Errorf("%s clear is more than the whole stem: the graft is planned %s above the ground", c.length(m.Length), c.length(height))
	}
	return nil, &Doubt{fmt.Sprintf("%s clear is more than the %s that a graft usually stands above the ground.", c.length(m.Length), c.length(height)), []Choice{
		{Key: "1", Word: "as typed", Meaning: "this graft is planned higher", Bodies: []record.Body{&n}},
	}}
}

func doneReach(c *Case) answer {
	if n := c.nurse(); c.A.Nurse != nil && n.Nearest.Given() {
		return told(c.length(n.Nearest.Length) + " clear")
	}
	return open
}

func askLimbOff(c *Case, a *Ask) {
	a.Question = "Take the near limb off. What stays below?"
	a.Because = fmt.Sprintf("A limb stands %s below the planned graft height; %s must be clear.", c.length(c.Found.Limb), c.B.Units.Figure(trade.LimbClear))
	if !c.limbTooNear() {
		a.Because = fmt.Sprintf("%s must be clear below the planned graft height.", c.B.Units.Figure(trade.LimbClear))
	}
	left := max(c.Found.Limbs-1, 0)
	if c.again && c.A.LimbOff() != nil {
		left = c.A.LimbOff().What.Left
	}
	if left > 0 {
		a.choose("1", "off", fmt.Sprintf("%d left; then measure the next", left), &record.LimbTakenOff{Left: left})
	}
	a.choose("2", "off, none stays", "it was the last limb", &record.LimbTakenOff{})
	a.choice(Choice{Key: "3", Word: "measure again", Meaning: "the clear stem was more", Go: StepReach})
	a.Likely = a.Choices[0].Key
	c.beforeCut(a, trade.CutBackOpens)
}

func doneLimbOff(c *Case) answer {
	if n := len(c.A.LimbsOff); n > 0 && !c.limbTooNear() {
		return told("off " + c.when(c.A.LimbsOff[n-1].At))
	}
	return open
}

func askLeaf(c *Case, a *Ask) {
	a.Question = "How much leaf stays below?"
	a.Because = "Later the sprouts may carry at most two to three times the leaf left now."
	a.Likely = "3"
	for i, leaf := range record.Leaves {
		n := c.nurse()
		if c.again && n.Leaf == leaf {
			a.Likely = strconv.Itoa(i + 1)
		}
		n.Leaf = leaf
		meaning := []string{"no leaf, or in bud", "a twig or two", "about a bucketful", "a limb in full leaf"}[i]
		a.choose(strconv.Itoa(i+1), leaf, meaning, &n)
	}
}

func doneLeaf(c *Case) answer {
	if c.A.Nurse == nil {
		return open
	}
	return spoken(c.A.Nurse.What.Leaf)
}
