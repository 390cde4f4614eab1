package trade

import "barkslip/core/unit"

// Days of after-care, counted from the cause named. A name ending in By is the
// day by which the work should be done.
const (
	SeasonsOfCare                          = 4    // from the graft to untying, at the most as a rule
	JoinedDays                             = 540  // after setting scion and stock are joined, see CallusDays
	AfterLookDays, AfterLookBy             = 2, 4 // from sealing
	ResealBy                               = 6    // from sealing; opens after ResealDays
	CrackedBy                              = 1    // from seeing the crack
	DisputedBy                             = 2    // from the day two hands saw a graft otherwise
	HardRainBy                             = 1    // from hard rain to the look at the seal
	EarwigOpens, EarwigBy                  = 12, 18
	StakeAfterPush                         = 7
	BudsDays, BudsBy                       = 14, 21 // from setting
	BudsEvery                              = 7
	ScratchFrom                            = 42 // from setting
	GreenWaits                             = 60 // from setting
	ConfirmBy                              = 37 // from the first push; opens after TakenDays
	SproutsAfterSet                        = 14
	SproutsAfterCut                        = 21
	SproutsBy                              = 7  // from the day it opens
	SproutsEvery                           = 7  // in the first season, until a leader is chosen
	SproutsEveryLeader                     = 14 // in the first season, with a leader
	SproutsEveryLater                      = 21 // in later seasons
	KeepSproutsBy                          = 14 // from the last graft's death
	LeaderDays, LeaderBy                   = 14, 28
	LeaderLostBy                           = 7  // from losing the leader
	FirstTieDays                           = 14 // from the first push
	TieBy                                  = 4  // from the day it opens
	TieDaysEarly, TieDaysLate              = 7, 14
	TieForecast                            = 21 // a forecast is never further off
	TieSeasons                             = 2
	PinchBy                                = 3 // from choosing the leader
	PinchEvery, PinchEveryBy               = 14, 21
	TwineBy                                = 14 // from the day it opens
	TwineCheckBy                           = 30
	TightBy                                = 7  // from seeing it tight
	UntieBy                                = 30 // from the day it opens
	GraftSettles                           = 60 // after setting the seal is no more looked at
	TwineOldBy                             = 30 // from TwineYears after twining
	TwineShoot                 unit.Length = 3 * unit.Foot
)

// Facts behind the days of after-care.
var (
	SealLook = state("seal-look", "care", Memory, "",
		"A new seal is looked at 2 to 4 days after sealing; a crack is resealed at once.")
	HardRain = state("hard-rain", "care", Memory, "",
		"Hard rain can open a seal or wash thin sealer off: it is looked at that day or the next.")
	StakeTime = state("stake-time", "care", Memory, "",
		"The stake goes in within 7 days of the first bud pushing.")
	BudRounds = state("bud-rounds", "care", Memory, "",
		"From 14 days after setting the buds are looked at every 7 days until each graft pushes or is dead.")
	ScratchTest = state("scratch-test", "care", Memory, "",
		"From 42 days after setting a bud that has not moved is scratched: brown is dead, green may wait to day 60.")
	SproutRounds = state("sprout-rounds", "care", Memory, "",
		"Sprouts are rubbed every 7 days at first, every 14 once a leader is chosen, every 21 in later years from leaf-out to the end of September, half "+
			"a year on in the south.")
	LeaderTime = state("leader-time", "care", Memory, "",
		"The leader is chosen 14 to 28 days after the first push.")
	TieTime = state("tie-time", "care", Memory, "",
		"The first tie goes on 14 days after the first push or at 8 in (20 cm) of shoot; a shoot not measured wants the next in 7 days until the end of July, in "+
			"14 after; a measured one at every foot, and a look at least every 21 days.")
	PinchTime = state("pinch-time", "care", Memory, "",
		"Rival tips are pinched when the leader is chosen and every 14 to 21 days until 15 August, or the block's own date.")
	TwineTime = state("twine-time", "care", Memory, "",
		"Twine goes on when the leader is 3 ft (90 cm) long, by mid-August at the latest.")
	TwineChecks = state("twine-checks", "care", Memory, "",
		"Twine is checked in April, July and October; in the south in October, January and April.")
	WinterTapes = state("winter-tapes", "care", Memory, "",
		"Tapes are loosened in November and December of the first two years, so that they do not cut in.")
	NurseOff = state("nurse-limbs-off", "care", Memory, "",
		"Nurse limbs come off over the first and second dormant seasons, as the graft's own leaf takes over.")
	SeasonJudged = state("season-judged", "care", Memory, "",
		"Each tree is judged in October, when its leaf shows how it did.")
	RegraftTime = state("regraft-time", "care", Memory, "",
		"A stump that failed is cut back again from mid-March to mid-May of the next spring, half a year on in the south.")
)
