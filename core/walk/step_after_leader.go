package walk

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/trade"
)

func leaderSteps() []*Step {
	return []*Step{
		{ID: StepLeader, Part: PartAfter, Name: "leader",
			LookFor:  "The shoot that grows best: thick, straight, well joined to the stump; windward if two are alike.",
			Why:      "One leader takes all the growth and passes the stake in its first summer; several grow into a fork.",
			NotRight: "None is clearly best: pinch all but the two strongest and wait a week.",
			Facts:    []trade.Fact{trade.Leader, trade.LeaderTime, trade.LeaderAimFact, trade.WindSide},
			applies:  living, done: doneLeader, ask: askLeader},
		{ID: StepLeaderShoot, Part: PartAfter, Name: "leader shoot",
			LookFor: "Which bud of the scion the leader comes from.",
			Why:     "If it breaks, the next shoot of the same scion can take over.",
			applies: led, done: doneLeaderShoot, ask: askLeaderShoot},
		{ID: StepPinch, Part: PartAfter, Name: "pinch",
			LookFor:  "The soft tips of every shoot but the leader, on the other grafts too.",
			Why:      "A pinched tip stops for two to three weeks; its leaf still feeds the stump while the leader runs on.",
			NotRight: "The leader was pinched: let its strongest side shoot take over.",
			Facts:    []trade.Fact{trade.Leader, trade.PinchTime},
			applies:  led, done: donePinch, last: lastPinch, ask: askPinch},
		{ID: StepBroken, Part: PartAfter, Name: "broken leader",
			LookFor:  "Whether it tore out at the graft or snapped above a bud.",
			Why:      "Another shoot takes over at once, before the sap goes into sprouts.",
			NotRight: "Torn out at the graft: seal the tear.",
			Cautions: []trade.Caution{trade.CleanBlades}, Facts: []trade.Fact{trade.Leader},
			applies: led, done: doneBroken, last: lastBroken, ask: askBroken},
	}
}

// pushedFirst orders grafts by the day they were first seen pushing.
func pushedFirst(a *record.Attempt, x, y *record.Graft) int {
	px, py := a.PushedAt(x.Slot), a.PushedAt(y.Slot)
	switch {
	case px.IsZero() || py.IsZero():
		return 0
	}
	return px.Compare(py)
}

func askLeader(c *Case, a *Ask) {
	grafts, reason := c.preferred()
	if len(grafts) == 0 {
		a.Question, a.Because = "No graft lives to lead.", "A leader is chosen from the living grafts."
		a.choice(leaveIt("1"))
		return
	}
	a.Question = "Which graft leads?"
	lost, isLost := c.A.LeaderLost()
	if isLost {
		a.Question = "The leader is lost. Which graft takes over?"
	}
	a.Because = cmp.Or(reason, "None is known to grow better: take the strongest, on the windward side if two are alike.")
	for i, g := range grafts {
		key := strconv.Itoa(g.Slot)
		if g.Slot > 9 {
			continue
		}
		body, refines := c.leads(g.Slot, isLost && c.today(lost))
		a.choice(Choice{Key: key, Word: fmt.Sprintf("graft %d", g.Slot), Meaning: c.fares(g), Bodies: []record.Body{body}, Refines: refines})
		if i == 0 && reason != "" {
			a.Likely = key
		}
	}
	a.choice(leaveIt("0"))
}

// leads is the answer that a graft leads: promoted, if the leader broke today,
// otherwise chosen.
func (c *Case) leads(slot int, brokeToday bool) (record.Body, []record.ID) {
	if b := record.LastOf(c.A.Broken); brokeToday && b != nil && c.today(b.At) && b.What.Promoted == 0 {
		promoted := b.What
		promoted.Promoted = slot
		return &promoted, []record.ID{b.ID}
	}
	return &record.LeaderChosen{Slot: slot}, nil
}

// fares is a graft's state with its shoot.
func (c *Case) fares(g *record.Graft) string {
	words := record.StateWord(g.Was())
	if long := c.A.ShootOf(g.Slot); long > 0 {
		words += ", " + c.length(long)
	}
	return words
}

func doneLeader(c *Case) answer {
	l, ok := c.A.Leads()
	if _, lost := c.A.LeaderLost(); !ok || lost {
		return open
	}
	return told(fmt.Sprintf("graft %d, %s", l.Slot, c.when(l.Since)))
}

// shootUntold says whether a leader was chosen today and it is not yet said
// which of the graft's shoots it is.
func (c *Case) shootUntold() bool {
	l, ok := c.A.Leads()
	return ok && c.today(l.Since) && l.Slot != 0 && l.Shoot == ""
}

// shootWords are the shoots of one graft.
var shootWords = []struct{ word, meaning string }{
	{"upper", "from the upper node"}, {"lower", "from the lower node"}, {"second", "from a second bud"}, {"only", "the graft has one shoot"},
}

func askLeaderShoot(c *Case, a *Ask) {
	l, ok := c.A.Leads()
	if !ok || l.Slot == 0 {
		a.Question, a.Because = "Choose the graft first.", "The shoot belongs to the graft that leads."
		a.choice(Choice{Key: "1", Word: "leader", Go: StepLeader})
		return
	}
	a.Question = fmt.Sprintf("Which shoot of graft %d leads?", l.Slot)
	a.Because = "The others on it are kept short, as a reserve."
	broken := record.LastOf(c.A.Broken)
	for i, s := range shootWords {
		ch := Choice{Key: strconv.Itoa(i + 1), Word: s.word, Meaning: s.meaning}
		if broken != nil && !broken.At.Before(c.A.Leader.At) {
			b := broken.What
			b.Shoot = s.word
			ch.Bodies, ch.Refines = []record.Body{&b}, []record.ID{broken.ID}
		} else {
			ch.Bodies = []record.Body{&record.LeaderChosen{Slot: l.Slot, Shoot: s.word}}
		}
		a.choice(ch)
	}
}

func doneLeaderShoot(c *Case) answer {
	l, _ := c.A.Leads()
	return spoken(l.Shoot)
}

func askPinch(c *Case, a *Ask) {
	a.Question = "Pinch every tip but the leader's. Done?"
	a.Because = c.because(due.Pinch, "Pinching holds the rivals back; after mid-August they stop by themselves.")
	a.choose("1", "pinched", "all but the leader", &record.Pinched{})
	a.choice(leaveIt("2"))
	a.Likely = "1"
}

func donePinch(c *Case) answer { return saidToday(c, c.A.Pinches, plain[record.Pinched]("pinched")) }
func lastPinch(c *Case) string { return saidBefore(c, c.A.Pinches, plain[record.Pinched]("pinched")) }

// breakers are what breaks a leader, as in the list of causes.
var breakers = []string{"wind", "bird perched", "deer or stock", "machine or person", "unknown"}

func askBroken(c *Case, a *Ask) {
	l, _ := c.A.Leads()
	a.Question = "What broke the leader?"
	a.Because = fmt.Sprintf("Graft %d has led since %s; next, another shoot takes over.", l.Slot, c.when(l.Since))
	for i, cause := range breakers {
		a.choose(strconv.Itoa(i+1), cause, "", &record.LeaderBroken{Cause: cause})
	}
	a.choice(Choice{Key: "6", Word: "another", Meaning: "pick from the list", Pick: PickCause, Picked: func(cause string) []record.Body { return []record.Body{&record.LeaderBroken{Cause: cause}} }})
	a.choice(Choice{Key: "7", Word: "not broken", Meaning: "leave it so", Leave: true})
}

func brokenWord(b record.LeaderBroken) string {
	if b.Promoted > 0 {
		return fmt.Sprintf("%s, graft %d took over", b.Cause, b.Promoted)
	}
	return b.Cause
}

func doneBroken(c *Case) answer { return saidToday(c, c.A.Broken, brokenWord) }
func lastBroken(c *Case) string { return saidBefore(c, c.A.Broken, brokenWord) }

// preferred is the living grafts, those that are known to grow better first,
// and what speaks for the first over the second; "" if nothing does.
func (c *Case) preferred() (grafts []*record.Graft, reason string) {
	grafts = c.A.Living()
	slices.SortStableFunc(grafts, func(x, y *record.Graft) int {
		return cmp.Or(cmp.Compare(c.A.ShootOf(y.Slot), c.A.ShootOf(x.Slot)), y.StateRank()-x.StateRank(), pushedFirst(c.A, x, y))
	})
	switch {
	case len(grafts) == 0:
		return grafts, ""
	case len(grafts) == 1:
		return grafts, "It is the only graft alive."
	}
	x, y := grafts[0], grafts[1]
	long, next := c.A.ShootOf(x.Slot), c.A.ShootOf(y.Slot)
	switch {
	case long > next && next > 0:
		return grafts, fmt.Sprintf("Graft %d grows best: %s against %s.", x.Slot, c.length(long), c.length(next))
	case x.StateRank() > y.StateRank():
		return grafts, fmt.Sprintf("Graft %d is further on: it is %s, the next %s.", x.Slot, record.StateWord(x.Was()), record.StateWord(y.Was()))
	case pushedFirst(c.A, x, y) < 0:
		return grafts, fmt.Sprintf("Graft %d pushed first, %s.", x.Slot, c.when(c.A.PushedAt(x.Slot)))
	}
	return grafts, ""
}
