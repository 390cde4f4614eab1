package trade

import "barkslip/core/unit"

// Usual rates of what is taken along; a block may set its own.
const (
	WrapPerScion   = 2
	WrapSquare     = unit.Area(6 * unit.Inch * unit.Inch) // 2 x 3 in
	SealerCoat     = 2 * unit.Millimetre                  // both coats together
	PaintCoat      = 0.3 * unit.Millimetre
	BelowSlot      = unit.Inch // sealer and white reach this far below the long cut
	StakesPerStump = 1
	TiesFirstYear  = 4 // from the stake's foot to 4 ft above it
	TapePerTie     = 1 * unit.Foot
	TwineKnot      = 1 * unit.Foot // a loop
	AcrossUsual    = 3 * unit.Inch // of a stump that nobody measured
)

// NailsSold are the lengths of wire nails that are sold, shortest first.
var NailsSold = []unit.Length{3 * unit.Inch / 4, unit.Inch, 5 * unit.Inch / 4, 3 * unit.Inch / 2}

// NailsSoldMetric are those of places that measure in millimetres.
var NailsSoldMetric = []unit.Length{20 * unit.Millimetre, 25 * unit.Millimetre, 30 * unit.Millimetre, 40 * unit.Millimetre}

// NailSold is the shortest nail sold that is as long as one reckoned; ok is false
// where none is.
func NailSold(least unit.Length, sys unit.System) (sold unit.Length, ok bool) {
	lengths := NailsSold
	if sys == unit.Metric {
		lengths = NailsSoldMetric
	}
	for _, l := range lengths {
		if l >= least {
			return l, true
		}
	}
	return 0, false
}

// Facts about what is taken along, and how much is done in a day.
var (
	NailsAreSold = state("nails-sold", "cuts", Common, "",
		"Wire nails are sold 3/4, 1, 1 1/4 and 1 1/2 in (20, 25, 30 and 40 mm) long; the next longer size is used.")
	WrapTaken = state("wrap-taken", "seal", Memory, "",
		"Two wrap squares a scion, and over the top as many as cover its face.")
	SealerTaken = state("sealer-taken", "seal", Memory, "",
		"Sealer lies about 1/16 in (2 mm) thick in its two coats, on the face and on the bark to 1 in (25 mm) below the long cuts.")
	PaintTaken = state("paint-taken", "seal", Memory, "",
		"White paint lies about 1/64 in (0.3 mm) thick where the sealer is, what runs off counted.")
	StakeTaken = state("stake-taken", "care", Memory, "",
		"One stake a stump.")
	TapeTaken = state("tape-taken", "care", Memory, "",
		"About four ties a stump in its first season, of 1 ft (30 cm) of tape each.")
	TwineTaken = state("twine-taken", "care", Memory, "",
		"Two loops a stump, each twice the stem's girth and 1 ft (30 cm) for its knot.")
	SizeTaken = state("size-taken", "wood", Memory, "",
		"A stump that nobody measured is counted as wide as the mean of those measured, or 3 in (76 mm) across.")
	RateADay = state("rate-a-day", "sums", Memory, "",
		"Ten stumps a day are assumed where a block tells nothing of its own pace: a placeholder of the program, not trade knowledge.")
)
