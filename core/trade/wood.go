package trade

import "barkslip/core/unit"

// Figures for the number of scions and their wood.
const (
	GirthPerScion      = 80 * unit.Millimetre
	ScionsLeast        = 2
	ScionsMost         = 4 // up to WideStump across
	ScionsMostWide     = 6
	WideStump          = 6 * unit.Inch
	WidestStump        = 40 * unit.Inch // more is a slip of the hand
	ClosestScions      = 50 * unit.Millimetre
	ScionLongest       = 6 * unit.Inch
	NodesPerScion      = 2
	GraftsPerStick     = 3 // least and most scions that a 12 in stick gives
	GraftsPerStickMost = 4
	ScionsUsual        = 3 // on a stump of unknown size
	TrimStored         = unit.Inch / 2
	StoreWarm          = unit.Temperature((40.0 - 32) * 5 / 9) // 40 F
	StoreOldDays       = 150
	PithShare          = 0.5
	EnoughForChance    = 0.95
)

// StumpLimits are the widths of a stump that decide something: whether it takes a
// bark graft, wants care against decay, or takes more scions.
var StumpLimits = []unit.Length{LeastAcross, LargeAcross, WideStump}

// Facts about number and wood.
var (
	ScionsByEye = state("scions-by-size", "wood", Common, "",
		"Two scions on a small stump, three on one somewhat larger, four at about 4 in (10 cm) across.")
	ScionsOnStub = state("scions-on-stub", "wood", Published, nnga37,
		"Three or four scions on a large stub, the strongest kept after one to two years.")
	ScionSpacing = state("scion-spacing", "wood", Common, "",
		"One scion every 80 mm (3 1/8 in) of girth, at least two: derived from the one sized point, four at 4 in (10 cm).")
	ScionCap = state("scion-cap", "wood", Memory, "",
		"At most 4 scions up to 6 in (15 cm) across, 6 above, with a caution.")
	ScionClosest = state("scion-closest", "wood", Disagree, "one weak page (5 to 8 cm); 1 in from memory",
		"Scions nearer than 2 in (5 cm) are tight.")
	ScionThickness = state("scion-thickness", "wood", Published, osu,
		"Scions are 3/8 to 1/2 in (10 to 13 mm) thick.")
	ScionThickest = state("scion-thickest", "wood", Published, nnga6,
		"Wood up to 3/4 in (19 mm) has been used on walnut.")
	ThicknessClasses = state("thickness-classes", "wood", Memory, "",
		"Stumps under 2 in (5 cm) take wood of 5/16 to 3/8 in (8 to 10 mm), those up to 3 in (76 mm) 3/8 to 7/16 in (10 to 11 mm), wider ones 7/16 to 5/8 "+
			"in (11 to 16 mm).")
	TwoNodes = state("two-nodes", "wood", Published, nnga6+"; "+nnga37,
		"Two nodes a scion, better with a second bud under each first one: up to four chances.")
	NodeGroups = state("node-groups", "wood", Published, nnga38,
		"Scions carried groups of two to three buds.")
	SingleBudded = state("single-budded", "wood", Common, "",
		"Single-budded wood is second best, not refused.")
	WayUp = state("way-up", "wood", Memory, "",
		"The second bud and the leaf scar lie below the first bud; a short cone-like catkin bud above a leaf bud is not a pair.")
	ScionLength = state("scion-length", "wood", Published, osu,
		"Scions are 5 to 6 in (13 to 15 cm) long.")
	ShortInternodes = state("short-internodes", "wood", Common, "",
		"Wood with short internodes is better than long.")
	StoreCold = state("store-cold", "wood", Published, nnga42,
		"Wood is cut dormant, bagged and kept at 35 F (2 C); 32 to 35 F (0 to 2 C) is common.")
	StoreLimits = state("store-limits", "wood", Memory, "",
		"Wood over 40 F (4 C) is warm; past 5 months or with swollen buds it is old; not beside ripening fruit.")
	StickEnds = state("stick-ends", "wood", Memory, "",
		"Stored sticks lose their ends: trim 1/2 in (13 mm) before use.")
	RecutFaces = state("recut-faces", "wood", Common, "",
		"Every face is cut fresh on the day.")
	StickGives = state("stick-gives", "wood", Published, ore1910,
		"A 12 in (30 cm) stick gives 3 to 4 grafts.")
	Pith = state("pith", "wood", Published, nnga38,
		"In 118 seedlings a 9/16 in (14 mm) stem had 5/16 in (8 mm) of pith at the base, a 3/8 in (10 mm) one 1/4 in (6 mm) at the tip.")
	ShadeSide = state("shade-side", "wood", Published, nnga34+"; "+nnga38,
		"The shade side, north to north-east in the north and mirrored in the south, spares the scion the sun.")
	WindSide = state("wind-side", "wood", Memory, "",
		"On the windward side the wind presses the scion on instead of prying it off.")
)
