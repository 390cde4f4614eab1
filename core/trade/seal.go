package trade

import "barkslip/core/unit"

// Figures for seal and paint.
const (
	FinishMinutes    = 60 // from the last scion to the next
	SealMinutes      = 30 // from the last scion to sealing
	WhiteOpensHours  = 2
	WhiteByHours     = 3
	StillWetMinutes  = 30
	WhiteMorning     = 60 // minutes after sunrise when the clock ran out in the dark
	ResealDays       = 5
	HeatCaution      = unit.Temperature((90.0 - 32) * 5 / 9)
	HeatPostpone     = unit.Temperature((100.0 - 32) * 5 / 9)
	HeatLookDays     = 7
	InjuryFrom       = unit.Temperature(45) // limit of a sealed graft that the white clock goes by
	InjuryMinutes    = 60                   // how long before the limit to be white: 30 for the strip that faces the sun, 30 to do the work
	EarwigDays       = 14
	EarwigHardenDays = 45
)

// Facts about sealing and white.
var (
	SealBelow = state("seal-below", "seal", Common, "",
		"Sealer goes on the slots and below the lowest end of any split, then wrap squares, sealer again, the top and the scion tips.")
	FinishSoon = state("finish-soon", "seal", Memory, "",
		"Once a scion is set the rest follow within the hour: the face and the cut scions dry.")
	SealSoon = state("seal-soon", "seal", Memory, "",
		"A graft is sealed within half an hour of its last scion.")
	BareCracks = state("bare-cracks", "seal", Common, "",
		"Bare sealer cracks: reseal it after 5 days; a wrapped seal needs no reseal.")
	WrapSquares = state("wrap-squares", "seal", Common, "",
		"Wrap squares about 2 x 3 in (5 x 8 cm) from narrow pallet wrap, kitchen film second choice, kept wet in a pail against static cling.")
	WhiteIn = state("white-in", "seal", Common, "",
		"White water-based paint goes over everything, scions and buds too, 2 to 3 hours after sealing, once the sealer is dry.")
	WhiteThinning = state("white-thinning", "seal", Disagree, "thinned up to 1:1 by some, not at all by others",
		"White paint may be thinned up to 1:1 with water.")
	NoOilPaint = state("no-oil-paint", "seal", Memory, "",
		"Never oil-based paint on buds.")
	WhiteCools = state("white-cools", "seal", Disagree, "10 to 32 F (6 to 18 C) on peach trunks in winter (New Jersey trials), none in another trial; "+
		"50 % latex doubted in California Agriculture 29(4), 1975",
		"White cools bark: winter peach trunks by 10 to 32 F (6 to 18 C) in one set of trials.")
	DarkSealer = state("dark-sealer", "seal", Common, "",
		"Dark sealer in hot sun injures within hours.")
	InjuryLab = state("injury-lab", "seal", Published, sub21,
		"Eucalyptus cambium in vitro was less alive after 2.5 to 5 minutes at 40 to 50 C and killed at once at 60 C: another species, and damage rather "+
			"than death below 60 C.")
	InjuryHour = state("injury-hour", "seal", Memory, "",
		"49 to 50 C (120 to 122 F) for about an hour injures; 45 C (113 F) is the limit the program steers by.")
	HotWeek = state("hot-week", "seal", Published, nnga25,
		"Air of 114 F (46 C) within a week of grafting: near total loss.")
	ForecastHeat = state("forecast-heat", "seal", Memory, "",
		"A forecast of 90 F (32 C) within 7 days calls for care; at 100 F (38 C) postpone, or shade the graft and paint it white.")
	Earwigs = state("earwigs", "seal", Common, "",
		"Earwigs eat opening buds two to three weeks on: where they are a problem a tape ring with bait; the label is the law.")
	StillWet = state("still-wet", "seal", Memory, "",
		"Sealer that is still wet is looked at again in 30 minutes; after dark the painting waits until within an hour of sunrise.")
)
