package plan

import (
	"slices"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Season is how the work of a block goes on day by day until bark stops
// slipping: what is grafted, and what is cut back so that it can be.
type Season struct {
	On       unit.Date
	Slip     record.SlipSeason
	Standing int         // not cut back
	Draining int         // cut back, not grafted
	Ready    int         // of those draining, the ones whose wait is over
	Regraft  int         // lost or left, to be cut back and grafted again
	Rate     int         // most stumps grafted a day
	LastDay  unit.Date   // on which all are grafted; 0 if never in this season
	Short    int         // stumps left when bark stops slipping
	Days     []SeasonDay // those with work, in order
}

// SeasonDay is the work of one day.
type SeasonDay struct {
	Day            unit.Date
	CutBack, Graft int
}

// SeasonAsked is what a season is worked out for.
type SeasonAsked struct {
	On   unit.Date
	Rate int         // stumps grafted a day; 0: the block's setting, else counted
	Off  []unit.Date // days on which nobody works
}

// usualRate is the stumps grafted a day where nothing tells how many.
const usualRate = 10

// SeasonOf works out the season of a block from its summaries. No day has more
// grafted than the rate nor than are ready, and what is cut back is grafted before the
// end and before its caution begins, as soon after its wait as can be.
func SeasonOf(b *record.Block, sums []due.Summary, ask SeasonAsked) Season {
	s := Season{On: ask.On, Slip: b.Slip(ask.On), Rate: ask.Rate}
	wait := b.WaitDays()
	at := due.EndOf(ask.On, b.Zone)
	var ready []unit.Date // of those draining
	today := 0
	for _, sum := range sums {
		if sum.Across > 0 && sum.Across < trade.LeastAcross { // it takes another graft
			continue
		}
		switch {
		case sum.Stage == record.StageStanding:
			s.Standing++
		case sum.Stage == record.StageDraining:
			s.Draining++
			ready = append(ready, sum.CutBack.Add(wait))
			if sum.CutBack.Add(wait) <= ask.On {
				s.Ready++
			}
		case regrafts(sum, at):
			s.Regraft++
		}
		if sum.Set == ask.On {
			today++
		}
	}
	if s.Rate == 0 {
		s.Rate = rateOf(b, sums, ask.On)
	}
	s.work(ready, wait, today, ask.Off)
	return s
}

// regrafts says whether a stump is to be cut back again now.
func regrafts(s due.Summary, at time.Time) bool {
	return slices.ContainsFunc(due.At(s.Dues, at), func(d due.Due) bool { return d.Kind == due.Regraft && d.Open(at) })
}

// rateOf is the stumps grafted a day: the block's setting, else the median of the
// days of this season at whose end ready stumps were left over, on which no more
// could be done, else what is usual.
func rateOf(b *record.Block, sums []due.Summary, on unit.Date) int {
	if b.PerDay > 0 {
		return b.PerDay
	}
	slip := b.Slip(on)
	set := map[unit.Date]int{}
	for _, s := range sums {
		if s.Set >= slip.From.Add(-slipEarly) && s.Set < on {
			set[s.Set]++
		}
	}
	var full []int
	for day, n := range set {
		if leftOver(sums, day, b.WaitDays()) {
			full = append(full, n)
		}
	}
	if len(full) == 0 {
		return usualRate
	}
	slices.Sort(full)
	return (full[(len(full)-1)/2] + full[len(full)/2] + 1) / 2
}

// leftOver says whether a stump was ready on a day and not grafted by its end.
func leftOver(sums []due.Summary, day unit.Date, wait int) bool {
	return slices.ContainsFunc(sums, func(s due.Summary) bool {
		return s.CutBack != 0 && s.CutBack.Add(wait) <= day && (s.Set > day || s.Set == 0 && s.Stage == record.StageDraining)
	})
}

// work goes through the days. What is draining is grafted as soon as it is ready;
// what a day has room for beyond that is grafted from stumps cut back on the last
// day of work that leaves them their wait.
func (s *Season) work(ready []unit.Date, wait, today int, off []unit.Date) {
	days := map[unit.Date]*SeasonDay{}
	on := func(d unit.Date) *SeasonDay {
		if days[d] == nil {
			days[d] = &SeasonDay{Day: d}
		}
		return days[d]
	}
	stand, left := s.Standing+s.Regraft, s.Standing+s.Regraft+s.Draining
	for day := max(s.On, s.Slip.From); day <= s.Slip.To && left > 0; day++ {
		if slices.Contains(off, day) {
			continue
		}
		room := s.Rate
		if day == s.On {
			room = max(0, room-today)
		}
		n := min(room, s.takeReady(&ready, day, room))
		if cut, ok := s.cutFor(day, wait, off); ok {
			fresh := min(room-n, stand)
			if fresh > 0 {
				on(cut).CutBack += fresh
			}
			stand, n = stand-fresh, n+fresh
		}
		if n > 0 {
			on(day).Graft += n
			left -= n
			if left == 0 {
				s.LastDay = day
			}
		}
	}
	s.Short = left
	for _, d := range days {
		s.Days = append(s.Days, *d)
	}
	slices.SortFunc(s.Days, func(a, b SeasonDay) int { return int(a.Day - b.Day) })
}

// takeReady takes at most so many of those draining that are ready on a day.
func (s *Season) takeReady(ready *[]unit.Date, day unit.Date, most int) (n int) {
	*ready = slices.DeleteFunc(*ready, func(r unit.Date) bool {
		if r > day || n == most {
			return false
		}
		n++
		return true
	})
	return n
}

// cutFor is the last day of work on which a stump is cut back to be grafted on
// another, at its wait or later, before the caution of draining too long begins.
func (s *Season) cutFor(day unit.Date, wait int, off []unit.Date) (unit.Date, bool) {
	for cut := day.Add(-wait); cut >= s.On && cut >= day.Add(-trade.CutBackLongDays); cut = cut.Add(-1) {
		if !slices.Contains(off, cut) {
			return cut, true
		}
	}
	return 0, false
}
