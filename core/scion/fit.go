package scion

import (
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Wood is a scion's thickness held against its stump.
type Wood struct {
	Across unit.Length // of the stump
	Thick  unit.Length // of the scion; 0 where not measured
	Pith   unit.Length // of the scion; 0 where not measured
}

// FitAnswer says which thickness suits a stump and how the wood at hand fits.
type FitAnswer struct {
	Least    unit.Length  `json:"least_mm"`
	Most     unit.Length  `json:"most_mm"`
	Thin     bool         `json:"thin"`
	Stout    bool         `json:"stout"` // thicker than suits the stump
	Pithy    bool         `json:"pithy"` // pith passes half the thickness
	Cautions []string     `json:"cautions"`
	Work     trade.Worked `json:"because"`
}

// Fit matches wood to a stump. Thickness and pith may be left out; a pith as
// thick as the scion, or a size no stump or scion has, is a *trade.Impossible.
func Fit(w Wood) (FitAnswer, error) {
	if err := w.check(); err != nil {
		return FitAnswer{}, err
	}
	class := classFor(w.Across)
	a := FitAnswer{
		Least: class.Least, Most: class.Most, Cautions: []string{},
		Thin:  w.Thick > 0 && w.Thick < class.Least-hair,
		Stout: w.Thick > class.Most+hair,
		Pithy: w.Pith > trade.PithShare*w.Thick+hair,
	}
	if a.Thin {
		a.Cautions = append(a.Cautions, "the wood is thin for this stump")
	}
	if a.Stout {
		a.Cautions = append(a.Cautions, "the wood is stout for this stump")
	}
	if a.Pithy {
		a.Cautions = append(a.Cautions, "the pith passes half the thickness")
	}
	a.Work = w.work(a)
	return a, nil
}

// classFor is the thickness class of a stump.
func classFor(across unit.Length) trade.ThicknessClass {
	last := len(trade.ThicknessClassTable) - 1
	for _, c := range trade.ThicknessClassTable[:last] {
		if across < c.UpTo-hair || !c.Under && across <= c.UpTo+hair {
			return c
		}
	}
	return trade.ThicknessClassTable[last]
}

func (w Wood) check() error {
	if err := within("across", w.Across, shortest, trade.WidestStump); err != nil {
		return err
	}
	if w.Thick != 0 {
		if err := within("thick", w.Thick, thinnest, thickest); err != nil {
			return err
		}
	}
	if w.Pith != 0 && !(w.Pith > 0 && w.Pith < w.Thick) {
		return impossible("pith", w.Pith, "pith thinner than the scion, under "+show(w.Thick))
	}
	return nil
}

func (w Wood) work(a FitAnswer) trade.Worked {
	return trade.Worked{
		Question: "Which thickness of wood suits the stump?",
		Answer: []trade.Input{
			{Name: "scion at least", Value: a.Least}, {Name: "scion at most", Value: a.Most},
		},
		Formula: "The class of the stump's size gives the range; pith is held against half the scion's thickness.",
		Inputs: []trade.Input{
			{Name: "stump across", Value: w.Across}, {Name: "scion thickness", Value: w.Thick}, {Name: "pith", Value: w.Pith},
		},
		Facts: []trade.Fact{trade.ThicknessClasses, trade.ScionThickness, trade.ScionThickest, trade.Pith},
	}
}
