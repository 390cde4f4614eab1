package walk

import (
	"fmt"
	"strconv"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

func winterSteps() []*Step {
	return []*Step{
		{ID: StepSeason, Part: PartAfter, Name: "season's end",
			LookFor:  "How the tree stands when its growth is over: leader past the stake, leaf clean, union closing.",
			Why:      "Alive and growing at the season's end is the second count of what has taken.",
			NotRight: "Weak: find out why now, while drought, pests and sprouts still show.",
			Facts:    []trade.Fact{trade.SeasonJudged, trade.MovingNotTaking, trade.ClosingOver},
			applies:  living, done: doneSeason, last: lastSeason, ask: askSeason},
		{ID: StepTapes, Part: PartAfter, Name: "tapes off",
			LookFor:  "Every tie: off, or loose enough for the stem to thicken in spring.",
			Why:      "Tape left tight cuts into the bark when growth starts.",
			NotRight: "Cut in already: take it off whole and leave the mark open.",
			Facts:    []trade.Fact{trade.WinterTapes, trade.Ties},
			applies:  func(c *Case) bool { return c.lives() && len(c.A.Ties) > 0 }, done: doneTapes, last: lastTapes, ask: askTapes},
		{ID: StepHeadBack, Part: PartAfter, Name: "head back",
			LookFor:  "A strong bud just above the stake, on the windward side, and a clean slope away from it.",
			Why:      "Headed back, the leader thickens and branches above the stake instead of bending over it.",
			NotRight: "It has not passed the stake: cut it to strong buds and let it grow again.",
			Cautions: aids, Facts: []trade.Fact{trade.HeadBack, trade.HeadBackShort, trade.HeadBackMild, trade.HeadBackFrost},
			applies: growing, done: doneHeadBack, last: lastHeadBack, ask: askHeadBack},
		{ID: StepRival, Part: PartAfter, Name: "rival",
			LookFor:  "A branch as strong as the leader, at a narrow angle to it.",
			Why:      "Two of one strength make a fork that splits under its crop.",
			Cautions: aids, Facts: []trade.Fact{trade.HeadBack},
			applies: led, done: doneRival, last: lastRival, ask: askRival},
		{ID: StepSecond, Part: PartAfter, Name: "second shoot",
			LookFor:  "The second shoot kept as a reserve, and the other grafts that still live.",
			Why:      "After two seasons the leader stands by itself; the strongest graft is kept alone.",
			NotRight: "The leader is weak: keep the second another year.",
			Cautions: append(aids, trade.NailsStay), Facts: []trade.Fact{trade.KeptAlone, trade.HeadBack, trade.ClosingOver},
			applies: led, done: doneSecond, ask: askSecond},
		{ID: StepNurseOff, Part: PartAfter, Name: "nurse limbs",
			LookFor:  "The limbs of the stock below the graft; how much leaf the graft itself carried.",
			Why:      "The graft's own leaf feeds the root now; the stock's limbs would outgrow it.",
			NotRight: "The graft made little leaf: take one off now and the rest next winter.",
			Cautions: append(aids, trade.NailsStay), Facts: []trade.Fact{trade.NurseLimbs, trade.NurseOff},
			applies: func(c *Case) bool { return c.lives() && (c.A.LimbsLeft() > 0 || len(c.A.NurseOff) > 0) }, done: doneNurseOff, last: lastNurseOff, ask: askNurseOff},
	}
}

func askSeason(c *Case, a *Ask) {
	a.Question = "The season is over. How does it stand?"
	a.Because = c.because(due.SeasonsEnd, "Recorded once a year, when growth is over.")
	alive := len(c.A.Living())
	meanings := []string{"past the stake or near it", "alive and growing on", "alive, little growth", "every graft is dead"}
	for i, word := range record.SeasonWords {
		bodies := []record.Body{&record.SeasonsEnd{Alive: alive, Word: word}}
		if word == "dead" {
			bodies = []record.Body{&record.SeasonsEnd{Word: word}, visitWith(record.Visited{}, c.A.Grafts, record.Dead)}
		}
		a.choose(strconv.Itoa(i+1), word, meanings[i], bodies...)
		if word == "dead" && alive > 0 {
			a.Choices[i].Doubt = c.allDead(bodies)
		}
	}
	a.choice(leaveIt("5"))
}

func (c *Case) seasonWord(b record.SeasonsEnd) string {
	return fmt.Sprintf("%s, %d alive", b.Word, b.Alive)
}

func doneSeason(c *Case) answer { return saidToday(c, c.A.Seasons, c.seasonWord) }
func lastSeason(c *Case) string { return saidBefore(c, c.A.Seasons, c.seasonWord) }

func askTapes(c *Case, a *Ask) {
	a.Question = "Loosen the tapes for the winter. Done?"
	a.Because = c.because(due.TiesOff, "Before growth starts again.")
	a.choose("1", "loosened", "or off", &record.TapesLoosened{})
	a.choice(leaveIt("2"))
	a.Likely = "1"
}

func doneTapes(c *Case) answer {
	return saidToday(c, c.A.TapesOff, plain[record.TapesLoosened]("loosened"))
}
func lastTapes(c *Case) string {
	return saidBefore(c, c.A.TapesOff, plain[record.TapesLoosened]("loosened"))
}

func askHeadBack(c *Case, a *Ask) {
	a.Question = "Head the leader back. Where?"
	a.Because = c.because(due.HeadBack, "In the dormant season, above the stake.")
	stake := c.A.Stake
	long := c.A.Shoot()
	if stake != nil && long > 0 {
		a.Because += fmt.Sprintf(" It was last %s long; the stake is %s high.", c.length(long), c.length(stake.What.Height.Length))
	}
	if stake != nil {
		cut := &record.HeadedBack{Height: stake.What.Height}
		a.choose("1", "above the stake", "at "+c.length(stake.What.Height.Length), cut)
		a.choose("2", "and the rival off", "both cuts", cut, &record.RivalCut{})
	}
	a.choice(Choice{Key: "3", Word: "another height", Meaning: "type it", Entry: &Entry{Asks: "height of the cut above the graft", Read: func(text string) ([]record.Body, error) {
		m, err := c.readLength(text, 0, 6*unit.Metre)
		if err != nil {
			return nil, err
		}
		cut := []record.Body{&record.HeadedBack{Height: m}}
		if long > 0 && m.Length > 2*long+trade.LeaderAim { // it may have grown since
			return nil, &Doubt{fmt.Sprintf("The leader was last %s long: it cannot be cut at %s.", c.length(long), c.length(m.Length)),
				[]Choice{{Key: "1", Word: "as typed", Meaning: "it has grown so far", Bodies: cut}}}
		}
		return cut, nil
	}}})
	a.choose("4", "too short", "cut to strong buds", &record.HeadedBack{Short: true})
	a.choose("5", "not this year", "asked again next winter", &record.AnotherYear{Work: "head-back"})
	a.choice(leaveIt("6"))
	switch {
	case c.A.PastStake():
		a.Likely = "1"
	case stake != nil && long > 0:
		a.Likely = "4"
	}
}

func (c *Case) headWord(b record.HeadedBack) string {
	if b.Short {
		return "too short"
	}
	return c.length(b.Height.Length)
}

func doneHeadBack(c *Case) answer {
	if h := record.LastOf(c.A.Headed); h != nil && !h.What.Short {
		return told(c.headWord(h.What) + ", " + c.when(h.At))
	}
	return saidToday(c, c.A.Headed, c.headWord)
}

func lastHeadBack(c *Case) string { return saidBefore(c, c.A.Headed, c.headWord) }

func askRival(c *Case, a *Ask) {
	a.Question = "Is there a rival to the leader? Take it off."
	a.Because = "In the dormant season, when the leader is headed back."
	a.choose("1", "rival off", "at its base", &record.RivalCut{})
	a.choice(Choice{Key: "2", Word: "none", Meaning: "on to the next stump", Leave: true})
}

func doneRival(c *Case) answer { return saidToday(c, c.A.RivalsCut, plain[record.RivalCut]("off")) }
func lastRival(c *Case) string { return saidBefore(c, c.A.RivalsCut, plain[record.RivalCut]("off")) }

func askSecond(c *Case, a *Ask) {
	a.Question = "Take the second shoot off. Done?"
	a.Because = c.because(due.SecondShootOff, "When the leader can stand alone.")
	a.choose("1", "off", "the leader is alone", &record.SecondShootOff{})
	a.choose("2", "none there", "it stands alone already", &record.SecondShootOff{None: true})
	a.choice(leaveIt("3"))
	a.Likely = "1"
}

func doneSecond(c *Case) answer {
	if c.A.SecondOff == nil {
		return open
	}
	if c.A.SecondOff.What.None {
		return told("none there, " + c.when(c.A.SecondOff.At))
	}
	return told("off, " + c.when(c.A.SecondOff.At))
}

func askNurseOff(c *Case, a *Ask) {
	left := c.A.LimbsLeft()
	a.Question = fmt.Sprintf("%s left below the graft. How many stay?", limbsWord(left))
	a.Because = c.because(due.NurseLimbsOff, "Over the first two winters all come off.")
	a.choose("0", "none stays", "all are off", &record.NurseLimbOff{})
	for n := 1; n < min(left, 6); n++ {
		a.choose(strconv.Itoa(n), fmt.Sprintf("%d stays", n), "until next winter", &record.NurseLimbOff{Left: n})
	}
	a.choose("8", "all stay", "until next winter", &record.AnotherYear{Work: "nurse-limbs-off"})
	a.choice(leaveIt("9"))
	a.Likely = "0"
}

func limbsWord(n int) string {
	if n == 1 {
		return "One nurse limb is"
	}
	return fmt.Sprintf("%d nurse limbs are", n)
}

func nurseOffWord(b record.NurseLimbOff) string {
	if b.Left == 0 {
		return "all off"
	}
	return fmt.Sprintf("%d left", b.Left)
}

func doneNurseOff(c *Case) answer {
	if c.A.LimbsLeft() == 0 {
		return told(saidBefore(c, c.A.NurseOff, nurseOffWord))
	}
	return saidToday(c, c.A.NurseOff, nurseOffWord)
}

func lastNurseOff(c *Case) string { return saidBefore(c, c.A.NurseOff, nurseOffWord) }
