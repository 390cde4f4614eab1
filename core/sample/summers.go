package sample

import (
	"math"
	"slices"
	"strings"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/core/walk"
)

// scion is one scion with what will become of it.
type scion struct {
	slot   int
	set    time.Time
	faulty bool
	lives  bool
	pushes unit.Date // 0 if it never will
	dies   unit.Date // from when a visit finds it dead
	cause  string
}

// stakeInches is the height of the stakes above the graft.
const stakeInches = 48

// choosesAfter is the choice that is true of a stump in its after-care.
func (l *life) choosesAfter(c *walk.Case, ask walk.Ask, t time.Time) (walk.Choice, bool) {
	switch ask.Step.ID {
	case walk.StepSealCheck:
		cracked := l.odds(0.08)
		return choice(ask, func(b *record.SealChecked) bool { return b.Cracked == cracked })
	case walk.StepVisit:
		return l.visits(c, ask, t)
	case walk.StepDeath:
		return l.deaths(ask)
	case walk.StepScratch:
		return ask.Choices[0], true
	case walk.StepSprouts:
		near := l.between(0, 4)
		return choice(ask, func(b *record.SproutsRubbed) bool { return b.Near == near })
	case walk.StepSproutLeaf:
		leaf := l.one("little", "some", "some", "much")
		return choice(ask, func(b *record.SproutsRubbed) bool { return b.Leaf == leaf })
	case walk.StepFailed:
		l.given = l.odds(0.15)
		if ask.Likely == "" {
			return choice(ask, func(b *record.Failed) bool { return b.Cause == "unknown" })
		}
	case walk.StepBroken:
		l.regrows = t
		return ask.Choices[l.between(0, 1)], true
	case walk.StepKeep:
		n := l.between(1, 3)
		return choice(ask, func(b *record.SproutsKept) bool { return b.Number == n })
	case walk.StepLeader:
		if best := l.best(); best != nil {
			return l.leads(ask, best.slot)
		}
	case walk.StepLeaderShoot:
		return ask.Choices[l.between(0, 1)], true
	case walk.StepTwineKind:
		if l.odds(0.3) {
			return ask.Choices[1], true
		}
		return ask.Choices[0], true
	case walk.StepSeason:
		word := l.stands()
		return choice(ask, func(b *record.SeasonsEnd) bool { return b.Word == word })
	case walk.StepHeadBack:
		if l.staged == towers {
			return choice(ask, func(*record.AnotherYear) bool { return true })
		}
		short := l.length(t) <= stakeInches*8
		return choice(ask, func(b *record.HeadedBack) bool { return b.Short == short })
	case walk.StepTwineCheck:
		if l.isTight(t) {
			return choice(ask, func(b *record.TwineChecked) bool { return b.Tight })
		}
		if l.odds(0.1) {
			return keyed(ask, func(ch walk.Choice) bool { return ch.Go == walk.StepTwineMove })
		}
		return keyed(ask, func(ch walk.Choice) bool { return ch.Entry != nil })
	case walk.StepUntie:
		return ask.Choices[0], true
	}
	if ask.Likely != "" {
		return keyed(ask, func(ch walk.Choice) bool { return ch.Key == ask.Likely })
	}
	return keyed(ask, func(ch walk.Choice) bool { return len(ch.Bodies) > 0 })
}

// visits tells what the graft asked for does.
func (l *life) visits(c *walk.Case, ask walk.Ask, t time.Time) (walk.Choice, bool) {
	for _, s := range l.scions {
		state := s.state(unit.DateOf(t))
		ch, ok := choice(ask, func(b *record.Visited) bool {
			last := b.Found[len(b.Found)-1]
			return last.Slot == s.slot && last.State == state && !slices.ContainsFunc(b.Found[:len(b.Found)-1], func(f record.Finding) bool { return f.Slot == s.slot })
		})
		if ok && s.slot == firstUntold(c, t) {
			return ch, true
		}
	}
	return walk.Choice{}, false
}

// firstUntold is the first living graft that today's visit has not told of.
func firstUntold(c *walk.Case, t time.Time) int {
	v := record.LastOf(c.A.Visits)
	today := v != nil && c.B.Day(v.At) == c.B.Day(t)
	for _, g := range c.A.Grafts {
		if g.State != record.Dead && (!today || record.FindingOf(v, g.Slot) == nil) {
			return g.Slot
		}
	}
	return 0
}

// state is what a graft does on a day.
func (s *scion) state(d unit.Date) record.GraftState {
	switch {
	case !s.lives && d >= s.dies:
		return record.Dead
	case s.pushes != 0 && d >= s.pushes+14:
		return record.Growing
	case s.pushes != 0 && d >= s.pushes:
		return record.Pushing
	case s.pushes != 0 && d >= s.pushes-6:
		return record.Swelling
	}
	return record.NoChange
}

// deaths is the cause of the death that is asked for.
func (l *life) deaths(ask walk.Ask) (walk.Choice, bool) {
	for _, ch := range ask.Choices {
		if ch.Pick != walk.PickCause {
			continue
		}
		for _, s := range l.scions {
			told := ch.Picked(s.cause)[0].(*record.Visited)
			for _, f := range told.Found {
				if f.Slot == s.slot && f.State == record.Dead && f.Cause == s.cause && s.cause != "" && !already(ask, s.slot) {
					return walk.Choice{Bodies: []record.Body{told}, Refines: ch.Refines}, true
				}
			}
		}
	}
	return keyed(ask, func(ch walk.Choice) bool { return ch.Word == "unknown" })
}

// already says whether the cause of a graft's death stands in every answer
// offered: then it is another's that is asked for.
func already(ask walk.Ask, slot int) bool {
	causes := map[string]bool{}
	for _, ch := range ask.Choices {
		if len(ch.Bodies) == 0 {
			continue
		}
		for _, f := range ch.Bodies[0].(*record.Visited).Found {
			if f.Slot == slot {
				causes[f.Cause] = true
			}
		}
	}
	return len(causes) == 1
}

// best is the living graft that pushes first.
func (l *life) best() *scion {
	var best *scion
	for i := range l.scions {
		if s := &l.scions[i]; s.lives && (best == nil || s.pushes < best.pushes) {
			best = s
		}
	}
	return best
}

// shoot is the leader's length in eighths of an inch some days after its push:
// fast at first, slower towards the end of the season.
func (l *life) shoot(days float64) int {
	final := 8 * (14 + 52*l.vigour)
	return int(final * (1 - math.Exp(-days/45)))
}

// length is the leader's length at a time, in eighths of an inch: what it made
// in its first summer, and as much again over the second.
func (l *life) length(t time.Time) int {
	best := l.best()
	if best == nil {
		return 8
	}
	first := later(best.pushes.At(9, 0, l.Zone), l.regrows)
	end := unit.MakeDate(first.Year(), time.October, 1).At(0, 0, l.Zone)
	long := l.shoot(days(first, earlier(t, end)))
	if second := unit.MakeDate(first.Year()+1, time.May, 10).At(0, 0, l.Zone); t.After(second) {
		long += l.shoot(days(second, t)) * 2 / 3
	}
	return max(long, 4)
}

// opens is a step that the hand chooses by itself, since it sees that it is so:
// shoots measured when one of them is to lead, a leader that a gale broke, a
// rival when the leader is headed back.
func (l *life) opens(c *walk.Case) (walk.StepID, bool) {
	if l.staged != asItFalls {
		return "", false
	}
	a := c.A
	d, _ := due.First(c.Dues(), c.Now)
	switch {
	case d.Kind == due.Leader && a.Leader == nil && l.whim < 0.3 && growsUnmeasured(a):
		return walk.StepShoots, true
	case d.Kind == due.Pinch && l.whim > 0.97 && len(a.Broken) == 0 && len(a.Ties) > 0 && len(a.Headed) == 0:
		return walk.StepBroken, true
	case l.whim < 0.3 && len(a.RivalsCut) == 0 && a.HeadedBack() && c.B.Day(record.LastOf(a.Headed).At) == c.B.Day(c.Now):
		return walk.StepRival, true
	}
	return "", false
}

// growsUnmeasured says whether a graft grows and no shoot was measured.
func growsUnmeasured(a *record.Attempt) bool {
	grows := false
	for _, g := range a.Living() {
		if a.ShootOf(g.Slot) > 0 {
			return false
		}
		grows = grows || !g.Waiting()
	}
	return grows
}

// leads is the choice of a graft to lead, the first time or in place of a leader
// that broke.
func (l *life) leads(ask walk.Ask, slot int) (walk.Choice, bool) {
	if ch, ok := choice(ask, func(b *record.LeaderBroken) bool { return b.Promoted == slot }); ok {
		return ch, true
	}
	return choice(ask, func(b *record.LeaderChosen) bool { return b.Slot == slot })
}

// shootsOf is the longest shoot of each graft that grows, the leader's the
// longest of all.
func (l *life) shootsOf(c *walk.Case, t time.Time) string {
	var typed []string
	best := l.best()
	for _, g := range c.A.Living() {
		long := l.length(t)
		if best == nil || g.Slot != best.slot {
			long = long * 2 / 3
		}
		if !g.Waiting() {
			typed = append(typed, eighths(max(long, 2)).Typed)
		}
	}
	return strings.Join(typed, ", ")
}

// days is how many days lie between two times.
func days(from, to time.Time) float64 { return to.Sub(from).Hours() / 24 }

// earlier is the earlier of two times.
func earlier(a, b time.Time) time.Time {
	if a.Before(b) {
		return a
	}
	return b
}

// stem is the leader's girth above the graft in eighths of an inch: about 3 in
// more each year on an old root.
func (l *life) stem(t time.Time) int {
	best := l.best()
	if best == nil {
		return 12
	}
	return 12 + int(22*l.vigour*math.Sqrt(max(0, days(best.pushes.At(9, 0, l.Zone), t)/365)))
}

// stands is how the tree stands when its season is over.
func (l *life) stands() string {
	switch {
	case l.vigour > 1.05:
		return "strong"
	case l.vigour < 0.7:
		return "weak"
	}
	return "fair"
}
