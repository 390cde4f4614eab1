package core

import (
	"testing"
	"time"
	_ "time/tzdata"

	"barkslip/core/unit"
)

func zoneOf(name string) *time.Location {
	z, err := time.LoadLocation(name)
	if err != nil {
		panic(err)
	}
	return z
}

var (
	newYork  = zoneOf("America/New_York")
	auckland = zoneOf("Pacific/Auckland")
)

// northern and southern are blocks with mild winters and no earwigs.
func northern() *Block { return &Block{ID: theBlock, Zone: newYork, Lat: 42.7} }
func southern() *Block { return &Block{ID: theBlock, Zone: auckland, Lat: -43.5} }

func frosty(b *Block) *Block      { b.Frosty = true; return b }
func withEarwigs(b *Block) *Block { b.Earwigs = true; return b }

func dayOf(text string) unit.Date {
	d, err := unit.ParseDate(text)
	if err != nil {
		panic(err)
	}
	return d
}

// diary writes answers by date and clock of a block.
type diary struct {
	*laptop
	b *Block
}

func diaryOn(b *Block) *diary { return &diary{newLaptop("AB"), b} }

func (d *diary) on(date string, hour, minute int, bodies ...Body) *diary {
	for i, body := range bodies {
		d.say(dayOf(date).At(hour, minute+i, d.b.Zone), body)
	}
	return d
}

func (d *diary) dues() []Due { return Dues(d.fold(), d.b) }

func (d *diary) due(kind DueKind) (Due, bool) {
	for _, due := range d.dues() {
		if due.Kind == kind {
			return due, true
		}
	}
	return Due{}, false
}

// visit is a visit with the states of grafts 1, 2, ...
func visit(states ...GraftState) *Visited {
	v := &Visited{}
	for i, s := range states {
		v.Found = append(v.Found, Finding{Slot: i + 1, State: s})
	}
	return v
}

func inches(n float64) Measure { return Measured(unit.Length(n)*unit.Inch, unit.US) }

// grafted is a stump cut back on one day and grafted with two scions on another.
func (d *diary) grafted(cut, set string, cover Cover) *diary {
	d.on(cut, 9, 0, &NurseJudged{Limbs: 2, Leaf: "some"}, &CutBack{Height: inches(36)}, &Gashed{Number: 2})
	d.on(set, 10, 0, &ScionSet{Slot: 1, Checks: AllGood}, &ScionSet{Slot: 2, Checks: AllGood})
	return d.on(set, 10, 40, &Sealed{cover}).on(set, 13, 10, &PaintedWhite{})
}

// Each row of the table of dues, on a stump cut back on 3 May and grafted on 12
// May 2027 at 42.7 N, unless it says otherwise.
var dueDates = []struct {
	name      string
	kind      DueKind
	block     *Block
	work      func(d *diary)
	opens, by string // "" where nothing is due
}{
	{"after-look: sealed + 2 d, + 4 d", DueAfterLook, nil, nil, "2027-05-14", "2027-05-16"},
	{"after-look: checked", DueAfterLook, nil, func(d *diary) { d.on("2027-05-14", 9, 0, &SealChecked{}) }, "", ""},
	{"after-look: checked before this sealing", DueAfterLook, nil, func(d *diary) { d.on("2027-05-12", 8, 0, &SealChecked{}) }, "2027-05-14", "2027-05-16"},
	{"reseal: wrapped", DueReseal, nil, nil, "", ""},
	{"reseal: bare + 5 d, + 6 d", DueReseal, nil, func(d *diary) { d.on("2027-05-12", 11, 0, &Sealed{Bare}) }, "2027-05-17", "2027-05-18"},
	{"reseal: resealed", DueReseal, nil, func(d *diary) {
		d.on("2027-05-12", 11, 0, &Sealed{Bare}).on("2027-05-17", 9, 0, &Resealed{})
	}, "", ""},
	{"reseal: seen cracked", DueReseal, nil, func(d *diary) { d.on("2027-05-15", 9, 0, &SealChecked{Cracked: true}) }, "2027-05-15", "2027-05-16"},
	{"reseal: cracked and mended", DueReseal, nil, func(d *diary) { d.on("2027-05-15", 9, 0, &SealChecked{Cracked: true}, &Resealed{}) }, "", ""},
	{"earwigs: none on the block", DueEarwigs, nil, nil, "", ""},
	{"earwigs: set + 12 d, + 18 d", DueEarwigs, withEarwigs(northern()), nil, "2027-05-24", "2027-05-30"},
	{"earwigs: the ring of the graft day does not count", DueEarwigs, withEarwigs(northern()), func(d *diary) { d.on("2027-05-12", 13, 20, &RingSet{}) }, "2027-05-24", "2027-05-30"},
	{"earwigs: again after 14 d", DueEarwigs, withEarwigs(northern()), func(d *diary) { d.on("2027-05-25", 9, 0, &RingSet{}) }, "2027-06-08", "2027-06-14"},
	{"earwigs: up to push + 45 d", DueEarwigs, withEarwigs(northern()), func(d *diary) {
		d.on("2027-05-29", 9, 0, visit(Pushing, NoChange)).on("2027-06-29", 9, 0, &RingSet{})
	}, "2027-07-13", "2027-07-19"},
	{"earwigs: past push + 45 d", DueEarwigs, withEarwigs(northern()), func(d *diary) {
		d.on("2027-05-29", 9, 0, visit(Pushing, NoChange)).on("2027-06-30", 9, 0, &RingSet{})
	}, "", ""},
	{"stake: set + 14 d; nothing pushes", DueStake, nil, nil, "2027-05-26", "2027-07-18"},
	{"stake: first push + 7 d", DueStake, nil, func(d *diary) { d.on("2027-05-29", 9, 0, visit(NoChange, Pushing)) }, "2027-05-26", "2027-06-05"},
	{"stake: pushing early, not before it opens", DueStake, nil, func(d *diary) { d.on("2027-05-16", 9, 0, visit(NoChange, Pushing)) }, "2027-05-26", "2027-05-26"},
	{"stake: staked", DueStake, nil, func(d *diary) { d.on("2027-05-26", 9, 0, &Staked{Height: inches(60)}) }, "", ""},
	{"buds: set + 14 d, + 21 d", DueBuds, nil, nil, "2027-05-26", "2027-06-02"},
	{"buds: seen early", DueBuds, nil, func(d *diary) { d.on("2027-05-15", 9, 0, visit(NoChange, NoChange)) }, "2027-05-26", "2027-06-02"},
	{"buds: again after 7 d", DueBuds, nil, func(d *diary) { d.on("2027-05-29", 9, 0, visit(NoChange, Pushing)) }, "2027-06-05", "2027-06-12"},
	{"buds: one swells", DueBuds, nil, func(d *diary) { d.on("2027-05-29", 9, 0, visit(Growing, Swelling)) }, "2027-06-05", "2027-06-12"},
	{"buds: every graft pushes or is dead", DueBuds, nil, func(d *diary) { d.on("2027-05-29", 9, 0, visit(Dead, Pushing)) }, "", ""},
	{"buds: green waits to day 60", DueBuds, nil, func(d *diary) {
		d.on("2027-06-23", 9, 0, &Visited{[]Finding{{Slot: 1, State: Growing}, {Slot: 2, State: NoChange, Scratch: Green}}})
	}, "2027-07-11", "2027-07-18"},
	{"buds: scratched before day 42", DueBuds, nil, func(d *diary) {
		d.on("2027-06-22", 9, 0, &Visited{[]Finding{{Slot: 1, State: Growing}, {Slot: 2, State: NoChange, Scratch: Green}}})
	}, "2027-06-29", "2027-07-06"},
	{"buds: one of two not scratched", DueBuds, nil, func(d *diary) {
		d.on("2027-06-23", 9, 0, &Visited{[]Finding{{Slot: 1, State: NoChange}, {Slot: 2, State: NoChange, Scratch: Green}}})
	}, "2027-06-30", "2027-07-07"},
	{"buds: past day 60", DueBuds, nil, func(d *diary) {
		d.on("2027-07-11", 9, 0, &Visited{[]Finding{{Slot: 1, State: Growing}, {Slot: 2, State: NoChange, Scratch: Green}}})
	}, "2027-07-18", "2027-07-25"},
	{"confirm-take: before a push", DueConfirmTake, nil, nil, "", ""},
	{"confirm-take: first push + 30 d, + 37 d", DueConfirmTake, nil, func(d *diary) { d.on("2027-05-29", 9, 0, visit(NoChange, Pushing)) }, "2027-06-28", "2027-07-05"},
	{"confirm-take: a visit before does not count", DueConfirmTake, nil, func(d *diary) {
		d.on("2027-05-29", 9, 0, visit(NoChange, Pushing)).on("2027-06-27", 9, 0, visit(Growing, Growing))
	}, "2027-06-28", "2027-07-05"},
	{"confirm-take: visited", DueConfirmTake, nil, func(d *diary) {
		d.on("2027-05-29", 9, 0, visit(NoChange, Pushing)).on("2027-06-28", 9, 0, visit(Growing, Growing))
	}, "", ""},
	{"sprouts: cut back + 21 d is sooner", DueSprouts, nil, nil, "2027-05-24", "2027-05-31"},
	{"sprouts: again after 7 d", DueSprouts, nil, func(d *diary) { d.on("2027-05-24", 9, 0, &SproutsRubbed{Near: 2}) }, "2027-05-31", "2027-06-07"},
	{"sprouts: rubbed early", DueSprouts, nil, func(d *diary) { d.on("2027-05-13", 9, 0, &SproutsRubbed{Near: 2}) }, "2027-05-24", "2027-05-31"},
	{"sprouts: 14 d with a leader", DueSprouts, nil, func(d *diary) {
		d.on("2027-06-14", 9, 0, &LeaderChosen{Slot: 1}, &SproutsRubbed{})
	}, "2027-06-28", "2027-07-05"},
	{"sprouts: out of season, next leaf-out", DueSprouts, nil, func(d *diary) {
		d.on("2027-06-14", 9, 0, &LeaderChosen{Slot: 1}).on("2027-09-20", 9, 0, &SproutsRubbed{})
	}, "2028-05-01", "2028-05-08"},
	{"sprouts: last of the season", DueSprouts, nil, func(d *diary) {
		d.on("2027-06-14", 9, 0, &LeaderChosen{Slot: 1}).on("2027-09-16", 9, 0, &SproutsRubbed{})
	}, "2027-09-30", "2027-10-07"},
	{"sprouts: 21 d in later years", DueSprouts, nil, func(d *diary) { d.on("2028-05-02", 9, 0, &SproutsRubbed{}) }, "2028-05-23", "2028-05-30"},
	{"sprouts: rubbed in winter", DueSprouts, nil, func(d *diary) { d.on("2028-02-02", 9, 0, &SproutsRubbed{}) }, "2028-05-01", "2028-05-08"},
	{"sprouts: not rubbed, and the record goes on in winter", DueSprouts, nil, func(d *diary) { d.on("2027-12-02", 9, 0, &Noted{"snow"}) }, "2028-05-01", "2028-05-08"},
	{"keep-sprouts: one lives", DueKeepSprouts, nil, func(d *diary) { d.on("2027-06-20", 9, 0, visit(Dead, NoChange)) }, "", ""},
	{"keep-sprouts: every graft dead, + 14 d", DueKeepSprouts, nil, func(d *diary) {
		d.on("2027-06-10", 9, 0, visit(Dead, NoChange)).on("2027-06-20", 9, 0, visit(Dead, Dead))
	}, "2027-06-20", "2027-07-04"},
	{"keep-sprouts: in place of sprouts", DueSprouts, nil, func(d *diary) { d.on("2027-06-20", 9, 0, visit(Dead, Dead)) }, "", ""},
	{"keep-sprouts: kept", DueKeepSprouts, nil, func(d *diary) { d.on("2027-06-20", 9, 0, visit(Dead, Dead), &SproutsKept{Number: 2}) }, "", ""},
	{"keep-sprouts: given up", DueKeepSprouts, nil, func(d *diary) { d.on("2027-06-20", 9, 0, visit(Dead, Dead), &GivenUp{}) }, "", ""},
	{"leader: first push + 14 d, + 28 d", DueLeader, nil, func(d *diary) { d.on("2027-05-29", 9, 0, visit(NoChange, Pushing)) }, "2027-06-12", "2027-06-26"},
	{"leader: chosen", DueLeader, nil, func(d *diary) {
		d.on("2027-05-29", 9, 0, visit(NoChange, Pushing)).on("2027-06-12", 9, 0, &LeaderChosen{Slot: 2})
	}, "", ""},
	{"leader: broken, none promoted", DueLeader, nil, func(d *diary) {
		d.on("2027-05-29", 9, 0, visit(Pushing, Pushing)).on("2027-06-12", 9, 0, &LeaderChosen{Slot: 2}).on("2027-07-01", 9, 0, &LeaderBroken{Cause: "wind"})
	}, "2027-07-01", "2027-07-15"},
	{"leader: broken, another promoted", DueLeader, nil, func(d *diary) {
		d.on("2027-05-29", 9, 0, visit(Pushing, Pushing)).on("2027-06-12", 9, 0, &LeaderChosen{Slot: 2}).on("2027-07-01", 9, 0, &LeaderBroken{Cause: "wind", Promoted: 1})
	}, "", ""},
	{"leader: its graft died", DueLeader, nil, func(d *diary) {
		d.on("2027-05-29", 9, 0, visit(Pushing, Pushing)).on("2027-06-12", 9, 0, &LeaderChosen{Slot: 2}).on("2027-07-01", 9, 0, visit(Growing, Dead))
	}, "2027-07-01", "2027-07-15"},
	{"tie: first push + 14 d, + 4 d", DueTie, nil, func(d *diary) { d.on("2027-05-29", 9, 0, visit(NoChange, Pushing)) }, "2027-06-12", "2027-06-16"},
	{"tie: a shoot of 8 in is sooner", DueTie, nil, func(d *diary) {
		d.on("2027-05-29", 9, 0, visit(NoChange, Pushing)).on("2027-06-08", 9, 0, &Visited{[]Finding{{Slot: 1, State: NoChange}, {Slot: 2, State: Growing, Shoot: inches(8)}}})
	}, "2027-06-08", "2027-06-12"},
	{"tie: last + 7 d to 31 July", DueTie, nil, func(d *diary) {
		d.on("2027-05-29", 9, 0, visit(NoChange, Pushing)).on("2027-07-31", 9, 0, &Tied{})
	}, "2027-08-07", "2027-08-11"},
	{"tie: + 14 d after", DueTie, nil, func(d *diary) {
		d.on("2027-05-29", 9, 0, visit(NoChange, Pushing)).on("2027-08-01", 9, 0, &Tied{})
	}, "2027-08-15", "2027-08-19"},
	{"tie: 10 in in 10 days, so a foot in 12", DueTie, nil, func(d *diary) {
		d.on("2027-05-29", 9, 0, visit(NoChange, Pushing)).on("2027-06-12", 9, 0, &Tied{Shoot: inches(10)}).on("2027-06-22", 9, 0, &Tied{Shoot: inches(20)})
	}, "2027-07-04", "2027-07-08"},
	{"tie: growth before a break says nothing", DueTie, nil, func(d *diary) {
		d.on("2027-05-29", 9, 0, visit(NoChange, Pushing)).on("2027-06-12", 9, 0, &Tied{Shoot: inches(10)}).on("2027-06-22", 9, 0, &Tied{Shoot: inches(6), Broken: true})
	}, "2027-06-29", "2027-07-03"},
	{"tie: out of season, next leaf-out", DueTie, nil, func(d *diary) {
		d.on("2027-05-29", 9, 0, visit(NoChange, Pushing)).on("2027-09-25", 9, 0, &Tied{})
	}, "2028-05-01", "2028-05-05"},
	{"tie: not after the second season", DueTie, nil, func(d *diary) {
		d.on("2027-05-29", 9, 0, visit(NoChange, Pushing)).on("2028-09-25", 9, 0, &Tied{})
	}, "", ""},
	{"pinch: leader chosen, + 3 d", DuePinch, nil, func(d *diary) { d.on("2027-06-14", 9, 0, &LeaderChosen{Slot: 1}) }, "2027-06-14", "2027-06-17"},
	{"pinch: last + 14 d, + 21 d", DuePinch, nil, func(d *diary) { d.on("2027-06-14", 9, 0, &LeaderChosen{Slot: 1}, &Pinched{}) }, "2027-06-28", "2027-07-05"},
	{"pinch: until 15 August", DuePinch, nil, func(d *diary) { d.on("2027-06-14", 9, 0, &LeaderChosen{Slot: 1}).on("2027-08-01", 9, 0, &Pinched{}) }, "2027-08-15", "2027-08-22"},
	{"pinch: not after 15 August", DuePinch, nil, func(d *diary) { d.on("2027-06-14", 9, 0, &LeaderChosen{Slot: 1}).on("2027-08-02", 9, 0, &Pinched{}) }, "", ""},
	{"pinch: the block's own date", DuePinch, func() *Block { b := northern(); b.PinchUntil = MonthDay{time.August, 20}; return b }(), func(d *diary) {
		d.on("2027-06-14", 9, 0, &LeaderChosen{Slot: 1}).on("2027-08-06", 9, 0, &Pinched{})
	}, "2027-08-20", "2027-08-27"},
	{"twine: 1 August, + 14 d", DueTwine, nil, func(d *diary) { d.on("2027-06-14", 9, 0, &LeaderChosen{Slot: 1}) }, "2027-08-01", "2027-08-15"},
	{"twine: the leader is 3 ft", DueTwine, nil, func(d *diary) {
		d.on("2027-06-14", 9, 0, &LeaderChosen{Slot: 1}).on("2027-07-10", 9, 0, &Tied{Shoot: inches(36)})
	}, "2027-07-10", "2027-07-24"},
	{"twine: the leader will be 3 ft", DueTwine, nil, func(d *diary) {
		d.on("2027-06-14", 9, 0, &LeaderChosen{Slot: 1}, &Tied{Shoot: inches(12)}).on("2027-06-24", 9, 0, &Tied{Shoot: inches(22)})
	}, "2027-07-08", "2027-07-22"},
	{"twine: chosen after 1 August", DueTwine, nil, func(d *diary) { d.on("2027-08-20", 9, 0, &LeaderChosen{Slot: 1}) }, "2027-08-20", "2027-09-03"},
	{"twine: twined", DueTwine, nil, func(d *diary) { d.on("2027-06-14", 9, 0, &LeaderChosen{Slot: 1}).on("2027-08-01", 9, 0, &Twined{}) }, "", ""},
	{"seasons-end: 1 October, 31 October", DueSeasonsEnd, nil, nil, "2027-10-01", "2027-10-31"},
	{"seasons-end: the next year", DueSeasonsEnd, nil, func(d *diary) { d.on("2027-10-09", 9, 0, &SeasonsEnd{}) }, "2028-10-01", "2028-10-31"},
	{"seasons-end: put down early", DueSeasonsEnd, nil, func(d *diary) { d.on("2027-09-20", 9, 0, &SeasonsEnd{}) }, "2028-10-01", "2028-10-31"},
	{"seasons-end: put down late", DueSeasonsEnd, nil, func(d *diary) { d.on("2028-02-20", 9, 0, &SeasonsEnd{}) }, "2028-10-01", "2028-10-31"},
	{"ties-off: never tied", DueTiesOff, nil, nil, "", ""},
	{"ties-off: 1 November, 31 December", DueTiesOff, nil, func(d *diary) { d.on("2027-06-12", 9, 0, &Tied{}) }, "2027-11-01", "2027-12-31"},
	{"ties-off: the second year", DueTiesOff, nil, func(d *diary) { d.on("2027-06-12", 9, 0, &Tied{}).on("2027-11-05", 9, 0, &TapesLoosened{}) }, "2028-11-01", "2028-12-31"},
	{"ties-off: not a third", DueTiesOff, nil, func(d *diary) {
		d.on("2027-06-12", 9, 0, &Tied{}).on("2027-11-05", 9, 0, &TapesLoosened{}).on("2029-01-05", 9, 0, &TapesLoosened{})
	}, "", ""},
	{"head-back: mild", DueHeadBack, nil, func(d *diary) { d.on("2027-05-29", 9, 0, visit(NoChange, Pushing)) }, "2028-01-15", "2028-03-01"},
	{"head-back: frosty", DueHeadBack, frosty(northern()), func(d *diary) { d.on("2027-05-29", 9, 0, visit(NoChange, Pushing)) }, "2028-03-01", "2028-04-15"},
	{"head-back: too short, the next winter", DueHeadBack, nil, func(d *diary) {
		d.on("2027-05-29", 9, 0, visit(NoChange, Pushing)).on("2028-01-20", 9, 0, &HeadedBack{Short: true})
	}, "2029-01-15", "2029-03-01"},
	{"head-back: headed back", DueHeadBack, nil, func(d *diary) {
		d.on("2027-05-29", 9, 0, visit(NoChange, Pushing)).on("2028-01-20", 9, 0, &HeadedBack{Height: inches(60)})
	}, "", ""},
	{"second-shoot-off: mild, after the second season", DueSecondShootOff, nil, func(d *diary) { d.on("2027-05-29", 9, 0, visit(NoChange, Pushing)) }, "2029-01-15", "2029-03-01"},
	{"second-shoot-off: frosty", DueSecondShootOff, frosty(northern()), func(d *diary) { d.on("2027-05-29", 9, 0, visit(NoChange, Pushing)) }, "2029-03-01", "2029-04-15"},
	{"second-shoot-off: off", DueSecondShootOff, nil, func(d *diary) {
		d.on("2027-05-29", 9, 0, visit(NoChange, Pushing)).on("2029-01-20", 9, 0, &SecondShootOff{})
	}, "", ""},
	{"nurse-limbs-off: after the first season", DueNurseLimbsOff, nil, nil, "2028-01-15", "2028-03-01"},
	{"nurse-limbs-off: one left, after the second", DueNurseLimbsOff, nil, func(d *diary) { d.on("2028-01-20", 9, 0, &NurseLimbOff{Left: 1}) }, "2029-01-15", "2029-03-01"},
	{"nurse-limbs-off: none left", DueNurseLimbsOff, nil, func(d *diary) { d.on("2028-01-20", 9, 0, &NurseLimbOff{}) }, "", ""},
	{"nurse-limbs-off: one left after both", DueNurseLimbsOff, nil, func(d *diary) {
		d.on("2028-01-20", 9, 0, &NurseLimbOff{Left: 1}).on("2029-01-20", 9, 0, &NurseLimbOff{Left: 1})
	}, "", ""},
	{"twine-check: the next of April, July, October", DueTwineCheck, nil, func(d *diary) { d.on("2027-08-05", 9, 0, &Twined{}) }, "2027-10-01", "2027-10-31"},
	{"twine-check: checked on the day", DueTwineCheck, nil, func(d *diary) { d.on("2027-08-05", 9, 0, &Twined{}).on("2027-10-01", 9, 0, &TwineChecked{}) }, "2028-04-01", "2028-05-01"},
	{"twine-check: moved", DueTwineCheck, nil, func(d *diary) { d.on("2027-08-05", 9, 0, &Twined{}).on("2028-04-20", 9, 0, &TwineMoved{}) }, "2028-07-01", "2028-07-31"},
	{"twine-check: cut", DueTwineCheck, nil, func(d *diary) { d.on("2027-08-05", 9, 0, &Twined{}).on("2028-04-20", 9, 0, &TwineCut{}) }, "", ""},
	{"cut-twine: not measured, twined + 3 y", DueCutTwine, nil, func(d *diary) { d.on("2027-08-05", 9, 0, &Twined{}) }, "2030-08-05", "2030-09-04"},
	{"cut-twine: 6 in to go at 3 in a year", DueCutTwine, nil, func(d *diary) { d.on("2027-08-05", 9, 0, &Twined{Loop: inches(10), Stem: inches(4)}) }, "2029-07-06", "2029-08-05"},
	{"cut-twine: 12 in to go, 3 y is sooner", DueCutTwine, nil, func(d *diary) { d.on("2027-08-05", 9, 0, &Twined{Loop: inches(16), Stem: inches(4)}) }, "2030-08-05", "2030-09-04"},
	{"cut-twine: an inch in 100 days, three readings", DueCutTwine, nil, func(d *diary) {
		d.on("2027-08-05", 9, 0, &Twined{Loop: inches(10), Stem: inches(4)}).on("2027-11-13", 9, 0, &TwineChecked{Stem: inches(5)}).on("2028-02-21", 9, 0, &TwineChecked{Stem: inches(6)})
	}, "2029-02-25", "2029-03-27"},
	{"cut-twine: seen tight", DueCutTwine, nil, func(d *diary) {
		d.on("2027-08-05", 9, 0, &Twined{Loop: inches(10), Stem: inches(4)}).on("2028-07-01", 9, 0, &TwineChecked{Tight: true})
	}, "2028-06-01", "2028-07-01"},
	{"cut-twine: tight, then let out", DueCutTwine, nil, func(d *diary) {
		d.on("2027-08-05", 9, 0, &Twined{Loop: inches(6), Stem: inches(4)}).on("2028-07-01", 9, 0, &TwineChecked{Tight: true}).on("2028-07-01", 10, 0, &TwineMoved{Loop: inches(22), Stem: inches(7)})
	}, "2030-08-05", "2030-09-04"},
	{"cut-twine: cut", DueCutTwine, nil, func(d *diary) { d.on("2027-08-05", 9, 0, &Twined{}).on("2028-07-01", 9, 0, &TwineCut{}) }, "", ""},
	{"regraft: failed, the next 15 March", DueRegraft, nil, func(d *diary) { d.on("2027-06-20", 9, 0, &Failed{Cause: "bled"}) }, "2028-03-15", "2028-05-15"},
	{"regraft: every graft dead", DueRegraft, nil, func(d *diary) { d.on("2028-03-01", 9, 0, visit(Dead, Dead)) }, "2028-03-15", "2028-05-15"},
	{"regraft: failed on 15 March", DueRegraft, nil, func(d *diary) { d.on("2028-03-15", 9, 0, &Failed{Cause: "bled"}) }, "2029-03-15", "2029-05-15"},
	{"regraft: given up", DueRegraft, nil, func(d *diary) { d.on("2027-06-20", 9, 0, &Failed{Cause: "bled"}, &GivenUp{}) }, "", ""},
	{"regraft: left for the season", DueRegraft, nil, func(d *diary) { d.on("2027-06-20", 9, 0, &GivenUp{Season: true}) }, "2028-03-15", "2028-05-15"},
	{"regraft: limbs judged anew", DueRegraft, nil, func(d *diary) {
		d.on("2027-06-20", 9, 0, &Failed{Cause: "bled"}).on("2028-03-20", 9, 0, &NurseJudged{Limbs: 1})
	}, "2028-03-15", "2028-05-15"},
	{"regraft: cut back again", DueRegraft, nil, func(d *diary) {
		d.on("2027-06-20", 9, 0, &Failed{Cause: "bled"}).on("2028-03-20", 9, 0, &CutBack{})
	}, "", ""},
	{"a leap day lies within 30 days", DueTwineCheck, nil, func(d *diary) { d.on("2027-12-05", 9, 0, &Twined{}) }, "2028-04-01", "2028-05-01"},
}

// wantDay checks that a due runs from the first instant of a block's day to the
// last second of another.
func wantDay(t *testing.T, name string, d *diary, kind DueKind, opens, by string) {
	t.Helper()
	got, ok := d.due(kind)
	if opens == "" {
		if ok {
			t.Errorf("%s: due %s by %s, want nothing", name, got.Opens, got.By)
		}
		return
	}
	if !ok {
		t.Errorf("%s: nothing is due, want %s by %s", name, opens, by)
		return
	}
	from, to := dayOf(opens).In(d.b.Zone), dayOf(by).Add(1).In(d.b.Zone).Add(-time.Second)
	if !got.Opens.Equal(from) || !got.By.Equal(to) {
		t.Errorf("%s: %s by %s, want %s by %s", name, got.Opens, got.By, from, to)
	}
	if got.Stump != stump417 || got.Since.IsZero() || got.Why(d.b) == "" || len(got.Facts()) == 0 {
		t.Errorf("%s: stump, cause, reason or facts are missing: %+v", name, got)
	}
}

func TestDueDates(t *testing.T) {
	for _, c := range dueDates {
		b := c.block
		if b == nil {
			b = northern()
		}
		d := diaryOn(b).grafted("2027-05-03", "2027-05-12", Wrapped)
		if c.work != nil {
			c.work(d)
		}
		wantDay(t, c.name, d, c.kind, c.opens, c.by)
	}
}

// Half a year on in the south: a stump cut back on 3 November and grafted on 12
// November 2027 at 43.5 S.
func TestDueDatesInTheSouth(t *testing.T) {
	for _, c := range []struct {
		name      string
		kind      DueKind
		block     *Block
		work      func(d *diary)
		opens, by string
	}{
		{"sprouts", DueSprouts, nil, nil, "2027-11-24", "2027-12-01"},
		{"sprouts: the season ends with March", DueSprouts, nil, func(d *diary) {
			d.on("2027-12-14", 9, 0, &LeaderChosen{Slot: 1}).on("2028-03-17", 9, 0, &SproutsRubbed{})
		}, "2028-03-31", "2028-04-07"},
		{"sprouts: next leaf-out", DueSprouts, nil, func(d *diary) { d.on("2028-03-28", 9, 0, &SproutsRubbed{}) }, "2028-11-01", "2028-11-08"},
		{"tie: last + 7 d to 31 January", DueTie, nil, func(d *diary) {
			d.on("2027-11-29", 9, 0, visit(NoChange, Pushing)).on("2028-01-31", 9, 0, &Tied{})
		}, "2028-02-07", "2028-02-11"},
		{"tie: + 14 d after", DueTie, nil, func(d *diary) {
			d.on("2027-11-29", 9, 0, visit(NoChange, Pushing)).on("2028-02-01", 9, 0, &Tied{})
		}, "2028-02-15", "2028-02-19"},
		{"pinch: until 15 February", DuePinch, nil, func(d *diary) { d.on("2027-12-14", 9, 0, &LeaderChosen{Slot: 1}).on("2028-02-01", 9, 0, &Pinched{}) }, "2028-02-15", "2028-02-22"},
		{"pinch: not after", DuePinch, nil, func(d *diary) { d.on("2027-12-14", 9, 0, &LeaderChosen{Slot: 1}).on("2028-02-02", 9, 0, &Pinched{}) }, "", ""},
		{"pinch: the block's own date", DuePinch, func() *Block { b := southern(); b.PinchUntil = MonthDay{time.January, 20}; return b }(), func(d *diary) {
			d.on("2027-12-14", 9, 0, &LeaderChosen{Slot: 1}).on("2028-01-07", 9, 0, &Pinched{})
		}, "", ""},
		{"twine: 1 February", DueTwine, nil, func(d *diary) { d.on("2027-12-14", 9, 0, &LeaderChosen{Slot: 1}) }, "2028-02-01", "2028-02-15"},
		{"seasons-end: April", DueSeasonsEnd, nil, nil, "2028-04-01", "2028-04-30"},
		{"ties-off: May and June", DueTiesOff, nil, func(d *diary) { d.on("2027-12-14", 9, 0, &Tied{}) }, "2028-05-01", "2028-06-30"},
		{"head-back: mild", DueHeadBack, nil, func(d *diary) { d.on("2027-11-29", 9, 0, visit(NoChange, Pushing)) }, "2028-07-15", "2028-09-01"},
		{"head-back: frosty", DueHeadBack, frosty(southern()), func(d *diary) { d.on("2027-11-29", 9, 0, visit(NoChange, Pushing)) }, "2028-09-01", "2028-10-15"},
		{"second-shoot-off", DueSecondShootOff, nil, func(d *diary) { d.on("2027-11-29", 9, 0, visit(NoChange, Pushing)) }, "2029-07-15", "2029-09-01"},
		{"nurse-limbs-off", DueNurseLimbsOff, nil, nil, "2028-07-15", "2028-09-01"},
		{"twine-check: January", DueTwineCheck, nil, func(d *diary) { d.on("2027-12-20", 9, 0, &Twined{}) }, "2028-01-01", "2028-01-31"},
		{"twine-check: April", DueTwineCheck, nil, func(d *diary) { d.on("2028-01-20", 9, 0, &Twined{}) }, "2028-04-01", "2028-05-01"},
		{"twine-check: October", DueTwineCheck, nil, func(d *diary) { d.on("2028-04-01", 9, 0, &Twined{}) }, "2028-10-01", "2028-10-31"},
		{"regraft: 15 September", DueRegraft, nil, func(d *diary) { d.on("2027-12-20", 9, 0, &Failed{Cause: "bled"}) }, "2028-09-15", "2028-11-15"},
	} {
		b := c.block
		if b == nil {
			b = southern()
		}
		d := diaryOn(b).grafted("2027-11-03", "2027-11-12", Wrapped)
		if c.work != nil {
			c.work(d)
		}
		wantDay(t, c.name, d, c.kind, c.opens, c.by)
	}
}

// Look, look-again and graft run by the clock, on a stump cut back on 3 May and
// not yet grafted.
func TestDuesBeforeTheGraft(t *testing.T) {
	at := func(date string, hour, minute, second int) time.Time {
		return dayOf(date).At(hour, minute, newYork).Add(time.Duration(second) * time.Second)
	}
	never := time.Time{}
	ready := func(d *diary, date string) {
		d.on(date, 9, 0, &Looked{Bleeding: Dry, Slip: SlipsClean}, &Gashed{Number: 2}).on(date, 9, 20, &FreshCut{}).on(date, 9, 40, &Looked{Bleeding: Dry})
	}
	for _, c := range []struct {
		name      string
		kind      DueKind
		work      func(d *diary)
		opens, by time.Time
	}{
		{"look: cut back + 7 d, + 10 d", DueLook, nil, at("2027-05-10", 0, 0, 0), at("2027-05-13", 23, 59, 59)},
		{"look: told to wait past the week", DueLook, func(d *diary) { d.on("2027-05-11", 10, 0, &Looked{Bleeding: Dry, Slip: Drags}) }, at("2027-05-10", 0, 0, 0), at("2027-05-14", 10, 0, 0)},
		{"look: told to wait for the week alone", DueLook, func(d *diary) { d.on("2027-05-05", 10, 0, &Looked{Bleeding: Dry, Slip: SlipsClean}) }, at("2027-05-10", 0, 0, 0), at("2027-05-13", 23, 59, 59)},
		{"look: one scion of two set", DueLook, func(d *diary) {
			d.on("2027-05-12", 10, 0, &SlotsMarked{Slots: []Slot{{0}, {180}}}, &ScionSet{Slot: 1})
		}, at("2027-05-10", 0, 0, 0), at("2027-05-13", 23, 59, 59)},
		{"look: both scions set", DueLook, func(d *diary) {
			d.on("2027-05-12", 10, 0, &SlotsMarked{Slots: []Slot{{0}, {180}}}, &ScionSet{Slot: 1}, &ScionSet{Slot: 2})
		}, never, never},
		{"look: given up", DueLook, func(d *diary) { d.on("2027-05-12", 10, 0, &GivenUp{}) }, never, never},
		{"look-again: nobody looked", DueLookAgain, nil, never, never},
		{"look-again: early", DueLookAgain, func(d *diary) { d.on("2027-05-05", 10, 0, &Looked{Bleeding: Weeping, Slip: SlipsClean}) }, at("2027-05-10", 0, 0, 0), at("2027-05-11", 0, 0, 0)},
		{"look-again: drags, 3 d, by + 1 d", DueLookAgain, func(d *diary) { d.on("2027-05-11", 10, 0, &Looked{Bleeding: Dry, Slip: Drags}) }, at("2027-05-14", 10, 0, 0), at("2027-05-15", 10, 0, 0)},
		{"look-again: stuck, 7 d", DueLookAgain, func(d *diary) { d.on("2027-05-11", 10, 0, &Looked{Bleeding: Dry, Slip: Stuck}) }, at("2027-05-18", 10, 0, 0), at("2027-05-19", 10, 0, 0)},
		{"look-again: fresh cut, 15 min, by + 1 h", DueLookAgain, func(d *diary) {
			d.on("2027-05-12", 9, 0, &Looked{Bleeding: Dry, Slip: SlipsClean}, &Gashed{Number: 2}).on("2027-05-12", 9, 20, &FreshCut{})
		}, at("2027-05-12", 9, 35, 0), at("2027-05-12", 10, 35, 0)},
		{"look-again: damp, wipe", DueLookAgain, func(d *diary) { d.on("2027-05-12", 9, 0, &Looked{Bleeding: Damp, Slip: SlipsClean}) }, at("2027-05-12", 9, 15, 0), at("2027-05-12", 10, 15, 0)},
		{"look-again: looked", DueLookAgain, func(d *diary) {
			d.on("2027-05-11", 10, 0, &Looked{Bleeding: Dry, Slip: Drags}).on("2027-05-14", 10, 0, &Looked{Bleeding: Dry, Slip: SlipsClean})
		}, never, never},
		{"graft: not ready", DueGraft, nil, never, never},
		{"graft: ready, the same day", DueGraft, func(d *diary) { ready(d, "2027-05-12") }, at("2027-05-12", 0, 0, 0), at("2027-05-12", 23, 59, 59)},
		{"graft: the next day's look opens anew", DueGraft, func(d *diary) {
			ready(d, "2027-05-12")
			d.on("2027-05-13", 9, 0, &Looked{Bleeding: Dry, Slip: SlipsClean})
		}, never, never},
		{"sprouts: before the graft", DueSprouts, nil, at("2027-05-24", 0, 0, 0), at("2027-05-31", 23, 59, 59)},
	} {
		d := diaryOn(northern()).on("2027-05-03", 9, 0, &NurseJudged{Limbs: 1}, &CutBack{Height: inches(36)}, &Gashed{Number: 2})
		if c.work != nil {
			c.work(d)
		}
		got, ok := d.due(c.kind)
		if ok != !c.opens.IsZero() || ok && (!got.Opens.Equal(c.opens) || !got.By.Equal(c.by)) {
			t.Errorf("%s: %v, %s by %s, want %s by %s", c.name, ok, got.Opens, got.By, c.opens, c.by)
		}
	}
}

// New York put its clocks on at 2:00 on 14 March 2027 and back at 2:00 on 7
// November: days of 23 and 25 hours.
func TestDuesOverAClockChange(t *testing.T) {
	for _, c := range []struct {
		sealed, opens, by string
	}{
		{"2027-03-12", "2027-03-14T00:00:00-05:00", "2027-03-16T23:59:59-04:00"},
		{"2027-03-10", "2027-03-12T00:00:00-05:00", "2027-03-14T23:59:59-04:00"},
		{"2027-03-11", "2027-03-13T00:00:00-05:00", "2027-03-15T23:59:59-04:00"},
		{"2027-11-05", "2027-11-07T00:00:00-04:00", "2027-11-09T23:59:59-05:00"},
		{"2027-11-03", "2027-11-05T00:00:00-04:00", "2027-11-07T23:59:59-05:00"},
	} {
		d := diaryOn(northern()).grafted("2027-03-01", c.sealed, Wrapped)
		got, _ := d.due(DueAfterLook)
		if from, to := got.Opens.Format(time.RFC3339), got.By.Format(time.RFC3339); from != c.opens || to != c.by {
			t.Errorf("sealed %s: %s by %s, want %s by %s", c.sealed, from, to, c.opens, c.by)
		}
	}
	d := diaryOn(northern()).on("2027-03-01", 9, 0, &CutBack{}, &Gashed{Number: 2}).on("2027-03-10", 10, 0, &Looked{Bleeding: Dry, Slip: Drags})
	got, _ := d.due(DueLookAgain)
	if from, to := got.Opens.Format(time.RFC3339), got.By.Format(time.RFC3339); from != "2027-03-13T10:00:00-05:00" || to != "2027-03-14T10:00:00-04:00" {
		t.Errorf("look again %s by %s", from, to)
	}
}

// A stump that is untied, given up or failed is asked for no more than belongs
// to it.
func TestDuesAtTheEnd(t *testing.T) {
	for _, c := range []struct {
		name string
		end  Body
		want []DueKind
	}{
		{"untied", &Untied{}, nil},
		{"given up", &GivenUp{}, nil},
		{"left for the season", &GivenUp{Season: true}, []DueKind{DueRegraft}},
		{"failed", &Failed{Cause: "wind"}, []DueKind{DueKeepSprouts, DueRegraft}},
		{"every graft dead", visit(Dead, Dead), []DueKind{DueKeepSprouts, DueRegraft}},
	} {
		d := diaryOn(withEarwigs(northern())).grafted("2027-05-03", "2027-05-12", Bare)
		d.on("2027-05-29", 9, 0, visit(Pushing, Pushing)).on("2027-06-14", 9, 0, &LeaderChosen{Slot: 1}, &Tied{}).on("2027-08-05", 9, 0, &Twined{})
		d.on("2027-08-20", 9, 0, c.end)
		var got []DueKind
		for _, due := range d.dues() {
			got = append(got, due.Kind)
		}
		if len(got) != len(c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
			continue
		}
		for i := range got {
			if got[i] != c.want[i] {
				t.Errorf("%s: %v, want %v", c.name, got, c.want)
			}
		}
	}
}

func TestAStandingStumpNeedsNothing(t *testing.T) {
	d := diaryOn(northern()).on("2027-05-03", 9, 0, &StumpAdded{}, &NurseJudged{Limbs: 1})
	if got := d.dues(); len(got) != 0 {
		t.Errorf("never cut back, and due: %v", got)
	}
}

// Only the attempt under way counts: what was due on the one before is gone.
func TestDuesOfAnAttemptBeforeAreGone(t *testing.T) {
	d := diaryOn(northern()).grafted("2027-05-03", "2027-05-12", Bare).on("2027-06-20", 9, 0, visit(Dead, Dead))
	d.on("2028-04-20", 9, 0, &CutBack{Height: inches(30)}, &Gashed{Number: 2})
	for _, due := range d.dues() {
		if due.Kind != DueLook && due.Kind != DueSprouts {
			t.Errorf("cut back again, and due: %s, %s", due.Kind, due.Opens)
		}
	}
	wantDay(t, "sprouts of the new attempt", d, DueSprouts, "2028-05-11", "2028-05-18")
}

// A due, each of its reasons and its step are named for every kind.
func TestEveryKindHasReasonAndStep(t *testing.T) {
	for _, kind := range DueKinds() {
		if stepByID(kind.Step()) == nil {
			t.Errorf("%s is met on no step", kind)
		}
		if len(dueReasons[kind].says) == 0 || dueRules[kind].rule == nil {
			t.Errorf("%s has no reason or no rule", kind)
		}
		if back, ok := ParseDueKind(kind.String()); !ok || back != kind {
			t.Errorf("%s reads back as %s", kind, back)
		}
	}
}
