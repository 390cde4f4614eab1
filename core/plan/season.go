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
	Standing int // not cut back
	Draining int // cut back, not grafted
	Ready    int // of those draining, the ones whose wait is over
	Regraft  int // lost or left, to be cut back and grafted again
	Grafted  int // on the day asked for, so far
	Rate     int // most stumps grafted a day
	Pace     Rate
	LastDay  unit.Date   // on which all are grafted; 0 if never in this season
	Short    int         // stumps left when bark stops slipping
	Workdays int         // days of slip from the day asked for on which somebody works
	Days     []SeasonDay // those with work, in order
	Off      func(unit.Date) bool
}

// SeasonDay is the work of one day.
type SeasonDay struct {
	Day            unit.Date
	CutBack, Graft int
}

// Left is the stumps that are to be grafted.
func (s Season) Left() int { return s.Standing + s.Draining + s.Regraft }

// OnDay is the work of a day; of one without work nothing.
func (s Season) OnDay(d unit.Date) SeasonDay {
	if i := slices.IndexFunc(s.Days, func(x SeasonDay) bool { return x.Day == d }); i >= 0 {
		return s.Days[i]
	}
	return SeasonDay{Day: d}
}

// SeasonAsked is what a season is worked out for.
type SeasonAsked struct {
	On   unit.Date
	Rate int         // stumps grafted a day; 0: the block's setting, else counted
	Off  []unit.Date // days on which nobody works, beside those of the block
}

// SeasonOf works out the season of a block from its summaries. No day has more
// grafted than the rate nor than are ready, and what is cut back is grafted before the
// end and before its caution begins, as soon after its wait as can be.
func SeasonOf(b *record.Block, sums []due.Summary, ask SeasonAsked) Season {
	s := Season{On: ask.On, Slip: b.Slip(ask.On), Pace: Rate{PerDay: ask.Rate, From: RateAsked},
		Off: func(d unit.Date) bool { return b.Off.Off(d) || slices.Contains(ask.Off, d) }}
	wait := b.WaitDays()
	at := due.EndOf(ask.On, b.Zone)
	ready := map[unit.Date]int{} // of those draining; before the day asked for, on it
	for i := range sums {
		sum := &sums[i]
		if sum.Set == ask.On {
			s.Grafted++
		}
		if tooSmall(sum) {
			continue
		}
		switch {
		case sum.Stage == record.StageStanding:
			s.Standing++
		case sum.Stage == record.StageDraining:
			s.Draining++
			day := max(ask.On, sum.CutBack.Add(wait))
			if ready[day]++; day == ask.On {
				s.Ready++
			}
		case regrafts(sum, at):
			s.Regraft++
		}
	}
	if ask.Rate == 0 {
		s.Pace = RateOf(b, sums, ask.On)
	}
	s.Rate = s.Pace.PerDay
	s.work(ready, wait)
	return s
}

// tooSmall says whether a stump was measured and takes another graft.
func tooSmall(s *due.Summary) bool { return s.Across > 0 && s.Across < trade.LeastAcross }

// ToGraft is the stumps that a block still has to graft at an instant: standing,
// draining, and those to be grafted again.
func ToGraft(sums []due.Summary, at time.Time) (out []due.Summary) {
	for i := range sums {
		s := &sums[i]
		if !tooSmall(s) && (s.Stage == record.StageStanding || s.Stage == record.StageDraining || regrafts(s, at)) {
			out = append(out, *s)
		}
	}
	return out
}

// regrafts says whether a stump is to be cut back again now.
func regrafts(s *due.Summary, at time.Time) bool {
	isRegraft := func(d due.Due) bool { return d.Kind == due.Regraft }
	return slices.ContainsFunc(s.Dues, isRegraft) &&
		slices.ContainsFunc(due.At(s.Dues, at), func(d due.Due) bool { return isRegraft(d) && d.Open(at) })
}

// work goes through the days. What is draining is grafted as soon as it is ready;
// what a day has room for beyond that is grafted from stumps cut back on the last
// day of work that leaves them their wait.
func (s *Season) work(ready map[unit.Date]int, wait int) {
	days := map[unit.Date]*SeasonDay{}
	on := func(d unit.Date) *SeasonDay {
		if days[d] == nil {
			days[d] = &SeasonDay{Day: d}
		}
		return days[d]
	}
	stand, left, waiting := s.Standing+s.Regraft, s.Left(), 0
	for day := s.On; day <= s.Slip.To; day++ {
		waiting += ready[day]
		if day < s.Slip.From || s.Off(day) {
			continue
		}
		s.Workdays++
		room := s.Rate
		if day == s.On {
			room = max(0, room-s.Grafted)
		}
		n := min(room, waiting)
		waiting -= n
		if cut, ok := s.cutFor(day, wait); ok {
			if fresh := min(room-n, stand); fresh > 0 {
				on(cut).CutBack += fresh
				stand, n = stand-fresh, n+fresh
			}
		}
		if n == 0 {
			continue
		}
		on(day).Graft += n
		if left -= n; left == 0 {
			s.LastDay = day
		}
	}
	s.Short = left
	for _, d := range days {
		s.Days = append(s.Days, *d)
	}
	slices.SortFunc(s.Days, func(a, b SeasonDay) int { return int(a.Day - b.Day) })
}

// cutFor is the last day of work on which a stump is cut back to be grafted on
// another, at its wait or later, before the caution of draining too long begins.
func (s *Season) cutFor(day unit.Date, wait int) (unit.Date, bool) {
	for cut := day.Add(-wait); cut >= s.On && cut >= day.Add(-trade.CutBackLongDays); cut = cut.Add(-1) {
		if !s.Off(cut) {
			return cut, true
		}
	}
	return 0, false
}
