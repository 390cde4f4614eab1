package practice

import (
	"fmt"
	"strings"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
	"barkslip/core/walk"
)

var budsKinds = kinds([]situation{
	{"not-moving-yet", func(t *tale) {
		t.white(record.Wrapped).on(15, 9, 0, visit(record.NoChange, record.NoChange, record.NoChange), rubbed()).
			on(22, 9, 0, visit(record.NoChange, record.NoChange, record.NoChange), rubbed()).at(t.of(24, 28), 9, 0)
		t.sayNow().say("Grafted on %s. Two visits, and not a bud has moved; the wood is plump, the seal is whole. On the next row everything pushes.", t.day.Short())
	}, "Buds of walnut move after two to five weeks; what is plump waits.", []reply{
		{rest, ""},
		{"regraft", "It looks lost beside its neighbours. A graft is not lost while its wood is green, and there are weeks to go."},
		{"reseal", "The seal is whole. Fresh sealer wakes no bud."},
		{"keep-sprouts", "Sprouts are kept when the last graft is dead."}}},
	{"pushing", func(t *tale) {
		t.pushed(t.of(17, 24)).later(t.of(60, 300))
		t.sayNow().say("Green tips stand out of two scions, as long as a finger joint. Now and then a starling sits down on the highest thing in the row.")
	}, "Long before there is anything to tie: a shoot breaks at its first week's storm or bird.", []reply{
		{"stake", ""},
		{rest, "They stand by themselves today. In a week they will be soft, heavy with leaf, and held by nothing but callus."},
		{"tie", "There is neither stake nor shoot enough for a tie."},
		{"leader", "It is chosen weeks later, when it shows which one runs."}}},
	{"month-after-push", func(t *tale) {
		push := t.of(16, 20)
		t.led(push).on(push+21, 9, 0, rubbed(), &record.Tied{Shoot: t.inches(20)}).on(push+28, 9, 0, rubbed(), &record.Tied{Shoot: t.inches(28)}, &record.Pinched{})
		t.at(push+t.of(31, 33), 10, 0)
		t.sayNow().say("It pushed on %s, and has run since. On paper it says: took.", t.day.Add(push).Short())
	}, "Moving is not taking: many that push on their own stored food collapse within the month.", []reply{
		{"confirm-take", ""},
		{rest, "It was written down when it pushed; but a scion pushes on its own food, joined or not."},
		{"twine", "Twine is for a leader that is longer, or for August."},
		{"head-back", "That is winter work."}}},
}, []whenDue{
	{"first-look", due.Buds, "From when on are the buds looked at?", func(t *tale) unit.Date {
		t.white(record.Wrapped)
		t.sayNow().say("Grafted on %s, painted white, and the seal seen whole today.", t.day.Short())
		return t.day
	}, "", []dayReply{
		{5, "Callus has hardly begun by then; there is nothing to see."},
		{14, "Some move as early as that, and are eaten or choked unseen."},
		{35, "By then the first have pushed, and broken without a stake."},
		{60, "That is when the last that are green are given up."}}},
	{"look-again", due.Buds, "From when on are they looked at next?", func(t *tale) unit.Date {
		t.white(record.Wrapped).on(t.of(15, 26), 9, 0, visit(record.Swelling, record.NoChange, record.NoChange), rubbed())
		t.sayNow().say("One bud swells, the other two scions have not moved.")
		return t.b.Day(t.now)
	}, "", []dayReply{
		{2, "Buds do not change that fast, and the row is long."},
		{7, "A week is when a swelling bud has turned to a shoot."},
		{21, "In three weeks a shoot comes, grows and breaks."},
		{30, "A month after push is when a take is told, not when buds are looked at."}}},
	{"green-waits", due.Buds, "From when on is it scratched again, and decided?", func(t *tale) unit.Date {
		green := visit(record.NoChange, record.NoChange, record.NoChange)
		for i := range green.Found {
			green.Found[i].Scratch = record.Green
		}
		t.white(record.Wrapped).on(36, 9, 0, visit(record.NoChange, record.NoChange, record.NoChange), rubbed()).on(t.of(43, 47), 9, 0, green, rubbed())
		t.sayNow().say("Grafted on %s. Nothing has moved. Scratched low down, all three are green under the bark.", t.day.Short())
		return t.day
	}, "", []dayReply{
		{49, "Green is alive; another week is too short a time for it."},
		{60, "It has been given long enough by then."},
		{90, "What is green and has not moved in two months seldom pushes; sprouts are to be kept in time."},
		{120, "By then the tree has no leaf of its own, and the root starves."}}},
},
	maker{"scratched", scratched}, maker{"pushed-then-collapsed", collapsed}, maker{"what-killed-it", whatKilledIt}, maker{"what-killed-the-shoot", whatKilledTheShoot},
	maker{"how-long-is-the-shoot", howLong}, nextStep(Buds))

// scratched asks what is done with what has not moved in six weeks.
func scratched(seed uint64) Case {
	t := newTale(seed)
	t.white(record.Wrapped).on(36, 9, 0, visit(record.NoChange, record.NoChange, record.NoChange), rubbed()).
		on(t.of(43, 52), 9, 0, visit(record.NoChange, record.NoChange, record.NoChange), rubbed())
	t.say("No bud has moved, and a hand wants to saw the stump off below and be done.")
	c := t.next()
	c.Question = "What comes before anything else?"
	return c
}

// sign is how a graft looks that died of a cause.
type sign struct{ cause, looks string }

// Signs of what never moved, and of what had pushed; common practice, by the causes of
// the walk's own list.
var (
	signsUnmoved = []sign{
		{"bled", "Behind the scion the wood is black and wet, and smells sour; sap stands in the slot."},
		{"dried out or seal cracked", "The scion is shrivelled and light, a crack runs through the seal; in the slot it is dry as a bone."},
		{"overheated", "It was painted white a day late, after a cloudless noon. On the sunny side wood and bark are cooked brown under sound sealer, the shaded side is still greenish."},
		{"bark lifted", "The slot was tight. The bark stands off the wood on both sides like a tent, and nothing holds the scion."},
		{"poor wood", "The bundle lay in the truck for two days. Its sticks were wrinkled, the buds loose; those left over are brown inside too."},
		{"set upside down", "The leaf scars stand above their buds."},
		{"earwigs", "The buds are hollow; what is left is gnawed from the tip, and there is black grit in the tape."},
	}
	signsMoved = []sign{
		{"collapsed after push", "It pushed two leaves. Then they hung, and dried on the shoot; nothing is broken or eaten, and under the seal hardly any callus has formed."},
		{"wind", "After the storm it lies on the windward side of its stake, torn out at the union, with leaves still green."},
		{"bird perched", "It is snapped at the tip of the highest scion; there are droppings on the seal."},
		{"deer or stock", "It is bitten off, ragged, at the height of a muzzle; there are tracks in the row."},
		{"outgrown by sprouts", "It starved in the shade: three sprouts as thick as a thumb stand round it, not rubbed for weeks."},
		{"frost", "All soft tips along the low end of the rows are black since the clear night; the sprouts too."},
		{"machine or person", "Stem and scion are barked on the side of the alley, at the height of the mower's wheel."},
	}
)

// signs asks what killed a graft, among the causes that the walk offers here.
func (t *tale) signs(question string, of []sign) Case {
	in, offered := t.walk().Ask(walk.StepDeath, false), t.offers(walk.StepDeath)
	list := append([]sign(nil), of...)
	shuffle(&t.dice, list)
	is := list[0]
	t.say("%s", is.looks)
	work := facts(question, trade.MovingNotTaking)
	right := is.looks
	if l, ok := trade.LessonOf(is.cause); ok {
		work.Facts = []trade.Fact{l.Fact}
		right = fmt.Sprintf("Next time: %s.", l.Better)
	}
	right = in.Because + " " + right
	best := ""
	if offered[is.cause] {
		best = is.cause
	}
	var options []option
	for _, s := range list[:4] {
		options = append(options, option{s.cause, strings.ToUpper(s.cause[:1]) + s.cause[1:] + ".", "That shows otherwise. " + s.looks})
	}
	c := t.ask(question, best, right, work, options...)
	c.Rule.Step = walk.StepDeath
	return c
}

func whatKilledIt(seed uint64) Case {
	t := newTale(seed)
	v := visit(record.NoChange, record.NoChange, record.Dead)
	v.Found[2].Cause = ""
	t.white(record.Wrapped).on(t.of(28, 50), 9, 0, v)
	t.sayNow().say("Grafted on %s. Graft 3 never moved, and is brown when scratched.", t.day.Short())
	return t.signs("What killed it?", signsUnmoved)
}

// diedAfterPush is a stump of which graft 3 pushed and is dead today; push is how many days
// after the graft it did.
func (t *tale) diedAfterPush() (push int) {
	push = t.of(16, 22)
	v := visit(record.Growing, record.Growing, record.Dead)
	v.Found[2].Cause = ""
	t.white(record.Wrapped).on(push, 9, 0, visit(record.Pushing, record.Pushing, record.Pushing), rubbed()).did(&record.Staked{Height: t.inches(60)}).
		on(push+t.of(8, 20), 9, 0, v)
	return push
}

func whatKilledTheShoot(seed uint64) Case {
	t := newTale(seed)
	push := t.diedAfterPush()
	t.sayNow().say("Graft 3 was seen pushing on %s. Today it is dead.", t.day.Add(push).Short())
	return t.signs("What killed it?", signsMoved)
}

// collapsed asks what is to be thought of a graft that pushed and then died: what could
// have killed it before it moved did not.
func collapsed(seed uint64) Case {
	t := newTale(seed)
	push := t.diedAfterPush()
	t.sayNow().say("Graft 3 was pushing on %s, with two small leaves. Now they hang dry. It is neither broken nor gnawed, and it was white in time.", t.day.Add(push).Short())
	in, offered := t.walk().Ask(walk.StepDeath, false), t.offers(walk.StepDeath)
	options := []option{
		{"collapsed after push", "It pushed on its own food and never joined.", "It did push."},
		{"never moved", "It never moved.", "It was seen pushing; what is told of it later leans on that."},
		{"set upside down", "It was set upside down.", "A scion on its head does not make two leaves."},
		{"bark lifted", "The bark lifted on the day it was set.", "Bark that lifted on the day would have kept it from moving at all."},
	}
	best := ""
	for _, o := range options {
		if offered[o.is] {
			best = o.is
		}
	}
	c := t.ask("What happened?", best, in.Because+" "+trade.MovingNotTaking.Says, facts("What happened?", trade.MovingNotTaking), options...)
	c.Rule.Step = walk.StepDeath
	return c
}

// howLong asks what is measured of shoots that grow, and what for.
func howLong(seed uint64) Case {
	t := newTale(seed)
	push := t.of(16, 20)
	t.staked(push).on(push+7, 9, 0, visit(record.Growing, record.Growing, record.Pushing), rubbed()).at(push+t.of(8, 10), 9, 0)
	long := float64(t.of(3, 6))
	t.sayNow().say("The longest shoot of graft 1 is %s, of graft 2 %s. Neither is tied.", t.words(t.inches(long).Length), t.words(t.inches(long-1).Length))
	first := trade.FirstTieShoot
	best := "measure"
	if t.inches(long).Length >= first {
		best = "tie"
	}
	c := t.ask("What is done with them?", best, fmt.Sprintf("A first tie comes at %s; the length tells when that will be, and which graft runs.", t.figure(first)),
		facts("When is the first tie?", trade.TieTime, trade.Leader),
		option{"measure", "Measure the longest shoot of each graft, and leave them.", "It is long enough for its first tie."},
		option{"tie", "Tie both to the stake now.", fmt.Sprintf("Below %s there is hardly stem to tie: a loop under the leaves snaps it off.", t.figure(first))},
		option{"pinch", "Pinch the shorter one.", "Rivals are pinched when there is a leader; now each leaf feeds the union."},
		option{"off", "Rub the shorter one off.", "It is the reserve for the one that breaks."})
	c.Figure = &Figure{Shoot: &Shoot{Length: t.inches(long).Length, StakeTop: t.inches(60).Length},
		Says: []string{fmt.Sprintf("The longest shoot reaches %s up a stake of %s; it has no tie.", t.words(t.inches(long).Length), t.words(t.inches(60).Length))}}
	c.Rule.Step = walk.StepShoots
	return c
}
