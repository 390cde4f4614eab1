package plan

import (
	"strings"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/scion"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// ThicknessRow is the stumps of one class of size that are still to graft, and the
// wood left that suits them. Both are told in scions, so that they stand on one
// scale.
type ThicknessRow struct {
	Least, Most unit.Length // of the wood; both 0 where it is not known
	Stumps      int
	Wanted      int // scions that these stumps take
	Lots        int
	Left        int // scions that the wood gives yet, at the least
	LeftMost    int
}

// ThicknessFit is wood by thickness against what the stumps that remain want: a row
// a class, thinnest wood first, then one of stumps and sticks of unknown size.
type ThicknessFit struct {
	Rows      []ThicknessRow
	Uncounted int // lots left out: their sticks were not counted
	Work      trade.Worked
}

// FitOf holds the wood of a variety against the stumps that are to be grafted with
// it. Wood that lies on the edge of two classes counts for the thinner; wood thinner
// than any class counts for the first, thicker for the last.
func FitOf(wood []Wood, sums []due.Summary, variety string, of func(record.StumpID) string) (f ThicknessFit) {
	for _, c := range trade.ThicknessClassTable {
		f.Rows = append(f.Rows, ThicknessRow{Least: c.Least, Most: c.Most})
	}
	f.Rows = append(f.Rows, ThicknessRow{})
	for _, s := range sums {
		small := s.Across > 0 && s.Across < trade.LeastAcross
		if s.Stage != record.StageStanding && s.Stage != record.StageDraining || small || !strings.EqualFold(of(s.ID), variety) {
			continue
		}
		row := f.rowOfStump(s.Across)
		row.Stumps++
		row.Wanted += scionsOn(s.Across)
	}
	for _, w := range wood {
		switch {
		case !strings.EqualFold(w.Lot.Received.What.Variety, variety):
		case !w.Counted:
			f.Uncounted++
		default:
			row := f.rowOfWood(w.Lot.Received.What.Thickness.Length)
			row.Lots++
			row.Left, row.LeftMost = row.Left+w.Left.Least, row.LeftMost+w.Left.Most
		}
	}
	f.Work = f.work(variety)
	return f
}

func (f *ThicknessFit) rowOfStump(across unit.Length) *ThicknessRow {
	last := len(f.Rows) - 1
	class, err := scion.Fit(scion.Wood{Across: across})
	if across <= 0 || err != nil {
		return &f.Rows[last]
	}
	for i := range f.Rows[:last] {
		if f.Rows[i].Least == class.Least {
			return &f.Rows[i]
		}
	}
	return &f.Rows[last]
}

func (f *ThicknessFit) rowOfWood(thick unit.Length) *ThicknessRow {
	last := len(f.Rows) - 1
	if thick <= 0 {
		return &f.Rows[last]
	}
	const hair = unit.Millimetre / 1000
	for i := range f.Rows[:last] {
		if thick <= f.Rows[i].Most+hair {
			return &f.Rows[i]
		}
	}
	return &f.Rows[last-1]
}

func (f ThicknessFit) work(variety string) trade.Worked {
	w := trade.Worked{
		Question: "Which thickness of wood do the stumps that remain want?",
		Formula: "Each stump not grafted yet takes scions by its girth and wood by its width; each stick left gives 3 to 4 scions, less those set of its lot. " +
			"Both stand as scions on one scale.",
		Inputs: []trade.Input{{Name: "variety", Value: variety}},
		Assumed: []string{"a stump of unknown size takes 3 scions", "wood on the edge of two ranges is counted for the thinner one",
			"all sticks of a lot are as thick as recorded for it"},
		Facts: []trade.Fact{trade.ThicknessClasses, trade.ScionSpacing, trade.StickGives},
	}
	for _, r := range f.Rows {
		if r.Stumps == 0 && r.Lots == 0 {
			continue
		}
		w.Inputs = append(w.Inputs, trade.Input{Name: "scions wanted on " + unit.Count(r.Stumps, "stump"), Value: r.Wanted},
			trade.Input{Name: "scions left at the least, of " + unit.Count(r.Lots, "lot"), Value: r.Left})
	}
	return w
}
