package walk

import (
	"strings"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

func stakeSteps() []*Step {
	return []*Step{
		{ID: StepStake, Part: PartAfter, Name: "stake",
			LookFor:  "A straight stake, firm in the ground and tied low to the stem, its top well above the graft.",
			Why:      "A shoot on a bark graft grows fast and breaks out at the graft in the first wind.",
			NotRight: "It rocks: drive it deeper before any shoot is tied to it.",
			Facts:    []trade.Fact{trade.StakeTime, trade.LeaderAimFact, trade.WindSide},
			applies:  living, done: doneStake, ask: askStake},
	}
}

func askStake(c *Case, a *Ask) {
	a.Question = "Stake it. How high above the graft, on which side?"
	a.Because = c.because(due.Stake, "The leader is headed back just above its top.")
	typed := &Entry{Text: true, Asks: "height above the graft and side, such as 6ft w", Read: c.readStake}
	before := c.Before.Stake
	if before == nil {
		a.Entry = typed
		return
	}
	stake := *before
	a.choose("1", "as before", c.length(stake.Height.Length)+", "+stake.Side.Point(), &stake)
	a.choice(Choice{Key: "2", Word: "another", Meaning: "type height and side", Entry: typed})
	a.choice(leaveIt("3"))
	a.Likely = "1"
}

// readStake reads a height and a side: 6ft w, 72 in 225.
func (c *Case) readStake(text string) ([]record.Body, error) {
	accepted := &unit.Error{Given: text, Accepted: "the height above the graft and the side, such as 6ft w or 1.8m 225"}
	words := strings.Fields(spacedHour.ReplaceAllString(text, "${1}h"))
	if len(words) < 2 {
		return nil, accepted
	}
	side, err := c.readBearing(words[len(words)-1])
	if err != nil {
		return nil, accepted
	}
	height, err := c.readLength(strings.Join(words[:len(words)-1], " "), 0, 6*unit.Metre)
	if err != nil {
		return nil, err
	}
	return []record.Body{&record.Staked{Height: height, Side: side}}, nil
}

func doneStake(c *Case) answer {
	if c.A.Stake == nil {
		return open
	}
	return told(c.length(c.A.Stake.What.Height.Length) + ", " + c.A.Stake.What.Side.Point())
}
