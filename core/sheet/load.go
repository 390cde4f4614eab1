package sheet

import (
	"fmt"
	"maps"
	"slices"

	"barkslip/core/due"
	"barkslip/core/plan"
	"barkslip/core/record"
	"barkslip/core/unit"
)

// grafting is the kinds of work that end in setting scions on the day.
var grafting = []due.Kind{due.Look, due.LookAgain, due.Graft, due.Finish}

// load is what a hand takes along for the stumps of a round.
func (a Ask) load(calls []due.Call) (out []string, err error) {
	n := map[due.Kind]int{}
	var toGraft []due.Summary
	for _, c := range calls {
		set := false
		for _, d := range c.Dues {
			n[d.Kind]++
			set = set || slices.Contains(grafting, d.Kind)
		}
		if at, found := due.Find(a.Sums, c.Stump); set && found && a.Sums[at].Stage == record.StageDraining {
			toGraft = append(toGraft, a.Sums[at])
		}
	}
	if out, err = a.scions(toGraft); err != nil {
		return nil, err
	}
	for _, thing := range []struct {
		what string
		of   int
		noun string
	}{
		{"sealer and wrap", len(toGraft) + n[due.Seal] + n[due.Reseal], "stump"},
		{"white paint", len(toGraft) + n[due.White], "stump"},
		{"stakes", n[due.Stake], "stump"},
		{"soft tape", n[due.Tie], "tie"},
		{"twine", n[due.Twine], "stem"},
		{"saw", n[due.CutBack], "stump to cut back"},
	} {
		switch {
		case thing.of == 0:
		case thing.what == "saw" && thing.of > 1:
			out = append(out, fmt.Sprintf("saw for %d stumps to cut back", thing.of))
		default:
			out = append(out, thing.what+" for "+unit.Count(thing.of, thing.noun))
		}
	}
	return out, nil
}

// scions are the wood and nails for stumps to graft, by variety.
func (a Ask) scions(sums []due.Summary) (out []string, err error) {
	if len(sums) == 0 {
		return nil, nil
	}
	variety := map[record.StumpID]string{}
	for _, s := range sums {
		stump, err := a.Stump(s.ID)
		if err != nil {
			return nil, err
		}
		variety[s.ID] = clean(plan.VarietyOf(stump, a.Block))
	}
	need := plan.NeedByVariety(sums, func(id record.StumpID) string { return variety[id] })
	for _, name := range slices.Sorted(maps.Keys(need)) {
		words := unit.Count(need[name], "scion")
		if name != "" {
			words += " of " + name
		}
		out = append(out, words)
	}
	s := plan.SupplyOf(sums)
	sticks := unit.Count(s.Sticks[1], "stick")
	if s.Sticks[0] != s.Sticks[1] {
		sticks = fmt.Sprintf("%d to %d sticks", s.Sticks[0], s.Sticks[1])
	}
	return append(out, sticks+" of "+a.Block.Units.Length(12*unit.Inch), unit.Count(s.Nails, "nail")), nil
}
