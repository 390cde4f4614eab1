package core

import "fmt"

func afterSteps() []*Step {
	return []*Step{
		{ID: StepRest, Part: PartAfter, Name: "rest",
			LookFor: "Nothing today.",
			Why:     "Buds begin to move in two to three weeks.",
			applies: func(c *Case) bool { return false }, ask: askRest},
		{ID: StepEnded, Part: PartAfter, Name: "ended",
			Why:     "What was done stays in the record.",
			applies: func(c *Case) bool { return false }, ask: askEnded},
	}
}

func askRest(c *Case, a *Ask) {
	a.Question = "Done here for now."
	a.Because = fmt.Sprintf("Painted white %s. Buds begin to move in two to three weeks.", c.when(c.A.White.At))
	a.choice(Choice{Key: "1", Word: "next stump", Leave: true})
	a.Likely = "1"
}

func askEnded(c *Case, a *Ask) {
	at := c.A
	switch {
	case at.Untied != nil:
		a.Question = "Untied. The tree stands alone."
		a.Because = "Twine, tapes and stake came off " + c.when(at.Untied.At) + "."
	case at.GivenUp != nil:
		a.Question = "Given up."
		a.Because = fmt.Sprintf("%s, %s.", c.when(at.GivenUp.At), cmpOr(at.GivenUp.What.Why, "no reason put down"))
	case at.Failed != nil:
		a.Question = "Failed."
		a.Because = fmt.Sprintf("%s, %s.", c.when(at.Failed.At), at.Failed.What.Cause)
		a.choice(Choice{Key: "2", Word: "cut back again", Meaning: "graft it anew; the history stays", Go: StepLimbs})
	default:
		a.Question = "Every graft is dead. What was the cause?"
		a.Because = "Keep one to three well-placed sprouts, so that the tree lives."
		a.choice(Choice{Key: "2", Word: "failed", Meaning: "pick the cause", Pick: PickCause})
	}
	a.choice(Choice{Key: "1", Word: "next stump", Leave: true})
	a.Likely = "1"
}
