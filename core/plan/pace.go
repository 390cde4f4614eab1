package plan

import (
	"fmt"
	"math"
	"slices"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Pace is how the grafting of a block keeps up with its season of slip, and how
// much may be cut back today: only what can be grafted when its days are over.
type Pace struct {
	Today    unit.Date
	Slip     record.SlipSeason
	Known    bool // the season of slip is known; nothing below stands without it
	Left     int  // days of slip left, today counted
	Standing int  // stumps not cut back
	Draining int  // cut back, not grafted
	Grafted  int  // today
	Needed   int  // stumps to graft a day so that all are done in the season; 0 if none are left
	PerDay   float64
	Said     bool // PerDay is the block's own figure
	Worked   int  // days it was counted over; 0 with Said false: it is what is needed
	CutBack  int  // stumps to cut back today
	Days     []PaceDay
	Work     []trade.Worked
}

// PaceDay is one day of the coming ones.
type PaceDay struct {
	Day   unit.Date
	Open  bool    // bark is taken to slip
	Ready int     // stumps draining whose wait ends on it
	Graft float64 // stumps draining that are grafted on it at the pace
	Free  float64 // further stumps that could be
}

const paceOver = 5 // days worked of late over which the pace is counted

// PaceOf works out the pace of a block at now from its summaries.
func PaceOf(b *record.Block, sums []due.Summary, now time.Time) Pace {
	p := Pace{Today: b.Day(now)}
	p.Slip, p.Known = b.SlipOn(p.Today)
	if !p.Known {
		return p
	}
	p.Left = p.Slip.Left(p.Today)
	set := map[unit.Date]int{}
	var ready []unit.Date
	for _, s := range sums {
		small := s.Across > 0 && s.Across < trade.LeastAcross // it takes another graft
		switch {
		case small:
		case s.Stage == record.StageStanding:
			p.Standing++
		case s.Stage == record.StageDraining:
			p.Draining++
			ready = append(ready, max(p.Today, s.CutBack.Add(b.WaitDays())))
		}
		if s.Set > p.Slip.From.Add(-slipEarly) && s.Set <= p.Today {
			set[s.Set]++
		}
	}
	p.Grafted = set[p.Today]
	if n := p.Standing + p.Draining; n > 0 {
		p.Needed = int(math.Ceil(float64(n) / float64(p.Left)))
	}
	p.measure(b, set)
	p.plan(b, ready)
	p.work(b)
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

// slipEarly is how many days before the season of slip grafts still belong to it.
const slipEarly = 30

// measure finds how many stumps are grafted a day: what the block says, else
// the mean of the days worked of late, else what is needed.
func (p *Pace) measure(b *record.Block, set map[unit.Date]int) {
	if p.Said = b.PerDay > 0; p.Said {
		p.PerDay = float64(b.PerDay)
		return
	}
	var days []unit.Date
	for d := range set {
		if d < p.Today {
			days = append(days, d)
		}
	}
	slices.Sort(days)
	days = days[max(0, len(days)-paceOver):]
	if p.Worked = len(days); p.Worked == 0 {
		p.PerDay = float64(p.Needed)
		return
	}
	n := 0
	for _, d := range days {
		n += set[d]
	}
	p.PerDay = float64(n) / float64(p.Worked)
}

// plan goes through the days to the last on which stumps cut back today are
// best grafted: those draining come first, each when its wait is over; what is
// free of the last days is for those cut back today.
func (p *Pace) plan(b *record.Block, ready []unit.Date) {
	first, last := p.Today.Add(b.WaitDays()), p.Today.Add(b.WaitDays()+trade.GraftWithin)
	waiting, free := 0.0, 0.0
	for day := p.Today; day <= last; day++ {
		d := PaceDay{Day: day, Open: p.Slip.Holds(day)}
		for _, r := range ready {
			if r == day {
				d.Ready++
			}
		}
		waiting += float64(d.Ready)
		if d.Open {
			most := p.PerDay
			if day == p.Today {
				most = max(0, most-float64(p.Grafted))
			}
			d.Graft = min(most, waiting)
			d.Free = most - d.Graft
			waiting -= d.Graft
		}
		if day >= first {
			free += d.Free
		}
		p.Days = append(p.Days, d)
	}
	p.CutBack = min(p.Standing, int(free+1e-9))
}

func (p *Pace) work(b *record.Block) {
	assumed := []string{"every day of the season is a working day"}
	if !p.Slip.Own {
		assumed = append(assumed, "the season of slip is that of the place nearest in latitude; set the block's own days in its settings")
	}
	slip := trade.Input{Name: "bark slips", Value: fmt.Sprintf("%s to %s", p.Slip.From.Short(), p.Slip.To.Long())}
	p.Work = append(p.Work, trade.Worked{
		Question: "What keeps pace with the season of slip",
		Answer:   []trade.Input{{Name: "stumps to graft a day", Value: p.Needed}},
		Formula:  "stumps not yet grafted / days of slip left, rounded up",
		Inputs:   []trade.Input{{Name: "standing", Value: p.Standing}, {Name: "draining", Value: p.Draining}, slip, {Name: "days left", Value: p.Left}},
		Assumed:  assumed, Facts: p.Slip.Facts(),
	})
	perDay := trade.Input{Name: "grafted a day", Value: math.Round(p.PerDay*10) / 10}
	switch {
	case p.Said:
		perDay.Name = "grafted a day, as set for the block"
	case p.Worked > 0:
		perDay.Name = fmt.Sprintf("grafted a day, mean of the last %d worked", p.Worked)
	default:
		perDay.Name = "grafted a day, taken as what keeps pace"
	}
	p.Work = append(p.Work, trade.Worked{
		Question: "How many to cut back today",
		Answer:   []trade.Input{{Name: "stumps to cut back", Value: p.CutBack}},
		Formula: fmt.Sprintf("Stumps cut back today are grafted %d to %d days on. What can be grafted on those days, less the stumps draining that are "+
			"not done by then, rounded down; no more than stand.",
			b.WaitDays(), b.WaitDays()+trade.GraftWithin),
		Inputs:  []trade.Input{perDay, {Name: "draining", Value: p.Draining}, {Name: "standing", Value: p.Standing}, {Name: "grafted today", Value: p.Grafted}, slip},
		Assumed: assumed, Facts: append([]trade.Fact{trade.DaysToGraft}, p.Slip.Facts()...),
	})
}
