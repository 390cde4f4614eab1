package tally

import "barkslip/core/trade"

// TakeAnswer is a rate of take with its 95 % interval, and how it compares with
// another where one was given.
type TakeAnswer struct {
	Rate float64 `json:"rate"`
	Low  float64 `json:"low"`
	High float64 `json:"high"`

	Difference     *float64 `json:"difference,omitempty"` // this rate less the other
	DifferenceLow  *float64 `json:"difference_low,omitempty"`
	DifferenceHigh *float64 `json:"difference_high,omitempty"`
	P              *float64 `json:"p,omitempty"`      // exact, two-sided
	Enough         *bool    `json:"enough,omitempty"` // could any table with these totals come under 5 %

	Work trade.Worked `json:"because"`
}

// Take reckons how many took of how many judged, against others where given.
// More alive than judged, or none judged, is a *trade.Impossible.
func Take(alive, of int, against *Counts) (TakeAnswer, error) {
	seen := Counts{Alive: alive, Of: of}
	if err := seen.check("alive", "of"); err != nil {
		return TakeAnswer{}, err
	}
	own := Wilson(seen)
	a := TakeAnswer{Rate: seen.Rate(), Low: own.Low, High: own.High}
	a.Work = trade.Worked{
		Question: "How many took, and how sure is that?",
		Answer: []trade.Input{
			{Name: "rate", Value: a.Rate}, {Name: "at least", Value: a.Low}, {Name: "at most", Value: a.High},
		},
		Formula: "Rate = alive / judged, with the 95 % interval the count allows.",
		Inputs:  []trade.Input{{Name: "alive", Value: alive}, {Name: "judged", Value: of}},
		Assumed: []string{"each graft fared for itself"},
		Facts:   []trade.Fact{trade.WilsonInterval, trade.MovingNotTaking},
	}
	if against == nil {
		return a, nil
	}
	if err := against.check("against", "against"); err != nil {
		return TakeAnswer{}, err
	}
	a.compare(seen, *against)
	return a, nil
}

// compare adds how the counts differ from others.
func (a *TakeAnswer) compare(seen, others Counts) {
	apart := Difference(seen, others)
	difference, p, enough := seen.Rate()-others.Rate(), Fisher(seen, others), Enough(seen, others)
	a.Difference, a.DifferenceLow, a.DifferenceHigh = &difference, &apart.Low, &apart.High
	a.P, a.Enough = &p, &enough

	w := &a.Work
	w.Question = "Did these take better than those?"
	w.Formula += " Difference = rate less the other rate, squaring and adding both intervals; chance = the exact test, two-sided."
	w.Answer = append(w.Answer,
		trade.Input{Name: "difference", Value: difference},
		trade.Input{Name: "difference at least", Value: apart.Low}, trade.Input{Name: "difference at most", Value: apart.High},
		trade.Input{Name: "chance of such a difference if both fare alike", Value: p},
		trade.Input{Name: "enough to tell", Value: enough})
	w.Inputs = append(w.Inputs, trade.Input{Name: "against", Value: others})
	w.Facts = append(w.Facts, trade.NewcombeDifference, trade.FisherExact, trade.EnoughToTell)
}
