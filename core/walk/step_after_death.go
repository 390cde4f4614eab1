package walk

import (
	"fmt"
	"slices"
	"strconv"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/trade"
)

// deathsUntold is the grafts that today's visit found dead without saying of
// what.
func (c *Case) deathsUntold() (out []*record.Graft) {
	v := c.visitToday()
	for _, g := range c.A.Grafts {
		if f := record.FindingOf(v, g.Slot); f != nil && f.State == record.Dead && f.Cause == "" {
			out = append(out, g)
		}
	}
	return out
}

// causesUnmoved and causesMoved are the likelier causes of death of a graft that
// never pushed, and of one that had.
var (
	causesUnmoved = []string{"never moved", "bled", "dried out or seal cracked", "overheated", "bark lifted", "poor wood", "set upside down", "earwigs"}
	causesMoved   = []string{"collapsed after push", "wind", "bird perched", "deer or stock", "outgrown by sprouts", "frost", "earwigs", "machine or person"}
)

// overheated is the cause of death that late white points to.
const overheated = "overheated"

// withOverheated has it among the likelier causes, in the place of the least
// likely one of them.
func withOverheated(causes []string) []string {
	if slices.Contains(causes, overheated) {
		return causes
	}
	return append(slices.Clone(causes[:len(causes)-1]), overheated)
}

// lateWords says that white came late, where that may have killed the grafts.
func (c *Case) lateWords() string {
	late, ok := due.AttemptLate(c.S, c.A, c.B, c.Now)
	switch {
	case !ok:
		return ""
	case late.Painted.IsZero():
		return "It was not painted white though the bark passed 45 C / 113 F, as worked out: it may have overheated."
	}
	return fmt.Sprintf("It was painted white %s: it may have overheated.", late.Words(c.Now))
}

func askDeath(c *Case, a *Ask) {
	untold := c.deathsUntold()
	if len(untold) == 0 {
		a.Question, a.Because = "No death is left to explain.", "Each graft found dead today has its cause."
		a.choice(leaveIt("1"))
		return
	}
	g, v := untold[0], c.visitToday()
	a.Question = fmt.Sprintf("Graft %d is dead. What killed it?", g.Slot)
	a.Because = "It had not moved when it was last seen."
	causes := causesUnmoved
	if !c.A.PushedAt(g.Slot).IsZero() {
		a.Because = fmt.Sprintf("It was seen pushing %s.", c.when(c.A.PushedAt(g.Slot)))
		causes = causesMoved
	}
	if late := c.lateWords(); late != "" {
		a.Because = joined(a.Because, late)
		causes = withOverheated(causes)
	}
	died := func(cause string) []record.Body { return []record.Body{withCause(v.What, g.Slot, cause)} }
	for i, cause := range causes {
		key := strconv.Itoa(i + 1)
		a.choice(Choice{Key: key, Word: cause, Bodies: died(cause), Refines: []record.ID{v.ID}})
		if cause == causeOfAnother(v.What, g.Slot) {
			a.Likely = key
		}
	}
	a.choice(Choice{Key: "9", Word: "another", Meaning: "pick from the list", Pick: PickCause, Picked: died, Refines: []record.ID{v.ID}})
	a.choice(Choice{Key: "0", Word: "unknown", Bodies: died("unknown"), Refines: []record.ID{v.ID}})
}

// withCause is the visit with the cause of one graft's death.
func withCause(v record.Visited, slot int, cause string) *record.Visited {
	found := append([]record.Finding(nil), v.Found...)
	for i := range found {
		if found[i].Slot == slot {
			found[i].Cause = cause
		}
	}
	return &record.Visited{Found: found}
}

// causeOfAnother is a cause already told on the same visit, "" if there is none.
func causeOfAnother(v record.Visited, slot int) (cause string) {
	for _, f := range v.Found {
		if f.Slot != slot && f.State == record.Dead && f.Cause != "" {
			cause = f.Cause
		}
	}
	return cause
}

// scratchTime says whether grafts that have not moved are to be scratched.
func (c *Case) scratchTime() bool {
	return c.lives() && c.sinceSet() >= trade.ScratchFrom
}

// unscratched is the grafts that today's visit found unmoved, late in the wait,
// and did not scratch.
func (c *Case) unscratched() (out []*record.Graft) {
	v := c.visitToday()
	if v == nil || !c.scratchTime() {
		return nil
	}
	for _, g := range c.A.Grafts {
		if f := record.FindingOf(v, g.Slot); f != nil && g.Waiting() && f.Scratch == "" {
			out = append(out, g)
		}
	}
	return out
}

func askScratch(c *Case, a *Ask) {
	v := c.visitToday()
	left := c.unscratched()
	if v == nil || len(left) == 0 {
		a.Question, a.Because = "Look at the buds first.", "Only a graft seen unmoved today is scratched."
		a.choice(Choice{Key: "1", Word: "buds", Go: StepVisit})
		return
	}
	a.Question = fmt.Sprintf("Scratch graft %d: green or brown?", left[0].Slot)
	a.Because = fmt.Sprintf("It was set %d days ago and does not move: a green one may wait until day %d.", c.sinceSet(), trade.GreenWaits)
	if c.sinceSet() >= trade.GreenWaits {
		a.Because = fmt.Sprintf("It was set %d days ago: past day %d a green scion seldom pushes.", c.sinceSet(), trade.GreenWaits)
	}
	see := func(key, word, meaning string, grafts []*record.Graft, s record.Scratch) {
		a.choice(Choice{Key: key, Word: word, Meaning: meaning, Bodies: []record.Body{scratched(v.What, grafts, s)}, Refines: []record.ID{v.ID}})
	}
	see("1", "green", "alive: it waits", left[:1], record.Green)
	see("2", "brown", "dead: it never moved", left[:1], record.Brown)
	if len(left) > 1 {
		see("3", "all green", "", left, record.Green)
		see("4", "all brown", "", left, record.Brown)
	}
	a.choice(leaveIt("5"))
}

// scratched is the visit with what showed under the bark; brown is dead.
func scratched(v record.Visited, grafts []*record.Graft, s record.Scratch) *record.Visited {
	found := append([]record.Finding(nil), v.Found...)
	for i := range found {
		for _, g := range grafts {
			if found[i].Slot != g.Slot {
				continue
			}
			if found[i].Scratch = s; s == record.Brown {
				found[i].State, found[i].Cause = record.Dead, "never moved"
			}
		}
	}
	return &record.Visited{Found: found}
}

func doneScratch(c *Case) answer {
	v := c.visitToday()
	if v == nil || len(c.unscratched()) > 0 {
		return open
	}
	green, brown := 0, 0
	for _, f := range v.What.Found {
		switch f.Scratch {
		case record.Green:
			green++
		case record.Brown:
			brown++
		}
	}
	if green+brown == 0 {
		return open
	}
	return told(fmt.Sprintf("%d green, %d brown", green, brown))
}
