package practice

import (
	"fmt"

	"barkslip/core/record"
	"barkslip/core/trade"
)

var slipKinds = []maker{
	{"bark-drags", barkDrags},
	{"bark-stuck", barkStuck},
	{"stuck-and-early", stuckAndEarly},
	{"drags-and-bleeds", dragsAndBleeds},
	{"clean-but-wet", cleanButWet},
	{"season-of-slip", seasonOfSlip},
	nextStep(Slip),
}

// tried is a stump that has had its days, with its bark tried as told and then its
// face found dry.
func (t *tale) tried(s record.Slip) *tale {
	t.cutBack(t.of(8, 11))
	t.at(0, 8, t.of(0, 40)).did(&record.Looked{Bleeding: record.Dry, Wiped: true}, &record.Looked{Slip: s})
	t.sayNow().say("Cut back %d days ago. The face is dry after a wipe.", t.day-t.b.Day(t.events[0].At))
	return t
}

func barkDrags(seed uint64) Case {
	t := newTale(seed).tried(record.Drags)
	t.say("You try the bark on the waste above the planned cut: it lifts only with a pull, and threads of it stay on the wood.")
	return t.verdict("The threads are the cambium: pulled off, nothing is left to join.",
		option{"wait/3", doWait3, ""},
		option{"graft", doGraft, "It does come off, and the days of the season are few. But what stays on the wood is the layer that should join, and a flap that is pulled tears."},
		option{"wait/7", doWait7, "A week is for bark that does not part at all. Bark that drags is some warm days from slipping."},
		option{"fresh-cut", "Cut the top afresh lower down and try there.", "Bark slips with the season and the tree's vigour; some inches lower it drags as well, and the height is gone."})
}

func barkStuck(seed uint64) Case {
	t := newTale(seed).tried(record.Stuck)
	t.say("You try the bark on the waste above the planned cut: the knife goes in, but bark and wood do not part.")
	return t.verdict("",
		option{"wait/7", doWait7, ""},
		option{"wait/3", doWait3, "Three days are for bark that parts with a pull. Stuck bark is further off; you would walk here for nothing."},
		option{"graft", "Pry the bark off with the knife and graft it.", "What is pried off takes no scion: the cambium is crushed, and the flap dies back from the slit."},
		option{"gash", doGash, "Gashes let sap out. It is dry already, and sap is what makes bark slip."},
		option{"leave", doLeave, "There is time. Bark is given up for the season only when the season of slip is over."})
}

func stuckAndEarly(seed uint64) Case {
	t := newTale(seed)
	days := t.of(1, 5)
	s := pick(&t.dice, record.Stuck, record.Drags)
	t.cutBack(days)
	t.at(0, 9, 0).did(&record.Looked{Bleeding: record.Dry, Wiped: true}, &record.Looked{Slip: s})
	word := "does not part from the wood"
	if s == record.Drags {
		word = "comes only with a pull"
	}
	t.sayNow().say("Cut back and gashed %s ago, and come by on the way. The face is dry after a wipe. The bark %s.", dayCount(days), word)
	return t.verdict("Of two waits the one that ends last holds.", t.waits(days, s)...)
}

// waits are the days that could be waited for bark and for the days since the cut.
func (t *tale) waits(days int, s record.Slip) []option {
	wait := map[record.Slip]int{record.Stuck: 7, record.Drags: 3}[s]
	bark := option{"wait/" + digits(wait), fmt.Sprintf("Leave it %s: the bark asks for that.", dayCount(wait)),
		"The bark may slip by then, but less than a week will have gone by since the cut-back."}
	week := option{"wait/" + digits(7-days), fmt.Sprintf("Leave it %s: then the week since the cut-back is over.", dayCount(7-days)),
		"The week would be over, but the bark wants longer than that."}
	out := []option{bark}
	if week.is != bark.is {
		out = append(out, week)
	} else {
		out[0].words = fmt.Sprintf("Leave it %s: the bark and the days since the cut-back ask for the same.", dayCount(wait))
	}
	return append(out,
		option{fmt.Sprintf("wait/%d", wait+7-days), fmt.Sprintf("Leave it %s: the one wait after the other.", dayCount(wait+7-days)),
			"The two waits run side by side; it drains while the bark comes on."},
		option{"graft", doGraft, "Dry is one of three things. Bark that does not part and a stem just cut are the other two."})
}

func dragsAndBleeds(seed uint64) Case {
	t := newTale(seed)
	today := t.chance(2)
	t.cutBack(t.of(8, 11))
	t.at(0, 8, 0)
	if today {
		t.did(&record.Gashed{Number: 2}).later(40)
	}
	t.did(&record.Looked{Slip: record.Drags}, &record.Looked{Bleeding: record.Weeping})
	t.sayNow().say("Cut back %d days ago. The bark drags, and beads of sap run off the face.", t.day-t.b.Day(t.events[0].At))
	if today {
		t.say("It was gashed this morning; it has no drain hole.")
	} else {
		t.say("The gashes are those of the cut-back; it has no drain hole.")
	}
	return t.verdict(t.walk().Advice.Meanwhile[0],
		option{"wait/3/gash", "Make two fresh gashes and leave it three days.", "It was gashed today, and beads all the same."},
		option{"wait/3/drill", "Bore a drain hole and leave it three days.", "A hole comes where fresh gashes do not stop it, and there are none yet."},
		option{"wait/3", "Leave it three days as it is.", "The bark asks for three days. Bleeding for all of them helps nobody: let it drain meanwhile."},
		option{"wipe", doWipe, "Whatever the wipe tells, the bark does not slip today."},
		option{"graft", doGraft, "Both things that a bark graft needs are wanting: a dry face, and bark that parts clean."})
}

func cleanButWet(seed uint64) Case {
	t := newTale(seed)
	t.cutBack(t.of(8, 11))
	t.at(0, 8, 0).did(&record.Gashed{Number: 2}).later(40).did(&record.Looked{Slip: record.SlipsClean}, &record.Looked{Bleeding: record.Running})
	t.sayNow().say("Cut back %d days ago, gashed this morning, no drain hole. The bark slips as clean as it ever will, and a stream of sap runs off the face.",
		t.day-t.b.Day(t.events[0].At))
	return t.verdict("Slip and bleeding are two questions, and both must be answered well.",
		option{"drill", doDrill, ""},
		option{"graft", doGraft, "Bark that slips so well is only half of it. Scions drown on a face that runs."},
		option{"wait/7", doWait7, "That is for bark that sticks. This bark slips now, and something can be done about the sap today."},
		option{"leave", doLeave, "It has had one look. Holes, gashes and days stop most of them."})
}

// seasonOfSlip asks whether bark is taken to slip here on a day.
func seasonOfSlip(seed uint64) Case {
	t := newTale(seed)
	season, _ := t.b.SlipOn(t.day)
	from, to := season.From, season.To
	left := t.of(-25, int(to-from)+12)
	t.now = from.Add(left).At(9, 0, t.b.Zone)
	day := t.b.Day(t.now)
	t.sayNow().say("A tree that was never cut back. Here bark is taken to slip from %s to %s.", from.Short(), to.Short())
	best := "now"
	switch {
	case day < from.Add(-trade.CutBackOpens):
		best = "early"
	case day > to.Add(-trade.CutBackEnds):
		best = "over"
	}
	w := t.walk()
	d := w.Dues()[0]
	right := d.Sentence(t.b, t.now)
	if best != "now" {
		right = fmt.Sprintf("Cutting back opens on %s: %d days before bark slips. It is done at the latest %d days before it stops.", t.b.Day(d.Opens).Long(),
			trade.CutBackOpens, trade.CutBackEnds)
	}
	c := t.ask("Is it cut back today?", t.open(best, d.Open(t.now)), right, facts("When is a tree cut back?", season.Facts()...),
		option{"now", "Cut it back and gash it today.", "From today a week of draining ends outside the days in which bark slips."},
		option{"early", "Not yet: wait until ten days before bark slips.", "That day is not still to come: the tree would lose days of the season."},
		option{"over", "Not this season: cut it back next year.", "There is still time in this season, or it has not begun; a year would be lost."},
		option{"graft", "Cut it and graft it on the same day.", "A stem cut today bleeds today. It wants a week or more to drain."})
	c.Rule.Due, c.Rule.IsDue, c.Rule.Step = d.Kind, true, "limbs"
	return c
}

// open holds what was reckoned against what the due says: a case of which the two
// differ has no best answer.
func (t *tale) open(best string, open bool) string {
	if (best == "now") != open {
		return "the rules differ"
	}
	return best
}
