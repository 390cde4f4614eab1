package plan

import (
	"fmt"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Words says whether a block is finished in its season, or how many are short.
func (s Season) Words() string {
	n := s.Left()
	all := "All " + fmt.Sprint(n)
	if n == 1 {
		all = "The last"
	}
	switch {
	case n == 0:
		return "No stump is left to graft."
	case s.Workdays == 0:
		return fmt.Sprintf("No stump can be grafted: every day to %s is a day off.", s.Slip.To.Long())
	case s.Short > 0:
		return fmt.Sprintf("%d of %s are left when bark stops slipping on %s.", s.Short, unit.Count(n, "stump"), dayWords(s.Slip.To))
	}
	says := fmt.Sprintf("%s to graft can be done by %s", all, dayWords(s.LastDay))
	if spare := int(s.Slip.To - s.LastDay); spare > 0 {
		return says + fmt.Sprintf(", %s before bark stops slipping.", unit.Count(spare, "day"))
	}
	return says + ", the last day on which bark slips."
}

func dayWords(d unit.Date) string { return d.Weekday().String()[:3] + " " + d.Long() }

// Worked is how the season was reckoned, and by whose word.
func (s Season) Worked(wait int, off string) []trade.Worked {
	slip := trade.Input{Name: "bark slips", Value: fmt.Sprintf("%s to %s", s.Slip.From.Short(), s.Slip.To.Long())}
	var assumed []string
	if off == "" {
		assumed = append(assumed, "every day of the season is a working day; set days off if not")
	}
	if !s.Slip.Own {
		assumed = append(assumed, "the season of slip is that of the place nearest in latitude; set the block's own days in its settings")
	}
	counts := []trade.Input{{Name: "standing", Value: s.Standing}, {Name: "draining", Value: s.Draining}, {Name: "to graft again", Value: s.Regraft}, slip,
		{Name: "working days left", Value: s.Workdays}}
	if off != "" {
		counts = append(counts, trade.Input{Name: "days off", Value: off})
	}
	rate := trade.Worked{
		Question: "How many stumps are grafted a day?", Answer: []trade.Input{{Name: "stumps a day", Value: s.Rate}},
		Formula: "the block's setting; else the middle of the days of this season at whose end a ready stump was left over: on a day that ran out of ready " +
			"stumps more could have been grafted; else 10 stumps a day",
		Inputs: []trade.Input{{Name: "where it comes from", Value: string(s.Pace.From)}, {Name: "days counted", Value: len(s.Pace.Full)},
			{Name: "days that ran out of ready stumps", Value: s.Pace.Dry}},
		Facts: []trade.Fact{trade.RateADay},
	}
	last := trade.Input{Name: "stumps short", Value: s.Short}
	if s.LastDay != 0 {
		last = trade.Input{Name: "all grafted on", Value: s.LastDay.Long()}
	}
	return []trade.Worked{{
		Question: "Will the block be grafted while bark slips?", Answer: []trade.Input{last, {Name: "cut back today", Value: s.OnDay(s.On).CutBack}},
		Formula: fmt.Sprintf("Day by day: no more are grafted than the rate, nor than are ready, cut back %d days before. Stumps are cut back on "+
			"the last working day that leaves them "+
			"their wait, never such that they drain over %d days or cannot be grafted before bark stops slipping.", wait, trade.CutBackLongDays),
		Inputs: counts, Assumed: assumed, Facts: append([]trade.Fact{trade.DaysToGraft}, s.Slip.Facts()...),
	}, rate}
}
