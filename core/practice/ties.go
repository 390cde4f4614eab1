package practice

import (
	"fmt"
	"time"

	"barkslip/core/due"
	"barkslip/core/girth"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
	"barkslip/core/walk"
)

var tiesKinds = kinds([]situation{
	{"a-week-of-growth", func(t *tale) {
		push := t.of(16, 20)
		t.led(push).on(push+15, 9, 0, &record.Tied{Shoot: t.inches(14)}).on(push+18, 9, 0, visit(record.Growing, record.Growing, record.Growing), rubbed(), &record.Pinched{}, &record.Tied{Shoot: t.inches(18)})
		t.at(push+t.of(28, 29), 8, 0).did(visit(record.Growing, record.Growing, record.Growing), rubbed()).later(30)
		t.sayNow().say("The leader was tied on %s. Since then it has put on two hands' breadth, and leans out from its last tie in the wind.", t.day.Add(push+18).Short())
	}, "A tie for every foot of growth: what stands free above the last tie is what the wind takes.", []reply{
		{"tie", ""},
		{rest, "It bends and comes back, until the night when it does not."},
		{"twine", "Two loops of twine hold a long leader for winters; it is not long enough yet."},
		{"head-back", "Cutting what leans is the work of winter; now it is its leaf."}}},
	{"august", func(t *tale) {
		t.summer(t.of(16, 20)).inSeason(0, time.August, t.of(2, 9), 9)
		t.did(rubbed(), &record.Tied{Shoot: t.inches(54)}, &record.Pinched{})
		t.sayNow().say("The leader is %s long and hangs in five tapes. Storms and the weight of wet leaf are to come.", t.words(t.inches(54).Length))
	}, "Tapes hold a shoot to its stake, twine holds a tree.", []reply{
		{"twine", ""},
		{"tie", "It was tied today, at its last foot."},
		{rest, "Tapes have held it so far; they are narrow, and cut in or slip under the weight of a head."},
		{"untie", "It is soft wood on a joint of ten weeks."}}},
	{"april-twine", func(t *tale) {
		t.headed(t.of(16, 20)).inSeason(1, time.April, t.of(2, 25), 9)
		t.sayNow().say("Twine has been on since August. The stem inside has begun to swell with the spring.")
	}, "Each April, July and October while it is on.", []reply{
		{"twine-check", ""},
		{rest, "It was loose in autumn; a stem gains its girth in spring and early summer."},
		{"cut-twine", "It may have room for another year: look, then cut or let out."},
		{"untie", "One summer does not make a tree that stands."}}},
	{"seen-tight", func(t *tale) {
		t.headed(t.of(16, 20)).inSeason(1, time.July, t.of(2, 12), 9)
		t.did(rubbed(), &record.TwineChecked{Stem: t.inches(8.5), Tight: true}).later(t.of(1, 30))
		t.sayNow().say("The twine lies in a groove; no finger goes under it. Above it the bark bulges.")
	}, "A girdled stem dies above the twine, or breaks at it.", []reply{
		{"cut-twine", ""},
		{rest, "It holds well, which is what it was put on for. The groove is bark being strangled."},
		{"tie", "More tape holds the stem, and takes nothing off it."},
		{"ties-off", "The tapes are loosened in November; this cannot wait so long."}}},
}, []whenDue{
	{"stake-when", due.Stake, "From when on is the stake put up?", func(t *tale) unit.Date {
		push := t.of(15, 24)
		t.white(record.Wrapped).on(push, 9, 0, visit(record.Pushing, record.NoChange, record.NoChange), rubbed())
		t.sayNow().say("One scion shows green today, as long as a fingernail.")
		return t.day.Add(push)
	}, "It has to stand before there is anything that can break.", []dayReply{
		{0, "A week on there is a shoot that can break, and a stake driven beside it shakes the union."},
		{14, "Two weeks after push it wants its first tie, and there must be something to tie it to."},
		{28, "That is when a leader is chosen at the latest."},
		{75, "In August it wants twine round a stake that stands since spring."}}},
	{"first-tie", due.Tie, "From when on is the first tie put on, unless it is long enough sooner?", func(t *tale) unit.Date {
		push := t.of(16, 20)
		t.staked(push)
		t.sayNow().say("Two buds push, and a stake stands beside them. Nothing is long enough to be measured.")
		return t.day.Add(push)
	}, "", []dayReply{
		{3, "There is no stem to tie yet, only leaves."},
		{14, "Most are long enough for it by then."},
		{30, "In a month it has lain over in the first storm."},
		{60, "By then it wants its third or fourth tie."}}},
}, maker{"loop-for-the-stem", loopForStem}, maker{"fills-the-loop", fillsTheLoop}, maker{"let-out", letOut}, nextStep(Ties))

// loopForStem asks how far round a loop of twine is made.
func loopForStem(seed uint64) Case {
	t := newTale(seed)
	t.summer(t.of(16, 20)).inSeason(0, time.August, 3, 9)
	stem := t.inches(float64(t.of(5, 9)) / 2)
	t.sayNow().say("The leader gets its twine. Its stem measures %s round.", t.words(stem.Length))
	is := func(times float64) string { return t.words(stem.Length * unit.Length(times)) }
	best := is(trade.LoopTimesGirth)
	c := t.ask("How far round is the loop made, at the least?", best, fmt.Sprintf("At least %g times the stem's girth; a stem gains about %s a year.", trade.LoopTimesGirth, t.figure(trade.GirthAYear)),
		facts("How large is a loop of twine?", trade.TwineLoop, trade.GirthGain),
		option{is(1), is(1) + " round: snug, so that it does not swing.", "Snug today is tight by next June."},
		option{is(1.3), is(1.3) + " round: room for a finger.", "A finger's room is filled within half a year."},
		option{is(2), is(2) + " round.", "There is twice the room there ought to be."},
		option{is(4), is(4) + " round, to have peace for years.", "It swings and chafes in so wide a loop, and the twine is rotten before it is filled."})
	c.Rule.Step = walk.StepTwine
	return c
}

// fillsTheLoop asks by when twine is cut whose loop and stem were measured.
func fillsTheLoop(seed uint64) Case {
	t := newTale(seed)
	t.summer(t.of(16, 20)).inSeason(0, time.August, 2, 9)
	loop, stem := t.inches(float64(t.of(6, 9))), t.inches(float64(t.of(5, 8))/2)
	t.did(&record.Twined{Loops: 2, Loop: loop, Stem: stem, Material: "natural"}, &record.Tied{Shoot: t.inches(54)}, rubbed(), &record.Pinched{})
	t.sayNow().say("Two loops of twine, %s round, on a stem of %s round. Nothing more is known of how it grows.", t.words(loop.Length), t.words(stem.Length))
	out, err := girth.Twine(due.TwinePlan(t.walk().A, t.b))
	if err != nil || out.TightOn == nil {
		return Case{}
	}
	by := func(d unit.Date) string { return d.Long() }
	on := *out.TightOn
	c := t.ask("By when is it cut, or let out?", by(out.CutBefore), fmt.Sprintf("At %s a year the stem fills the loop on %s; it is cut a month before.", t.figure(trade.GirthAYear), on.Long()), out.Work,
		option{by(out.CutBefore), fmt.Sprintf("By %s.", by(out.CutBefore)), "The room is not used up by then."},
		option{by(on.Add(60)), fmt.Sprintf("By %s.", by(on.Add(60))), "By then the loop has been full for two months, and cuts."},
		option{by(out.CutBefore.Add(-200)), fmt.Sprintf("By %s.", by(out.CutBefore.Add(-200))), "It still has room for most of a year, and the tree needs it."},
		option{by(t.b.Day(t.now).AddYears(trade.TwineYears)), fmt.Sprintf("By %s, three years on.", by(t.b.Day(t.now).AddYears(trade.TwineYears))),
			"Three years are the most for any twine; the stem of this one does not give it so long."})
	c.Rule = Rule{Due: due.CutTwine, IsDue: true, Step: walk.StepTwineCut}
	return c
}

// letOut asks what is done with twine that is tight while the tree still needs it.
func letOut(seed uint64) Case {
	t := newTale(seed)
	t.headed(t.of(16, 20)).inSeason(1, time.July, t.of(2, 12), 9)
	stem := t.inches(float64(t.of(15, 17)) / 2)
	t.did(rubbed(), &record.TwineChecked{Stem: stem, Tight: true})
	t.sayNow().say("The second summer. The stem, %s round, is tight in its twine. Pushed by hand the tree leans, and stays leaning.", t.words(stem.Length))
	offered := map[walk.StepID]bool{}
	for _, ch := range t.walk().Ask(walk.StepTwineCut, false).Choices {
		offered[ch.Go] = true
	}
	best := ""
	if offered[walk.StepTwineMove] {
		best = "out"
	}
	loop := stem.Length * unit.Length(trade.LoopTimesGirth)
	c := t.ask("Cut it, or let it out?", best, fmt.Sprintf("It still needs its stake. The new loop is at least %s round.", t.words(loop)),
		facts("Cut or let out?", trade.TwineGirdles, trade.TwineLoop, trade.Twine),
		option{"out", fmt.Sprintf("Let it out, to a loop of %s or more.", t.words(loop)), "It leans without it."},
		option{"cut", "Cut it off; the stem is thick enough.", "Girth is not what holds it up: it leans and stays leaning, and the next storm finishes it."},
		option{"little", fmt.Sprintf("Let it out by a finger, to %s.", t.words(stem.Length+unit.Inch)), "That is filled again before the leaves fall."},
		option{"leave", "Leave it until autumn, when growth is over.", "It is the growth of these weeks that cuts it in."})
	c.Rule = Rule{Due: due.CutTwine, IsDue: true, Step: walk.StepTwineMove}
	return c
}
