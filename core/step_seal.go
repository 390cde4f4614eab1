package core

import (
	"fmt"

	"barkslip/core/trade"
)

func sealSteps() []*Step {
	return []*Step{
		{ID: StepSeal, Part: PartSeal, Name: "seal",
			LookFor:  "Sealer over every slot and below the lowest end of any split, the top and the scion tips.",
			Why:      "A scion dries in days; bare sealer cracks, wrap squares between coats hold.",
			NotRight: "A split that ran on: follow it down and seal below its end.",
			Cautions: []trade.Caution{trade.LabelIsLaw},
			Facts:    []trade.Fact{trade.SealBelow, trade.WrapSquares, trade.BareCracks}, done: doneSeal, ask: askSeal},
		{ID: StepWhite, Part: PartSeal, Name: "white",
			LookFor:  "Sealer dry to the touch; then white, water-based, over everything, buds too.",
			Why:      "Dark sealer in hot sun injures the graft within hours.",
			NotRight: "Still wet: shade it and look again in half an hour. Never oil paint on buds.",
			Cautions: []trade.Caution{trade.LabelIsLaw, trade.CrewHeat},
			Facts:    []trade.Fact{trade.WhiteIn, trade.DarkSealer, trade.WhiteThinning, trade.NoOilPaint, trade.StillWet, trade.InjuryHour}, done: doneWhite, ask: askWhite},
		{ID: StepRing, Part: PartSeal, Name: "earwig ring",
			LookFor:  "A tape ring with bait below the graft.",
			Why:      "Earwigs eat opening buds two to three weeks on.",
			Cautions: []trade.Caution{trade.LabelIsLaw}, Facts: []trade.Fact{trade.Earwigs},
			applies: func(c *Case) bool { return c.B.Earwigs }, done: doneRing, ask: askRing},
	}
}

func askSeal(c *Case, a *Ask) {
	a.Question = "Seal it. How is it covered?"
	a.Because = "Sealer, wrap squares, sealer again; then the top and the scion tips."
	for _, g := range c.A.Grafts {
		if s := g.Set.What.Split; s.Given() {
			a.Warn = fmt.Sprintf("The split at slot %d ran %s: seal below its end.", g.Slot, c.length(s.Length))
		}
	}
	a.choose("1", "wrap squares", "between the coats; no return", &Sealed{Cover: Wrapped})
	a.choose("2", "bare sealer", fmt.Sprintf("come back in %d days to reseal", trade.ResealDays), &Sealed{Cover: Bare})
	a.Likely = "1"
	if c.Before.Cover == Bare {
		a.Likely = "2"
	}
}

func doneSeal(c *Case) string {
	if c.A.Sealed == nil {
		return ""
	}
	return fmt.Sprintf("%s, %s", c.A.Sealed.What.Cover, c.when(c.A.Sealed.At))
}

// WhiteDue is the running white clock, if there is one.
func (c *Case) WhiteDue() (Due, bool) {
	for _, d := range Dues(c.S, c.B) {
		if d.Kind == DueWhite {
			return d, true
		}
	}
	return Due{}, false
}

func askWhite(c *Case, a *Ask) {
	d, running := c.WhiteDue()
	if !running {
		a.Question, a.Because = "Painted white?", "White keeps the sun's heat off the sealer."
	} else {
		open := d.Opens
		a.Until = &open
		a.Question = fmt.Sprintf("White when dry: from %s, by %s.", c.when(d.Opens), c.when(d.By))
		a.Because = d.Why(c.B)
	}
	a.choose("1", "painted white", "over everything, buds too", &PaintedWhite{})
	a.choose("2", "still wet", "look again in 30 min", &StillWet{})
	a.choose("3", "rained on", "dry it off, look again in 30 min", &StillWet{Rain: true})
	a.choice(Choice{Key: "4", Word: "next stump", Meaning: "the clock stays in the frame", Leave: true})
	a.Likely = "1"
	if running && c.Now.Before(d.Opens) {
		a.Likely = "4"
	}
}

func doneWhite(c *Case) string {
	if c.A.White == nil {
		return ""
	}
	return c.when(c.A.White.At)
}

func askRing(c *Case, a *Ask) {
	a.Question = "Earwig ring on?"
	a.Because = "Earwigs are set down as a problem on this block."
	a.choose("1", "ring set", "tape and bait; the label is the law", &RingSet{})
	a.choice(Choice{Key: "2", Word: "later", Meaning: "it stays due", Leave: true})
	a.Likely = "1"
}

func doneRing(c *Case) string {
	if n := len(c.A.Rings); n > 0 {
		return c.when(c.A.Rings[n-1].At)
	}
	return ""
}
