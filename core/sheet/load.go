package sheet

import (
	"strings"

	"barkslip/core/due"
	"barkslip/core/plan"
	"barkslip/core/record"
	"barkslip/core/unit"
)

// load is what a hand takes along for the stumps of a round on a day, a line a
// thing.
func (a Ask) load(calls []due.Call, day unit.Date) (out []string, err error) {
	variety := map[record.StumpID]string{}
	saws := 0
	for _, c := range calls {
		for _, d := range c.Dues {
			if d.Kind == due.CutBack {
				saws++
			}
		}
		at, found := due.Find(a.Sums, c.Stump)
		if !found || !plan.Grafts(&a.Sums[at], a.Block, day) {
			continue
		}
		stump, err := a.Stump(c.Stump)
		if err != nil {
			return nil, err
		}
		variety[c.Stump] = clean(plan.VarietyOf(stump, a.Block))
	}
	used := map[record.ID]int{}
	plan.UsedOf(used, a.Sums)
	load := plan.DayLoad(a.Block, calls, day, a.Sums, func(id record.StumpID) string { return variety[id] }, plan.WoodOf(a.Book, used))
	for _, l := range load.Lines(a.Block.Units) {
		words := l.What + ": " + l.Amount
		if l.Note != "" {
			words += " (" + l.Note + ")"
		}
		out = append(out, clean(strings.TrimSpace(words)))
	}
	if saws > 0 {
		out = append(out, "saw: "+unit.Count(saws, "stump")+" to cut back")
	}
	return out, nil
}
