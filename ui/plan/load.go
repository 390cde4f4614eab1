package plan

import (
	"fmt"

	"barkslip/core/due"
	"barkslip/core/plan"
	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// load asks for what it is worked out: the season, a day, or the day of a hand.
func (s *Screen) load() part.Msgs {
	left := len(plan.ToGraft(s.x.Summaries(s.x.Block), s.x.Time()))
	items := []part.Item{{Word: "the season", Meaning: unit.Count(left, "stump") + " to graft, and their first season", Take: s.seasonLoad}}
	for _, shares := range s.days {
		day := s.dayName(shares.Day)
		calls := s.round(shares.Day)
		items = append(items, part.Item{Word: day, Meaning: "all hands, " + unit.Count(len(calls), "stump"),
			Take: func() part.Msgs { return s.dayLoad(day+", all hands", shares.Day, calls) }})
		for _, h := range shares.Hands {
			items = append(items, part.Item{Word: day + ", " + h.Given.To, Meaning: shareWords(h),
				Take: func() part.Msgs { return s.dayLoad(day+", "+h.Given.To, shares.Day, h.Calls) }})
		}
	}
	return s.x.Picks("What to load, for what?", "", items)
}

func (s *Screen) seasonLoad() part.Msgs {
	b, all := s.x.Site(), s.x.Summaries(s.x.Block)
	graft := plan.ToGraft(all, s.x.Time())
	return s.show("the season", plan.SeasonLoad(b, graft, all, s.varieties(len(graft)), s.wood()))
}

func (s *Screen) dayLoad(what string, day unit.Date, calls []due.Call) part.Msgs {
	return s.show(what, plan.DayLoad(s.x.Site(), calls, day, s.x.Summaries(s.x.Block), s.varieties(len(calls)), s.wood()))
}

func (s *Screen) wood() []plan.Wood { return plan.WoodOf(s.x.Book.Folded(), s.x.Used()) }

// mostRead is of how many stumps the record is read for what variety each takes.
const mostRead = 5000

// varieties tells the variety of a stump; of more stumps than can be read at once
// each takes the block's.
func (s *Screen) varieties(n int) func(record.StumpID) string {
	b := s.x.Site()
	return func(id record.StumpID) string {
		if n > mostRead {
			return b.Variety
		}
		stump, err := s.x.Book.Stump(id)
		if err != nil {
			return b.Variety
		}
		return plan.VarietyOf(stump, b)
	}
}

// show lays a load over the screen, and under it how it was reckoned.
func (s *Screen) show(what string, load plan.Load) part.Msgs {
	sys := s.x.Site().Units
	return part.Msgs{part.Read{Page: part.NewPage(s.x, "Load", what, func(width int) []paper.Line {
		wide := s.x.Measure(width - 4)
		lines := []paper.Line{nil}
		if load.Empty() {
			return append(lines, paper.Text(paper.Strong, "  Nothing has to be loaded for "+what+"."))
		}
		lines = append(lines, part.Indent(2, part.Wrapped(paper.Strong, "For "+what+": "+loadHead(load), wide))...)
		lines = append(lines, nil)
		for _, l := range load.Lines(sys) {
			lines = append(lines, part.Indent(2, part.Under(fmt.Sprintf("%-12s", l.What), paper.Faint, paper.Strong, l.Amount, wide))...)
			if l.Note != "" {
				ink, note := paper.Plain, l.Note
				if l.Short {
					ink, note = paper.Warn, "! "+l.Note
				}
				lines = append(lines, part.Indent(15, part.Wrapped(ink, note, wide-13))...)
			}
		}
		if load.Stumps > mostRead {
			lines = append(lines, part.Indent(2, part.Wrapped(paper.Faint, "With so many stumps, each is reckoned to be for the block's variety.", wide))...)
		}
		return append(append(lines, nil), part.WorkLines(load.Worked(), sys, wide)...)
	})}}
}

func loadHead(l plan.Load) string {
	if l.Stumps == 0 {
		return "no stump can be grafted."
	}
	return fmt.Sprintf("%s to graft take %s.", unit.Count(l.Stumps, "stump"), unit.Count(l.Scions, "scion"))
}
