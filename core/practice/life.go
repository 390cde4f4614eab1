package practice

import (
	"time"

	"barkslip/core/record"
	"barkslip/core/unit"
)

// What follows tells a stump's life up to a point, by what a grafter would have
// answered. Each part stands on the one before.

// limbs judges the nurse limbs on the day of cutting back, so many days before the
// graft, and leaves the clock there.
func (t *tale) limbs(before int) *tale {
	return t.on(-before, 9, 5, &record.NurseJudged{Limbs: 2, Nearest: t.inches(float64(t.of(24, 36))), Leaf: "some"})
}

// cutBack is cut back and gashed so many days before the graft.
func (t *tale) cutBack(before int) *tale {
	return t.limbs(before).did(&record.CutBack{Height: t.inches(float64(t.of(34, 44)))}, &record.Gashed{Number: 2})
}

// ready is drained, gashed and cut afresh on the day of the graft, and its new face
// found dry.
func (t *tale) ready() *tale {
	t.cutBack(t.of(7, 10))
	t.on(0, 8, 30, &record.Looked{Bleeding: record.Dry}, &record.Looked{Slip: record.SlipsClean}, &record.Gashed{Number: 2}, &record.FreshCut{Height: t.inches(float64(t.of(27, 31)))})
	return t.later(16).did(&record.Looked{Bleeding: record.Dry, Wiped: true})
}

// measured is ready and measured, a little oval or round.
func (t *tale) measured() *tale {
	t.ready()
	return t.did(&record.StumpMeasured{Across: t.inches(pick(&t.dice, 2.5, 2.75, 3, 3.25, 3.5))})
}

// marked has its slots, three of them.
func (t *tale) marked() *tale {
	t.measured()
	s := record.SlotsMarked{}
	for _, b := range []unit.Bearing{20, 140, 260} {
		s.Slots = append(s.Slots, record.Slot{Bearing: b})
	}
	return t.did(&s)
}

// wooded has its wood.
func (t *tale) wooded() *tale {
	t.marked()
	return t.did(&record.WoodChosen{Variety: t.b.Variety, Thickness: t.fine(0.4375), Nodes: twoPairs})
}

var twoPairs = []record.Node{{Buds: record.Paired}, {Buds: record.Paired}}

// scion is one set with all as it should be.
func (t *tale) scion(slot int) *record.ScionSet {
	return &record.ScionSet{Slot: slot, Variety: t.b.Variety, Thickness: t.fine(0.4375), Nodes: twoPairs, Checks: record.AllGood}
}

// set has its three scions.
func (t *tale) set() *tale { return t.wooded().did(t.scion(1), t.scion(2), t.scion(3)) }

// sealed is set and sealed.
func (t *tale) sealed(cover record.Cover) *tale {
	return t.set().later(t.of(8, 15)).did(&record.Sealed{Cover: cover})
}

// white is sealed, painted white when it was dry, and looked at two days later.
func (t *tale) white(cover record.Cover) *tale {
	t.sealed(cover)
	return t.later(t.of(121, 140)).did(&record.PaintedWhite{}).on(2, 9, 0, &record.SealChecked{})
}

// visit is a look at all three grafts.
func visit(states ...record.GraftState) *record.Visited {
	v := &record.Visited{}
	for i, s := range states {
		f := record.Finding{Slot: i + 1, State: s}
		if s == record.Dead {
			f.Cause = "never moved"
		}
		v.Found = append(v.Found, f)
	}
	return v
}

// rubbed is a round of rubbing with all told.
func rubbed() *record.SproutsRubbed { return &record.SproutsRubbed{Near: 2, Below: 1, Leaf: "some"} }

// pushed is white, and seen pushing so many days after the graft with sprouts
// rubbed that day.
func (t *tale) pushed(days int) *tale {
	return t.white(record.Wrapped).on(days, 9, 0, visit(record.Pushing, record.Pushing, record.Swelling), rubbed())
}

// staked is pushed and staked on the same day.
func (t *tale) staked(days int) *tale {
	return t.pushed(days).did(&record.Staked{Height: t.inches(60)})
}

// taken is staked, seen growing a week and a month after push, rubbed as it should
// be, and tied.
func (t *tale) led(push int) *tale {
	t.staked(push)
	t.on(push+7, 9, 0, visit(record.Growing, record.Growing, record.Pushing), rubbed())
	t.on(push+14, 9, 0, visit(record.Growing, record.Growing, record.Growing), rubbed(), &record.LeaderChosen{Slot: 2, Shoot: "upper"}, &record.Pinched{}, &record.Tied{})
	return t
}

// summer is led, and followed to the day a month after push.
func (t *tale) summer(push int) *tale {
	t.led(push)
	t.on(push+21, 9, 0, &record.Tied{Shoot: t.inches(18)})
	return t.on(push+30, 9, 0, visit(record.Growing, record.Growing, record.Growing), rubbed(), &record.Pinched{}, &record.Tied{Shoot: t.inches(30)})
}

// twined is summer, with twine put on in August of the first season.
func (t *tale) twined(push int) *tale {
	t.summer(push).inSeason(0, time.August, 2, 9)
	return t.did(&record.Twined{Loops: 2, Loop: t.inches(9), Stem: t.inches(3), Material: "natural"}, &record.Tied{Shoot: t.inches(54)}, rubbed(), &record.Pinched{})
}

// autumn is twined, judged at season's end and its tapes loosened.
func (t *tale) autumn(push int) *tale {
	t.twined(push).inSeason(0, time.October, 5, 9)
	t.did(&record.SeasonsEnd{Alive: 3, Word: "strong"}, &record.TwineChecked{Stem: t.inches(3.5)})
	t.inSeason(0, time.November, 5, 9)
	return t.did(&record.TapesLoosened{})
}

// headed is autumn, its leader headed back and its nurse limbs off in the winter
// after.
func (t *tale) headed(push int) *tale {
	t.autumn(push).inSeason(1, time.March, 5, 9)
	return t.did(&record.HeadedBack{Height: t.inches(70)}, &record.NurseLimbOff{})
}

// second is headed, and brought to the end of its second season.
func (t *tale) second(push int) *tale {
	t.headed(push).inSeason(1, time.April, 3, 9)
	t.did(&record.TwineChecked{Stem: t.inches(4)})
	t.inSeason(1, time.July, 2, 9)
	t.did(&record.TwineChecked{Stem: t.inches(5)}, rubbed())
	t.inSeason(1, time.October, 4, 9)
	t.did(&record.SeasonsEnd{Alive: 3, Word: "strong"}, &record.TwineChecked{Stem: t.inches(5.5)})
	t.inSeason(1, time.November, 5, 9)
	return t.did(&record.TapesLoosened{})
}
