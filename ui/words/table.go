package words

// word is one word of the trade: what it means in a sentence or two, and the
// drawing that shows it, with others that may share it. No figure stands here: those
// have their standing among the facts.
type word struct {
	name string
	says string
	draw *drawing
}

// drawing is a small picture in characters that every terminal has.
type drawing []string

// trade is the words in the order of the work.
var trade = []word{
	{"standing", "As a stage: not cut back yet. In the tally: the graft took and is alive now.", nil},
	{"limb", "Where a tree forks, each limb that is grafted is a stump of its own, named by a letter: 4/17b.", nil},
	{"browse height", "As high as deer or stock can eat. A graft below it is bitten off.", nil},
	{"nurse limb", "A branch left on well below the graft. It keeps the tree strong, and its bark shaded.", &stem},
	{"cut back", "The top of the tree is taken off some days before grafting, higher than the graft will be, so that the stump drains.", &stem},
	{"gash", "A cut low on the stem, through the bark into the sapwood, that lets sap out below the graft.", &stem},
	{"drain hole", "A hole drilled low, sloping up into the stem, where gashes do not stop the bleeding.", &stem},
	{"draining", "Cut back, and left until the sap has run off.", nil},
	{"bleeding", "Sap that runs from a cut. It drowns a graft: wait, gash or drill until the new face stays dry after a wipe.", nil},
	{"slip", "In the season of growth bark lifts clean from the wood, wet and smooth beneath: it slips. Only then is a scion set under it.", nil},
	{"sapwood", "The pale outer wood that carries sap up the stem.", &rings},
	{"cambium", "The thin wet layer between bark and wood, from which both grow. That of the scion must touch that of the stump, or nothing takes.", &rings},
	{"fresh cut", "On the day of grafting the top is cut again, lower, down to moist wood. What it leaves is the new face.", nil},
	{"long way", "The way the longer diameter of an oval stump lies. Lay a stick across the face where it is longest and read the compass along it; either end will do.",
		&above},
	{"slot", "Where the bark is slit and lifted to take one scion. Slots stand evenly round the stump, one on the shade side.", &above},
	{"lot", "Sticks of one variety from one place, cut on one day, kept together under one label.", nil},
	{"stick", "A length of last summer's growth, cut while dormant and stored cold. Scions are cut from it.", nil},
	{"scion", "The piece of a stick that is set in a slot, with two nodes. It grows into the new tree.", nil},
	{"node", "The place on a stick where a leaf was. Its buds sit there.", &stick},
	{"internode", "The stick between two nodes. Wood with short ones is better.", &stick},
	{"bud", "The shoot to come, folded up. A plump tight bud is a sound one.", &stick},
	{"second bud", "The smaller bud right below the first, at the same node. It can still grow when the first is lost.", &stick},
	{"leaf scar", "The mark the leaf left. It lies below its buds, so it tells which way is up.", &stick},
	{"long cut", "The long flat slope that lies against the wood of the stump.", &cuts},
	{"back cut", "The short cut at the tip, on the other side, through the bark, so that cambium shows there too.", &cuts},
	{"proud", "Set so that a little of the long cut shows above the top of the stump. It still fits where the cut is a little uneven.", &cuts},
	{"split", "Bark that tears on below the end of the slit. The seal goes on to below its lowest end.", nil},
	{"seal", "The dark coat over slots, splits, top and tips that keeps them from drying. It is wrapped, or left bare.", nil},
	{"wrap square", "A small square of stretch film laid over each slot between two coats of sealer. It holds where bare sealer cracks.", nil},
	{"white", "White paint over the dark seal, once that is dry. Under a dark seal in the sun the bark grows hot enough to die.", nil},
	{"earwig ring", "A ring of tape with bait round the stem, where earwigs eat the opening buds. The label is the law.", nil},
	{"push", "A bud opens and grows.", nil},
	{"took", "A graft took if it was alive when that could be known: some weeks after the first push, or at the season's end.", nil},
	{"sprout", "A shoot of the old tree. Those near the graft are rubbed off, or they outgrow it.", nil},
	{"leader", "The one shoot that becomes the trunk: the best grower.", &shoots},
	{"second shoot", "A shoot beside the leader, kept short, and taken off in a later winter.", &shoots},
	{"pinch", "Take the soft tip out of a shoot with finger and thumb, so that it waits and the leader gets ahead.", &shoots},
	{"stake", "The pole along which the leader is led up straight.", &tied},
	{"tie", "Tape that holds the leader to its stake. A new one follows as the shoot grows.", &tied},
	{"twine", "Two loose loops round trunk and stake. The stem moves in them and grows stiff; they come off before they girdle.", &tied},
	{"girdle", "To cut in all round. A loop that has grown too tight strangles the stem.", nil},
	{"head back", "In the dormant season, cut a leader that has passed its stake back to just above it.", &headed},
	{"untied", "Ties and twine are off, and the tree stands by itself. Nothing more is due.", nil},
	{"round", "A walk over the stumps on which something is due.", nil},
}

// The drawings. None is wider than drawn.
var (
	stem = drawing{
		"   ____     cut back",
		"  |    |",
		"  |    | _/  nurse",
		"  |    |/    limb",
		"  |    |",
		"  |--  |  gashes",
		"  |  --|",
		"  | \\  |",
		"  |  \\_|. drain hole",
		"  |    |'",
		" ~~~~~~~~~ ground",
	}
	rings = drawing{
		" ||:  sapwood  :||",
		" ||:           :||",
		" ||:           :||",
		" | '- cambium",
		" '--- bark",
	}
	above = drawing{
		"        N",
		"       _1_",
		"    .'     '.",
		" W ( - - - - ) E",
		"   2'._   _.'3",
		"",
		" long way: W to E",
		" 1 2 3: slots",
	}
	stick = drawing{
		"  | |/   bud",
		"  | |'   second bud",
		"  | |_   leaf scar",
		"  | |",
		"  | |    internode",
		"  | |",
		"  | |/   the next",
		"  | |'   node",
		"  | |_",
	}
	cuts = drawing{
		"     |   |/",
		"     |   |'",
		"      \\  |   proud",
		"  _____\\ |___",
		"       | |   |",
		"  wood | |   | bark",
		"       | |   |",
		"       | /   |",
		"       |/ back cut",
		"       |     |",
		"  long cut: left side",
	}
	shoots = drawing{
		"    |    leader",
		"    |",
		"    |  x  pinched",
		"    | /",
		"    |/   second",
		"    |    shoot",
		"   [ ]   stump",
	}
	tied = drawing{
		"   |  #    # stake",
		"  (|==#)",
		"   |  #    = twine",
		"  (|==#)",
		"   |  #",
		"   |--#    - tie",
		"   |  #",
	}
	headed = drawing{
		"   : :   taken off",
		"   : :",
		"   \\_\\   cut",
		"   | | #",
		"   | | # stake",
		"   | | #",
	}
)
