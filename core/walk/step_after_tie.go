package walk

import (
	"fmt"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

func tieSteps() []*Step {
	return []*Step{
		{ID: StepTie, Part: PartAfter, Name: "tie",
			LookFor:  "Soft tape, loose enough for a finger, a tie at every foot of shoot.",
			Why:      "The join is weak for months; a foot of free shoot is a lever that breaks it out.",
			NotRight: "A tie that bites: loosen it. A tip that grew crooked: tie it straight while it is soft.",
			Facts:    []trade.Fact{trade.Ties, trade.TieTime, trade.LeaderAimFact},
			applies:  growing, done: doneTie, last: lastTie, ask: askTie},
	}
}

// notMeasured is the answer of a tie put on without measuring the shoot.
const notMeasured = "not measured"

func askTie(c *Case, a *Ask) {
	a.Question = "Tie the leader. How long is it from the graft to its tip?"
	a.Because = c.because(due.Tie, fmt.Sprintf("Put a tie on at every %s.", c.B.Units.Figure(trade.TieEvery)))
	if was := c.leaderBefore(); was > 0 {
		a.Because += fmt.Sprintf(" Last time it was %s.", c.length(was))
	}
	if c.A.Stake == nil {
		a.Warn = "No stake is recorded for it."
	}
	a.Entry = &Entry{Asks: "length of the leader", Likely: notMeasured, Read: c.readTie}
}

// leaderBefore is the leader's length as last measured before today since it was
// whole, 0 if it was not.
func (c *Case) leaderBefore() (was unit.Length) {
	whole := c.A.WholeSince()
	for _, t := range c.A.Ties {
		if t.What.Shoot.Given() && !c.today(t.At) && !t.At.Before(whole) {
			was = t.What.Shoot.Length
		}
	}
	return was
}

func (c *Case) readTie(text string) ([]record.Body, error) {
	if text == notMeasured {
		return []record.Body{&record.Tied{}}, nil
	}
	m, err := c.readLength(text, 0, 6*unit.Metre)
	if err != nil {
		return nil, err
	}
	was := c.leaderBefore()
	if m.Length >= was-tapeSlack {
		return []record.Body{&record.Tied{Shoot: m}}, nil
	}
	return nil, &Doubt{fmt.Sprintf("It was %s and is now %s. Did wind break it?", c.length(was), c.length(m.Length)), []Choice{
		{Key: "1", Word: "tip broken", Meaning: "by wind or a bird, and tied", Bodies: []record.Body{&record.Tied{Shoot: m, Broken: true}}},
		{Key: "2", Word: "leader lost", Meaning: "another takes over", Go: StepBroken},
		{Key: "3", Word: "as typed", Meaning: "it was mismeasured before", Bodies: []record.Body{&record.Tied{Shoot: m}}},
	}}
}

func (c *Case) tieWord(t record.Tied) string {
	switch {
	case !t.Shoot.Given():
		return "tied"
	case t.Broken:
		return c.length(t.Shoot.Length) + ", broken"
	}
	return c.length(t.Shoot.Length)
}

func doneTie(c *Case) answer { return saidToday(c, c.A.Ties, c.tieWord) }
func lastTie(c *Case) string { return saidBefore(c, c.A.Ties, c.tieWord) }
