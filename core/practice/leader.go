package practice

import (
	"fmt"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
	"barkslip/core/walk"
)

var leaderKinds = kinds([]situation{
	{"three-alike", func(t *tale) {
		push := t.of(16, 20)
		t.staked(push).on(push+7, 9, 0, visit(record.Growing, record.Growing, record.Growing), rubbed(), &record.Tied{Shoot: t.inches(9)}).
			on(push+14, 9, 0, visit(record.Growing, record.Growing, record.Growing), rubbed(), &record.Tied{Shoot: t.inches(14)})
		t.sayNow().say("Three shoots run side by side, and all are the pride of the row.")
	}, "Three that share the sap make a bush; one that has it passes the stake in its first summer.", []reply{
		{"leader", ""},
		{rest, "All three are fine, so let them grow: in August they are a fork that no winter cut mends."},
		{"second-shoot-off", "Nothing comes off yet. Those that do not lead are held short, as a reserve."},
		{"twine", "Twine is for one leader that is longer."}}},
	{"leader-without-pinch", func(t *tale) {
		push := t.of(16, 20)
		t.staked(push).on(push+14, 9, 0, visit(record.Growing, record.Growing, record.Growing), rubbed(), &record.Tied{Shoot: t.inches(12)}, &record.LeaderChosen{Slot: 2, Shoot: "upper"})
		t.at(push+14+t.of(0, 2), 9, 30)
		t.sayNow().say("The upper shoot of graft 2 was chosen to lead on %s. The other two grafts are nearly as long, with soft red tips.", t.day.Add(push+14).Short())
	}, "A pinched tip stops for two to three weeks, and its leaf goes on feeding the stump.", []reply{
		{"pinch", ""},
		{"second-shoot-off", "Off would be tidy, and would leave nothing to take over when the leader breaks."},
		{rest, "Choosing alone tells the tree nothing: they run on as before."},
		{"leader", "It is chosen."}}},
	{"leader-snapped", func(t *tale) {
		push := t.of(16, 20)
		t.summer(push).on(push+t.of(34, 40), 9, 0, rubbed(), &record.LeaderBroken{Cause: pick(&t.dice, "wind", "bird perched", "deer or stock")})
		t.later(t.of(2, 60))
		t.sayNow().say("The leader lies in the row, torn out at the union. Two pinched shoots of the other grafts stand on the stump.")
	}, "The sap of the whole root wants somewhere to go within days, and sprouts are quicker than people.", []reply{
		{"leader", ""},
		{rest, "Let them settle it among themselves, and they fork; or a sprout settles it."},
		{"regraft", "Two grafts live. Nothing is lost but some weeks."},
		{"keep-sprouts", "Sprouts are kept where no graft lives."}}},
	{"pinched-three-weeks-ago", func(t *tale) {
		push := t.of(16, 20)
		t.led(push).on(push+22, 9, 0, rubbed(), &record.Tied{Shoot: t.inches(19)}).on(push+29, 9, 0, &record.Tied{Shoot: t.inches(26)})
		t.on(push+t.of(30, 33), 9, 0, visit(record.Growing, record.Growing, record.Growing), rubbed(), &record.Tied{Shoot: t.inches(30)}).later(20)
		t.sayNow().say("The rivals were pinched when the leader was chosen, over a fortnight ago. From each pinched tip two new ones have broken and run.")
	}, "Pinching holds for two to three weeks, then side shoots take its place.", []reply{
		{"pinch", ""},
		{rest, "Once pinched is soon grown again."},
		{"second-shoot-off", "In the second winter. Until then their leaf feeds the stump."},
		{"head-back", "The leader is headed back in late winter, not in leaf."}}},
}, []whenDue{
	{"chosen-when", due.Leader, "From when on is a leader chosen?", func(t *tale) unit.Date {
		push := t.of(16, 22)
		t.staked(push)
		t.sayNow().say("Two buds push green today, the third swells. The stake is up.")
		return t.day.Add(push)
	}, "By then it shows which runs.", []dayReply{
		{2, "Whichever is first today may stop tomorrow: it lives on its own food yet."},
		{14, "It shows by then which runs."},
		{35, "By then three have shared the sap for a month, and none has passed the stake's middle."},
		{90, "In autumn there is a fork to be cut, not a leader to be chosen."}}},
	{"pinched-next", due.Pinch, "From when on are the rivals pinched next?", func(t *tale) unit.Date {
		t.led(t.of(16, 20))
		t.sayNow().say("A leader is chosen, and all rivals were pinched today.")
		return t.b.Day(t.now)
	}, "", []dayReply{
		{4, "A pinched tip has not begun again so soon."},
		{14, "They have broken again by then."},
		{30, "In a month side shoots are as long as the leader's own."},
		{60, "After two months there is nothing left to lead."}}},
},
	maker{"which-leads", whichLeads}, maker{"what-broke", whatBroke}, maker{"fork", fork}, nextStep(Leader))

// whichLeads asks which graft leads: the one that is known to grow best.
func whichLeads(seed uint64) Case {
	t := newTale(seed)
	push := t.of(16, 20)
	v := visit(record.Growing, record.Growing, record.Growing)
	long := []float64{float64(t.of(7, 10)), float64(t.of(11, 14)), float64(t.of(15, 20))}
	shuffle(&t.dice, long)
	for i := range v.Found {
		v.Found[i].Shoot = t.inches(long[i])
	}
	t.staked(push).on(push+14, 9, 0, v, rubbed())
	t.sayNow()
	near := t.of(1, 3)
	for i, f := range v.Found {
		where := "stands on the lee side"
		if i+1 == near {
			where = "stands nearest to the stake"
		}
		t.say("Graft %d is %s long and %s.", i+1, t.words(f.Shoot.Length), where)
	}
	because := []string{
		"Shortest of the three, it would have to be waited for.",
		"Second best, and second best in August too: the sap goes where the growth is.",
		"It runs best.",
	}
	rank := func(i int) string {
		n := 0
		for _, l := range long {
			if l < long[i] {
				n++
			}
		}
		return because[n]
	}
	return t.likely(walk.StepLeader, "Which graft leads?", "The stake is moved to it, not the choice to the stake.",
		option{"graft 1", "Graft 1.", rank(0)}, option{"graft 2", "Graft 2.", rank(1)}, option{"graft 3", "Graft 3.", rank(2)},
		option{"all", "All three, until one falls behind.", "None falls behind of itself: three that share the sap are all short."})
}

// whatBroke asks what is told first where a leader broke.
func whatBroke(seed uint64) Case {
	t := newTale(seed)
	push := t.of(16, 20)
	t.summer(push).on(push+t.of(33, 40), 9, 0, rubbed())
	t.sayNow().say("After a night of gusts the leader of graft 2 hangs by a strip of bark, snapped above its lower shoot. Graft 1 has one pinched shoot.")
	best := ""
	if t.offers(walk.StepBroken)["wind"] {
		best = "shoot"
	}
	shoot := stepOf(walk.StepLeaderShoot)
	c := t.ask("What takes over?", best, "Record what broke it, and let the next shoot lead. "+shoot.Why, facts("What takes over?", trade.Leader),
		option{"shoot", "The lower shoot of the same graft, at once.", "It stands on the same union, below the break."},
		option{"splint", "The broken one: bind it up with tape.", "It keeps its leaf a day or two. A soft shoot that hangs by bark does not knit."},
		option{"sprout", "The strongest sprout of the stock, to save the summer.", "It would be the quickest, and the tree a seedling again."},
		option{"wait", "Nothing this year; choose one in winter.", "Till then all run, or none: the root's sap goes into sprouts."})
	c.Rule.Step = walk.StepBroken
	return c
}

// fork asks what is cut in late winter where a branch has grown as strong as the leader.
func fork(seed uint64) Case {
	t := newTale(seed)
	t.autumn(t.of(16, 20)).inSeason(1, time.March, t.of(3, 20), 9)
	t.sayNow().say("The leader is being headed back. A branch of its own, as thick as itself, leaves it at a narrow angle %s above the graft.", t.words(t.inches(float64(t.of(20, 40))).Length))
	w := t.walk()
	step := stepOf(walk.StepRival)
	best := ""
	for _, ch := range w.Ask(walk.StepHeadBack, false).Choices {
		if len(ch.Bodies) == 2 {
			if _, rival := ch.Bodies[1].(*record.RivalCut); rival {
				best = "rival"
			}
		}
	}
	c := t.ask("What comes off?", best, fmt.Sprintf("%s %s", step.Why, step.LookFor), facts("What comes off with the heading back?", step.Facts...),
		option{"rival", "The leader above the stake, and the rival at its base.", "Both are cut while the wood is at rest."},
		option{"leader", "The leader above the stake; both branches stay.", "Two strong ones are a comfort if one breaks. As they are they break each other: a narrow fork splits under its crop."},
		option{"tops", "Both at the same height, so that neither wins.", "Cut alike they stay alike, and the fork is fixed."},
		option{"none", "Nothing, until it bears.", "By then both are as thick as an arm, and the wound closes no more."})
	c.Rule.Step = walk.StepRival
	return c
}
