package walk

import (
	"fmt"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/trade"
)

func sealAfterSteps() []*Step {
	return []*Step{
		{ID: StepSealCheck, Part: PartAfter, Name: "check seal",
			LookFor:  "Cracks round the scions, over the slots, at the lowest end of a split; a lifted wrap.",
			Why:      "Sealer shrinks as it dries, and a scion dries out through a crack within days.",
			NotRight: "Press the wrap down and seal the crack at once; paint it white when dry.",
			Cautions: []trade.Caution{trade.LabelIsLaw}, Facts: []trade.Fact{trade.SealLook, trade.BareCracks},
			applies: living, done: doneSealCheck, ask: askSealCheck},
		{ID: StepReseal, Part: PartAfter, Name: "reseal",
			LookFor:  "Fresh sealer over every crack, under the lowest end of any split, on top and tips.",
			Why:      "Bare sealer cracks within days; wrap between the coats would have held it.",
			NotRight: "Wet or cold: dry it first; sealer does not hold on a wet face.",
			Cautions: []trade.Caution{trade.LabelIsLaw}, Facts: []trade.Fact{trade.BareCracks, trade.WrapSquares},
			applies: func(c *Case) bool { return c.lives() && c.A.Sealed != nil }, done: doneReseal, last: lastReseal, ask: askReseal},
		{ID: StepRingAgain, Part: PartAfter, Name: "earwig ring",
			LookFor:  "A fresh tape ring with fresh bait, no leaf or twine that bridges it.",
			Why:      "Earwigs climb at night and eat the buds as they open; a ring wears out in two weeks.",
			NotRight: "Eaten buds: look for earwigs under bark and wrap, and clear what touches the stem.",
			Cautions: []trade.Caution{trade.LabelIsLaw}, Facts: []trade.Fact{trade.Earwigs},
			applies: func(c *Case) bool { return c.lives() && c.B.Earwigs }, done: doneRingAgain, last: lastRing, ask: askRingAgain},
	}
}

func askSealCheck(c *Case, a *Ask) {
	a.Question = "Is the seal whole?"
	a.Because = c.because(due.AfterLook, "Sealer shrinks as it dries; look at it closely.")
	a.choose("1", "whole", "no crack, wrap down", &record.SealChecked{})
	a.choose("2", "cracked", "then reseal it", &record.SealChecked{Cracked: true})
	a.choose("3", "cracked, resealed", "mended already", &record.SealChecked{Cracked: true}, &record.Resealed{})
	a.choice(leaveIt("4"))
}

func doneSealCheck(c *Case) answer {
	check := record.LastOf(c.A.SealChecks)
	switch {
	case check == nil || c.A.Sealed != nil && check.At.Before(c.A.Sealed.At):
		return open
	case check.What.Cracked:
		return told("cracked, " + c.when(check.At))
	}
	return told("whole, " + c.when(check.At))
}

func askReseal(c *Case, a *Ask) {
	a.Question = "Reseal it. Done?"
	a.Because = c.because(due.Reseal, "Wherever it is cracked or thin.")
	a.choose("1", "resealed", "paint it white when dry", &record.Resealed{})
	a.choice(leaveIt("2"))
	a.Likely = "1"
}

func doneReseal(c *Case) answer {
	return saidToday(c, c.A.Reseals, plain[record.Resealed]("resealed"))
}
func lastReseal(c *Case) string {
	return saidBefore(c, c.A.Reseals, plain[record.Resealed]("resealed"))
}

func askRingAgain(c *Case, a *Ask) {
	a.Question = "Is a fresh earwig ring on?"
	a.Because = c.because(due.Earwigs, fmt.Sprintf("A ring lasts about %d days.", trade.EarwigDays))
	a.choose("1", "ring set", "the label is the law", &record.RingSet{})
	a.choice(leaveIt("2"))
	a.Likely = "1"
}

func lastRing(c *Case) string { return saidBefore(c, c.A.Rings, plain[record.RingSet]("ring set")) }

func doneRingAgain(c *Case) answer {
	if len(c.A.Rings) < 2 && c.today(c.A.SetAt()) {
		return open
	}
	return saidToday(c, c.A.Rings, plain[record.RingSet]("ring set"))
}
