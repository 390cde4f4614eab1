package plan

import (
	"math"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/unit"
)

// Pace is how the grafting of a block keeps up with its season of slip, and how
// much is cut back today: what the season asks for.
type Pace struct {
	Today    unit.Date
	Slip     record.SlipSeason
	Known    bool // the season of slip is known; nothing below stands without it
	Left     int  // days of slip left, today counted
	Standing int  // stumps not cut back
	Draining int  // cut back, not grafted
	Needed   int  // stumps to graft on each day of work so that all are done in the season; 0 if none are left
	CutBack  int  // stumps to cut back today
	Season   Season
}

// PaceOf works out the pace of a block at now from its summaries.
func PaceOf(b *record.Block, sums []due.Summary, now time.Time) Pace {
	p := Pace{Today: b.Day(now)}
	p.Slip, p.Known = b.SlipOn(p.Today)
	if !p.Known {
		return p
	}
	p.Left = p.Slip.Left(p.Today)
	p.Season = SeasonOf(b, sums, SeasonAsked{On: p.Today})
	p.Standing, p.Draining = p.Season.Standing, p.Season.Draining
	p.CutBack = p.Season.OnDay(p.Today).CutBack
	if n := p.Season.Left(); n > 0 {
		p.Needed = int(math.Ceil(float64(n) / float64(max(p.Season.Workdays, 1))))
	}
	return p
}

// CutBackOn is how many stumps are cut back on a day so that all can be grafted
// in time; -1 where that is not known.
func CutBackOn(b *record.Block, sums []due.Summary, now time.Time) int {
	if p := PaceOf(b, sums, now); p.Known {
		return p.CutBack
	}
	return -1
}
