package core

import "time"

// Each row of the table of dues, on a stump cut back on 3 May and grafted on 12
// May 2027 at 42.7 N, unless it says otherwise.
var dueDates = []struct {
	name      string
	kind      DueKind
	block     *Block
	work      func(d *Diary)
	opens, by string // "" where nothing is due
}{
	{"after-look: sealed + 2 d, + 4 d", DueAfterLook, nil, nil, "2027-05-14", "2027-05-16"},
	{"after-look: checked", DueAfterLook, nil, func(d *Diary) { d.On("2027-05-14", 9, 0, &SealChecked{}) }, "", ""},
	{"after-look: checked before this sealing", DueAfterLook, nil, func(d *Diary) { d.On("2027-05-12", 8, 0, &SealChecked{}) }, "2027-05-14", "2027-05-16"},
	{"reseal: wrapped", DueReseal, nil, nil, "", ""},
	{"reseal: bare + 5 d, + 6 d", DueReseal, nil, func(d *Diary) { d.On("2027-05-12", 11, 0, &Sealed{Bare}) }, "2027-05-17", "2027-05-18"},
	{"reseal: resealed", DueReseal, nil, func(d *Diary) {
		d.On("2027-05-12", 11, 0, &Sealed{Bare}).On("2027-05-17", 9, 0, &Resealed{})
	}, "", ""},
	{"reseal: seen cracked", DueReseal, nil, func(d *Diary) { d.On("2027-05-15", 9, 0, &SealChecked{Cracked: true}) }, "2027-05-15", "2027-05-16"},
	{"reseal: cracked and mended", DueReseal, nil, func(d *Diary) { d.On("2027-05-15", 9, 0, &SealChecked{Cracked: true}, &Resealed{}) }, "", ""},
	{"earwigs: none on the block", DueEarwigs, nil, nil, "", ""},
	{"earwigs: set + 12 d, + 18 d", DueEarwigs, WithEarwigs(Northern()), nil, "2027-05-24", "2027-05-30"},
	{"earwigs: the ring of the graft day does not count", DueEarwigs, WithEarwigs(Northern()), func(d *Diary) { d.On("2027-05-12", 13, 20, &RingSet{}) }, "2027-05-24", "2027-05-30"},
	{"earwigs: again after 14 d", DueEarwigs, WithEarwigs(Northern()), func(d *Diary) { d.On("2027-05-25", 9, 0, &RingSet{}) }, "2027-06-08", "2027-06-14"},
	{"earwigs: up to push + 45 d", DueEarwigs, WithEarwigs(Northern()), func(d *Diary) {
		d.On("2027-05-29", 9, 0, Visit(Pushing, NoChange)).On("2027-06-29", 9, 0, &RingSet{})
	}, "2027-07-13", "2027-07-19"},
	{"earwigs: past push + 45 d", DueEarwigs, WithEarwigs(Northern()), func(d *Diary) {
		d.On("2027-05-29", 9, 0, Visit(Pushing, NoChange)).On("2027-06-30", 9, 0, &RingSet{})
	}, "", ""},
	{"stake: set + 14 d; nothing pushes", DueStake, nil, nil, "2027-05-26", "2027-07-18"},
	{"stake: first push + 7 d", DueStake, nil, func(d *Diary) { d.On("2027-05-29", 9, 0, Visit(NoChange, Pushing)) }, "2027-05-26", "2027-06-05"},
	{"stake: pushing early, not before it opens", DueStake, nil, func(d *Diary) { d.On("2027-05-16", 9, 0, Visit(NoChange, Pushing)) }, "2027-05-26", "2027-05-26"},
	{"stake: staked", DueStake, nil, func(d *Diary) { d.On("2027-05-26", 9, 0, &Staked{Height: Inches(60)}) }, "", ""},
	{"buds: set + 14 d, + 21 d", DueBuds, nil, nil, "2027-05-26", "2027-06-02"},
	{"buds: seen early", DueBuds, nil, func(d *Diary) { d.On("2027-05-15", 9, 0, Visit(NoChange, NoChange)) }, "2027-05-26", "2027-06-02"},
	{"buds: again after 7 d", DueBuds, nil, func(d *Diary) { d.On("2027-05-29", 9, 0, Visit(NoChange, Pushing)) }, "2027-06-05", "2027-06-12"},
	{"buds: one swells", DueBuds, nil, func(d *Diary) { d.On("2027-05-29", 9, 0, Visit(Growing, Swelling)) }, "2027-06-05", "2027-06-12"},
	{"buds: every graft pushes or is dead", DueBuds, nil, func(d *Diary) { d.On("2027-05-29", 9, 0, Visit(Dead, Pushing)) }, "", ""},
	{"buds: green waits to day 60", DueBuds, nil, func(d *Diary) {
		d.On("2027-06-23", 9, 0, &Visited{[]Finding{{Slot: 1, State: Growing}, {Slot: 2, State: NoChange, Scratch: Green}}})
	}, "2027-07-11", "2027-07-18"},
	{"buds: scratched before day 42", DueBuds, nil, func(d *Diary) {
		d.On("2027-06-22", 9, 0, &Visited{[]Finding{{Slot: 1, State: Growing}, {Slot: 2, State: NoChange, Scratch: Green}}})
	}, "2027-06-29", "2027-07-06"},
	{"buds: one of two not scratched", DueBuds, nil, func(d *Diary) {
		d.On("2027-06-23", 9, 0, &Visited{[]Finding{{Slot: 1, State: NoChange}, {Slot: 2, State: NoChange, Scratch: Green}}})
	}, "2027-06-30", "2027-07-07"},
	{"buds: past day 60", DueBuds, nil, func(d *Diary) {
		d.On("2027-07-11", 9, 0, &Visited{[]Finding{{Slot: 1, State: Growing}, {Slot: 2, State: NoChange, Scratch: Green}}})
	}, "2027-07-18", "2027-07-25"},
	{"confirm-take: before a push", DueConfirmTake, nil, nil, "", ""},
	{"confirm-take: first push + 30 d, + 37 d", DueConfirmTake, nil, func(d *Diary) { d.On("2027-05-29", 9, 0, Visit(NoChange, Pushing)) }, "2027-06-28", "2027-07-05"},
	{"confirm-take: a visit before does not count", DueConfirmTake, nil, func(d *Diary) {
		d.On("2027-05-29", 9, 0, Visit(NoChange, Pushing)).On("2027-06-27", 9, 0, Visit(Growing, Growing))
	}, "2027-06-28", "2027-07-05"},
	{"confirm-take: visited", DueConfirmTake, nil, func(d *Diary) {
		d.On("2027-05-29", 9, 0, Visit(NoChange, Pushing)).On("2027-06-28", 9, 0, Visit(Growing, Growing))
	}, "", ""},
	{"sprouts: cut back + 21 d is sooner", DueSprouts, nil, nil, "2027-05-24", "2027-05-31"},
	{"sprouts: again after 7 d", DueSprouts, nil, func(d *Diary) { d.On("2027-05-24", 9, 0, &SproutsRubbed{Near: 2}) }, "2027-05-31", "2027-06-07"},
	{"sprouts: rubbed early", DueSprouts, nil, func(d *Diary) { d.On("2027-05-13", 9, 0, &SproutsRubbed{Near: 2}) }, "2027-05-24", "2027-05-31"},
	{"sprouts: 14 d with a leader", DueSprouts, nil, func(d *Diary) {
		d.On("2027-06-14", 9, 0, &LeaderChosen{Slot: 1}, &SproutsRubbed{})
	}, "2027-06-28", "2027-07-05"},
	{"sprouts: out of season, next leaf-out", DueSprouts, nil, func(d *Diary) {
		d.On("2027-06-14", 9, 0, &LeaderChosen{Slot: 1}).On("2027-09-20", 9, 0, &SproutsRubbed{})
	}, "2028-05-01", "2028-05-08"},
	{"sprouts: last of the season", DueSprouts, nil, func(d *Diary) {
		d.On("2027-06-14", 9, 0, &LeaderChosen{Slot: 1}).On("2027-09-16", 9, 0, &SproutsRubbed{})
	}, "2027-09-30", "2027-10-07"},
	{"sprouts: 21 d in later years", DueSprouts, nil, func(d *Diary) { d.On("2028-05-02", 9, 0, &SproutsRubbed{}) }, "2028-05-23", "2028-05-30"},
	{"sprouts: rubbed in winter", DueSprouts, nil, func(d *Diary) { d.On("2028-02-02", 9, 0, &SproutsRubbed{}) }, "2028-05-01", "2028-05-08"},
	{"sprouts: not rubbed, and the record goes on in winter", DueSprouts, nil, func(d *Diary) { d.On("2027-12-02", 9, 0, &Noted{"snow"}) }, "2028-05-01", "2028-05-08"},
	{"keep-sprouts: one lives", DueKeepSprouts, nil, func(d *Diary) { d.On("2027-06-20", 9, 0, Visit(Dead, NoChange)) }, "", ""},
	{"keep-sprouts: every graft dead, + 14 d", DueKeepSprouts, nil, func(d *Diary) {
		d.On("2027-06-10", 9, 0, Visit(Dead, NoChange)).On("2027-06-20", 9, 0, Visit(Dead, Dead))
	}, "2027-06-20", "2027-07-04"},
	{"keep-sprouts: in place of sprouts", DueSprouts, nil, func(d *Diary) { d.On("2027-06-20", 9, 0, Visit(Dead, Dead)) }, "", ""},
	{"keep-sprouts: kept", DueKeepSprouts, nil, func(d *Diary) { d.On("2027-06-20", 9, 0, Visit(Dead, Dead), &SproutsKept{Number: 2}) }, "", ""},
	{"keep-sprouts: given up", DueKeepSprouts, nil, func(d *Diary) { d.On("2027-06-20", 9, 0, Visit(Dead, Dead), &GivenUp{}) }, "", ""},
	{"leader: first push + 14 d, + 28 d", DueLeader, nil, func(d *Diary) { d.On("2027-05-29", 9, 0, Visit(NoChange, Pushing)) }, "2027-06-12", "2027-06-26"},
	{"leader: chosen", DueLeader, nil, func(d *Diary) {
		d.On("2027-05-29", 9, 0, Visit(NoChange, Pushing)).On("2027-06-12", 9, 0, &LeaderChosen{Slot: 2})
	}, "", ""},
	{"leader: broken, none promoted", DueLeader, nil, func(d *Diary) {
		d.On("2027-05-29", 9, 0, Visit(Pushing, Pushing)).On("2027-06-12", 9, 0, &LeaderChosen{Slot: 2}).On("2027-07-01", 9, 0, &LeaderBroken{Cause: "wind"})
	}, "2027-07-01", "2027-07-15"},
	{"leader: broken, another promoted", DueLeader, nil, func(d *Diary) {
		d.On("2027-05-29", 9, 0, Visit(Pushing, Pushing)).On("2027-06-12", 9, 0, &LeaderChosen{Slot: 2}).On("2027-07-01", 9, 0, &LeaderBroken{Cause: "wind", Promoted: 1})
	}, "", ""},
	{"leader: its graft died", DueLeader, nil, func(d *Diary) {
		d.On("2027-05-29", 9, 0, Visit(Pushing, Pushing)).On("2027-06-12", 9, 0, &LeaderChosen{Slot: 2}).On("2027-07-01", 9, 0, Visit(Growing, Dead))
	}, "2027-07-01", "2027-07-15"},
	{"tie: first push + 14 d, + 4 d", DueTie, nil, func(d *Diary) { d.On("2027-05-29", 9, 0, Visit(NoChange, Pushing)) }, "2027-06-12", "2027-06-16"},
	{"tie: a shoot of 8 in is sooner", DueTie, nil, func(d *Diary) {
		d.On("2027-05-29", 9, 0, Visit(NoChange, Pushing)).On("2027-06-08", 9, 0, &Visited{[]Finding{{Slot: 1, State: NoChange}, {Slot: 2, State: Growing, Shoot: Inches(8)}}})
	}, "2027-06-08", "2027-06-12"},
	{"tie: last + 7 d to 31 July", DueTie, nil, func(d *Diary) {
		d.On("2027-05-29", 9, 0, Visit(NoChange, Pushing)).On("2027-07-31", 9, 0, &Tied{})
	}, "2027-08-07", "2027-08-11"},
	{"tie: + 14 d after", DueTie, nil, func(d *Diary) {
		d.On("2027-05-29", 9, 0, Visit(NoChange, Pushing)).On("2027-08-01", 9, 0, &Tied{})
	}, "2027-08-15", "2027-08-19"},
	{"tie: 10 in in 10 days, so a foot in 12", DueTie, nil, func(d *Diary) {
		d.On("2027-05-29", 9, 0, Visit(NoChange, Pushing)).On("2027-06-12", 9, 0, &Tied{Shoot: Inches(10)}).On("2027-06-22", 9, 0, &Tied{Shoot: Inches(20)})
	}, "2027-07-04", "2027-07-08"},
	{"tie: growth before a break says nothing", DueTie, nil, func(d *Diary) {
		d.On("2027-05-29", 9, 0, Visit(NoChange, Pushing)).On("2027-06-12", 9, 0, &Tied{Shoot: Inches(10)}).On("2027-06-22", 9, 0, &Tied{Shoot: Inches(6), Broken: true})
	}, "2027-06-29", "2027-07-03"},
	{"tie: out of season, next leaf-out", DueTie, nil, func(d *Diary) {
		d.On("2027-05-29", 9, 0, Visit(NoChange, Pushing)).On("2027-09-25", 9, 0, &Tied{})
	}, "2028-05-01", "2028-05-05"},
	{"tie: not after the second season", DueTie, nil, func(d *Diary) {
		d.On("2027-05-29", 9, 0, Visit(NoChange, Pushing)).On("2028-09-25", 9, 0, &Tied{})
	}, "", ""},
	{"pinch: leader chosen, + 3 d", DuePinch, nil, func(d *Diary) { d.On("2027-06-14", 9, 0, &LeaderChosen{Slot: 1}) }, "2027-06-14", "2027-06-17"},
	{"pinch: last + 14 d, + 21 d", DuePinch, nil, func(d *Diary) { d.On("2027-06-14", 9, 0, &LeaderChosen{Slot: 1}, &Pinched{}) }, "2027-06-28", "2027-07-05"},
	{"pinch: until 15 August", DuePinch, nil, func(d *Diary) { d.On("2027-06-14", 9, 0, &LeaderChosen{Slot: 1}).On("2027-08-01", 9, 0, &Pinched{}) }, "2027-08-15", "2027-08-22"},
	{"pinch: not after 15 August", DuePinch, nil, func(d *Diary) { d.On("2027-06-14", 9, 0, &LeaderChosen{Slot: 1}).On("2027-08-02", 9, 0, &Pinched{}) }, "", ""},
	{"pinch: the block's own date", DuePinch, func() *Block { b := Northern(); b.PinchUntil = MonthDay{time.August, 20}; return b }(), func(d *Diary) {
		d.On("2027-06-14", 9, 0, &LeaderChosen{Slot: 1}).On("2027-08-06", 9, 0, &Pinched{})
	}, "2027-08-20", "2027-08-27"},
	{"twine: 1 August, + 14 d", DueTwine, nil, func(d *Diary) { d.On("2027-06-14", 9, 0, &LeaderChosen{Slot: 1}) }, "2027-08-01", "2027-08-15"},
	{"twine: the leader is 3 ft", DueTwine, nil, func(d *Diary) {
		d.On("2027-06-14", 9, 0, &LeaderChosen{Slot: 1}).On("2027-07-10", 9, 0, &Tied{Shoot: Inches(36)})
	}, "2027-07-10", "2027-07-24"},
	{"twine: the leader will be 3 ft", DueTwine, nil, func(d *Diary) {
		d.On("2027-06-14", 9, 0, &LeaderChosen{Slot: 1}, &Tied{Shoot: Inches(12)}).On("2027-06-24", 9, 0, &Tied{Shoot: Inches(22)})
	}, "2027-07-08", "2027-07-22"},
	{"twine: chosen after 1 August", DueTwine, nil, func(d *Diary) { d.On("2027-08-20", 9, 0, &LeaderChosen{Slot: 1}) }, "2027-08-20", "2027-09-03"},
	{"twine: twined", DueTwine, nil, func(d *Diary) { d.On("2027-06-14", 9, 0, &LeaderChosen{Slot: 1}).On("2027-08-01", 9, 0, &Twined{}) }, "", ""},
	{"seasons-end: 1 October, 31 October", DueSeasonsEnd, nil, nil, "2027-10-01", "2027-10-31"},
	{"seasons-end: the next year", DueSeasonsEnd, nil, func(d *Diary) { d.On("2027-10-09", 9, 0, &SeasonsEnd{}) }, "2028-10-01", "2028-10-31"},
	{"seasons-end: put down early", DueSeasonsEnd, nil, func(d *Diary) { d.On("2027-09-20", 9, 0, &SeasonsEnd{}) }, "2028-10-01", "2028-10-31"},
	{"seasons-end: put down late", DueSeasonsEnd, nil, func(d *Diary) { d.On("2028-02-20", 9, 0, &SeasonsEnd{}) }, "2028-10-01", "2028-10-31"},
	{"ties-off: never tied", DueTiesOff, nil, nil, "", ""},
	{"ties-off: 1 November, 31 December", DueTiesOff, nil, func(d *Diary) { d.On("2027-06-12", 9, 0, &Tied{}) }, "2027-11-01", "2027-12-31"},
	{"ties-off: the second year", DueTiesOff, nil, func(d *Diary) { d.On("2027-06-12", 9, 0, &Tied{}).On("2027-11-05", 9, 0, &TapesLoosened{}) }, "2028-11-01", "2028-12-31"},
	{"ties-off: not a third", DueTiesOff, nil, func(d *Diary) {
		d.On("2027-06-12", 9, 0, &Tied{}).On("2027-11-05", 9, 0, &TapesLoosened{}).On("2029-01-05", 9, 0, &TapesLoosened{})
	}, "", ""},
	{"head-back: mild", DueHeadBack, nil, func(d *Diary) { d.On("2027-05-29", 9, 0, Visit(NoChange, Pushing)) }, "2028-01-15", "2028-03-01"},
	{"head-back: frosty", DueHeadBack, Frosty(Northern()), func(d *Diary) { d.On("2027-05-29", 9, 0, Visit(NoChange, Pushing)) }, "2028-03-01", "2028-04-15"},
	{"head-back: too short, the next winter", DueHeadBack, nil, func(d *Diary) {
		d.On("2027-05-29", 9, 0, Visit(NoChange, Pushing)).On("2028-01-20", 9, 0, &HeadedBack{Short: true})
	}, "2029-01-15", "2029-03-01"},
	{"head-back: headed back", DueHeadBack, nil, func(d *Diary) {
		d.On("2027-05-29", 9, 0, Visit(NoChange, Pushing)).On("2028-01-20", 9, 0, &HeadedBack{Height: Inches(60)})
	}, "", ""},
	{"second-shoot-off: mild, after the second season", DueSecondShootOff, nil, func(d *Diary) { d.On("2027-05-29", 9, 0, Visit(NoChange, Pushing)) }, "2029-01-15", "2029-03-01"},
	{"second-shoot-off: frosty", DueSecondShootOff, Frosty(Northern()), func(d *Diary) { d.On("2027-05-29", 9, 0, Visit(NoChange, Pushing)) }, "2029-03-01", "2029-04-15"},
	{"second-shoot-off: off", DueSecondShootOff, nil, func(d *Diary) {
		d.On("2027-05-29", 9, 0, Visit(NoChange, Pushing)).On("2029-01-20", 9, 0, &SecondShootOff{})
	}, "", ""},
	{"nurse-limbs-off: after the first season", DueNurseLimbsOff, nil, nil, "2028-01-15", "2028-03-01"},
	{"nurse-limbs-off: one left, after the second", DueNurseLimbsOff, nil, func(d *Diary) { d.On("2028-01-20", 9, 0, &NurseLimbOff{Left: 1}) }, "2029-01-15", "2029-03-01"},
	{"nurse-limbs-off: none left", DueNurseLimbsOff, nil, func(d *Diary) { d.On("2028-01-20", 9, 0, &NurseLimbOff{}) }, "", ""},
	{"nurse-limbs-off: one left after both", DueNurseLimbsOff, nil, func(d *Diary) {
		d.On("2028-01-20", 9, 0, &NurseLimbOff{Left: 1}).On("2029-01-20", 9, 0, &NurseLimbOff{Left: 1})
	}, "", ""},
	{"twine-check: the next of April, July, October", DueTwineCheck, nil, func(d *Diary) { d.On("2027-08-05", 9, 0, &Twined{}) }, "2027-10-01", "2027-10-31"},
	{"twine-check: checked on the day", DueTwineCheck, nil, func(d *Diary) { d.On("2027-08-05", 9, 0, &Twined{}).On("2027-10-01", 9, 0, &TwineChecked{}) }, "2028-04-01", "2028-05-01"},
	{"twine-check: moved", DueTwineCheck, nil, func(d *Diary) { d.On("2027-08-05", 9, 0, &Twined{}).On("2028-04-20", 9, 0, &TwineMoved{}) }, "2028-07-01", "2028-07-31"},
	{"twine-check: cut", DueTwineCheck, nil, func(d *Diary) { d.On("2027-08-05", 9, 0, &Twined{}).On("2028-04-20", 9, 0, &TwineCut{}) }, "", ""},
	{"cut-twine: not measured, twined + 3 y", DueCutTwine, nil, func(d *Diary) { d.On("2027-08-05", 9, 0, &Twined{}) }, "2030-08-05", "2030-09-04"},
	{"cut-twine: 6 in to go at 3 in a year", DueCutTwine, nil, func(d *Diary) { d.On("2027-08-05", 9, 0, &Twined{Loop: Inches(10), Stem: Inches(4)}) }, "2029-07-06", "2029-08-05"},
	{"cut-twine: 12 in to go, 3 y is sooner", DueCutTwine, nil, func(d *Diary) { d.On("2027-08-05", 9, 0, &Twined{Loop: Inches(16), Stem: Inches(4)}) }, "2030-08-05", "2030-09-04"},
	{"cut-twine: an inch in 100 days, three readings", DueCutTwine, nil, func(d *Diary) {
		d.On("2027-08-05", 9, 0, &Twined{Loop: Inches(10), Stem: Inches(4)}).On("2027-11-13", 9, 0, &TwineChecked{Stem: Inches(5)}).On("2028-02-21", 9, 0, &TwineChecked{Stem: Inches(6)})
	}, "2029-02-25", "2029-03-27"},
	{"cut-twine: seen tight", DueCutTwine, nil, func(d *Diary) {
		d.On("2027-08-05", 9, 0, &Twined{Loop: Inches(10), Stem: Inches(4)}).On("2028-07-01", 9, 0, &TwineChecked{Tight: true})
	}, "2028-06-01", "2028-07-01"},
	{"cut-twine: tight, then let out", DueCutTwine, nil, func(d *Diary) {
		d.On("2027-08-05", 9, 0, &Twined{Loop: Inches(6), Stem: Inches(4)}).On("2028-07-01", 9, 0, &TwineChecked{Tight: true}).On("2028-07-01", 10, 0, &TwineMoved{Loop: Inches(22), Stem: Inches(7)})
	}, "2030-08-05", "2030-09-04"},
	{"cut-twine: cut", DueCutTwine, nil, func(d *Diary) { d.On("2027-08-05", 9, 0, &Twined{}).On("2028-07-01", 9, 0, &TwineCut{}) }, "", ""},
	{"regraft: failed, the next 15 March", DueRegraft, nil, func(d *Diary) { d.On("2027-06-20", 9, 0, &Failed{Cause: "bled"}) }, "2028-03-15", "2028-05-15"},
	{"regraft: every graft dead", DueRegraft, nil, func(d *Diary) { d.On("2028-03-01", 9, 0, Visit(Dead, Dead)) }, "2028-03-15", "2028-05-15"},
	{"regraft: failed on 15 March", DueRegraft, nil, func(d *Diary) { d.On("2028-03-15", 9, 0, &Failed{Cause: "bled"}) }, "2029-03-15", "2029-05-15"},
	{"regraft: given up", DueRegraft, nil, func(d *Diary) { d.On("2027-06-20", 9, 0, &Failed{Cause: "bled"}, &GivenUp{}) }, "", ""},
	{"regraft: left for the season", DueRegraft, nil, func(d *Diary) { d.On("2027-06-20", 9, 0, &GivenUp{Season: true}) }, "2028-03-15", "2028-05-15"},
	{"regraft: limbs judged anew", DueRegraft, nil, func(d *Diary) {
		d.On("2027-06-20", 9, 0, &Failed{Cause: "bled"}).On("2028-03-20", 9, 0, &NurseJudged{Limbs: 1})
	}, "2028-03-15", "2028-05-15"},
	{"regraft: cut back again", DueRegraft, nil, func(d *Diary) {
		d.On("2027-06-20", 9, 0, &Failed{Cause: "bled"}).On("2028-03-20", 9, 0, &CutBack{})
	}, "", ""},
	{"a leap day lies within 30 days", DueTwineCheck, nil, func(d *Diary) { d.On("2027-12-05", 9, 0, &Twined{}) }, "2028-04-01", "2028-05-01"},
}
