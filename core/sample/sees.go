package sample

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"time"

	"barkslip/core/record"
	"barkslip/core/walk"
)

// answer is what the hand in charge answers to a question of the walk: what must
// be seen as it is, what is typed as it is measured, and else the likely answer.
// Without one the stump is left.
func (l *life) answer(c *walk.Case, ask walk.Ask, t time.Time) ([]record.Body, []record.ID) {
	if l.onStep != nil {
		l.onStep(ask.Step.ID)
	}
	if text := l.types(c, ask, t); text != "" && ask.Entry != nil {
		return l.read(*ask.Entry, text)
	}
	if ask.Checks != nil {
		return ask.Checks.Record(l.checks(len(ask.Checks.Items), c.Slot(), t)), nil
	}
	if ch, ok := l.chooses(c, ask, t); ok {
		return l.take(c, ch, t)
	}
	return nil, nil
}

// read reads what is typed; where it is in doubt it is as typed.
func (l *life) read(e walk.Entry, text string) ([]record.Body, []record.ID) {
	bodies, err := e.Read(text)
	var doubt *walk.Doubt
	if errors.As(err, &doubt) {
		for _, way := range doubt.Ways {
			if len(way.Bodies) > 0 {
				return way.Bodies, way.Refines
			}
		}
	}
	return bodies, e.Refines
}

// take is what a choice comes to; where it is in doubt it is so all the same.
func (l *life) take(c *walk.Case, ch walk.Choice, t time.Time) ([]record.Body, []record.ID) {
	switch {
	case ch.Doubt != nil:
		for _, way := range ch.Doubt.Ways {
			if len(way.Bodies) > 0 {
				return way.Bodies, way.Refines
			}
		}
	case ch.Pick == walk.PickReason:
		why := l.one("rain coming", "last stick of the bundle", "crew goes home today", "looked dry enough to me")
		return []record.Body{&record.AgainstAdvice{Verdict: c.Advice.Verdict, Why: why}}, nil
	case ch.Go != "":
		return l.answer(c, c.Ask(ch.Go, false), t)
	case ch.Entry != nil:
		return l.read(*ch.Entry, l.types(c, walk.Ask{Step: c.Ask(c.Present(), false).Step, Entry: ch.Entry}, t))
	}
	return ch.Bodies, ch.Refines
}

// choice finds a choice by what it says.
func choice[T record.Body](ask walk.Ask, says func(T) bool) (walk.Choice, bool) {
	i := slices.IndexFunc(ask.Choices, func(ch walk.Choice) bool {
		if len(ch.Bodies) == 0 {
			return false
		}
		b, ok := ch.Bodies[0].(T)
		return ok && says(b)
	})
	if i < 0 {
		return walk.Choice{}, false
	}
	return ask.Choices[i], true
}

func keyed(ask walk.Ask, match func(walk.Choice) bool) (walk.Choice, bool) {
	i := slices.IndexFunc(ask.Choices, match)
	if i < 0 {
		return walk.Choice{}, false
	}
	return ask.Choices[i], true
}

// chooses is the choice that is true of the stump.
func (l *life) chooses(c *walk.Case, ask walk.Ask, t time.Time) (walk.Choice, bool) {
	switch ask.Step.ID {
	case walk.StepLimbs:
		n := l.between(1, 3)
		if l.odds(0.07) {
			n = 0
		}
		return choice(ask, func(b *record.NurseJudged) bool { return b.Limbs == n })
	case walk.StepLeaf:
		leaf := l.one("little", "some", "some", "much")
		return choice(ask, func(b *record.NurseJudged) bool { return b.Leaf == leaf })
	case walk.StepBleeding, walk.StepNewFace:
		return l.looks(c, ask, t)
	case walk.StepSlip:
		slip := record.SlipsClean
		if !l.drags && l.staged == asItFalls && l.odds(0.05) {
			slip, l.drags = record.Drags, true
		}
		return choice(ask, func(b *record.Looked) bool { return b.Slip == slip })
	case walk.StepWait, walk.StepLeave:
		if l.hurried {
			if ch, ok := keyed(ask, func(ch walk.Choice) bool { return ch.Pick == walk.PickReason }); ok {
				return ch, true
			}
		}
		return ask.Choices[0], ask.Step.ID == walk.StepLeave
	case walk.StepFreshCut:
		torn := l.odds(0.06)
		return choice(ask, func(b *record.FreshCut) bool { return (len(b.Torn) > 0) == torn })
	case walk.StepLongWay:
		return ask.Choices[l.between(0, 3)], true
	case walk.StepWood:
		return choice(ask, func(b *record.WoodChosen) bool { return b.Lot == l.wood.Lot })
	case walk.StepNodes:
		return l.buds(ask)
	case walk.StepSeal:
		cover := record.Wrapped
		if l.odds(0.2) {
			cover = record.Bare
		}
		l.decideFates(c, t)
		return choice(ask, func(b *record.Sealed) bool { return b.Cover == cover })
	case walk.StepWhite:
		return l.paintsOrNot(ask, t)
	case walk.StepEnded:
		return l.ended(ask)
	case walk.StepGiveUp:
		key := l.one("3", "4")
		return keyed(ask, func(ch walk.Choice) bool { return ch.Key == key })
	}
	return l.choosesAfter(c, ask, t)
}

// looks is a look at the face as it is by now. Sap falls by the day.
func (l *life) looks(c *walk.Case, ask walk.Ask, t time.Time) (walk.Choice, bool) {
	if !l.sapAt.IsZero() {
		l.sap -= 0.06 * t.Sub(l.sapAt).Hours() / 24
	}
	l.sapAt = t
	l.sap -= 0.1 * float64(len(c.A.Gashes)+len(c.A.Holes)-1) * l.real() / 2
	face := l.face()
	return choice(ask, func(b *record.Looked) bool { return b.Bleeding == face })
}

// face is how the face shows the sap there is.
func (l *life) face() record.Bleeding {
	switch sap := l.sap + 0.1*l.real(); {
	case sap < 0.55:
		return record.Dry
	case sap < 0.66:
		return record.Damp
	case sap < 0.85:
		return record.Weeping
	}
	return record.Running
}

// tempted says whether the hand grafts on this visit although told otherwise:
// the learner and the hurried do.
func (l *life) tempted() bool {
	return l.staged == againstAll || l.staged == asItFalls && l.odds(0.025-0.12*min(l.hand.skill, 0))
}

// buds is two nodes as the lot's are, some of them with one bud alone.
func (l *life) buds(ask walk.Ask) (walk.Choice, bool) {
	want := l.wood.Buds
	if ch, ok := choice(ask, func(b *record.WoodChosen) bool {
		return len(b.Nodes) == 2 && b.Nodes[0].Buds == want && b.Nodes[1].Buds == want
	}); ok {
		return ch, true
	}
	return keyed(ask, func(ch walk.Choice) bool { return ch.Key == ask.Likely })
}

// paintsOrNot is painting, or finding the sealer wet still.
func (l *life) paintsOrNot(ask walk.Ask, t time.Time) (walk.Choice, bool) {
	wet := l.staged == stillWet && len(l.s.Now().StillWet) == 0 || l.staged == asItFalls && l.odds(0.1)
	if wet {
		rain := l.odds(0.2)
		return choice(ask, func(b *record.StillWet) bool { return b.Rain == rain })
	}
	if late := t.Sub(l.s.Now().Coat()) - 3*time.Hour; late > 0 {
		l.paintedLate(late)
	}
	return choice(ask, func(*record.PaintedWhite) bool { return true })
}

// ended is what comes of a stump that is lost: grafted again, or given up.
func (l *life) ended(ask walk.Ask) (walk.Choice, bool) {
	if l.staged == isGivenUp || l.tries > 2 || l.given {
		return keyed(ask, func(ch walk.Choice) bool { return ch.Go == walk.StepGiveUp })
	}
	return keyed(ask, func(ch walk.Choice) bool { return ch.Go == walk.StepLimbs })
}

// types is what is typed at a step where something is.
func (l *life) types(c *walk.Case, ask walk.Ask, t time.Time) string {
	if ask.Entry == nil {
		return ""
	}
	switch ask.Step.ID {
	case walk.StepReach:
		if len(c.A.LimbsOff) == 0 && l.odds(0.06) {
			return strconv.Itoa(l.between(8, 16)) + "in"
		}
		return strconv.Itoa(l.between(19, 36)) + "in"
	case walk.StepHeight:
		l.tries++
		return fmt.Sprintf("%din %s", l.between(80, 84)-12*len(l.s.Attempts[1:]), eighths(l.across).Typed)
	case walk.StepTorn:
		return fmt.Sprintf("%d:%s", l.between(0, 35)*10, typed(l.between(4, 9)))
	case walk.StepMeasure:
		return eighths(l.across).Typed + ", " + eighths(l.across-l.between(0, 3)).Typed
	case walk.StepThick:
		return l.wood.thick.Typed
	case walk.StepSplit:
		return eighths(l.between(3, 10)).Typed
	case walk.StepStake:
		return fmt.Sprintf("%din %d", stakeInches, l.between(26, 30)*10)
	case walk.StepSprouts:
		return strconv.Itoa(l.between(6, 9))
	case walk.StepTie:
		return eighths(l.length(t)).Typed
	case walk.StepTwine, walk.StepTwineMove:
		stem := l.stem(t)
		loop := 2*stem + l.between(2, 20)
		if l.staged == tightTwine {
			loop = 4 * stem
		}
		return eighths(loop).Typed + ", " + eighths(stem).Typed
	case walk.StepTwineCheck:
		return eighths(l.stem(t)).Typed
	case walk.StepHeadBack:
		return strconv.Itoa(stakeInches+l.between(1, 6)) + "in"
	case walk.StepShoots:
		return l.shootsOf(c, t)
	}
	return ask.Entry.Likely
}

// typed is a length in eighths without a space.
func typed(n int) string { return fmt.Sprintf("%gin", float64(n)/8) }

// checks is the six checks of a scion and its slit; a learner's are not all
// good.
func (l *life) checks(n, slot int, t time.Time) []bool {
	good := make([]bool, n)
	for i := range good {
		good[i] = true
	}
	faulty := l.odds(0.04 - 0.06*min(l.hand.skill, 0))
	if faulty {
		good[l.between(1, 4)] = false
	}
	if l.odds(0.05) {
		good[n-1] = false
	}
	l.scions = append(slices.DeleteFunc(l.scions, func(s scion) bool { return s.slot == slot }), scion{slot: slot, set: t, faulty: faulty})
	return good
}

// befalls is what happens to a stump apart from its walk before somebody comes: a
// tree of later years that did not come through its winter.
func (l *life) befalls(t time.Time) {
	a := l.s.Now()
	if l.lostIn == 0 || t.Year() < l.lostIn || t.Month() < time.April || a.Leader == nil || a.Failed != nil {
		return
	}
	l.say(t.Add(-time.Minute), "MK", &record.Failed{Cause: l.one("frost", "deer or stock", "girdled", "machine or person")})
	l.lostIn, l.given = 0, l.odds(0.15)
}
