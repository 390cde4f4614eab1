package practice

import "barkslip/core/record"

// The words of what can be done while a stump is made ready.
const (
	doGraft    = "Graft it now."
	doGash     = "Make two fresh gashes low on the stem, and look again in half an hour."
	doDrill    = "Bore a drain hole low on the stem, and look again in half an hour."
	doWipe     = "Wipe the face and look again in 15 minutes."
	doFreshCut = "Cut the top afresh and look at the new face."
	doLook     = "Do nothing to it yet; come back in about 15 minutes and look at the face."
	doLeave    = "Leave it for this season and keep its sprouts."
	doWait2    = "Leave it two days and look again."
	doWait3    = "Leave it three days and look again."
	doWait7    = "Leave it a week and try again."
)

var drainingKinds = []maker{
	{"wet-after-two-wipes", wetAfterTwoWipes},
	{"first-wipe", firstWipe},
	{"beads", beads},
	{"stream", stream},
	{"moist-new-face", moistNewFace},
	{"old-gashes", oldGashes},
	{"near-limb", nearLimb},
	{"too-soon", tooSoon},
	{"too-thin-a-stump", tooThin},
	{"all-dry", allDry},
	nextStep(Draining),
}

// waiting is a stump cut back and left its days, with slipping bark, on the morning
// of the graft day. It may have been gashed today, and have a drain hole.
func (t *tale) waiting(gashedToday, hole bool) *tale {
	before := t.of(8, 11)
	t.cutBack(before)
	if hole {
		t.on(-3, 10, 0, &record.Drilled{Number: 1})
	}
	t.at(0, 8, t.of(0, 20)).did(&record.Looked{Slip: record.SlipsClean})
	if gashedToday {
		t.did(&record.Gashed{Number: 2}).later(35)
	}
	return t
}

// sayGashes tells what stands for draining.
func (t *tale) sayGashes(today, hole bool) *tale {
	t.say("The stump is %s across, cut back %d days ago; the bark slips clean.", t.words(t.inches(3).Length), t.day-t.b.Day(t.events[0].At))
	switch {
	case today && hole:
		return t.say("It has gashes made this morning and one drain hole.")
	case today:
		return t.say("It was gashed again this morning, over half an hour ago. It has no drain hole.")
	case hole:
		return t.say("Its gashes are those of the cut-back. It has one drain hole.")
	}
	return t.say("Its gashes are those of the cut-back. It has no drain hole.")
}

func wetAfterTwoWipes(seed uint64) Case {
	t := newTale(seed)
	today := !t.chance(3)
	hole := today && t.chance(2)
	t.waiting(today, hole)
	t.did(&record.Looked{Bleeding: record.Damp, Wiped: true}).later(16).did(&record.Looked{Bleeding: record.Damp, Wiped: true})
	t.sayNow().sayGashes(today, hole).say("You wiped the face twice, a quarter of an hour apart. A minute after the second wipe it shines again, without drops.")
	return t.verdict("What is still damp after two wipes counts as weeping.",
		option{"gash", doGash, "It has that already from this morning; more of the same draws little more, and a stem bears only so many gashes."},
		option{"drill", doDrill, t.drillOutOfTurn(today, hole)},
		option{"wipe", doWipe, "A third wipe feels careful, but two have told already: this face makes new sap as fast as it is dried."},
		option{"graft", doGraft, "It is only a shine, and the bark slips so well. But the sap goes on behind the scion and lifts it off the wood: it drowns."},
		option{"wait/2", doWait2, "Days are for what hand and blade no longer help. Something quicker has not been tried yet today."})
}

// drillOutOfTurn says why a drain hole is not the next thing.
func (t *tale) drillOutOfTurn(today, hole bool) string {
	if hole {
		return "It has a hole. With that and fresh gashes the sap only wants its days; a second hole is a last try, for a stump that runs through its waits."
	}
	return "A hole wounds the stem more than a gash does, and fresh gashes have not been tried today."
}

func firstWipe(seed uint64) Case {
	t := newTale(seed)
	today := t.chance(2)
	t.waiting(today, false).did(&record.Looked{Bleeding: record.Damp})
	if t.chance(2) {
		t.later(14).did(&record.Looked{Bleeding: record.Damp, Wiped: true})
		t.sayNow().sayGashes(today, false).say("The face was damp a quarter of an hour ago. You wiped it once; now it is damp again.")
	} else {
		t.sayNow().sayGashes(today, false).say("You have just come to it. The face is damp to the finger; nobody has wiped it yet.")
	}
	return t.verdict("Dew, and the rest of an old flow, are damp too; only a second wipe tells.",
		option{"wipe", doWipe, ""},
		option{"graft", doGraft, "It might be only dew. It might not, and a scion set on a face that makes sap is lost; a cloth and a quarter of an hour would have told."},
		option{"drill", doDrill, "You would wound the stem for what may be dew. Holes are for stumps that bleed through gashes."},
		option{"wait/2", doWait2, "If it is dew you lose two days of slipping bark for nothing."})
}

func beads(seed uint64) Case {
	t := newTale(seed)
	today := !t.chance(3)
	hole := today && t.chance(2)
	t.waiting(today, hole).did(&record.Looked{Bleeding: record.Weeping, Wiped: t.chance(2)})
	t.sayNow().sayGashes(today, hole).say("Beads of sap stand along the rim of the face, and now and then one runs down.")
	return t.verdict("Beads are weeping: no wipe answers that.",
		option{"gash", doGash, "Its gashes are from this morning and drain what they can; beads through fresh gashes ask for more than gashes."},
		option{"drill", doDrill, t.drillOutOfTurn(today, hole)},
		option{"wipe", doWipe, "Wiping is for a face that is only damp. Beads come from sap under pressure, and will be back before the cloth is dry."},
		option{"graft", doGraft, "The bark slips, the wood is out of the store, the crew stands ready. All the same: sap under pressure parts scion from wood."},
		option{"wait/2", doWait2, "Two days may be what it comes to, but there is something to do first that may save them."})
}

func stream(seed uint64) Case {
	t := newTale(seed)
	var today, hole bool
	waits := 0
	switch t.of(1, 4) {
	case 1:
		t.waiting(true, false)
		today = true
	case 2:
		t.waiting(false, true)
		hole = true
	case 3:
		t.waiting(true, true)
		today, hole = true, true
	default:
		today, hole, waits = true, true, 2
		t.runs(-6).runs(-3).on(0, 8, 0, &record.Looked{Slip: record.SlipsClean}, &record.Gashed{Number: 2}).later(35)
	}
	t.did(&record.Looked{Bleeding: record.Running})
	t.sayNow().sayGashes(today, hole)
	if waits > 0 {
		t.say("Twice it ran like this on a good day and was left three days.")
	} else {
		t.say("It has not been left to wait for this before.")
	}
	t.say("Sap runs down the side in a stream.")
	return t.verdict("",
		option{"drill", doDrill, "It has a hole already, and a second one comes only as a last try, after the waits."},
		option{"gash", doGash, t.gashNoMore(today)},
		option{"wait/3", doWait3, t.waitNoMore(waits, today && hole)},
		option{"leave", doLeave, "A stump that runs today has often stopped within the week. It is left for the season only after two waits, with gashes and a hole."},
		option{"graft", doGraft, "Nothing is worth less than a scion on a running stump: of sixty walnut grafts in one trial the five that lived stood on drained stocks."})
}

func (t *tale) gashNoMore(today bool) string {
	if today {
		return "It was gashed this morning. Gash on gash rings the stem without draining much more."
	}
	return "Fresh gashes help, but a stream with no way out below wants a hole first."
}

func (t *tale) waitNoMore(waits int, tried bool) string {
	switch {
	case waits > 0:
		return "It has had that twice. A third wait brings you to the end of the slipping season with the same wet face."
	case !tried:
		return "Waiting comes after what drains it: not all of that has been done today."
	}
	return "It has had its waits."
}

func moistNewFace(seed uint64) Case {
	t := newTale(seed)
	t.waiting(true, false).did(&record.Looked{Bleeding: record.Dry, Wiped: true}, &record.FreshCut{}).later(t.of(1, 6))
	t.sayNow().say("The stump was dry and freshly gashed, so you cut the top again at %s, bark untorn.", t.clock(t.walk().Found.FreshCut)).
		say("The new face looks moist all over, but nothing runs.")
	return t.verdict("",
		option{"look", doLook, ""},
		option{"graft", doGraft, "It was dry under the old face, but the scion goes on the new one, and that has not had the time to tell."},
		option{"drill", doDrill, "Every fresh face looks moist. You would bore into a stem that may be quite dry."},
		option{"wait/2", doWait2, "Moist is not bleeding. Sap shows within a quarter of an hour; two days make you cut the face again."},
		option{"fresh-cut", "Cut another slice off, to see whether the next face is drier.", "Each new face is moist as well, and the wait begins again."})
}

func oldGashes(seed uint64) Case {
	t := newTale(seed)
	t.waiting(false, t.chance(4)).did(&record.Looked{Bleeding: record.Dry, Wiped: true})
	t.sayNow().say("Cut back %d days ago and gashed then. It was not touched since.", t.day-t.b.Day(t.events[0].At)).
		say("The old face is dry after a wipe, and the bark slips clean.")
	return t.verdict("The new cut wakes the sap; the gashes give it another way.",
		option{"gash", "Make two fresh gashes low on the stem, then cut the top afresh.", ""},
		option{"fresh-cut", "Cut the top afresh at once, and look at the new face.", "The new cut wakes the sap. With the old gashes healed over it comes up to the face."},
		option{"graft", "Graft it on the face as it is.", "A face this old is dried out at the rim: no cambium there joins. And nothing drains the sap that comes with the graft."},
		option{"wait/2", doWait2, "It is dry and the bark slips: that is what was waited for. Each day from here is one of the slipping season lost."})
}

func nearLimb(seed uint64) Case {
	t := newTale(seed)
	near := t.inches(float64(t.of(8, 16)))
	t.on(-8, 9, 0, &record.NurseJudged{Limbs: 2, Nearest: near, Leaf: "some"})
	cut := t.chance(2)
	if cut {
		t.did(&record.CutBack{Height: t.inches(38)}, &record.Gashed{Number: 2}).on(0, 9, 0, &record.Looked{Slip: record.SlipsClean}, &record.Looked{Bleeding: record.Dry})
		t.sayNow().say("Cut back 8 days ago; dry, and the bark slips.")
	} else {
		t.did(&record.CutBack{Height: t.inches(38)})
		t.sayNow().say("You have just cut the tree back.")
	}
	t.say("Two limbs were left. The upper one stands %s below the planned graft height, strong and green.", t.words(near.Length))
	return t.verdict("The lower limb stays as nurse.",
		option{"take-limb-off", "Take the upper limb off and leave the lower one.", ""},
		option{"graft", "Leave both limbs; go on with the stump as it stands.", "Leaf is good for the root, but a limb so near draws the sap past the graft and shades and outgrows it."},
		option{"none", "Take both limbs off.", "Then nothing is left that feeds the root and shades the bark: the tree loses vigour and its stem may scald."},
		option{"gash", "Gash the stem between the limb and the graft.", "A gash lets sap out. It does not stop a limb from drawing and shading; and above a limb is not low on the stem."})
}

func tooSoon(seed uint64) Case {
	t := newTale(seed)
	days := t.of(2, 5)
	t.cutBack(days)
	t.at(0, 9, 0).did(&record.Looked{Slip: record.SlipsClean}, &record.Looked{Bleeding: record.Dry, Wiped: true})
	t.sayNow().say("Cut back and gashed %d days ago. The face is dry after a wipe, the bark slips clean, and wood and crew are here.", days)
	rest := 7 - days
	return t.verdict("",
		option{"wait/" + digits(rest), "Leave it " + dayCount(rest) + " more, and judge it then.", ""},
		option{"graft", doGraft, "It looks ready. But the root goes on pushing for days after the top is gone: the flow often comes when the scions sit."},
		option{"fresh-cut", doFreshCut, "The face was only just cut. It is the stem below that wants its days."},
		option{"wait/" + digits(rest+7), "Leave it " + dayCount(rest+7) + " more, to be sure.", "A week from the cut-back is what is wanted; twice that gives nothing more, and slipping bark does not wait."})
}

func tooThin(seed uint64) Case {
	t := newTale(seed)
	thin := t.chance(2)
	across := t.inches(pick(&t.dice, 0.625, 0.75, 0.875))
	if !thin {
		across = t.inches(pick(&t.dice, 1.25, 1.5))
	}
	t.on(-9, 8, 50, &record.StumpAdded{Across: across, Stock: "black walnut"}).at(-9, 9, 0)
	t.sayNow().say("A young tree, not cut back yet: %s across where the graft would be. The bark will slip in a week.", t.words(across.Length))
	return t.verdict("",
		option{"other-graft", deeds["small"], "Thin, but over the size at which a bark graft holds: two scions go on it."},
		option{"cut-back", "Cut it back and gash it, to be grafted in a week or so.", "On so thin a stem the bark is torn by two scions, and the wood has no room for the nails."},
		option{"graft", "Cut it and graft it at once.", "A stem that was not cut back and drained bleeds at once when its top is cut."},
		option{"leave", "Leave it a year to grow thicker.", "A year is lost: there is something for this tree now."})
}

func allDry(seed uint64) Case {
	t := newTale(seed)
	face := t.chance(2)
	t.waiting(true, t.chance(3)).did(&record.Looked{Bleeding: record.Dry, Wiped: true})
	if face {
		t.did(&record.FreshCut{}).later(17).did(&record.Looked{Bleeding: record.Dry, Wiped: true})
	}
	t.sayNow().say("Cut back %d days ago, gashed this morning; the bark slips clean.", t.day-t.b.Day(t.events[0].At))
	if face {
		t.say("The top was cut afresh over a quarter of an hour ago. You wiped the new face and counted to sixty: it stays dry.")
	} else {
		t.say("The face, cut on the day of the cut-back, stays dry after a wipe.")
	}
	return t.verdict("",
		option{"graft", doGraft, "The old face is dried out at its rim. Scions are set on a face cut the same day, down to moist wood."},
		option{"fresh-cut", doFreshCut, "It has its fresh face, and that is dry. Another cut only starts the wait again."},
		option{"wipe", "Wipe it once more and look in 15 minutes, to be sure.", "It has been wiped and stayed dry. While you look again the rim dries and the morning goes."},
		option{"wait/2", doWait2, "Everything is ready today. In two days the gashes and the face are old again, and the bark may be tighter."})
}
