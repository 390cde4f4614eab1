package walk

import (
	"fmt"
	"strings"

	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// nearNails is how near old nails a cut is warned of them; from memory.
const nearNails = 2 * unit.Inch

// beforeSaw is what to mind before a cut at a height, in one sentence: a season
// of slip that is over or not begun, today's heat and wind as put down, and nails
// of an earlier graft. early is how many days before the season the cut belongs.
func (c *Case) beforeSaw(at unit.Length, early int) string {
	var parts []string
	for _, p := range []string{c.slipMissed(early), c.todayWords(), c.oldNails(at)} {
		if p != "" {
			parts = append(parts, p)
		}
	}
	if len(parts) == 0 {
		return ""
	}
	words := strings.Join(parts, "; ")
	return strings.ToUpper(words[:1]) + words[1:] + "."
}

// slipMissed says that bark does not slip today: the season is over, or is more
// than some days off.
func (c *Case) slipMissed(early int) string {
	today := c.B.Day(c.Now)
	next, ok := c.B.SlipOn(today)
	if !ok || today >= next.From.Add(-early) {
		return ""
	}
	if last, _ := c.B.SlipOn(next.From.Add(-360)); last.To < today && today-last.To < next.From-today {
		return "the season of slip was over on " + last.To.Short()
	}
	return "the season of slip begins only on " + next.From.Short()
}

// todayWords is today's heat and wind where they were put down.
func (c *Case) todayWords() string {
	w, ok := c.B.Weather[c.B.Day(c.Now)]
	if !ok || w.What.High.Temperature < trade.HeatCaution-0.01 {
		return ""
	}
	words := "today up to " + c.B.Units.Temperature(w.What.High.Temperature)
	if !w.What.WindAssumed {
		words += ", wind " + c.B.Units.Speed(unit.Speed(w.What.Wind))
	}
	return words
}

// oldNails says where nails of an earlier graft stand, if a cut comes near them:
// along the long cut under the height at which it was made.
func (c *Case) oldNails(at unit.Length) string {
	for _, a := range c.S.Attempts {
		cut := record.LastOf(a.FreshCuts)
		if a == c.A && !c.over() || len(a.Grafts) == 0 || cut == nil || !cut.What.Height.Given() {
			continue
		}
		top := cut.What.Height.Length
		if at > top-trade.LongCut-nearNails && at < top+nearNails {
			return fmt.Sprintf("old nails stand from %s to %s", c.length(top-trade.LongCut), c.length(top))
		}
	}
	return ""
}
