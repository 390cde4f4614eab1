package results

import (
	"fmt"
	"math"

	"barkslip/core/tally"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Percent is a share in whole hundredths: "62 %".
func Percent(share float64) string { return fmt.Sprintf("%.0f %%", 100*share) }

// RateWords is the rate of a group in words: "62 %", or that it cannot be said.
func (g *Group) RateWords() string {
	if g.Known == 0 {
		return "none known"
	}
	return Percent(float64(g.Took) / float64(g.Known))
}

// DifferWords says whether the groups of a tally differ by more than chance
// explains; empty where there are not two to hold against each other.
func (t *Tally) DifferWords() string {
	switch {
	case t.Differ == nil:
		return ""
	case t.Total.TooFew():
		return "Too few to say whether the groups differ."
	case t.Differ.P < trade.ProofAt:
		return fmt.Sprintf("The groups differ more than chance explains (p %s).", Chance(t.Differ.P))
	}
	return fmt.Sprintf("Chance explains differences like these (p %s).", Chance(t.Differ.P))
}

// Chance is a probability as it is printed.
func Chance(p float64) string {
	if p < 0.001 {
		return "under 0.001"
	}
	return fmt.Sprintf("%.2g", p)
}

// PairWords is how one group fares against another, in two sentences.
func PairWords(a, b *Group) string {
	if a.Known == 0 || b.Known == 0 {
		return "Too few to say: one of them has no known graft yet."
	}
	p := tally.Compare(a.Clusters, b.Clusters)
	points := math.Round(100 * math.Abs(p.Difference))
	words, said := "As many took in both.", "fewer"
	if p.Difference > 0 {
		said = "more"
	}
	if points > 0 {
		words = fmt.Sprintf("%.0f in 100 %s took (95 %% interval %s to %s in 100).", points, said, signed(p.Low), signed(p.High))
	}
	switch {
	case !p.Enough:
		return words + " Too few to say."
	case p.P < trade.ProofAt:
		return words + fmt.Sprintf(" %s took than chance explains (p %s).", map[string]string{"fewer": "Fewer", "more": "More"}[said], Chance(p.P))
	}
	return words + fmt.Sprintf(" Chance explains a difference like this (p %s).", Chance(p.P))
}

// signed is a difference of rates in hundredths, with its sign.
func signed(d float64) string {
	if n := math.Round(100 * d); n != 0 {
		return fmt.Sprintf("%+.0f", n)
	}
	return "0"
}

// PairWork is how the comparison comes about.
func PairWork(a, b *Group) trade.Worked {
	p := tally.Compare(a.Clusters, b.Clusters)
	test := "chi-square on the effective counts, adjusted for the grafts that share a stump"
	facts := []trade.Fact{trade.NewcombeDifference, trade.StumpsAlike, trade.ChiSquared, trade.EnoughToTell}
	if p.Exact {
		test, facts[2] = "the exact test, two-sided, as the grafts of one stump fared each for itself", trade.FisherExact
	}
	return trade.Worked{
		Question: "Did " + a.Key + " take better than " + b.Key + "?",
		Answer: []trade.Input{{Name: "difference", Value: p.Difference}, {Name: "at least", Value: p.Low}, {Name: "at most", Value: p.High},
			{Name: "chance of such a difference if both fare alike", Value: p.P}, {Name: "enough to tell", Value: p.Enough}},
		Formula: "Difference = rate less the other rate, squaring and adding both intervals; the test is " + test + ".",
		Inputs: []trade.Input{{Name: a.Key, Value: fmt.Sprintf("%d of %d, design effect %.2f", a.Took, a.Known, a.Design())},
			{Name: b.Key, Value: fmt.Sprintf("%d of %d, design effect %.2f", b.Took, b.Known, b.Design())}},
		Facts: facts,
	}
}

// Shown is a group's name as people read it: a thickness in their units.
func (k Key) Shown(name string, sys unit.System) string {
	mm := 0.0
	if _, err := fmt.Sscanf(name, "%g", &mm); k != Thickness || err != nil {
		return name
	}
	return sys.Exact(unit.Length(mm))
}

// DifferWork is how the test over the groups comes about; Differ is not nil.
func (t *Tally) DifferWork() trade.Worked {
	return trade.Worked{
		Question: "Do the groups differ by more than chance?",
		Answer: []trade.Input{{Name: "chance of groups as different if all fare alike", Value: t.Differ.P}, {Name: "chi-square", Value: t.Differ.Chi2},
			{Name: "degrees of freedom", Value: t.Differ.Freedom}},
		Formula: "Chi-square = sum over the groups of n (p - P)^2 / (P (1 - P)), n being the group's known grafts divided by its design effect, p its rate, " +
			"P the rate of all of them together.",
		Inputs:  []trade.Input{{Name: "groups", Value: len(t.Groups)}, {Name: "known", Value: t.Total.Known}},
		Assumed: []string{"stumps fare each for itself; the more groups are looked at, the likelier one differs by chance"},
		Facts:   []trade.Fact{trade.ChiSquared, trade.StumpsAlike},
	}
}
