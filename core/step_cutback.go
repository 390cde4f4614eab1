package core

import (
	"fmt"
	"strconv"
	"strings"

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
	return []*Step{
		{ID: StepSmall, Part: PartCutBack, Name: "size",
			LookFor:  "The diameter where the graft would stand.",
			Why:      "A stem under an inch has too little bark to hold a scion.",
			NotRight: "Bud it or graft it another way, or let it grow a year.",
			Facts:    []trade.Fact{trade.SmallStump, trade.StumpSizes},
			applies:  func(c *Case) bool { return c.Advice.Verdict == OtherGraft }, ask: askSmall},
		{ID: StepLimbs, Part: PartCutBack, Name: "nurse limbs",
			LookFor:  "One or two limbs well below the graft, none close under it.",
			Why:      "Leaf below the cut draws sap, so the stump bleeds less.",
			NotRight: "A limb close under the graft comes off, even if it is the only one.",
			Cautions: []trade.Caution{trade.SawKnifeDrill},
			Facts:    []trade.Fact{trade.NurseLimbs, trade.LimbClearance, trade.LimbFromCutBack}, done: doneLimbs, ask: askLimbs},
		{ID: StepReach, Part: PartCutBack, Name: "limb reach",
			LookFor:  "The clear stem from the planned graft height down to the nearest limb.",
			Why:      "A limb closer than 18 in takes the sap the graft needs and shades it.",
			NotRight: "Take that limb off now; the program asks.",
			Facts:    []trade.Fact{trade.LimbClearance, trade.LimbFromCutBack},
			applies:  func(c *Case) bool { return c.A.Nurse != nil && c.A.Nurse.What.Limbs > 0 }, done: doneReach, ask: askReach},
		{ID: StepLeaf, Part: PartCutBack, Name: "leaf left",
			LookFor: "How much leaf the limbs below will carry.",
			Why:     "Later, sprouts below may carry two to three times this leaf and no more.",
			Facts:   []trade.Fact{trade.StockSprouts},
			applies: func(c *Case) bool { return c.A.Nurse != nil && c.A.Nurse.What.Limbs > 0 }, done: doneLeaf, ask: askLeaf},
		{ID: StepLimbOff, Part: PartCutBack, Name: "limb off",
			LookFor:  "The limb inside the clear length, and what stays below it.",
			Why:      "No limb stands within 18 in below the planned graft height.",
			NotRight: "If taking it off would leave no leaf at all, graft higher.",
			Cautions: []trade.Caution{trade.SawKnifeDrill}, Facts: []trade.Fact{trade.LimbClearance},
			applies: func(c *Case) bool { return len(c.A.LimbsOff) > 0 || c.Advice.Verdict == TakeLimbOff }, done: doneLimbOff, ask: askLimbOff},
		{ID: StepHeight, Part: PartCutBack, Name: "height",
			LookFor:  "A straight, sound stretch of stem with smooth bark where the graft will stand.",
			Why:      "The fresh cut on graft day takes about 6 in more; lower bleeds more, browsing asks for higher.",
			NotRight: "Rot or a knot there: move the cut up or down past it.",
			Cautions: []trade.Caution{trade.SawKnifeDrill, trade.CleanBlades},
			Facts:    []trade.Fact{trade.FreshCut, trade.LowBleedsMore, trade.BrowseHeight, trade.BrowseDeerHeight, trade.BrowseWhitetail}, done: doneHeight, ask: askHeight},
		{ID: StepGashes, Part: PartCutBack, Name: "gashes",
			LookFor:  "Two cuts low on the stem into sapwood, at staggered heights, not opposite, above soil splash.",
			Why:      "They let the sap out below, so that the top drains before graft day.",
			NotRight: "On a stem under 2 1/2 in go no deeper than a quarter of the diameter.",
			Cautions: []trade.Caution{trade.SawKnifeDrill, trade.CleanBlades},
			Facts:    []trade.Fact{trade.GashesLow, trade.GashLimits}, done: doneGashes, ask: askGashes},
	}
}

func askSmall(c *Case, a *Ask) {
	a.Question = fmt.Sprintf("It is %s across. Graft it another way?", c.length(c.Found.Across))
	a.Because = fmt.Sprintf("Under %s across a bark graft has too little bark to hold it.", c.length(trade.LeastAcross))
	a.choose("1", "leave it", "another graft, or another year", &GivenUp{Why: "too small for a bark graft"})
	a.choice(Choice{Key: "2", Word: "measure again", Meaning: "type what it is across", Entry: &Entry{Asks: "across", Read: c.readMeasured}})
	a.choice(Choice{Key: "3", Word: "go on", Meaning: "against advice, with a reason", Pick: PickReason})
}

func askLimbs(c *Case, a *Ask) {
	a.Question = "How many limbs stay below the graft?"
	a.Because = fmt.Sprintf("One or two limbs well below draw the sap; none within %s of the planned graft height.", c.length(trade.LimbClear))
	meaning := []string{"no leaf is left on the stem", "one nurse limb", "two nurse limbs", "three", "four or more"}
	for n, m := range meaning {
		body := &NurseJudged{Limbs: n}
		if n == 0 {
			body.Leaf = "none"
		}
		a.choose(strconv.Itoa(n), []string{"none", "one", "two", "three", "four"}[n], m, body)
	}
	a.Likely = "2"
}

func doneLimbs(c *Case) string {
	if c.A.Nurse == nil {
		return ""
	}
	if c.A.Nurse.What.Limbs == 0 {
		return "none left"
	}
	return fmt.Sprintf("%d left", c.A.Nurse.What.Limbs)
}

// nurse is the standing judgement, to be refined.
func (c *Case) nurse() NurseJudged {
	if c.A.Nurse == nil {
		return NurseJudged{Limbs: 1}
	}
	return c.A.Nurse.What
}

func askReach(c *Case, a *Ask) {
	a.Question = "How far below the planned graft height is the nearest limb?"
	clear := trade.LimbClear + trade.FreshCutBelow
	a.Because = fmt.Sprintf("%s must be clear below the graft: %s below the cut-back, which stands %s higher.",
		c.length(trade.LimbClear), c.length(clear), c.length(trade.FreshCutBelow))
	a.Entry = &Entry{Asks: "clear stem", Likely: c.length(clear), Read: func(text string) ([]Body, error) {
		m, err := c.readLength(text, 0, 20*unit.Metre)
		if err != nil {
			return nil, err
		}
		n := c.nurse()
		n.Nearest = m
		return []Body{&n}, nil
	}}
}

func doneReach(c *Case) string {
	if c.A.Nurse == nil || !c.A.Nurse.What.Nearest.Given() {
		return ""
	}
	return c.length(c.A.Nurse.What.Nearest.Length) + " clear"
}

func askLeaf(c *Case, a *Ask) {
	a.Question = "How much leaf stays below?"
	a.Because = "It is the measure for the sprouts later: at most two to three times the leaf left now."
	for i, leaf := range Leaves {
		n := c.nurse()
		n.Leaf = leaf
		meaning := []string{"no leaf, or in bud", "a twig or two", "about a bucketful", "a limb in full leaf"}[i]
		a.choose(strconv.Itoa(i+1), leaf, meaning, &n)
	}
	a.Likely = "3"
}

func doneLeaf(c *Case) string {
	if c.A.Nurse == nil {
		return ""
	}
	return c.A.Nurse.What.Leaf
}

func askLimbOff(c *Case, a *Ask) {
	a.Question = "Take the near limb off. What stays below?"
	a.Because = fmt.Sprintf("A limb stands %s below the planned graft height; %s must be clear.", c.length(c.Found.Limb), c.length(trade.LimbClear))
	limbs := max(c.Found.Limbs-1, 0)
	if limbs > 0 {
		a.choose("1", "off", fmt.Sprintf("%d stays, well below", limbs), &LimbTakenOff{Left: limbs, Nearest: Measured(trade.LimbClear+trade.FreshCutBelow, c.B.Units)})
	}
	a.choose("2", "off, none stays", "it was the last limb", &LimbTakenOff{})
	a.choice(Choice{Key: "3", Word: "measure again", Meaning: "the clear stem was more", Go: StepReach})
	a.Likely = a.Choices[0].Key
}

func doneLimbOff(c *Case) string {
	if n := len(c.A.LimbsOff); n > 0 && c.Advice.Verdict != TakeLimbOff {
		return "off " + c.when(c.A.LimbsOff[n-1].At)
	}
	return ""
}

// wantedCut is the height of the cut-back: the wanted graft height, or the
// browse height if that is more, and the fresh cut.
func (c *Case) wantedCut() (unit.Length, string) {
	graft, why := c.B.GraftHeight.Length, "wanted graft height"
	if graft == 0 {
		graft = 30 * unit.Inch
		why = "usual graft height"
	}
	if c.B.Browse.Length > graft {
		graft, why = c.B.Browse.Length, "browse height"
	}
	return graft + trade.FreshCutBelow, fmt.Sprintf("%s %s and %s for the fresh cut.", c.length(graft), why, c.length(trade.FreshCutBelow))
}

func askHeight(c *Case, a *Ask) {
	height, why := c.wantedCut()
	a.Question = "Cut it back. At what height?"
	a.Because = why
	a.Entry = &Entry{Asks: "height, then across if you like", Likely: c.length(height), Read: func(text string) ([]Body, error) {
		parts, err := c.readLengths(text, 2, 6*unit.Metre)
		if err != nil {
			return nil, err
		}
		b := &CutBack{Height: parts[0]}
		if len(parts) > 1 {
			if err := c.checkAcross(text, parts[1].Length); err != nil {
				return nil, err
			}
			b.Across = parts[1]
		}
		return []Body{b}, nil
	}}
}

func doneHeight(c *Case) string {
	if c.A.CutBack == nil {
		return ""
	}
	return fmt.Sprintf("%s, %s", c.B.Day(c.A.CutBack.At).Short(), c.length(c.A.CutBack.What.Height.Length))
}

// gashDepth is half an inch, or a quarter of a stem under 2 1/2 in.
func (c *Case) gashDepth() unit.Length {
	if d := c.Found.Across; d > 0 && d < trade.SmallStem {
		return min(trade.GashDepth, d*trade.SmallStemShare)
	}
	return trade.GashDepth
}

func askGashes(c *Case, a *Ask) {
	a.Question = "Gash it low on the stem. How many?"
	a.Because = c.gashWhy()
	c.gashChoices(a)
}

func (c *Case) gashWhy() string {
	deep := c.gashDepth()
	if deep < trade.GashDepth {
		return fmt.Sprintf("%s deep: a quarter of a stem %s across, which is under %s.", c.length(deep), c.length(c.Found.Across), c.length(trade.SmallStem))
	}
	return fmt.Sprintf("At least %s into sapwood, at staggered heights, %d at a time.", c.length(deep), trade.GashesAtATime)
}

func (c *Case) gashChoices(a *Ask) {
	deep := Measured(c.gashDepth(), c.B.Units)
	words := []string{"one", "two", "three", "four"}
	for n, word := range words {
		a.choose(strconv.Itoa(n+1), word, map[int]string{1: c.length(deep.Length) + " deep, as usual"}[n], &Gashed{Number: n + 1, Depth: deep})
	}
	a.Likely = "2"
	if c.Found.Gashes+trade.GashesAtATime > trade.GashesMost {
		a.Warn = fmt.Sprintf("It has %d gashes already; think again after the %dth.", c.Found.Gashes, trade.GashesMost)
	}
}

func doneGashes(c *Case) string {
	if c.A.CutBack == nil {
		return ""
	}
	for _, g := range c.A.Gashes {
		return fmt.Sprintf("%d, %s", g.What.Number, c.length(g.What.Depth.Length))
	}
	return ""
}

// readLength reads one length in the block's units, over least and up to most.
func (c *Case) readLength(text string, least, most unit.Length) (Measure, error) {
	m, err := ReadMeasure(text, c.B.Units.Bare())
	if err != nil {
		return m, err
	}
	if m.Length <= least || m.Length > most {
		return m, &unit.Error{Given: text, Accepted: fmt.Sprintf("more than %s and up to %s", c.length(least), c.length(most))}
	}
	return m, nil
}

// readLengths reads one or more lengths apart by spaces or x: "3.4 3.1". A
// whole number with a fraction behind it is one length: "3 1/2".
func (c *Case) readLengths(text string, most int, longest unit.Length) ([]Measure, error) {
	var out []Measure
	words := strings.Fields(strings.NewReplacer("x", " ", "×", " ", ",", " ").Replace(strings.ToLower(text)))
	for i := 0; i < len(words); i++ {
		word := words[i]
		for i+1 < len(words) && (strings.Contains(words[i+1], "/") || isUnit(words[i+1]) || isFeet(word)) {
			i++
			word += " " + words[i]
		}
		m, err := c.readLength(word, 0, longest)
		if err != nil {
			return nil, err
		}
		out = append(out, m)
	}
	if len(out) == 0 || len(out) > most {
		return nil, &unit.Error{Given: text, Accepted: fmt.Sprintf("1 to %d lengths such as 3.4 3 1/8", most)}
	}
	return out, nil
}

func isUnit(s string) bool { return strings.Trim(s, "abcdefghijklmnopqrstuvwxyz\"'") == "" }

func isFeet(s string) bool { return strings.HasSuffix(s, "ft") || strings.HasSuffix(s, "'") }

// maxAcross is the widest stump taken.
const maxAcross = 40 * unit.Inch

func (c *Case) checkAcross(text string, l unit.Length) error {
	if l <= 0 || l > maxAcross {
		return &unit.Error{Given: text, Accepted: fmt.Sprintf("a diameter over 0 and up to %s", c.length(maxAcross))}
	}
	return nil
}
