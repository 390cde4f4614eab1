package tally

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"barkslip/core/trade"
)

// Waited is one graft or stump: how long it was followed, and whether what was
// waited for happened then; if not it was lost sight of, or is waiting still.
type Waited struct {
	For      float64 // days, 0 or more
	Happened bool
}

// Step is one day on which it happened to some.
type Step struct {
	At            float64 `json:"at_d"`
	AtRisk        int     `json:"at_risk"` // still waiting as the day began
	Happened      int     `json:"happened"`
	Still         float64 `json:"still"`          // share to whom it has not happened
	StandardError float64 `json:"standard_error"` // of that share
}

// Curve is the share still waiting as days go by: 1 until the first step.
type Curve struct {
	Steps []Step       `json:"steps"`
	Work  trade.Worked `json:"because"`
}

// Survival is the curve of Kaplan & Meier 1958 with Greenwood's standard error.
// One lost sight of at a time counts as at risk at that time. Times that cannot
// be are a *trade.Impossible.
func Survival(all []Waited) (Curve, error) {
	c := Curve{Steps: []Step{}}
	for _, w := range all {
		if !(w.For >= 0 && !math.IsInf(w.For, 0)) {
			return Curve{}, &trade.Impossible{Option: "waited", Given: fmt.Sprintf("%g days", w.For), Accepted: "days from 0"}
		}
	}
	sorted := slices.Clone(all)
	slices.SortFunc(sorted, func(a, b Waited) int { return cmp.Compare(a.For, b.For) })
	r := climb{curve: &c, still: 1}
	for i := 0; i < len(sorted); {
		day, atRisk, happened := sorted[i].For, len(sorted)-i, 0
		for ; i < len(sorted) && sorted[i].For == day; i++ {
			if sorted[i].Happened {
				happened++
			}
		}
		r.step(day, atRisk, happened)
	}
	c.Work = c.work(len(all))
	return c, nil
}

// SurvivalByDay is the same curve of whole days: to how many it happened on each
// day from 0, and how many were lost sight of on it. Counts are not negative.
func SurvivalByDay(happened, lost []int) Curve {
	c, atRisk := Curve{Steps: []Step{}}, 0
	for day := range happened {
		atRisk += happened[day] + lost[day]
	}
	followed := atRisk
	r := climb{curve: &c, still: 1}
	for day := range happened {
		r.step(float64(day), atRisk, happened[day])
		atRisk -= happened[day] + lost[day]
	}
	c.Work = c.work(followed)
	return c
}

// climb goes along a curve from step to step.
type climb struct {
	curve         *Curve
	still, spread float64
}

func (r *climb) step(day float64, atRisk, happened int) {
	if happened == 0 {
		return
	}
	left := float64(atRisk - happened)
	r.still *= left / float64(atRisk)
	s := Step{At: day, AtRisk: atRisk, Happened: happened, Still: r.still}
	if left > 0 {
		r.spread += float64(happened) / (float64(atRisk) * left)
		s.StandardError = r.still * math.Sqrt(r.spread)
	}
	r.curve.Steps = append(r.curve.Steps, s)
}

// Median is the first day by which it has happened to half; false where it never
// has.
func (c Curve) Median() (days float64, reached bool) {
	for _, s := range c.Steps {
		if s.Still <= 0.5+rounding {
			return s.At, true
		}
	}
	return 0, false
}

func (c Curve) work(followed int) trade.Worked {
	happened := 0
	for _, s := range c.Steps {
		happened += s.Happened
	}
	w := trade.Worked{
		Question: "How long does it take?",
		Formula:  "Share still waiting = product over the days of 1 - happened / at risk.",
		Inputs:   []trade.Input{{Name: "followed", Value: followed}, {Name: "happened to", Value: happened}},
		Assumed:  []string{"those lost sight of would have fared like the others"},
		Facts:    []trade.Fact{trade.KaplanMeier, trade.Greenwood},
	}
	if days, reached := c.Median(); reached {
		w.Answer = []trade.Input{{Name: "days until it has happened to half", Value: days}}
	} else {
		w.Answer = []trade.Input{{Name: "days until it has happened to half", Value: "not reached"}}
	}
	return w
}
