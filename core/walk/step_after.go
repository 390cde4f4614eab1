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

// begun is the step that ends what was begun today, "" if nothing was.
func (c *Case) begun() StepID {
	switch {
	case c.inCutBack():
		return c.cuttingBack()
	case len(c.A.Grafts) == 0 && !c.over() && c.AgainstToday():
		return c.grafting()
	case !c.over() && c.A.Sealed == nil && c.split(true) != nil:
		return StepSplit
	case c.ringWanted():
		return StepRing
	case !c.over() && c.visitBegun():
		return StepVisit
	case len(c.deathsUntold()) > 0:
		return StepDeath
	case c.lostToday():
		return StepFailed
	case c.over():
		return ""
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

// ringWanted says whether the graft was painted today on a block with earwigs
// and has no ring yet.
func (c *Case) ringWanted() bool {
	a := c.A
	return c.B.Earwigs && !c.over() && a.White != nil && c.today(a.White.At) && c.today(a.SetAt()) && a.IsWhite() && len(a.Rings) == 0
}

// lostToday says whether the last graft was seen dead today and the cause of the
// whole loss is not told.
func (c *Case) lostToday() bool {
	return c.A.Failed == nil && c.A.AllDead() && c.today(c.A.LostAt())
}

// tightToday says whether the twine was seen tight today and is on still.
func (c *Case) tightToday() bool {
	if !c.lives() || !c.A.TwineOn() {
		return false
	}
	at, tight := c.A.SeenTight()
	return tight && c.today(at)
}

// lives says whether the attempt is grafted and goes on.
func (c *Case) lives() bool {
	return c.A.Grafted() && !c.over()
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
func saidToday[T any](c *Case, list []record.Said[T], word func(T) string) answer {
	if s := record.LastOf(list); s != nil && c.today(s.At) {
		return told(word(s.What) + ", " + c.when(s.At))
	}
	return open
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
