package due

import (
	"time"

	"barkslip/core/record"
	"barkslip/core/record/recordtest"
)

// dueDate is when work of a kind opens and is due by, after other work.
type dueDate struct {
	name      string
	kind      Kind
	block     *record.Block
	work      func(d *recordtest.Diary)
	opens, by string // "" where nothing is due
}

// pushes is a visit on 29 May at which the second graft pushes.
func pushes(d *recordtest.Diary) {
	d.On("2027-05-29", 9, 0, recordtest.Visit(record.NoChange, record.Pushing))
}

// led is the same, with its shoot chosen as leader on 12 June.
func led(d *recordtest.Diary) {
	pushes(d)
	d.On("2027-06-12", 9, 0, &record.LeaderChosen{Slot: 2, Shoot: "only"})
}

// ties puts ties on, none but the first measured.
func ties(d *recordtest.Diary, days ...string) {
	led(d)
	for _, day := range days {
		d.On(day, 9, 0, &record.Tied{})
	}
}

// Each row of the table of dues, on a stump cut back on 3 May and grafted on 12
// May 2027 at 42.7 N, unless it says otherwise.
var dueDates = []dueDate{
	{"after-look: sealed + 2 d, + 4 d", AfterLook, nil, nil, "2027-05-14", "2027-05-16"},
	{"after-look: checked", AfterLook, nil, func(d *recordtest.Diary) { d.On("2027-05-14", 9, 0, &record.SealChecked{}) }, "", ""},
	{"after-look: checked before this sealing", AfterLook, nil, func(d *recordtest.Diary) {
		d.Odd("2027-05-12", 8, 0, &record.SealChecked{})
	}, "2027-05-14", "2027-05-16"},
	{"reseal: wrapped", Reseal, nil, nil, "", ""},
	{"reseal: bare + 5 d, + 6 d", Reseal, nil, func(d *recordtest.Diary) {
		d.On("2027-05-12", 11, 0, &record.Sealed{Cover: record.Bare})
	}, "2027-05-17", "2027-05-18"},
	{"reseal: resealed", Reseal, nil, func(d *recordtest.Diary) {
		d.On("2027-05-12", 11, 0, &record.Sealed{Cover: record.Bare}).On("2027-05-17", 9, 0, &record.Resealed{})
	}, "", ""},
	{"reseal: seen cracked", Reseal, nil, func(d *recordtest.Diary) { d.On("2027-05-15", 9, 0, &record.SealChecked{Cracked: true}) }, "2027-05-15", "2027-05-16"},
	{"reseal: cracked and mended", Reseal, nil, func(d *recordtest.Diary) {
		d.On("2027-05-15", 9, 0, &record.SealChecked{Cracked: true}, &record.Resealed{})
	}, "", ""},
	{"earwigs: none on the block", Earwigs, nil, nil, "", ""},
	{"earwigs: set + 12 d, + 18 d", Earwigs, recordtest.WithEarwigs(recordtest.Northern()), nil, "2027-05-24", "2027-05-30"},
	{"earwigs: the ring of the graft day does not count", Earwigs, recordtest.WithEarwigs(recordtest.Northern()), func(d *recordtest.Diary) {
		d.On("2027-05-12", 13, 20, &record.RingSet{})
	}, "2027-05-24", "2027-05-30"},
	{"earwigs: again after 14 d", Earwigs, recordtest.WithEarwigs(recordtest.Northern()), func(d *recordtest.Diary) {
		d.On("2027-05-25", 9, 0, &record.RingSet{})
	}, "2027-06-08", "2027-06-14"},
	{"earwigs: up to push + 45 d", Earwigs, recordtest.WithEarwigs(recordtest.Northern()), func(d *recordtest.Diary) {
		d.On("2027-05-29", 9, 0, recordtest.Visit(record.Pushing, record.NoChange)).On("2027-06-29", 9, 0, &record.RingSet{})
	}, "2027-07-13", "2027-07-19"},
	{"earwigs: past push + 45 d", Earwigs, recordtest.WithEarwigs(recordtest.Northern()), func(d *recordtest.Diary) {
		d.On("2027-05-29", 9, 0, recordtest.Visit(record.Pushing, record.NoChange)).On("2027-06-30", 9, 0, &record.RingSet{})
	}, "", ""},
	{"earwigs: the season of the graft is over", Earwigs, recordtest.WithEarwigs(recordtest.Northern()), func(d *recordtest.Diary) {
		d.On("2027-10-01", 9, 0, &record.Noted{Text: "leaf down"})
	}, "", ""},
	{"stake: nothing pushes", Stake, nil, nil, "", ""},
	{"stake: first push, + 7 d", Stake, nil, pushes, "2027-05-29", "2027-06-05"},
	{"stake: pushing early", Stake, nil, func(d *recordtest.Diary) {
		d.On("2027-05-16", 9, 0, recordtest.Visit(record.NoChange, record.Pushing))
	}, "2027-05-16", "2027-05-23"},
	{"stake: staked", Stake, nil, func(d *recordtest.Diary) {
		pushes(d)
		d.On("2027-05-29", 9, 0, &record.Staked{Height: recordtest.Inches(60)})
	}, "", ""},
	{"buds: set + 14 d, + 21 d", Buds, nil, nil, "2027-05-26", "2027-06-02"},
	{"buds: seen early", Buds, nil, func(d *recordtest.Diary) {
		d.On("2027-05-15", 9, 0, recordtest.Visit(record.NoChange, record.NoChange))
	}, "2027-05-26", "2027-06-02"},
	{"buds: a graft not told is no visit", Buds, nil, func(d *recordtest.Diary) {
		d.On("2027-05-29", 9, 0, recordtest.Visit(record.NoChange))
	}, "2027-05-26", "2027-06-02"},
	{"buds: one pushes, the other not told", Buds, nil, func(d *recordtest.Diary) {
		d.On("2027-05-29", 9, 0, recordtest.Visit(record.Growing))
	}, "2027-05-26", "2027-06-02"},
	{"buds: again after 7 d", Buds, nil, pushes, "2027-06-05", "2027-06-12"},
	{"buds: one swells", Buds, nil, func(d *recordtest.Diary) {
		d.On("2027-05-29", 9, 0, recordtest.Visit(record.Growing, record.Swelling))
	}, "2027-06-05", "2027-06-12"},
	{"buds: every graft pushes or is dead", Buds, nil, func(d *recordtest.Diary) {
		d.On("2027-05-29", 9, 0, recordtest.Visit(record.Dead, record.Pushing))
	}, "", ""},
	{"buds: green waits to day 60", Buds, nil, func(d *recordtest.Diary) {
		d.On("2027-06-23", 9, 0, &record.Visited{Found: []record.Finding{{Slot: 1, State: record.Growing}, {Slot: 2, State: record.NoChange, Scratch: record.Green}}})
	}, "2027-07-11", "2027-07-18"},
	{"buds: scratched before day 42", Buds, nil, func(d *recordtest.Diary) {
		d.On("2027-06-22", 9, 0, &record.Visited{Found: []record.Finding{{Slot: 1, State: record.Growing}, {Slot: 2, State: record.NoChange, Scratch: record.Green}}})
	}, "2027-06-29", "2027-07-06"},
	{"buds: one of two not scratched", Buds, nil, func(d *recordtest.Diary) {
		d.On("2027-06-23", 9, 0, &record.Visited{Found: []record.Finding{{Slot: 1, State: record.NoChange}, {Slot: 2, State: record.NoChange, Scratch: record.Green}}})
	}, "2027-06-30", "2027-07-07"},
	{"buds: past day 60", Buds, nil, func(d *recordtest.Diary) {
		d.On("2027-07-11", 9, 0, &record.Visited{Found: []record.Finding{{Slot: 1, State: record.Growing}, {Slot: 2, State: record.NoChange, Scratch: record.Green}}})
	}, "2027-07-18", "2027-07-25"},
	{"confirm-take: before a push", ConfirmTake, nil, nil, "", ""},
	{"confirm-take: first push + 30 d, + 37 d", ConfirmTake, nil, pushes, "2027-06-28", "2027-07-05"},
	{"confirm-take: a visit before does not count", ConfirmTake, nil, func(d *recordtest.Diary) {
		d.On("2027-05-29", 9, 0, recordtest.Visit(record.NoChange, record.Pushing)).On("2027-06-27", 9, 0, recordtest.Visit(record.Growing, record.Growing))
	}, "2027-06-28", "2027-07-05"},
	{"confirm-take: one living graft not told", ConfirmTake, nil, func(d *recordtest.Diary) {
		pushes(d)
		d.On("2027-06-28", 9, 0, recordtest.Visit(record.Growing))
	}, "2027-06-28", "2027-07-05"},
	{"confirm-take: a dead graft need not be told again", ConfirmTake, nil, func(d *recordtest.Diary) {
		d.On("2027-05-29", 9, 0, recordtest.Visit(record.Pushing, record.Dead)).On("2027-06-28", 9, 0, recordtest.Visit(record.Growing))
	}, "", ""},
	{"confirm-take: visited", ConfirmTake, nil, func(d *recordtest.Diary) {
		d.On("2027-05-29", 9, 0, recordtest.Visit(record.NoChange, record.Pushing)).On("2027-06-28", 9, 0, recordtest.Visit(record.Growing, record.Growing))
	}, "", ""},
	{"sprouts: cut back + 21 d is sooner", Sprouts, nil, nil, "2027-05-24", "2027-05-31"},
	{"sprouts: below not told", Sprouts, nil, func(d *recordtest.Diary) { d.On("2027-05-24", 9, 0, &record.SproutsRubbed{Near: 2}) }, "2027-05-24", "2027-05-31"},
	{"sprouts: again after 7 d", Sprouts, nil, func(d *recordtest.Diary) {
		d.On("2027-05-24", 9, 0, &record.SproutsRubbed{Near: 2, Leaf: "some"})
	}, "2027-05-31", "2027-06-07"},
	{"sprouts: rubbed early", Sprouts, nil, func(d *recordtest.Diary) {
		d.On("2027-05-13", 9, 0, &record.SproutsRubbed{Near: 2, Leaf: "some"})
	}, "2027-05-24", "2027-05-31"},
	{"sprouts: 14 d with a leader", Sprouts, nil, func(d *recordtest.Diary) {
		d.On("2027-06-14", 9, 0, &record.LeaderChosen{Slot: 1}, &record.SproutsRubbed{Leaf: "some"})
	}, "2027-06-28", "2027-07-05"},
	{"sprouts: told below by number", Sprouts, nil, func(d *recordtest.Diary) {
		d.On("2027-05-24", 9, 0, &record.SproutsRubbed{Near: 2, Below: 1})
	}, "2027-05-31", "2027-06-07"},
	{"sprouts: out of season, next leaf-out", Sprouts, nil, func(d *recordtest.Diary) {
		d.On("2027-06-14", 9, 0, &record.LeaderChosen{Slot: 1}).On("2027-09-20", 9, 0, &record.SproutsRubbed{Leaf: "some"})
	}, "2028-05-01", "2028-05-08"},
	{"sprouts: last of the season", Sprouts, nil, func(d *recordtest.Diary) {
		d.On("2027-06-14", 9, 0, &record.LeaderChosen{Slot: 1}).On("2027-09-16", 9, 0, &record.SproutsRubbed{Leaf: "some"})
	}, "2027-09-30", "2027-10-07"},
	{"sprouts: 21 d in later years", Sprouts, nil, func(d *recordtest.Diary) {
		d.On("2028-05-02", 9, 0, &record.SproutsRubbed{Leaf: "some"})
	}, "2028-05-23", "2028-05-30"},
	{"sprouts: rubbed in winter", Sprouts, nil, func(d *recordtest.Diary) {
		d.On("2028-02-02", 9, 0, &record.SproutsRubbed{Leaf: "some"})
	}, "2028-05-01", "2028-05-08"},
	{"sprouts: not rubbed, and the record goes on in winter", Sprouts, nil, func(d *recordtest.Diary) {
		d.On("2027-12-02", 9, 0, &record.Noted{Text: "snow"})
	}, "2028-05-01", "2028-05-08"},
	{"keep-sprouts: one lives", KeepSprouts, nil, func(d *recordtest.Diary) { d.On("2027-06-20", 9, 0, recordtest.Visit(record.Dead, record.NoChange)) }, "", ""},
	{"keep-sprouts: every graft dead, + 14 d", KeepSprouts, nil, func(d *recordtest.Diary) {
		d.On("2027-06-10", 9, 0, recordtest.Visit(record.Dead, record.NoChange)).On("2027-06-20", 9, 0, recordtest.Visit(record.Dead, record.Dead))
	}, "2027-06-20", "2027-07-04"},
	{"keep-sprouts: in place of sprouts", Sprouts, nil, func(d *recordtest.Diary) {
		d.On("2027-06-20", 9, 0, recordtest.Visit(record.Dead, record.Dead))
	}, "", ""},
	{"keep-sprouts: kept", KeepSprouts, nil, func(d *recordtest.Diary) {
		d.On("2027-06-20", 9, 0, recordtest.Visit(record.Dead, record.Dead), &record.SproutsKept{Number: 2})
	}, "", ""},
	{"keep-sprouts: given up", KeepSprouts, nil, func(d *recordtest.Diary) {
		d.On("2027-06-20", 9, 0, recordtest.Visit(record.Dead, record.Dead), &record.GivenUp{})
	}, "", ""},
	{"leader: first push + 14 d, + 28 d", Leader, nil, pushes, "2027-06-12", "2027-06-26"},
	{"leader: chosen, its shoot not told", Leader, nil, func(d *recordtest.Diary) {
		pushes(d)
		d.On("2027-06-12", 9, 0, &record.LeaderChosen{Slot: 2})
	}, "2027-06-12", "2027-06-19"},
	{"leader: chosen, with its shoot", Leader, nil, led, "", ""},
	{"leader: the only graft that pushed is dead", Leader, nil, func(d *recordtest.Diary) {
		pushes(d)
		d.On("2027-06-05", 9, 0, recordtest.Visit(record.NoChange, record.Dead))
	}, "", ""},
	{"leader: counted from a graft that lives", Leader, nil, func(d *recordtest.Diary) {
		pushes(d)
		d.On("2027-06-05", 9, 0, recordtest.Visit(record.Pushing, record.Dead))
	}, "2027-06-19", "2027-07-03"},
	{"leader: broken, none promoted", Leader, nil, func(d *recordtest.Diary) {
		d.On("2027-05-29", 9, 0, recordtest.Visit(record.Pushing, record.Pushing)).On("2027-06-12", 9, 0, &record.LeaderChosen{Slot: 2}).
			On("2027-07-01", 9, 0, &record.LeaderBroken{Cause: "wind"})
	}, "2027-07-01", "2027-07-08"},
	{"leader: broken, another promoted", Leader, nil, func(d *recordtest.Diary) {
		d.On("2027-05-29", 9, 0, recordtest.Visit(record.Pushing, record.Pushing)).On("2027-06-12", 9, 0, &record.LeaderChosen{Slot: 2}).
			On("2027-07-01", 9, 0, &record.LeaderBroken{Cause: "wind", Promoted: 1, Shoot: "upper"})
	}, "", ""},
	{"leader: its graft died", Leader, nil, func(d *recordtest.Diary) {
		d.On("2027-05-29", 9, 0, recordtest.Visit(record.Pushing, record.Pushing)).On("2027-06-12", 9, 0, &record.LeaderChosen{Slot: 2}).
			On("2027-07-01", 9, 0, recordtest.Visit(record.Growing, record.Dead))
	}, "2027-07-01", "2027-07-08"},
	{"tie: first push + 14 d, + 4 d", Tie, nil, pushes, "2027-06-12", "2027-06-16"},
	{"tie: a shoot of 8 in is sooner", Tie, nil, func(d *recordtest.Diary) {
		d.On("2027-05-29", 9, 0, recordtest.Visit(record.NoChange, record.Pushing)).
			On("2027-06-08", 9, 0, &record.Visited{Found: []record.Finding{{Slot: 1, State: record.NoChange}, {Slot: 2, State: record.Growing, Shoot: recordtest.Inches(8)}}})
	}, "2027-06-08", "2027-06-12"},
	{"tie: last + 7 d to 31 July", Tie, nil, func(d *recordtest.Diary) {
		d.On("2027-05-29", 9, 0, recordtest.Visit(record.NoChange, record.Pushing)).On("2027-07-31", 9, 0, &record.Tied{})
	}, "2027-08-07", "2027-08-11"},
	{"tie: + 14 d after", Tie, nil, func(d *recordtest.Diary) {
		d.On("2027-05-29", 9, 0, recordtest.Visit(record.NoChange, record.Pushing)).On("2027-08-01", 9, 0, &record.Tied{})
	}, "2027-08-15", "2027-08-19"},
	{"tie: 10 in in 10 days, so a foot in 12", Tie, nil, func(d *recordtest.Diary) {
		d.On("2027-05-29", 9, 0, recordtest.Visit(record.NoChange, record.Pushing)).On("2027-06-12", 9, 0, &record.Tied{Shoot: recordtest.Inches(10)}).
			On("2027-06-22", 9, 0, &record.Tied{Shoot: recordtest.Inches(20)})
	}, "2027-07-04", "2027-07-08"},
	{"tie: growth before a break says nothing", Tie, nil, func(d *recordtest.Diary) {
		d.On("2027-05-29", 9, 0, recordtest.Visit(record.NoChange, record.Pushing)).On("2027-06-12", 9, 0, &record.Tied{Shoot: recordtest.Inches(10)}).
			On("2027-06-22", 9, 0, &record.Tied{Shoot: recordtest.Inches(6), Broken: true})
	}, "2027-06-29", "2027-07-03"},
	{"tie: out of season, 1 June of the second", Tie, nil, func(d *recordtest.Diary) {
		d.On("2027-05-29", 9, 0, recordtest.Visit(record.NoChange, record.Pushing)).On("2027-09-25", 9, 0, &record.Tied{})
	}, "2028-06-01", "2028-06-05"},
	{"tie: not after the second season", Tie, nil, func(d *recordtest.Diary) {
		d.On("2027-05-29", 9, 0, recordtest.Visit(record.NoChange, record.Pushing)).On("2028-09-25", 9, 0, &record.Tied{})
	}, "", ""},
	{"tie: slow growth, 21 d after the last measure", Tie, nil, func(d *recordtest.Diary) {
		pushes(d)
		d.On("2027-06-12", 9, 0, &record.Tied{Shoot: recordtest.Inches(10)}).On("2027-06-22", 9, 0, &record.Tied{Shoot: recordtest.Inches(10.5)})
	}, "2027-07-13", "2027-07-17"},
	{"tie: a forecast does not cross the winter", Tie, nil, func(d *recordtest.Diary) {
		pushes(d)
		d.On("2027-09-10", 9, 0, &record.Tied{Shoot: recordtest.Inches(30)}).On("2027-09-20", 9, 0, &record.Tied{Shoot: recordtest.Inches(31)})
	}, "2028-06-01", "2028-06-05"},
	{"tie: within a foot of the stake's top", Tie, nil, func(d *recordtest.Diary) {
		pushes(d)
		d.On("2027-05-30", 9, 0, &record.Staked{Height: recordtest.Inches(60)}).On("2027-07-20", 9, 0, &record.Tied{Shoot: recordtest.Inches(48)})
	}, "", ""},
	{"tie: an inch more than a foot below it", Tie, nil, func(d *recordtest.Diary) {
		pushes(d)
		d.On("2027-05-30", 9, 0, &record.Staked{Height: recordtest.Inches(60)}).On("2027-07-20", 9, 0, &record.Tied{Shoot: recordtest.Inches(47)})
	}, "2027-07-27", "2027-07-31"},
	{"tie: headed back", Tie, nil, func(d *recordtest.Diary) {
		ties(d, "2027-06-14")
		d.On("2028-01-20", 9, 0, &record.HeadedBack{Height: recordtest.Inches(60)})
	}, "", ""},
	{"tie: too short to be headed back, 1 June of the second season", Tie, nil, func(d *recordtest.Diary) {
		ties(d, "2027-06-14")
		d.On("2028-01-20", 9, 0, &record.HeadedBack{Short: true})
	}, "2028-06-01", "2028-06-05"},
	{"tie: in the second season by the growth measured", Tie, nil, func(d *recordtest.Diary) {
		ties(d, "2027-06-14")
		d.On("2028-06-01", 9, 0, &record.Tied{Shoot: recordtest.Inches(40)}).On("2028-06-11", 9, 0, &record.Tied{Shoot: recordtest.Inches(50)})
	}, "2028-06-23", "2028-06-27"},
	{"pinch: leader chosen, + 3 d", Pinch, nil, func(d *recordtest.Diary) { d.On("2027-06-14", 9, 0, &record.LeaderChosen{Slot: 1}) }, "2027-06-14", "2027-06-17"},
	{"pinch: last + 14 d, + 21 d", Pinch, nil, func(d *recordtest.Diary) {
		d.On("2027-06-14", 9, 0, &record.LeaderChosen{Slot: 1}, &record.Pinched{})
	}, "2027-06-28", "2027-07-05"},
	{"pinch: until 15 August", Pinch, nil, func(d *recordtest.Diary) {
		d.On("2027-06-14", 9, 0, &record.LeaderChosen{Slot: 1}).On("2027-08-01", 9, 0, &record.Pinched{})
	}, "2027-08-15", "2027-08-22"},
	{"pinch: not after 15 August", Pinch, nil, func(d *recordtest.Diary) {
		d.On("2027-06-14", 9, 0, &record.LeaderChosen{Slot: 1}).On("2027-08-02", 9, 0, &record.Pinched{})
	}, "", ""},
	{"pinch: the block's own date", Pinch, func() *record.Block {
		b := recordtest.Northern()
		b.PinchUntil = record.MonthDay{Month: time.August, Day: 20}
		return b
	}(), func(d *recordtest.Diary) {
		d.On("2027-06-14", 9, 0, &record.LeaderChosen{Slot: 1}).On("2027-08-06", 9, 0, &record.Pinched{})
	}, "2027-08-20", "2027-08-27"},
	{"pinch: chosen after 15 August", Pinch, nil, func(d *recordtest.Diary) { d.On("2027-08-20", 9, 0, &record.LeaderChosen{Slot: 1}) }, "", ""},
	{"pinch: the leader is lost", Pinch, nil, func(d *recordtest.Diary) {
		led(d)
		d.On("2027-06-20", 9, 0, &record.LeaderBroken{Cause: "wind"})
	}, "", ""},
	{"twine: 1 August, + 14 d", Twine, nil, func(d *recordtest.Diary) { d.On("2027-06-14", 9, 0, &record.LeaderChosen{Slot: 1}) }, "2027-08-01", "2027-08-15"},
	{"twine: the leader is 3 ft", Twine, nil, func(d *recordtest.Diary) {
		d.On("2027-06-14", 9, 0, &record.LeaderChosen{Slot: 1}).On("2027-07-10", 9, 0, &record.Tied{Shoot: recordtest.Inches(36)})
	}, "2027-07-10", "2027-07-24"},
	{"twine: the leader will be 3 ft", Twine, nil, func(d *recordtest.Diary) {
		d.On("2027-06-14", 9, 0, &record.LeaderChosen{Slot: 1}, &record.Tied{Shoot: recordtest.Inches(12)}).
			On("2027-06-24", 9, 0, &record.Tied{Shoot: recordtest.Inches(22)})
	}, "2027-07-08", "2027-07-22"},
	{"twine: chosen after 1 August", Twine, nil, func(d *recordtest.Diary) {
		d.On("2027-08-20", 9, 0, &record.LeaderChosen{Slot: 1})
	}, "2027-08-20", "2027-09-03"},
	{"twine: twined", Twine, nil, func(d *recordtest.Diary) {
		d.On("2027-06-14", 9, 0, &record.LeaderChosen{Slot: 1}).On("2027-08-01", 9, 0, &record.Twined{})
	}, "", ""},
	{"twine: not in the first season, 1 June of the second", Twine, nil, func(d *recordtest.Diary) {
		led(d)
		d.On("2027-10-01", 9, 0, &record.Noted{Text: "leaf down"})
	}, "2028-06-01", "2028-06-15"},
	{"twine: a new leader asks anew", Twine, nil, func(d *recordtest.Diary) {
		led(d)
		d.On("2027-08-01", 9, 0, &record.Twined{}).On("2027-08-10", 9, 0, recordtest.Visit(record.Pushing, record.Dead), &record.LeaderChosen{Slot: 1})
	}, "2027-08-10", "2027-08-24"},
	{"twine: the leader is lost", Twine, nil, func(d *recordtest.Diary) {
		led(d)
		d.On("2027-06-20", 9, 0, &record.LeaderBroken{Cause: "wind"})
	}, "", ""},
	{"seasons-end: 1 October, 31 October", SeasonsEnd, nil, nil, "2027-10-01", "2027-10-31"},
	{"seasons-end: the next year", SeasonsEnd, nil, func(d *recordtest.Diary) { d.On("2027-10-09", 9, 0, &record.SeasonsEnd{}) }, "2028-10-01", "2028-10-31"},
	{"seasons-end: put down early", SeasonsEnd, nil, func(d *recordtest.Diary) { d.On("2027-09-20", 9, 0, &record.SeasonsEnd{}) }, "2028-10-01", "2028-10-31"},
	{"seasons-end: put down late", SeasonsEnd, nil, func(d *recordtest.Diary) { d.On("2028-02-20", 9, 0, &record.SeasonsEnd{}) }, "2028-10-01", "2028-10-31"},
	{"ties-off: first tied in December, the same winter", TiesOff, nil, func(d *recordtest.Diary) {
		d.On("2027-12-10", 9, 0, &record.Tied{})
	}, "2027-12-10", "2027-12-31"},
	{"ties-off: never tied", TiesOff, nil, nil, "", ""},
	{"ties-off: 1 November, 31 December", TiesOff, nil, func(d *recordtest.Diary) { d.On("2027-06-12", 9, 0, &record.Tied{}) }, "2027-11-01", "2027-12-31"},
	{"ties-off: the second year", TiesOff, nil, func(d *recordtest.Diary) {
		d.On("2027-06-12", 9, 0, &record.Tied{}).On("2027-11-05", 9, 0, &record.TapesLoosened{})
	}, "2028-11-01", "2028-12-31"},
	{"ties-off: not a third", TiesOff, nil, func(d *recordtest.Diary) {
		d.On("2027-06-12", 9, 0, &record.Tied{}).On("2027-11-05", 9, 0, &record.TapesLoosened{}).On("2029-01-05", 9, 0, &record.TapesLoosened{})
	}, "", ""},
	{"head-back: no leader to head back", HeadBack, nil, pushes, "", ""},
	{"head-back: mild", HeadBack, nil, led, "2028-01-15", "2028-03-01"},
	{"head-back: frosty", HeadBack, recordtest.Frosty(recordtest.Northern()), led, "2028-03-01", "2028-04-15"},
	{"head-back: too short, the next winter", HeadBack, nil, func(d *recordtest.Diary) {
		led(d)
		d.On("2028-01-20", 9, 0, &record.HeadedBack{Short: true})
	}, "2029-01-15", "2029-03-01"},
	{"head-back: headed back", HeadBack, nil, func(d *recordtest.Diary) {
		led(d)
		d.On("2028-01-20", 9, 0, &record.HeadedBack{Height: recordtest.Inches(60)})
	}, "", ""},
	{"head-back: not this year", HeadBack, nil, func(d *recordtest.Diary) {
		led(d)
		d.On("2028-01-20", 9, 0, &record.AnotherYear{Work: "head-back"})
	}, "2029-01-15", "2029-03-01"},
	{"head-back: other work put off says nothing", HeadBack, nil, func(d *recordtest.Diary) {
		led(d)
		d.On("2028-01-20", 9, 0, &record.AnotherYear{Work: "untie"})
	}, "2028-01-15", "2028-03-01"},
	{"head-back: missed, the next winter", HeadBack, nil, func(d *recordtest.Diary) {
		led(d)
		d.On("2028-05-02", 9, 0, &record.Noted{Text: "in leaf"})
	}, "2029-01-15", "2029-03-01"},
	{"second-shoot-off: no leader to stand alone", SecondShootOff, nil, pushes, "", ""},
	{"second-shoot-off: mild, after the second season", SecondShootOff, nil, led, "2029-01-15", "2029-03-01"},
	{"second-shoot-off: frosty", SecondShootOff, recordtest.Frosty(recordtest.Northern()), led, "2029-03-01", "2029-04-15"},
	{"second-shoot-off: off", SecondShootOff, nil, func(d *recordtest.Diary) {
		led(d)
		d.On("2029-01-20", 9, 0, &record.SecondShootOff{})
	}, "", ""},
	{"second-shoot-off: none there", SecondShootOff, nil, func(d *recordtest.Diary) {
		led(d)
		d.On("2029-01-20", 9, 0, &record.SecondShootOff{None: true})
	}, "", ""},
	{"nurse-limbs-off: after the first season", NurseLimbsOff, nil, nil, "2028-01-15", "2028-03-01"},
	{"nurse-limbs-off: one left, after the second", NurseLimbsOff, nil, func(d *recordtest.Diary) {
		d.On("2028-01-20", 9, 0, &record.NurseLimbOff{Left: 1})
	}, "2029-01-15", "2029-03-01"},
	{"nurse-limbs-off: none left", NurseLimbsOff, nil, func(d *recordtest.Diary) { d.On("2028-01-20", 9, 0, &record.NurseLimbOff{}) }, "", ""},
	{"nurse-limbs-off: one left after both, the next winter", NurseLimbsOff, nil, func(d *recordtest.Diary) {
		d.On("2028-01-20", 9, 0, &record.NurseLimbOff{Left: 1}).On("2029-01-20", 9, 0, &record.NurseLimbOff{Left: 1})
	}, "2030-01-15", "2030-03-01"},
	{"nurse-limbs-off: all stay another year", NurseLimbsOff, nil, func(d *recordtest.Diary) {
		d.On("2028-01-20", 9, 0, &record.AnotherYear{Work: "nurse-limbs-off"})
	}, "2029-01-15", "2029-03-01"},
	{"twine-check: the next of April, July, October", TwineCheck, nil, func(d *recordtest.Diary) {
		d.On("2027-08-05", 9, 0, &record.Twined{})
	}, "2027-10-01", "2027-10-31"},
	{"twine-check: checked on the day", TwineCheck, nil, func(d *recordtest.Diary) {
		d.On("2027-08-05", 9, 0, &record.Twined{}).On("2027-10-01", 9, 0, &record.TwineChecked{})
	}, "2028-04-01", "2028-05-01"},
	{"twine-check: moved", TwineCheck, nil, func(d *recordtest.Diary) {
		d.On("2027-08-05", 9, 0, &record.Twined{}).On("2028-04-20", 9, 0, &record.TwineMoved{})
	}, "2028-07-01", "2028-07-31"},
	{"twine-check: cut", TwineCheck, nil, func(d *recordtest.Diary) {
		d.On("2027-08-05", 9, 0, &record.Twined{}).On("2028-04-20", 9, 0, &record.TwineCut{})
	}, "", ""},
	{"cut-twine: not measured, twined + 3 y", CutTwine, nil, func(d *recordtest.Diary) { d.On("2027-08-05", 9, 0, &record.Twined{}) }, "2030-08-05", "2030-09-04"},
	{"cut-twine: 6 in to go at 3 in a year", CutTwine, nil, func(d *recordtest.Diary) {
		d.On("2027-08-05", 9, 0, &record.Twined{Loop: recordtest.Inches(10), Stem: recordtest.Inches(4)})
	}, "2029-07-06", "2029-08-05"},
	{"cut-twine: 12 in to go, 3 y is sooner", CutTwine, nil, func(d *recordtest.Diary) {
		d.On("2027-08-05", 9, 0, &record.Twined{Loop: recordtest.Inches(16), Stem: recordtest.Inches(4)})
	}, "2030-08-05", "2030-09-04"},
	{"cut-twine: an inch in 100 days, three readings", CutTwine, nil, func(d *recordtest.Diary) {
		d.On("2027-08-05", 9, 0, &record.Twined{Loop: recordtest.Inches(10), Stem: recordtest.Inches(4)}).
			On("2027-11-13", 9, 0, &record.TwineChecked{Stem: recordtest.Inches(5)}).On("2028-02-21", 9, 0, &record.TwineChecked{Stem: recordtest.Inches(6)})
	}, "2029-02-25", "2029-03-27"},
	{"cut-twine: seen tight", CutTwine, nil, func(d *recordtest.Diary) {
		d.On("2027-08-05", 9, 0, &record.Twined{Loop: recordtest.Inches(10), Stem: recordtest.Inches(4)}).On("2028-07-01", 9, 0, &record.TwineChecked{Tight: true})
	}, "2028-07-01", "2028-07-08"},
	{"cut-twine: tight, then let out", CutTwine, nil, func(d *recordtest.Diary) {
		d.On("2027-08-05", 9, 0, &record.Twined{Loop: recordtest.Inches(6), Stem: recordtest.Inches(4)}).
			On("2028-07-01", 9, 0, &record.TwineChecked{Tight: true}).On("2028-07-01", 10, 0, &record.TwineMoved{Loop: recordtest.Inches(22), Stem: recordtest.Inches(7)})
	}, "2030-08-05", "2030-09-04"},
	{"cut-twine: cut", CutTwine, nil, func(d *recordtest.Diary) {
		d.On("2027-08-05", 9, 0, &record.Twined{}).On("2028-07-01", 9, 0, &record.TwineCut{})
	}, "", ""},
	{"untie: second season over, never twined or tied", Untie, nil, nil, "2028-10-01", "2028-10-31"},
	{"untie: twine on", Untie, nil, func(d *recordtest.Diary) {
		led(d)
		d.On("2027-08-05", 9, 0, &record.Twined{})
	}, "", ""},
	{"untie: twine cut", Untie, nil, func(d *recordtest.Diary) {
		led(d)
		d.On("2027-08-05", 9, 0, &record.Twined{}).On("2029-07-01", 9, 0, &record.TwineCut{})
	}, "2029-07-01", "2029-07-31"},
	{"untie: tapes on, leaf-out after the second winter", Untie, nil, func(d *recordtest.Diary) { ties(d, "2027-06-14") }, "2029-05-01", "2029-05-31"},
	{"untie: tapes loosened", Untie, nil, func(d *recordtest.Diary) {
		ties(d, "2027-06-14")
		d.On("2028-11-05", 9, 0, &record.TapesLoosened{})
	}, "2028-11-05", "2028-12-05"},
	{"untie: another year, 1 April of the next", Untie, nil, func(d *recordtest.Diary) {
		d.On("2028-10-05", 9, 0, &record.AnotherYear{Work: "untie"})
	}, "2030-04-01", "2030-05-01"},
	{"untie: another year said in summer", Untie, nil, func(d *recordtest.Diary) {
		d.On("2029-07-05", 9, 0, &record.AnotherYear{Work: "untie"})
	}, "2030-04-01", "2030-05-01"},
	{"untie: untied", Untie, nil, func(d *recordtest.Diary) { d.On("2028-10-05", 9, 0, &record.Untied{}) }, "", ""},
	{"regraft: failed, the next 15 March", Regraft, nil, func(d *recordtest.Diary) {
		d.On("2027-06-20", 9, 0, &record.Failed{Cause: "bled"})
	}, "2028-03-15", "2028-05-15"},
	{"regraft: every graft dead", Regraft, nil, func(d *recordtest.Diary) {
		d.On("2028-03-01", 9, 0, recordtest.Visit(record.Dead, record.Dead))
	}, "2028-03-15", "2028-05-15"},
	{"regraft: failed on 15 March", Regraft, nil, func(d *recordtest.Diary) {
		d.On("2028-03-15", 9, 0, &record.Failed{Cause: "bled"})
	}, "2029-03-15", "2029-05-15"},
	{"regraft: given up", Regraft, nil, func(d *recordtest.Diary) { d.On("2027-06-20", 9, 0, &record.Failed{Cause: "bled"}, &record.GivenUp{}) }, "", ""},
	{"regraft: left for the season", Regraft, nil, func(d *recordtest.Diary) {
		d.On("2027-06-20", 9, 0, &record.GivenUp{Season: true})
	}, "2028-03-15", "2028-05-15"},
	{"regraft: limbs judged anew", Regraft, nil, func(d *recordtest.Diary) {
		d.On("2027-06-20", 9, 0, &record.Failed{Cause: "bled"}).On("2028-03-20", 9, 0, &record.NurseJudged{Limbs: 1})
	}, "2028-03-15", "2028-05-15"},
	{"regraft: missed, the next 15 March", Regraft, nil, func(d *recordtest.Diary) {
		d.On("2027-06-20", 9, 0, &record.Failed{Cause: "bled"}).On("2028-06-16", 9, 0, &record.Noted{Text: "out of slip"})
	}, "2029-03-15", "2029-05-15"},
	{"regraft: cut back again", Regraft, nil, func(d *recordtest.Diary) {
		d.On("2027-06-20", 9, 0, &record.Failed{Cause: "bled"}).On("2028-03-20", 9, 0, &record.CutBack{})
	}, "", ""},
	{"a leap day lies within 30 days", TwineCheck, nil, func(d *recordtest.Diary) { d.On("2027-12-05", 9, 0, &record.Twined{}) }, "2028-04-01", "2028-05-01"},
}
