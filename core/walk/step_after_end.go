package walk

import (
	"cmp"
	"fmt"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

func endSteps() []*Step {
	return []*Step{
		{ID: StepUntie, Part: PartAfter, Name: "untie",
			LookFor:  "A stem that springs back when it is bent, the union closed, nothing left round it.",
			Why:      "A tree that leans on its stake never stiffens; after this no work is due on it.",
			NotRight: "It bends and stays bent: leave the stake another year, with a looser loop.",
			Facts:    []trade.Fact{trade.Twine, trade.TwineGirdles, trade.ClosingOver, trade.CallusDays},
			applies:  growing, done: doneUntie, ask: askUntie},
		{ID: StepFailed, Part: PartAfter, Name: "failed",
			LookFor:  "No graft green anywhere: scratch each one low down before saying so.",
			Why:      "The cause of each loss is what the next graft learns from.",
			NotRight: "One is still green: it has not failed, leave it to day 60.",
			Facts:    []trade.Fact{trade.KeepSprouts, trade.RegraftTime},
			applies:  func(c *Case) bool { return c.A.Grafted() && c.A.Untied == nil }, done: doneFailed, ask: askFailed},
		{ID: StepGiveUp, Part: PartAfter, Name: "give up",
			LookFor: "Whether the tree itself is worth another graft: root, place, age.",
			Why:     "Nothing more is asked of a stump given up; what was done on it stays in the record.",
			applies: func(c *Case) bool { return c.A.CutBack != nil && c.A.Untied == nil }, done: doneGiveUp, ask: askGiveUp},
		{ID: StepRest, Part: PartAfter, Name: "rest",
			LookFor: "Nothing is due here now.",
			Why:     "Time does the rest; the next work is named with its day.",
			Facts:   []trade.Fact{trade.BudsMove, trade.CallusDays},
			applies: func(c *Case) bool { return false }, ask: askRest},
		{ID: StepEnded, Part: PartAfter, Name: "ended",
			LookFor: "No more work on this graft; look to the sprouts, if any were kept.",
			Why:     "What was done stays in the record, and a stump grafted again begins a new record beside it.",
			Facts:   []trade.Fact{trade.SproutsUsed, trade.RegraftTime},
			applies: func(c *Case) bool { return false }, ask: askEnded},
	}
}

func askRest(c *Case, a *Ask) {
	a.Question = "Done here for now."
	a.Because = "No more work comes due on it."
	if d, ok := due.Next(c.Dues(), c.Now); ok {
		a.Because = fmt.Sprintf("Next: %s, from %s. %s", d.Kind.Verb(), c.when(d.Opens), d.Why(c.B))
	}
	c.callusWords(a)
	a.choice(Choice{Key: "0", Word: "next stump", Leave: true})
	if c.lives() && c.A.IsSealed() && c.sinceSet() <= trade.GraftSettles {
		a.choice(c.hardRain())
	}
	a.Likely = "0"
}

func askEnded(c *Case, a *Ask) {
	at := c.A
	again := false
	switch {
	case at.Untied != nil:
		a.Question = "Untied. The tree stands alone."
		a.Because = "Twine, tapes and stake came off " + c.when(at.Untied.At) + "."
	case at.GivenUp != nil:
		again = at.GivenUp.What.Season
		a.Question = "Given up."
		if again {
			a.Question = "Left for this season."
		}
		a.Because = fmt.Sprintf("%s, %s.", c.when(at.GivenUp.At), cmp.Or(at.GivenUp.What.Why, "no reason recorded"))
	case at.Failed != nil:
		again = true
		a.Question = "Failed."
		a.Because = fmt.Sprintf("%s, %s.", c.when(at.Failed.At), at.Failed.What.Cause)
	case at.AllDead():
		again = true
		a.Question = "Failed."
		a.Because = fmt.Sprintf("Every graft was dead by %s.", c.when(at.LostAt()))
	default:
		a.Question = "It has not ended."
		a.Because = "The work on this stump goes on."
	}
	if d, ok := c.Due(due.Regraft); ok && again {
		a.Because += " " + d.Why(c.B)
	}
	a.choice(Choice{Key: "1", Word: "next stump", Leave: true})
	if again {
		a.choice(Choice{Key: "2", Word: "cut back again", Meaning: "its history stays", Go: StepLimbs})
		a.choice(Choice{Key: "3", Word: "give it up", Meaning: "not grafted again", Go: StepGiveUp})
	}
	a.Likely = "1"
}

func askFailed(c *Case, a *Ask) {
	a.Question = "Every graft is dead. What was the cause?"
	a.Because = "Then keep one to three well-placed sprouts, so that the tree lives."
	if !c.A.AllDead() {
		a.Question = "Has every graft failed? What was the cause?"
		a.Because = fmt.Sprintf("%d of %d were alive when last seen.", len(c.A.Living()), len(c.A.Grafts))
	}
	if cause := c.mainCause(); cause != "" {
		a.choose("1", cause, "as found on its grafts", &record.Failed{Cause: cause})
		a.Likely = "1"
	}
	if late := c.lateWords(); late != "" {
		a.Because = joined(a.Because, late)
		if c.mainCause() != overheated {
			a.choose("5", overheated, "painted white late", &record.Failed{Cause: overheated})
		}
	}
	a.choice(Choice{Key: "2", Word: "another cause", Meaning: "pick from the list", Pick: PickCause, Picked: func(cause string) []record.Body { return []record.Body{&record.Failed{Cause: cause}} }})
	a.choose("3", "unknown", "rather than a guess", &record.Failed{Cause: "unknown"})
	a.choice(Choice{Key: "4", Word: "next stump", Meaning: "say it later", Leave: true})
}

// mainCause is the cause found on most of the grafts, of those on the list; ""
// if there is none.
func (c *Case) mainCause() string {
	if !c.A.AllDead() {
		return ""
	}
	return causeOf(c.A)
}

func doneFailed(c *Case) answer {
	if c.A.Failed == nil {
		return open
	}
	return told(c.A.Failed.What.Cause + ", " + c.when(c.A.Failed.At))
}

func askGiveUp(c *Case, a *Ask) {
	a.Question = "Give this stump up?"
	a.Because = "Nothing more is asked of it then; it can always be grafted again."
	a.choice(Choice{Key: "1", Word: "not given up", Meaning: "on to the next stump", Leave: true})
	a.choose("2", "this season", "graft it next spring", &record.GivenUp{Why: "left for this season", Season: true})
	a.choose("3", "the tree is dead", "", &record.GivenUp{Why: "the tree is dead"})
	a.choose("4", "not worth a graft", "", &record.GivenUp{Why: "not worth another graft"})
	a.choice(Choice{Key: "5", Word: "another reason", Meaning: "type it", Entry: &Entry{Asks: "why it is given up", Text: true, Read: func(text string) ([]record.Body, error) {
		why := record.Clean(text)
		if why == "" {
			return nil, &unit.Error{Given: text, Accepted: "the reason in a few words"}
		}
		return []record.Body{&record.GivenUp{Why: why}}, nil
	}}})
}

func doneGiveUp(c *Case) answer {
	if c.A.GivenUp == nil {
		return open
	}
	return told(cmp.Or(c.A.GivenUp.What.Why, "given up"))
}

func askUntie(c *Case, a *Ask) {
	a.Question = "Twine, tapes and stake off: does it stand alone?"
	a.Because = fmt.Sprintf("Scions set %s; a graft stands with its stake for up to four seasons.", c.when(c.A.SetAt()))
	if c.sinceSet() < trade.JoinedDays {
		a.Warn = fmt.Sprintf("It was set only %d days ago; the join is not at full strength yet.", c.sinceSet())
	}
	bodies := []record.Body{&record.Untied{}}
	if c.A.TwineOn() {
		bodies = []record.Body{&record.TwineCut{}, &record.Untied{}}
	}
	a.choose("1", "all off", "nothing is due after this", bodies...)
	a.choose("2", "another year", "stays tied; asked next April", &record.AnotherYear{Work: "untie"})
	a.choice(leaveIt("3"))
}

func doneUntie(c *Case) answer {
	if c.A.Untied == nil {
		return open
	}
	return told(c.when(c.A.Untied.At))
}
