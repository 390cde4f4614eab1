package trade

import (
	"fmt"
	"strings"

	"barkslip/core/unit"
)

// Formulas of sun, air, heat and callus.
var (
	SunPosition = state("sun-position", "sums", Published, "Meeus, Astronomical Algorithms, 2nd ed., chapter 25",
		"The sun's place is that of the short series, good to 0.01 degrees; it rises and sets with its centre 0.833 degrees under the horizon.")
	SunAbove = state("sun-above-air", "sums", Published, "Spencer 1971",
		"Above the air the sun's strength varies with the day of the year about 1366.1 W/m2.")
	ClearSun = state("clear-sun", "sums", Published, "Ineichen & Perez 2002",
		"Sun through clear air is worked out from the sun's height, the air mass, the altitude and a Linke turbidity of 3.")
	AirMass = state("air-mass", "sums", Published, "Kasten & Young 1989",
		"The air that the beam crosses grows from 1 overhead to 38 at the horizon, and shrinks with altitude.")
	CloudDims = state("cloud-dims", "sums", Memory, "",
		"Cloud of N oktas cuts off 0.75(N/8)^3.4 of the sunlight, and the sky's share of the rest is 0.3+0.7(N/8)^2 (Kasten & Czeplak 1980, remembered).")
	AirThroughDay = state("air-through-day", "sums", Published, "Parton & Logan 1981, Agric. Meteorol. 23:205",
		"Air follows a sine from the low, 1.55 hours after sunrise, to the high, 2.59 hours after noon, and falls off after sunset.")
	NightMeetsLow = state("night-meets-low", "sums", Memory, "",
		"The fall of the night is scaled so that it ends at the next morning's low.")
	HeatBalance = state("heat-balance", "sums", Memory, "",
		"Scion, side and top each warm as one lump: a quarter of the diameter of wood behind the surface, at most 20 mm.")
	WoodWarms = state("wood-warms", "sums", Memory, "",
		"Green wood stores about 2.2 MJ in a cubic metre for each kelvin.")
	CoatTakes = state("coat-takes", "sums", Memory, "",
		"Dark sealer absorbs about 0.94 of the sunlight and white 0.25; both radiate at about 0.9.")
	WindCools = state("wind-cools", "sums", Published, "Churchill & Bernstein 1977",
		"Wind cools scion and stump as it cools a cylinder across the stream.")
	StillAirCools = state("still-air-cools", "sums", Memory, "",
		"Still air cools by 1.31 times the cube root of the difference in kelvin upright and 1.52 times on top, in W/m2K.")
	SkyColder = state("sky-colder", "sums", Memory, "",
		"A clear sky radiates as if 10 C (18 F) colder than the air.")
	CallusRate = state("callus-rate", "sums", Published, "Rosso et al. 1993",
		"Growth between a least and a most temperature, fastest at a best one, follows the cardinal temperature model with inflection.")
	CallusLimits = state("callus-limits", "sums", Memory, "",
		"That callus of walnut does not grow under 15 C (59 F) or over 38 C (100 F) is assumed.")
	CallusLimitsElse = state("callus-limits-else", "sums", Memory, "",
		"The callus of other kinds is assumed to stop as far from its best temperature as walnut's: 12 C (22 F) under it and 11 C (20 F) over it.")
)

// Temperatures between which walnut callus grows. The ends are assumed.
const (
	CallusLeast = unit.Temperature(15)
	CallusBest  = unit.Temperature(27)
	CallusMost  = unit.Temperature(38)
)

// CallusKind is a kind of tree with the temperature at which its callus grows
// fastest, and how firmly that is known.
type CallusKind struct {
	Name string
	Best unit.Temperature // where sources give a range, its middle
	Fact Fact
}

// CallusKinds are the kinds whose best temperature is known, walnut first.
var CallusKinds = []CallusKind{
	{"walnut", CallusBest, state("callus-walnut", "sums", Memory, "",
		"Walnut callus grows fastest at about 27 C (81 F), where weak sources agree.")},
	callusRange("chestnut", 21, 24),
	callusRange("apple", 13, 18),
	callusRange("pear", 13, 18),
	callusAbout("plum", 16),
	callusAbout("cherry", 20),
	callusRange("peach", 18, 26),
	callusRange("grape", 24, 27),
	callusRange("persimmon", 21, 27),
	callusRange("olive", 25, 35),
}

// callusRange is a kind for which sources differ.
func callusRange(name string, low, high unit.Temperature) CallusKind {
	between := fmt.Sprintf("%.0f to %.0f C (%.0f to %.0f F)", low.C(), high.C(), low.F(), high.F())
	says := fmt.Sprintf("%s callus grows fastest at %s; the middle is used.", capital(name), between)
	return CallusKind{name, (low + high) / 2, state("callus-"+name, "sums", Disagree, "weak sources give "+between, says)}
}

// callusAbout is a kind for which a weak source gives one figure.
func callusAbout(name string, best unit.Temperature) CallusKind {
	says := fmt.Sprintf("%s callus grows fastest at about %.0f C (%.0f F), by weak sources.", capital(name), best.C(), best.F())
	return CallusKind{name, best, state("callus-"+name, "sums", Memory, "", says)}
}

func capital(name string) string { return strings.ToUpper(name[:1]) + name[1:] }
