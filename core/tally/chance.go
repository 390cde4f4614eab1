package tally

import (
	"fmt"
	"math"

	"barkslip/core/trade"
)

// ChanceAnswer is the chance of a scion and of a stump.
type ChanceAnswer struct {
	Scion     float64      `json:"scion"`
	Stump     float64      `json:"stump"`
	ScionsFor *int         `json:"scions_for_95"` // nil where even 100 are too few
	Work      trade.Worked `json:"because"`
}

// The most buds on a scion and scions on a stump that are reckoned with.
const (
	mostBuds   = 100
	mostScions = 1000
)

// Chance reckons from the chance of one bud that at least one bud of a scion
// grows, and that at least one scion of a stump does. Together is how alike the
// scions of a stump fare, their intraclass correlation: 0 not at all, 1 all live
// or all die. Chances outside 0 to 1 and counts under 1 are a *trade.Impossible.
func Chance(perBud float64, buds, scions int, together float64) (ChanceAnswer, error) {
	if err := checkChance(perBud, buds, scions, together); err != nil {
		return ChanceAnswer{}, err
	}
	scion := AtLeastOne(perBud, buds)
	a := ChanceAnswer{Scion: scion, Stump: 1 - noneOf(scions, scion, together), ScionsFor: scionsFor(scion, together)}
	a.Work = trade.Worked{
		Question: "What is the chance that a stump takes?",
		Answer: []trade.Input{
			{Name: "a scion", Value: scion}, {Name: "the stump", Value: a.Stump}, {Name: "scions for 95 in 100", Value: a.wanted()},
		},
		Formula: "Scion = 1 - (1 - bud)^buds. Stump = 1 - the chance that none of its scions lives, which is larger the more alike they fare.",
		Inputs: []trade.Input{
			{Name: "chance of a bud", Value: perBud}, {Name: "buds on a scion", Value: buds},
			{Name: "scions on the stump", Value: scions}, {Name: "how alike scions fare, 0 to 1", Value: together},
		},
		Assumed: []string{"the buds of one scion do not depend on one another"},
		Facts:   []trade.Fact{trade.AtLeastOne, trade.GraftsAlike, trade.BudsAlone, trade.TwoNodes},
	}
	return a, nil
}

// rounding is how far a chance may fall short of a limit it meets on paper.
const rounding = 1e-12

// scionsFor is the least number of scions that gives a stump 95 in 100, nil
// where no number up to 100 does.
func scionsFor(scion, together float64) *int {
	for n := 1; n <= trade.ScionsAtMost; n++ {
		if 1-noneOf(n, scion, together) >= trade.EnoughForChance-rounding {
			return &n
		}
	}
	return nil
}

func (a ChanceAnswer) wanted() string {
	if a.ScionsFor == nil {
		return fmt.Sprintf("more than %d", trade.ScionsAtMost)
	}
	return fmt.Sprint(*a.ScionsFor)
}

// AtLeastOne is the chance that at least one of n comes off where each does with
// chance p and none depends on another: 1 - (1-p)^n.
func AtLeastOne(p float64, n int) float64 { return -math.Expm1(float64(n) * math.Log1p(-p)) }

// PerBud is the chance of a bud that gives a scion with so many of them its
// chance; the inverse of AtLeastOne.
func PerBud(scion float64, buds int) float64 { return -math.Expm1(math.Log1p(-scion) / float64(buds)) }

// noneOf is the beta-binomial chance that none of n scions lives, m being the
// chance of one and r how alike they fare: the product of (b+i)/(a+b+i) for i
// from 0, multiplied out so that r may be 0 and 1.
func noneOf(n int, m, r float64) float64 {
	none := 1 - m
	for i := 1; i < n; i++ {
		shared := float64(i) * r
		none *= ((1-m)*(1-r) + shared) / ((1 - r) + shared)
	}
	return none
}

func checkChance(perBud float64, buds, scions int, together float64) error {
	share := func(option string, v float64) error {
		if v >= 0 && v <= 1 {
			return nil
		}
		return &trade.Impossible{Option: option, Given: fmt.Sprintf("%g", v), Accepted: "a share from 0 to 1"}
	}
	if err := share("per-bud", perBud); err != nil {
		return err
	}
	if err := share("together", together); err != nil {
		return err
	}
	if buds < 1 || buds > mostBuds {
		return &trade.Impossible{Option: "buds", Given: fmt.Sprint(buds), Accepted: fmt.Sprintf("1 to %d buds on a scion", mostBuds)}
	}
	if scions < 1 || scions > mostScions {
		return &trade.Impossible{Option: "scions", Given: fmt.Sprint(scions), Accepted: fmt.Sprintf("1 to %d scions on a stump", mostScions)}
	}
	return nil
}
