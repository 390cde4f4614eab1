package trade

import "barkslip/core/unit"

// Getting a stump ready. The keys of the sources: NNGA-n is Northern Nut Growers
// Association, proceedings of the n-th meeting.
const (
	nnga5   = "Northern Nut Growers Association, 5th meeting, 1914"
	nnga6   = "Northern Nut Growers Association, 6th meeting, 1915"
	nnga15  = "Northern Nut Growers Association, 15th meeting, 1924"
	nnga25  = "Northern Nut Growers Association, 25th meeting"
	nnga34  = "Northern Nut Growers Association, 34th meeting"
	nnga37  = "Northern Nut Growers Association, 37th meeting, 1946"
	nnga38  = "Northern Nut Growers Association, 38th meeting, 1947"
	nnga42  = "Northern Nut Growers Association, 42nd meeting, 1951"
	ore1910 = "Walnut Growing in Oregon, 1910"
	nmsu    = "New Mexico State University H-623"
	osu     = "Oklahoma State University Extension, bark grafting pecans"
	texas   = "Texas A&M AgriLife Extension, Texas inlay bark graft"
	ps2016  = "Pecan South, May 2016"
	nee79   = "Neely, J. Arboriculture 5(6), 1979"
	sub21   = "Subasinghe Achchige et al., Forests 12(4):445, 2021"
	rez08   = "Rezaee & Vahdati, J. Amer. Pomol. Soc. 62(1), 2008"
	ucipm   = "UC IPM, walnut pest management guidelines"
	eps08   = "Epstein et al., California Agriculture 62(3), 2008"
)

// Figures for readiness.
const (
	LeastAcross      = 1 * unit.Inch // below this another graft serves better
	LargeAcross      = 4 * unit.Inch // above this: caution
	CutBackDays      = 7             // least days from cutting back to grafting, where a block sets none
	WaitLeast        = 3             // fewest and most days that a block may set for it
	WaitMost         = 21
	GraftWithin      = 3               // days more after which the graft is best done
	CutBackOpens     = 10              // days before the season of slip from which stumps are cut back
	CutBackBy        = 10              // days before its end by which they should be
	CutBackEnds      = 7               // days before its end past which none can be grafted in it
	CutBackKeeps     = 120             // days before the season of slip past which a cut is of another year
	CutBackStale     = 100             // days past which a cut not grafted was for an earlier season
	CutBackLongDays  = 14              // more days than this: caution
	GraftHeightUsual = 30 * unit.Inch  // where a block sets none
	LimbClear        = 18 * unit.Inch  // clear stem below the planned graft height
	GashesAtATime    = 2               // gashes made together
	GashDepth        = unit.Inch / 2   // least depth into sapwood
	GashesMost       = 6               // think again after this many
	SmallStem        = 2.5 * unit.Inch // a gash on a thinner stem stays shallow
	SmallStemShare   = 0.25            // of the diameter
	HolesAtATime     = 1               // holes made together; two in all
	FreshCutBelow    = 6 * unit.Inch   // under the cut-back
	RecutBelow       = 2 * unit.Inch   // after a wait
	StuckWaitDays    = 7
	DragsWaitDays    = 3
	RunningWaitDays  = 3
	WeepingWaitDays  = 2
	FaceMinutes      = 15 // from a fresh cut or a wipe to the next look
	GashMinutes      = 30 // from a gash or hole to the next look
	WipesMost        = 2
	WaitsMost        = 2
)

// Facts about readiness.
var (
	Bleeding = state("bleeding", "ready", Published, nnga37,
		"Bleeding at the graft site is walnut's first cause of failure: of 60 walnut grafts the 5 that lived stood on drained stocks.")
	DryFace = state("dry-face", "ready", Common, "",
		"No graft goes on a face that wets again after wiping; judge it on the face that will carry the graft.")
	DaysToGraft = state("days-to-graft", "ready", Disagree, nnga42+" (a week or more); "+rez08+" (14 days)",
		"Graft 7 to 10 days after cutting back; sources give from 3 to 14 days.")
	GashesLow = state("gashes-low", "ready", Common, "",
		"Two gashes low on the stem, at least 1/2 in (13 mm) into sapwood, made with the cut-back and renewed on the graft day before the top is cut.")
	GashLimits = state("gash-limits", "ready", Memory, "",
		"Gashes stand at staggered heights, not opposite, not all round, not below a scion, above soil splash, with a clean blade; no deeper than 1/4 of "+
			"the diameter on a stem under 2.5 in (6 cm); think again after the 6th.")
	DrainHoles = state("drain-holes", "ready", Common, "",
		"Where gashes do not stop the sap, drain holes low on the stem do: two in all, one at a time.")
	DrainHoleSize = state("drain-hole-size", "ready", Memory, "",
		"A 1/4 to 3/8 in (6 to 10 mm) bit, 1 to 2 in (3 to 5 cm) deep, sloping up into the stem so that the hole drains.")
	FreshCut = state("fresh-cut", "ready", Common, "",
		"On the graft day the top is cut again about 6 in (15 cm) under the cut-back, down to moist wood, the bark untorn.")
	Recut = state("recut", "ready", Published, nnga5,
		"When cutting again after a wait, 2 in (5 cm) was enough.")
	FaceMoist = state("face-moist", "ready", Memory, "",
		"A fresh face always looks moist; sap shows 10 to 15 minutes after a cut.")
	GashDrains = state("gash-drains", "ready", Memory, "",
		"A gash or hole takes about half an hour to draw the sap off the face.")
	WaitDays = state("wait-days", "ready", Memory, "",
		"Bark that drags wants about 3 days; a stump that runs with gashes and a hole made today 3 days, one that weeps 2 days.")
	BarkSticks = state("bark-sticks", "ready", Published, texas,
		"Try the bark on the waste above the planned cut; where it sticks wait about a week.")
	BrowseHeight = state("browse-height", "ready", Published, nmsu,
		"Where stock graze, graft above 7 to 8 ft (2.1 to 2.4 m).")
	BrowseDeerHeight = state("browse-deer", "ready", Published, "A-Z of Tree Terms",
		"Red and fallow deer browse to 5 ft (1.5 m), roe and muntjac to 3 1/2 ft (1.1 m).")
	BrowseWhitetail = state("browse-white-tailed", "ready", Memory, "",
		"White-tailed deer browse to about 6 ft (1.8 m).")
	LowBleedsMore = state("low-bleeds-more", "ready", Common, "",
		"A lower cut bleeds more; browsing asks for a higher one.")
	UsualGraftHeight = state("usual-graft-height", "ready", Memory, "",
		"Where a block sets no graft height, 30 in (75 cm) is assumed.")
	NurseLimbs = state("nurse-limbs", "ready", Published, texas+"; "+nmsu,
		"Leave one or two branches well below the graft: they keep the tree vigorous and its bark from sunscald.")
	NurseDraw = state("nurse-limbs-draw", "ready", Memory, "",
		"Nurse limbs are said to draw the sap off as well.")
	LimbClearance = state("limb-clearance", "ready", Memory, "",
		"No limb within 18 in (45 cm) below the planned graft height, even if it is the only one.")
	LimbFromCutBack = state("limb-from-cut-back", "ready", Memory, "",
		"With the fresh cut 6 in (15 cm) lower, that is 24 in (60 cm) below the cut-back.")
	SlipSeason = state("slip-season", "ready", Published, ore1910+"; "+nnga42,
		"Bark slips from leaf expansion until the catkins are out or fallen.")
	SlipDates = state("slip-dates", "ready", Memory, "",
		"Valleys near 38° N slip mid-April to mid-May, 42 to 45° N 10 May to 10 June, the south October to November; elsewhere mid-April to mid-June is assumed.")
	SmallStump = state("small-stump", "ready", Published, nnga37,
		"Under 1 in (25 mm) across another graft serves better.")
	StumpSizes = state("stump-sizes", "ready", Disagree, texas+" and "+nmsu+" (1.5 to 3.5 in); "+nnga5+" (2 to 4 in, 6 to 8 in with care)",
		"Stumps of 1.5 to 4 in (4 to 10 cm) across are usual; at 6 to 8 in (15 to 20 cm) wounds close slowly and need sealing well against decay.")
	LastTries = state("last-tries", "ready", Memory, "",
		"Before leaving a stump for the season: a second hole, no irrigation, a warm dry day.")
)
