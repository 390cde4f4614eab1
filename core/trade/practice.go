package trade

import "time"

// PimsleurIntervals are the intervals after which a thing learnt is asked again, each
// longer than the one before, see GradedRecall.
var PimsleurIntervals = []time.Duration{
	5 * time.Second, 25 * time.Second, 2 * time.Minute, 10 * time.Minute, time.Hour, 5 * time.Hour,
	day, 5 * day, 25 * day, 120 * day, 730 * day,
}

const day = 24 * time.Hour

// Figures of a sign-off in practice.
const (
	SignOffCases  = 40 // unseen, spread evenly over the skills
	SignOffRight  = 36 // least of them right
	SignOffMissed = 1  // most missed of one skill
)

// Facts about practice.
var (
	GradedRecall = state("graded-recall", "practice", Published, "P. Pimsleur, A memory schedule, The Modern Language Journal 51(2), 1967, 73-75",
		"A thing learnt is asked again after 5 s, 25 s, 2 min, 10 min, 1 h, 5 h, 1 day, 5 days, 25 days, 4 months and 2 years.")
	RecallOfSkills = state("recall-of-skills", "practice", Memory, "",
		"That schedule was made for words of a language. Here it is kept for each skill: one right answer goes on to the next interval, a missed case back to "+
			"the first. To use it so is the choice of this program.")
	SignOffMark = state("sign-off-mark", "practice", Memory, "",
		"A sign-off is 40 unseen cases without coach or why; it is passed with at least 36 right and no skill with more than one missed. The number and the mark "+
			"are the choice of this program, no published standard.")
)
