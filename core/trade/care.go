package trade

import "barkslip/core/unit"

// Figures for after-care.
const (
	TakenDays        = 30
	LeaderAim        = 3 * unit.Foot // above the stake, least
	LeaderAimMost    = 4 * unit.Foot
	TieEvery         = 1 * unit.Foot
	FirstTieShoot    = 8 * unit.Inch
	LoopsOfTwine     = 2
	LoopTimesGirth   = 2.0
	GirthAYear       = 3 * unit.Inch
	TwineYears       = 3
	TwineWarnDays    = 30
	SproutLeafTimes  = 3.0
	SproutsKeptLeast = 1
	SproutsKeptMost  = 3
)

// Facts about after-care.
var (
	BudsMove = state("buds-move", "care", Disagree, ore1910+" (10 to 21 days); McEachern, Texas, 2006 (3 to 5 weeks)",
		"Buds begin to move in two to three weeks; sources give from 10 days to 5 weeks.")
	MovingNotTaking = state("moving-not-taking", "care", Memory, "",
		"Moving is not taking: shoots can live on stored food and collapse. Taken is alive and growing 30 days after push, and again at season's end.")
	CallusDays = state("callus-days", "care", Published, "Int. J. Hort. Sci. Technol. (minigrafts on one-year J. regia seedlings)",
		"In minigrafts of Persian walnut the first callus cells stood by day 14, a weak bond still; vessels crossed by day 30, the join was strong by day 420 "+
			"and whole by day 540. No other species was studied.")
	StockSprouts = state("stock-sprouts", "care", Common, "",
		"Stock sprouts come from two to three weeks: none near the graft, and lower down at most 2 to 3 times the leaf left at grafting.")
	KeepSprouts = state("keep-sprouts", "care", Memory, "",
		"If every graft is dead keep one to three well-placed sprouts, so that the tree lives for budding or next year's graft.")
	SproutsUsed = state("sprouts-used", "care", Published, nnga37,
		"Such sprouts have been used for the next graft.")
	Leader = state("leader", "care", Common, "",
		"The best-growing shoot becomes the leader; other tips are pinched then and all summer, the second shoot kept short.")
	LeaderAimFact = state("leader-aim", "care", Common, "",
		"Aim for 3 to 4 ft (0.9 to 1.2 m) above the stake in the first summer.")
	Ties = state("ties", "care", Common, "",
		"Soft tape, loose, every foot (30 cm).")
	Twine = state("twine", "care", Common, "",
		"Two loops that hold independently, loose, so that the stem moves and stiffens; synthetic twine does not rot.")
	TwineLoop = state("twine-loop", "care", Memory, "",
		"A loop is at least twice the stem's girth.")
	TwineGirdles = state("twine-girdles", "care", Common, "",
		"Twine girdles in 3 to 4 years: check it each season and cut it before.")
	GirthGain = state("girth-gain", "care", Memory, "",
		"On an old root the girth gains about 3 in (8 cm) a year in years 1 to 3.")
	HeadBack = state("head-back", "care", Common, "",
		"In the dormant season the leader that passed the stake is headed back above it, the rival branch comes off, the second shoot is kept short.")
	HeadBackShort = state("head-back-short", "care", Memory, "",
		"A leader short of the stake is cut to strong buds and regrown.")
	HeadBackMild = state("head-back-mild", "care", Memory, "",
		"In mild winters head back 15 January to 1 March.")
	HeadBackFrost = state("head-back-frost", "care", Published, "California advisers",
		"In frost country wait until March: 1 March to 15 April.")
	KeptAlone = state("kept-alone", "care", Published, nnga37,
		"The strongest scion is kept alone after one to two years.")
	ClosingOver = state("closing-over", "care", Disagree, nnga15+" (4 to 6 in in 3 to 4 years); "+nee79+" (17.5, 12.7 or 9.5 mm a season)",
		"A wound closes over by 9.5 to 17.5 mm a season.")
	CherryLeafroll = state("cherry-leafroll", "care", Published, ucipm,
		"Cherry leafroll virus kills Persian walnut on black walnut in 2 to 6 years: no wood from trees of unknown health.")
	CrownGall = state("crown-gall", "care", Published, eps08,
		"Crown gall travels on tools: clean blades between trees.")
)
