package practice

import (
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/walk"
)

var winterKinds = kinds([]situation{
	{"season-over", func(t *tale) {
		t.twined(t.of(16, 20)).inSeason(0, time.October, t.of(3, 28), 9)
		t.sayNow().say("The leaves turn. Three grafts live, the leader stands well past its stake. Nobody was here since summer.")
	}, "How it stands is told once a year, when its growth is over: the plan of next year counts on it.", []reply{
		{"seasons-end", ""},
		{"head-back", "Heading back is for wood at rest, late in winter; cut now, the tree may push soft growth into the frost."},
		{"second-shoot-off", "The second shoot is a reserve for two seasons."},
		{rest, "In winter nobody remembers what grew; a dead shoot looks like a living one."}}},
	{"tapes-before-winter", func(t *tale) {
		t.twined(t.of(16, 20)).inSeason(0, time.October, 5, 9)
		t.did(&record.SeasonsEnd{Alive: 3, Word: "strong"}, &record.TwineChecked{Stem: t.inches(3.5)})
		t.inSeason(0, time.November, t.of(2, 28), 9)
		t.sayNow().say("The leaves are down, the season is recorded. The leader still hangs in its tapes from summer, drawn snug.")
	}, "A tape that is snug in autumn cuts in with the first growth of spring.", []reply{
		{"ties-off", ""},
		{"untie", "Loosening is not taking away: stake and twine hold it for seasons yet."},
		{rest, "They hold it in the winter storms, which is why they stay; loosened they hold it as well."},
		{"head-back", "That waits for late winter, when the worst frost is past."}}},
	{"first-late-winter", func(t *tale) {
		t.b.Frosty = true
		t.autumn(t.of(16, 20)).inSeason(1, time.March, t.of(2, 20), 9)
		t.sayNow().say("The end of the first winter, in frost country. The leader stands %s past its stake, the buds are closed.", t.words(t.inches(float64(t.of(30, 46))).Length))
	}, "Cut at the stake's height it breaks low and strong, and stands by itself sooner.", []reply{
		{"head-back", ""},
		{rest, "Every inch was hard won, but a long whip bends, breaks in ice and grows its head out of reach."},
		{"second-shoot-off", "Two seasons first: the reserve may yet be needed."},
		{"untie", "Nothing that is one season old stands alone."}}},
	{"january-in-frost-country", func(t *tale) {
		t.b.Frosty = true
		t.autumn(t.of(16, 20)).inSeason(1, time.January, t.of(16, 30), 9)
		t.sayNow().say("A mild day in frost country, one summer after the graft. The crew is idle, the leader stands past its stake, the saw is sharp.")
	}, "In frost country it is cut from March on: a fresh cut and the frosts of late winter do not go together.", []reply{
		{rest, ""},
		{"head-back", "Where winters are mild it would be time. Here the cut dries and freezes back for two months before it can close."},
		{"nurse-limbs-off", "They are taken in the same window, not before it."},
		{"ties-off", "That was done in November."}}},
	{"after-two-summers", func(t *tale) {
		t.second(t.of(16, 20)).inSeason(2, time.March, t.of(3, 20), 9)
		t.sayNow().say("Two summers are over. The leader is as thick as a broom handle; beside it the second shoot, kept as a reserve, has leaf of its own each year.")
	}, "Saw clear of the nails: their height is on record.", []reply{
		{"second-shoot-off", ""},
		{"untie", "The twine is still on; what carries it comes off last."},
		{rest, "A reserve is a comfort. By now it takes light and sap from the shoot that is to be the tree, and makes the wound larger each year."},
		{"seasons-end", "That was told in October."}}},
	{"stands-alone", func(t *tale) {
		t.second(t.of(16, 20)).inSeason(2, time.March, 3, 9)
		t.did(&record.SecondShootOff{}, &record.TwineCut{})
		t.inSeason(2, time.April, t.of(5, 25), 9)
		t.sayNow().say("The third spring. The twine was cut a month ago, the tapes are off. Pushed by hand, the tree swings back; the stake only leans on it.")
	}, "What is not needed any more begins to harm: bark rubs on a stake.", []reply{
		{"untie", ""},
		{rest, "One more year is the careful choice where it sways. This one does not."},
		{"sprouts", "They come with the leaf; it is hardly out."},
		{"tie", "Its ties were for two seasons."}}},
	{"lost-last-year", func(t *tale) {
		t.white(record.Wrapped).on(42, 9, 0, visit(record.Dead, record.Dead, record.Dead), &record.Failed{Cause: pick(&t.dice, "bled", "never moved", "overheated")}, &record.SproutsKept{Number: 2})
		t.inSeason(1, time.March, t.of(16, 31), 9)
		t.sayNow().say("All grafts of last year died; two sprouts were kept and have made stems. The buds of the stock begin to fatten.")
	}, "The root is alive and a year stronger; below the old nails it can be grafted again.", []reply{
		{"regraft", ""},
		{rest, "Another year of growth makes thicker sprouts, and a taller stump gone dead."},
		{"keep-sprouts", "They were kept in summer, and kept the tree alive."},
		{"sprouts", "Rubbing them now would take the only leaf there is."}}},
}, nil, maker{"headed-when", headedWhen}, maker{"cut-again-when", cutAgainWhen}, maker{"given-up", givenUp}, nextStep(Winter))

// headedWhen asks from which day on the leader is headed back, in frost country or where
// winters are mild.
func headedWhen(seed uint64) Case {
	t := newTale(seed)
	t.autumn(t.of(16, 20))
	word := "Winters are mild here."
	if t.b.Frosty {
		word = "This is frost country."
	}
	t.sayNow().say("The first season is over, and the leader stands past its stake. %s", word)
	season := t.b.SeasonOf(t.day)
	return t.opens(due.HeadBack, "From when on is the leader headed back?", "Wood at rest is cut, and not long before the worst frosts.",
		fromDay(t.b.InSeason(season+1, time.January, 15), "The frosts that kill a fresh cut are still to come here."),
		fromDay(t.b.InSeason(season+1, time.March, 1), "Where winters are mild the window opens weeks before."),
		fromDay(t.b.InSeason(season+1, time.May, 15), "By then it is in leaf, and all that went into the wood cut off is lost."),
		fromDay(t.b.InSeason(season+2, time.March, 1), "A year on it is out of reach, and forks where it likes."))
}

// cutAgainWhen asks from which day on a stump that was lost is cut back again.
func cutAgainWhen(seed uint64) Case {
	t := newTale(seed)
	t.white(record.Wrapped).on(t.of(40, 50), 9, 0, visit(record.Dead, record.Dead, record.Dead), &record.Failed{Cause: "never moved"}, &record.SproutsKept{Number: 2})
	t.sayNow().say("Every graft on it is dead, and two sprouts were kept for the root.")
	season := t.b.SeasonOf(t.day)
	return t.opens(due.Regraft, "From when on is it cut back again?", "",
		fromDay(t.b.Day(t.now).Add(7), "The bark of this season no longer slips, and the sprouts have only begun to feed the root."),
		fromDay(t.b.InSeason(season+1, time.January, 10), "In midwinter the cut stands open for months before bark slips."),
		fromDay(t.b.InSeason(season+1, time.March, 15), "Sap does not move there yet by then."),
		fromDay(t.b.InSeason(season+2, time.March, 15), "Two winters on its sprouts are trees. The next spring will do."))
}

// givenUp asks what is told of a stump whose grafts were lost: whether it is given up, and
// why.
func givenUp(seed uint64) Case {
	t := newTale(seed)
	t.white(record.Wrapped).on(t.of(40, 50), 9, 0, visit(record.Dead, record.Dead, record.Dead), &record.Failed{Cause: pick(&t.dice, "never moved", "overheated")})
	dead := t.chance(2)
	best := "this season"
	if dead {
		best = "the tree is dead"
		t.inSeason(1, time.May, t.of(5, 25), 9)
		t.sayNow().say("Every graft of last year died. Everything round it is in leaf; on this stump no sprout has broken, and the bark is brown to the wood down to the ground.")
	} else {
		t.on(int(t.b.Day(t.now)-t.day)+2, 9, 0, &record.SproutsKept{Number: t.of(1, 3)})
		t.sayNow().say("Every graft on it died. The sprouts that were kept are green and strong; the bark of the season is over.")
	}
	if !t.offers(walk.StepGiveUp)[best] {
		best = ""
	}
	c := t.ask("Is the stump given up?", best, "A stump whose root lives can be grafted again; one that is dead only takes time from the others.",
		facts("When is a stump given up?", trade.RegraftTime, trade.SproutsUsed),
		option{"this season", "For this season; it is cut back again next spring.", "It will be walked to every spring, and there is nothing left to graft."},
		option{"the tree is dead", "For good: the tree is dead.", "A root that feeds strong sprouts is alive, and a year from now it has lost only a year."},
		option{"again", "No: cut it back and graft it again today.", "Whatever it is, bark does not slip there today."},
		option{"not worth", "For good: it has had its chance.", "One lost year says little: what it was lost to can be done otherwise."})
	c.Rule.Step = walk.StepGiveUp
	return c
}
