package trade

// Facts behind the places of slots and the growth of girth.
var (
	WholeBark = state("whole-bark", "sums", Memory, "",
		"A slot needs its whole width of sound bark, so its centre keeps half that width from bark that is torn or dead.")
	LogisticGirth = state("logistic-girth", "sums", Published, "Draper & Smith, Applied Regression Analysis",
		"Measured over four years, the girths of five orange trees followed a logistic curve: slow, fast, then levelling off.")
	StraightGirth = state("straight-girth", "sums", Memory, "",
		"Where the girth shows no levelling off it is assumed to grow on in a straight line.")
	TwineOff = state("twine-off", "sums", Memory, "",
		"Twine is cut 30 days before it would grow tight, and 3 years after the first reading at the latest.")
)
