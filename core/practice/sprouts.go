package practice

import (
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/unit"
)

var sproutsKinds = kinds([]situation{
	{"sprouts-near", func(t *tale) {
		t.white(record.Wrapped).on(15, 8, 0, visit(record.NoChange, record.NoChange, record.NoChange)).at(t.of(16, 20), 9, 0)
		t.sayNow().say("Grafted on %s. The scions have not moved. All round the stump, close under the slots, green shoots as long as a finger have broken out of the bark; they look "+
			"healthier than anything you have set.", t.day.Short())
	}, "The stock feeds what draws: a sprout near the graft draws more than a scion that has only just joined.", []reply{
		{"sprouts", ""},
		{rest, "They show that the root is strong, and leave feeds it. But these stand at the graft and take what the scions need; leaf for the root stays low down."},
		{"buds", "The buds were seen within the week; what changed is the sprouts."},
		{"regraft", "Nothing is lost: buds may take three to five weeks to move."}}},
	{"missed-a-week", func(t *tale) {
		t.white(record.Wrapped).on(16, 9, 0, visit(record.Swelling, record.Swelling, record.NoChange), rubbed()).
			on(22, 9, 0, visit(record.Swelling, record.Swelling, record.Swelling)).at(t.of(23, 27), 17, 0)
		t.sayNow().say("The sprouts were rubbed off on %s. It rained since, and it grew. It is late in the day; the stump was passed by twice.", t.day.Add(16).Short())
	}, "Rubbed while soft they come off with a thumb.", []reply{
		{"sprouts", ""},
		{rest, "A fortnight would do once a leader is chosen. Until then a week is long enough for a sprout to outgrow a scion."},
		{"stake", "A stake is set when something pushes; the buds swell."},
		{"leader", "There is nothing to choose among yet."}}},
	{"all-dead", func(t *tale) {
		t.white(record.Wrapped).on(42, 9, 0, visit(record.Dead, record.Dead, record.Dead), &record.Failed{Cause: pick(&t.dice, "never moved", "bled", "overheated")})
		t.at(42+t.of(0, 9), 9, 30)
		t.sayNow().say("All three scions are brown to the wood. Below them the stock has thrown a crown of sprouts, which were rubbed week by week until now.")
	}, "Without leaf the root starves, and there is no tree to graft next year.", []reply{
		{"keep-sprouts", ""},
		{"sprouts", "It is what was done all summer, and it was right while something lived above them."},
		{rest, "Left to itself it grows twenty; kept down to one to three, it grows stems."},
		{"regraft", "The bark of this season is over; it is cut back again in spring."}}},
	{"bare-weeks", func(t *tale) {
		t.cutBack(24).at(-1, 9, 0).did(&record.Looked{Bleeding: record.Dry}, &record.Looked{Slip: record.Drags})
		t.at(t.of(-1, 1), 9, 30)
		t.sayNow().say("Cut back on %s, and not grafted: the bark still drags. Sprouts have begun along the whole stem.", t.b.Day(t.events[0].At).Short())
	}, "They come three weeks after the cut-back, grafted or not.", []reply{
		{"sprouts", ""},
		{rest, "No graft stands there yet, but sprouts at the height of the slots make leaf where the bark is to slip."},
		{"graft", "Bark that drags takes no scion."},
		{"stake", "There is nothing to stake."}}},
}, []whenDue{
	{"rubbed-next", due.Sprouts, "From when on are the sprouts rubbed next?", func(t *tale) unit.Date {
		day := t.of(16, 20)
		t.white(record.Wrapped).on(day, 9, 0, visit(record.Swelling, record.Swelling, record.Swelling), rubbed())
		t.sayNow().say("Grafted on %s. The buds swell; no leader is chosen, for nothing grows yet. You have just rubbed all sprouts near the graft.", t.day.Short())
		return t.b.Day(t.now)
	}, "Nothing on this stump draws as fast as a sprout.", []dayReply{
		{3, "In three days hardly one has come back; the walk is for nothing."},
		{7, "Once a leader draws, sprouts need less watching than that."},
		{14, "That is for a stump with a leader. Before there is one, two weeks of sprouts are as long as a hand."},
		{21, "That is for later years, when the tree shades its own stem."}}},
	{"rubbed-with-a-leader", due.Sprouts, "From when on are the sprouts rubbed next?", func(t *tale) unit.Date {
		t.summer(t.of(16, 20))
		t.sayNow().say("A leader was chosen, and is %s long. Today you pinched its rivals and rubbed what sprouts there were.", t.words(t.inches(30).Length))
		return t.b.Day(t.now)
	}, "The leader draws the sap now, and sprouts come slower.", []dayReply{
		{7, "That was so until a leader was chosen."},
		{14, "Without a leader a fortnight would be too long."},
		{21, "That is for later years; in the first summer three weeks make sprouts of wood."},
		{42, "By then sprouts are as thick as the leader, and have to be cut."}}},
	{"rubbed-in-later-years", due.Sprouts, "From when on are the sprouts rubbed next?", func(t *tale) unit.Date {
		t.headed(t.of(16, 20)).inSeason(1, time.June, t.of(3, 20), 9)
		t.did(rubbed())
		t.sayNow().say("The second summer of this graft. Today its sprouts were rubbed.")
		return t.b.Day(t.now)
	}, "In later years the head shades the stem, and sprouts are few.", []dayReply{
		{7, "That was the first weeks of its first summer."},
		{14, "That was its first summer, with a leader."},
		{21, "In the first summer three weeks would be too long."},
		{60, "Two months are long enough for a sprout to become a limb of the stock."}}},
	{"first-sprouts", due.Sprouts, "From when on are sprouts to be looked for?", func(t *tale) unit.Date {
		t.white(record.Wrapped)
		t.sayNow().say("Cut back on %s and grafted on %s. Nothing grows yet, neither scion nor sprout.", t.b.Day(t.events[0].At).Short(), t.day.Short())
		return t.day
	}, "Counted from the cut-back or from the graft, whichever comes first.", []dayReply{
		{5, "Buds under old bark take longer than that to break."},
		{11, "That is counted as three weeks from a cut-back ten days before; this one was cut at another time."},
		{12, "That is counted as three weeks from a cut-back nine days before; this one was cut at another time."},
		{13, "That is counted as three weeks from a cut-back eight days before; this one was cut at another time."},
		{14, "Counted from the graft alone it would be so, but it was cut back long enough before."}}},
}, nextStep(Sprouts))
