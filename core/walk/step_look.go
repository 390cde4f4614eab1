package walk

import (
	"fmt"
	"strconv"
	"time"

	"barkslip/core/ready"
	"barkslip/core/record"
	"barkslip/core/trade"
)

func lookSteps() []*Step {
	return []*Step{
		{ID: StepWait, Part: PartLook, Name: "wait",
			LookFor: "Let it drain. Where it bleeds while it waits, gash it low on the stem or bore a drain hole.",
			Why:     "Bleeding at the graft is the first cause of failure; a week after cutting back most stumps have drained.",
			Facts:   []trade.Fact{trade.DaysToGraft, trade.WaitDays, trade.Bleeding},
			applies: func(c *Case) bool { return false }, ask: askWait},
		{ID: StepBleeding, Part: PartLook, Name: "bleeding",
			LookFor:  "Wipe the face, count to sixty, look across it against the light.",
			Why:      "No graft lives on a face that wets again after wiping.",
			NotRight: "Damp: wipe and wait. Weeping or running: gash, then a drain hole, then days.",
			Facts:    []trade.Fact{trade.Bleeding, trade.DryFace}, done: doneBleeding, ask: askBleeding},
		{ID: StepSlip, Part: PartLook, Name: "slip",
			LookFor:  "Lift the bark with the knife on the waste above the planned cut: it should part wet and clean.",
			Why:      "The scion slides in between bark and wood only where the bark slips.",
			NotRight: "Drags: about three days. Stuck: about a week. Out of season: next year.",
			Cautions: []trade.Caution{trade.SawKnifeDrill},
			Facts:    []trade.Fact{trade.BarkSticks, trade.SlipSeason, trade.SlipDates}, done: doneSlip, ask: askSlip},
		{ID: StepDrill, Part: PartLook, Name: "drain hole",
			LookFor:  "A clean hole low on the stem that slopes up into the wood, so that it drains.",
			Why:      "Where gashes do not stop the sap, a hole low down will.",
			NotRight: "Still running with gashes made today: leave it some days, then a second hole.",
			Cautions: []trade.Caution{trade.SawKnifeDrill, trade.CleanBlades},
			Facts:    []trade.Fact{trade.DrainHoles, trade.DrainHoleSize},
			applies:  func(c *Case) bool { return len(c.A.Holes) > 0 }, done: doneDrill, ask: askDrill},
		{ID: StepLeave, Part: PartLook, Name: "leave",
			LookFor:  "Whether a second hole, no irrigation and a warm dry day were tried.",
			Why:      "A stump that runs on through all that will drown its scions.",
			NotRight: "Keep its sprouts and graft it next season.",
			Facts:    []trade.Fact{trade.LastTries, trade.Bleeding},
			applies:  func(c *Case) bool { return false }, ask: askLeave},
	}
}

var bleedingMeaning = map[record.Bleeding]string{
	record.Dry: "no wetting after a wipe", record.Damp: "wets again slowly", record.Weeping: "beads run down", record.Running: "a stream",
}

func askBleeding(c *Case, a *Ask) {
	wiped := c.Advice.Verdict == ready.Wipe && c.today(c.Found.Looked)
	a.Question = "Is the face dry?"
	a.Because = "Wipe it and watch: a graft on a face that wets again is lost."
	switch {
	case wiped:
		a.Question = "Wipe it. Does it wet again?"
		a.Until = c.Advice.Until
		a.Because = fmt.Sprintf("It was damp at %s; look again at %s.", c.when(c.Found.Looked), c.when(*c.Advice.Until))
	case c.Advice.Verdict == ready.Look && c.Advice.Until != nil && len(c.Advice.Reasons) > 0 && c.Found.Bleeding != "":
		a.Until = c.Advice.Until
		a.Because = c.Advice.Reasons[0]
	case c.Found.Bleeding != "" && !c.today(c.Found.Looked):
		a.Because = fmt.Sprintf("It was %s on %s; judge it again today.", c.Found.Bleeding, c.B.Day(c.Found.Looked).Short())
	}
	c.bleedingChoices(a, wiped)
}

func (c *Case) bleedingChoices(a *Ask, wiped bool) {
	for i, b := range record.Bleedings {
		a.choose(strconv.Itoa(i+1), string(b), bleedingMeaning[b], &record.Looked{Bleeding: b, Wiped: wiped})
	}
	if a.Until != nil && c.Now.Before(a.Until.Truncate(time.Second)) && !c.again {
		for i := range a.Choices {
			a.Choices[i].Doubt = c.tooEarly(a.Choices[i], *a.Until)
		}
	}
}

// tooEarly doubts a look taken before the sap can have shown or drained.
func (c *Case) tooEarly(ch Choice, until time.Time) *Doubt {
	return &Doubt{Says: fmt.Sprintf("Too early to tell: look at %s.", c.when(until)), Ways: []Choice{
		{Key: "0", Word: "next stump", Meaning: "look here again at " + c.when(until), Leave: true},
		{Key: "5", Word: "record it", Meaning: ch.Word + ", as seen now", Bodies: ch.Bodies, Refines: ch.Refines},
	}}
}

// lastLook is the newest look that says something of what is asked.
func (c *Case) lastLook(says func(record.Looked) string) (string, bool) {
	for i := len(c.A.Looks) - 1; i >= 0; i-- {
		l := c.A.Looks[i]
		if word := says(l.What); word != "" {
			return word + " " + c.when(l.At), c.today(l.At) || len(c.A.Grafts) > 0
		}
	}
	return "", false
}

func doneBleeding(c *Case) answer {
	text, current := c.lastLook(func(l record.Looked) string { return string(l.Bleeding) })
	if !current {
		return open
	}
	return told(text)
}

func askSlip(c *Case, a *Ask) {
	a.Question = "Does the bark slip?"
	a.Because = "Try it on the waste above the planned cut."
	if s, ok := c.B.SlipOn(c.B.Day(c.Now)); ok && !s.Holds(c.B.Day(c.Now)) {
		a.Because += " " + outOfSeason(s)
	}
	meaning := []string{"parts wet and smooth", "comes with a pull", "does not part"}
	for i, s := range record.Slips {
		a.choose(strconv.Itoa(i+1), s.Word(), meaning[i], &record.Looked{Slip: s})
	}
}

// outOfSeason says when bark slips next, on a day on which it is not taken to.
func outOfSeason(s record.SlipSeason) string {
	return fmt.Sprintf("That is out of season: bark is assumed to slip here from %s to %s.", s.From.Short(), s.To.Long())
}

func doneSlip(c *Case) answer {
	text, current := c.lastLook(func(l record.Looked) string { return l.Slip.Word() })
	if !current {
		return open
	}
	return told(text)
}

func askWait(c *Case, a *Ask) {
	until := *c.Advice.Until
	a.Until = c.Advice.Until
	a.Question = "Leave it until " + c.when(until) + "."
	a.Because = c.Advice.Reasons[len(c.Advice.Reasons)-1]
	if len(c.Advice.Meanwhile) > 0 {
		a.Because += " " + c.Advice.Meanwhile[0]
	}
	if s, ok := c.B.SlipOn(c.B.Day(until)); ok && !s.Holds(c.B.Day(until)) {
		a.Because += " " + outOfSeason(s)
	}
	a.choice(Choice{Key: "0", Word: "next stump", Meaning: "this one can wait", Leave: true})
	a.choice(Choice{Key: "1", Word: "look now", Meaning: "how it bleeds and slips", Go: StepBleeding})
	a.choice(Choice{Key: "2", Word: "gash it", Meaning: "to drain meanwhile", Go: StepNewGashes})
	a.choice(Choice{Key: "3", Word: "drain hole", Meaning: "if gashes are not enough", Go: StepDrill})
	a.choice(Choice{Key: "4", Word: "go on", Meaning: "graft against advice", Pick: PickReason})
	a.Likely = "0"
	if len(c.Advice.Meanwhile) > 0 { // gash or drill: the better key is a digit
		a.Likely = ""
	}
}

func askDrill(c *Case, a *Ask) {
	a.Question = "Bore a drain hole low on the stem."
	a.Because = "A 1/4 to 3/8 in bit, 1 to 2 in deep, sloping up into the stem."
	if c.Advice.Verdict == ready.Drill {
		a.Because = c.Advice.Reasons[0] + " " + a.Because
	}
	a.choose("1", "bored one", "", &record.Drilled{Number: 1})
	a.choose("2", "bored two", "", &record.Drilled{Number: 2})
	a.choice(Choice{Key: "3", Word: "gash instead", Meaning: "renew the gashes first", Go: StepNewGashes})
	a.choice(Choice{Key: "4", Word: "next stump", Meaning: "not now", Leave: true})
	a.Likely = "1"
	if c.Found.Holes >= 2 {
		a.Warn = fmt.Sprintf("It has %d holes already; two in all are usual.", c.Found.Holes)
	}
}

func doneDrill(c *Case) answer {
	if n := len(c.A.Holes); n > 0 {
		return told(fmt.Sprintf("%d bored, %s", c.Found.Holes, c.when(c.A.Holes[n-1].At)))
	}
	return open
}

func askLeave(c *Case, a *Ask) {
	a.Question = "Leave it this season?"
	a.Because = c.Advice.Reasons[0] + " The last tries: a second hole, no irrigation, a warm dry day."
	a.choose("1", "leave it", "keep its sprouts, graft next season", &record.GivenUp{Why: "would not stop running", Season: true})
	a.choice(Choice{Key: "2", Word: "second hole", Meaning: "one more try", Go: StepDrill})
	a.choice(Choice{Key: "3", Word: "look again", Meaning: "on a warm dry day", Go: StepBleeding})
	a.choice(Choice{Key: "4", Word: "next stump", Meaning: "decide later", Leave: true})
	a.choice(Choice{Key: "5", Word: "go on", Meaning: "graft against advice", Pick: PickReason})
}
