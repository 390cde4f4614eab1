package trade

// Figures of the tally.
const (
	Z95           = 1.959963984540054 // 97.5 % point of the normal curve, for 95 % intervals
	ProofAt       = 0.05              // a difference is shown as proven under this chance
	StumpsToLearn = 20                // with two grafts or more, before the record speaks
	ScionsAtMost  = 100               // no answer is sought past this many
	LeastExpected = 5.0               // under this in a cell, chi-square is rough
	WidestTold    = 0.5               // a rate whose interval is wider than this is too few to say
)

// What the tally rests on.
var (
	WilsonInterval = state("wilson-interval", "sums", Published, "Wilson 1927, J. Amer. Statist. Assoc. 22:209",
		"The 95 % interval of a rate is centred at (p + z^2/2n)/(1 + z^2/n) and reaches z sqrt(p(1-p)/n + z^2/4n^2)/(1 + z^2/n) each way.")
	NewcombeDifference = state("newcombe-difference", "sums", Published, "Newcombe 1998, Statistics in Medicine 17:873, method 10",
		"The interval of a difference of two rates squares and adds how far each rate's own interval reaches.")
	FisherExact = state("fisher-exact", "sums", Published, "Fisher 1935, J. Royal Statistical Society 98:39; Freeman and Halton 1951, Biometrika 38:141",
		"The exact chance of a difference is the sum over all tables with the same totals that are no likelier than the one seen.")
	EnoughToTell = state("enough-to-tell", "sums", Memory, "",
		"Where no table with these totals could come under 5 %, the counts are too few to tell: three against three never can.")
	AtLeastOne = state("at-least-one", "sums", Memory, "",
		"At least one of n comes off with the chance 1 - (1 - p)^n where they do not depend on one another.")
	GraftsAlike = state("grafts-alike", "sums", Published, "Crowder 1978, Applied Statistics 27:34 (beta-binomial)",
		"Grafts on one stump share its luck: their number alive is beta-binomial, a = m(1-r)/r, b = (1-m)(1-r)/r, r how alike they are.")
	BudsAlone = state("buds-alone", "sums", Memory, "",
		"The buds of one scion are taken as independent of one another; they are not quite.")
	LearnFrom = state("learn-from", "sums", Memory, "",
		"A block's own record speaks once 20 stumps with two grafts or more are judged.")
	NoughtOfN = state("nought-of-n", "sums", Published, "Hanley & Lippman-Hand 1983, J. Amer. Med. Assoc. 249:1743",
		"None of n seen leaves room for 1 - 0.05^(1/n) at most with 95 % confidence, about 3/n.")
	KaplanMeier = state("kaplan-meier", "sums", Published, "Kaplan & Meier 1958",
		"Those still waiting are the product over the days of 1 - happened/at risk; one lost sight of on a day counts as at risk that day.")
	Greenwood = state("greenwood", "sums", Memory, "",
		"The variance of that share is its square times the sum of happened/(at risk (at risk - happened)), Greenwood's formula.")
	ChiSquared = state("chi-square", "sums", Memory, "",
		"Chi-square sums (seen - expected)^2/expected, expected being row total times column total over all; rough where a cell expects under 5.")
	StumpsAlike = state("stumps-alike", "sums", Published, "Cochran 1977, Sampling Techniques, ch. 3; Rao & Scott 1992, Biometrics 48:577",
		"Grafts of one stump are not independent: counts are divided by the design effect n v/(p(1-p)), v = k/(k-1) sum (y - p m)^2/n^2 over the k stumps, "+
			"never under 1, before intervals and tests.")
	WideInterval = state("too-few", "sums", Memory, "",
		"A rate whose interval covers more than half of the scale is called too few to say.")
)
