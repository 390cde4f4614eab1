package walk

import (
	"fmt"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/trade"
)

// The steps of part 5.
const (
	StepSealCheck   StepID = "seal-check"
	StepReseal      StepID = "reseal"
	StepRingAgain   StepID = "ring-again"
	StepStake       StepID = "stake"
	StepVisit       StepID = "visit"
	StepDeath       StepID = "death"
	StepScratch     StepID = "scratch"
	StepShoots      StepID = "shoots"
	StepSprouts     StepID = "sprouts"
	StepSproutLeaf  StepID = "sprout-leaf"
	StepKeep        StepID = "keep-sprouts"
	StepLeader      StepID = "leader"
	StepLeaderShoot StepID = "leader-shoot"
	StepTie         StepID = "tie"
	StepPinch       StepID = "pinch"
	StepBroken      StepID = "leader-broken"
	StepTwine       StepID = "twine"
	StepTwineKind   StepID = "twine-kind"
	StepSeason      StepID = "seasons-end"
	StepTapes       StepID = "ties-off"
	StepHeadBack    StepID = "head-back"
	StepRival       StepID = "rival"
	StepSecond      StepID = "second-shoot"
	StepNurseOff    StepID = "nurse-limbs-off"
	StepTwineCheck  StepID = "twine-check"
	StepTwineMove   StepID = "twine-move"
	StepTwineCut    StepID = "cut-twine"
	StepUntie       StepID = "untie"
	StepFailed      StepID = "failed"
	StepGiveUp      StepID = "give-up"
	StepEnded       StepID = "ended"
	StepRest        StepID = "rest"
)

func afterSteps() []*Step {
	var out []*Step
	for _, part := range [][]*Step{sealAfterSteps(), stakeSteps(), visitSteps(), sproutSteps(), leaderSteps(), tieSteps(), twineSteps(), winterSteps(), endSteps()} {
		out = append(out, part...)
	}
	return out
}

// afterWhite is the step asked once the graft is white: what was begun today
// and not ended, then the work that is due, in the order of one visit.
func (c *Case) afterWhite() StepID {
	if id := c.begun(); id != "" {
		return id
	}
	for _, kind := range due.Kinds() {
		d, ok := c.Due(kind)
		if ok && d.Open(c.Now) && stepByID(kind.Step()).Part == PartAfter {
			return kind.Step()
		}
	}
	return StepRest
}

// begun is the step that ends what was begun today, "" if nothing was.
func (c *Case) begun() StepID {
	switch {
	case c.visitBegun():
		return StepVisit
	case len(c.deathsUntold()) > 0:
		return StepDeath
	case len(c.unscratched()) > 0:
		return StepScratch
	case c.leafUntold():
		return StepSproutLeaf
	case c.shootUntold():
		return StepLeaderShoot
	case c.twineUntold():
		return StepTwineKind
	case c.tightToday():
		return StepTwineCut
	}
	return ""
}

// tightToday says whether the twine was seen tight today and is on still.
func (c *Case) tightToday() bool {
	if !c.lives() || !c.A.TwineOn() {
		return false
	}
	at, tight := c.A.SeenTight()
	return tight && c.today(at)
}

// afterEnd is the step asked on a stump that is lost, given up or untied.
func (c *Case) afterEnd() StepID {
	_, keep := c.Due(due.KeepSprouts)
	switch stage := c.A.Stage(); {
	case stage != record.StageFailed:
		return StepEnded
	case len(c.deathsUntold()) > 0:
		return StepDeath
	case c.A.Failed == nil:
		return StepFailed
	case keep:
		return StepKeep
	}
	return StepEnded
}

// lives says whether the attempt is grafted and goes on.
func (c *Case) lives() bool {
	stage := c.A.Stage()
	return c.A.Grafted() && stage != record.StageFailed && stage != record.StageGivenUp && stage != record.StageUntied
}

func living(c *Case) bool { return c.lives() }

// growing says whether a graft lives that was seen pushing.
func growing(c *Case) bool { return c.lives() && !c.A.FirstPush().IsZero() }

// led says whether a leader was chosen.
func led(c *Case) bool { return c.lives() && c.A.Leader != nil }

// because is why the due of a kind stands, or another reason where it does not.
func (c *Case) because(kind due.Kind, otherwise string) string {
	if d, ok := c.Due(kind); ok && d.Open(c.Now) {
		return d.Sentence(c.B, c.Now)
	} else if ok {
		return fmt.Sprintf("Not due before %s. %s", c.when(d.Opens), d.Why(c.B))
	}
	return otherwise
}

// saidToday is what was last done at a step that comes round, if it was today.
func saidToday[T any](c *Case, list []record.Said[T], word func(T) string) string {
	if s := record.LastOf(list); s != nil && c.today(s.At) {
		return word(s.What) + ", " + c.when(s.At)
	}
	return ""
}

// saidBefore is what was last done at a step that comes round, with its day.
func saidBefore[T any](c *Case, list []record.Said[T], word func(T) string) string {
	if s := record.LastOf(list); s != nil {
		return word(s.What) + ", " + c.when(s.At)
	}
	return ""
}

func plain[T any](word string) func(T) string { return func(T) string { return word } }

// leaveIt is the choice to go on to the next stump, with the work still due.
func leaveIt(key string) Choice {
	return Choice{Key: key, Word: "next stump", Meaning: "it stays due", Leave: true}
}

var aids = []trade.Caution{trade.SawKnifeDrill, trade.CleanBlades}
