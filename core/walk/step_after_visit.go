package walk

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/trade"
)

func visitSteps() []*Step {
	return []*Step{
		{ID: StepVisit, Part: PartAfter, Name: "look at buds",
			LookFor:  "Buds swelling, green at their tips, shoots with leaves; which graft does what.",
			Why:      "Buds move two to three weeks on, and moving is not yet taking: food stored in the wood can push a bud that then collapses.",
			NotRight: "Shrivelled wood or a bud that falls at a touch is dead; plump wood with tight buds may wait.",
			Cautions: []trade.Caution{trade.CrewHeat},
			Facts:    []trade.Fact{trade.BudsMove, trade.BudRounds, trade.MovingNotTaking, trade.CallusDays},
			applies:  living, done: doneVisit, last: lastVisit, ask: askVisit},
		{ID: StepDeath, Part: PartAfter, Name: "cause",
			LookFor:  "Where it is brown, whether the cambium is wet or dry, tooth marks, a broken tip, a crack.",
			Why:      "What is known of each loss is next year's better graft; unknown is an honest answer.",
			NotRight: "Not sure: unknown, rather than a guess.",
			applies:  func(c *Case) bool { return len(c.deathsUntold()) > 0 }, ask: askDeath},
		{ID: StepScratch, Part: PartAfter, Name: "scratch",
			LookFor:  "A nick in the bark of the scion, low down: green and moist, or brown.",
			Why:      "A green scion can still push after six weeks; a brown one never will.",
			NotRight: "Green at the base and brown at the tip: count it as green and look again.",
			Facts:    []trade.Fact{trade.ScratchTest}, Cautions: []trade.Caution{trade.CleanBlades},
			applies: func(c *Case) bool { return c.scratchTime() && !c.A.Settled() }, done: doneScratch, ask: askScratch},
		{ID: StepShoots, Part: PartAfter, Name: "shoots",
			LookFor: "The longest shoot of each graft, from where it leaves the scion to its tip.",
			Why:     "Two measures tell how fast it grows, and so the day of the next tie; the best grower leads.",
			Facts:   []trade.Fact{trade.Leader, trade.TieTime, trade.TwineTime},
			applies: growing, done: doneShoots, last: lastShoots, ask: askShoots},
	}
}

// visitToday is the newest visit, if it was today; what it told of a scion that
// is no more is left out.
func (c *Case) visitToday() *record.Said[record.Visited] {
	v := record.LastOf(c.A.Visits)
	if v == nil || !c.today(v.At) {
		return nil
	}
	seen := *v
	seen.What.Found = slices.DeleteFunc(slices.Clone(v.What.Found), func(f record.Finding) bool { return c.A.Graft(f.Slot) == nil })
	return &seen
}

// unseen is the grafts that today's visit has not seen; without a visit today
// all that live. Asked again, a visit that was whole begins anew with the dead.
func (c *Case) unseen() (out []*record.Graft) {
	v := c.visitToday()
	for _, g := range c.A.Grafts {
		if record.FindingOf(v, g.Slot) == nil && (g.State != record.Dead || c.again) {
			out = append(out, g)
		}
	}
	if len(out) == 0 && v != nil {
		return c.A.Grafts
	}
	return out
}

// visitBegun says whether a visit of today has seen some grafts and not all.
func (c *Case) visitBegun() bool {
	v := c.visitToday()
	if v == nil {
		return false
	}
	for _, g := range c.A.Living() {
		if record.FindingOf(v, g.Slot) == nil {
			return true
		}
	}
	return false
}

func askVisit(c *Case, a *Ask) {
	left := c.unseen()
	if len(left) == 0 {
		a.Question, a.Because = "No graft lives here.", "There are no buds to look at."
		a.choice(leaveIt("1"))
		return
	}
	so, refines := record.Visited{}, []record.ID(nil)
	if v := c.visitToday(); v != nil {
		refines = []record.ID{v.ID}
		if len(left) < len(c.A.Grafts) {
			so.Found = v.What.Found
		}
	}
	g := left[0]
	a.Question = fmt.Sprintf("%s: what do its buds do?", c.graftWord(g))
	_, confirm := c.openDue(due.ConfirmTake)
	a.Because = c.visitWhy(confirm)
	if c.visitBegun() {
		a.Because = fmt.Sprintf("%d of %d seen on this visit.", len(c.A.Grafts)-len(left), len(c.A.Grafts))
	}
	see := func(key, word, meaning string, grafts []*record.Graft, state record.GraftState) {
		a.choice(Choice{Key: key, Word: word, Meaning: meaning, Refines: refines, Bodies: []record.Body{visitWith(so, grafts, state)}})
	}
	meanings := []string{"tight, as set", "fat, still closed", "green shows", "a shoot with leaves", "then the cause"}
	for i, state := range record.GraftStates {
		see(strconv.Itoa(i+1), record.StateWord(state), meanings[i], left[:1], state)
	}
	if len(left) > 1 {
		for i, state := range record.GraftStates[1:] {
			see(strconv.Itoa(i+6), allWord(left, c.A)+" "+record.StateWord(state), "", left, state)
			if ch := &a.Choices[len(a.Choices)-1]; state == record.Dead && len(left) == len(c.A.Living()) {
				ch.Doubt = c.allDead(ch.Bodies, refines...)
			}
		}
	}
	see("0", allWord(left, c.A)+" as before", c.beforeWord(left), left, "")
}

// allDead asks once more before the last grafts of a stump are put down as dead
// by one key: it ends them.
func (c *Case) allDead(bodies []record.Body, refines ...record.ID) *Doubt {
	ends := "That ends the last graft here."
	if n := len(c.A.Living()); n > 1 {
		ends = fmt.Sprintf("That ends all %d grafts here.", n)
	}
	return &Doubt{ends, []Choice{
		{Key: "5", Word: "all dead", Meaning: "seen, each of them", Bodies: bodies, Refines: refines}}}
}

// with is the visit with more grafts seen in a state; "" is each as it was.
func visitWith(v record.Visited, grafts []*record.Graft, state record.GraftState) *record.Visited {
	found := append([]record.Finding(nil), v.Found...)
	for _, g := range grafts {
		f := record.Finding{Slot: g.Slot, State: state}
		if f.State == "" {
			f.State = g.Was()
		}
		if f.State == record.Dead {
			f.Cause = g.Cause
		}
		found = append(found, f)
	}
	return &record.Visited{Found: found}
}

// beforeWord tells the states as they were, for an answer of nothing new.
func (c *Case) beforeWord(left []*record.Graft) string {
	states := map[record.GraftState]bool{}
	for _, g := range left {
		states[g.Was()] = true
	}
	if len(states) == 1 {
		return record.StateWord(left[0].Was())
	}
	return "each as last seen"
}

// graftWord names a graft by its slot and where it stands.
func (c *Case) graftWord(g *record.Graft) string {
	if s := c.A.Slots; s != nil && g.Slot <= len(s.What.Slots) {
		return fmt.Sprintf("Graft %d of %d, at %s", g.Slot, len(c.A.Grafts), s.What.Slots[g.Slot-1].Bearing.Words())
	}
	return fmt.Sprintf("Graft %d of %d", g.Slot, len(c.A.Grafts))
}

func (c *Case) openDue(kind due.Kind) (due.Due, bool) {
	d, ok := c.Due(kind)
	return d, ok && d.Open(c.Now)
}

func (c *Case) visitWhy(confirm bool) string {
	if confirm {
		return c.because(due.ConfirmTake, "")
	}
	return c.because(due.Buds, fmt.Sprintf("Scions set %d days ago; moving is not yet taking.", c.sinceSet()))
}

// sinceSet is the days since the last scion was set.
func (c *Case) sinceSet() int { return int(c.B.Day(c.Now) - c.B.Day(c.A.SetAt())) }

func visitWord(v record.Visited) string {
	count := map[record.GraftState]int{}
	for _, f := range v.Found {
		count[f.State]++
	}
	var words []string
	for _, s := range record.GraftStates {
		if count[s] > 0 {
			words = append(words, fmt.Sprintf("%d %s", count[s], record.StateWord(s)))
		}
	}
	return strings.Join(words, ", ")
}

func doneVisit(c *Case) answer {
	if c.visitBegun() {
		return open
	}
	return saidToday(c, c.A.Visits, visitWord)
}

func lastVisit(c *Case) string { return saidBefore(c, c.A.Visits, visitWord) }

// allWord stands before what is said of several grafts at once.
func allWord(left []*record.Graft, a *record.Attempt) string {
	switch {
	case len(left) == 1:
		return "it is"
	case len(left) == len(a.Grafts):
		return "all"
	}
	return "the rest"
}
