package plan

import (
	"math/rand/v2"
	"testing"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/record/recordtest"
	"barkslip/core/unit"
)

// best is the most stumps that can be grafted in a season, found by going through
// the days for each number of stumps to cut back, apart from the plan.
func best(ready []int, stand, rate, wait, days int, off map[int]bool) (grafted int) {
	room := make([]int, days+1)
	for d := range room {
		if !off[d] {
			room[d] = rate
		}
	}
	for _, r := range ready {
		for d := max(r, 0); d <= days; d++ {
			if room[d] > 0 {
				room[d]--
				grafted++
				break
			}
		}
	}
	for d := 0; d <= days; d++ {
		for ; room[d] > 0 && stand > 0; room[d]-- {
			cut := false
			for c := max(0, d-14); c <= d-wait; c++ {
				cut = cut || !off[c]
			}
			if !cut {
				break
			}
			stand, grafted = stand-1, grafted+1
		}
	}
	return grafted
}

// Seasons at random graft as many as can be, and keep every rule day by day.
func TestASeasonKeepsItsRules(t *testing.T) {
	b := recordtest.Northern()
	b.SlipFrom, b.SlipTo = record.MonthDay{Month: 4, Day: 20}, record.MonthDay{Month: 6, Day: 5}
	on := recordtest.DayOf("2027-04-25")
	end := int(recordtest.DayOf("2027-06-05") - on)
	finished, unfinished := 0, 0
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 1))
		var sums []due.Summary
		var ready []int
		stand := r.IntN(300)
		for range stand {
			sums = append(sums, due.Summary{Stage: record.StageStanding})
		}
		for range r.IntN(60) {
			ago := r.IntN(12)
			sums = append(sums, due.Summary{Stage: record.StageDraining, CutBack: on.Add(-ago)})
			ready = append(ready, 7-ago)
		}
		again := r.IntN(20) // to be grafted again: as much work as those that stand
		for range again {
			sums = append(sums, due.Summary{Stage: record.StageFailed, Dues: []due.Due{{Kind: due.Regraft, Opens: on.In(b.Zone)}}})
		}
		stand += again
		ask, off := SeasonAsked{On: on, Rate: 1 + r.IntN(14)}, map[int]bool{}
		if b.Off = (record.DaysOff{}); r.IntN(2) == 0 {
			free := time.Weekday(r.IntN(7))
			b.Off.Week = []time.Weekday{free}
			for n := range end + 1 {
				off[n] = on.Add(n).Weekday() == free
			}
		}
		for range r.IntN(8) {
			n := r.IntN(end)
			ask.Off, off[n] = append(ask.Off, on.Add(n)), true
		}
		s := SeasonOf(b, sums, ask)
		if s.Regraft != again {
			t.Fatalf("seed %d: %d to graft again, want %d", seed, s.Regraft, again)
		}
		keeps(t, s, ready, ask, off, end)
		want := best(ready, stand, ask.Rate, 7, end, off)
		if s.Short != len(sums)-want || (s.LastDay == 0) != (s.Short > 0) && len(sums) > 0 {
			t.Fatalf("seed %d: %d are left, last day %s; %d can be grafted of %d", seed, s.Short, s.LastDay, want, len(sums))
		}
		if s.Short > 0 {
			unfinished++
		} else {
			finished++
		}
	}
	if finished < 20 || unfinished < 20 {
		t.Errorf("%d seasons were finished, %d not", finished, unfinished)
	}
}

// keeps simulates a season: the oldest that is ready is grafted first, none drains
// over 14 days of those cut back by the plan.
func keeps(t *testing.T, s Season, ready []int, ask SeasonAsked, off map[int]bool, end int) {
	t.Helper()
	cut, graft := map[int]int{}, map[int]int{}
	for _, d := range s.Days {
		n := int(d.Day - ask.On)
		if cut[n], graft[n] = d.CutBack, d.Graft; off[n] || n < 0 || n > end {
			t.Fatalf("work on %s", d.Day)
		}
	}
	old := 0
	var own []int // days of cutting back of the plan's own, oldest first
	for day := 0; day <= end; day++ {
		for _, r := range ready {
			if r == day || day == 0 && r < 0 {
				old++
			}
		}
		for range cut[day] {
			own = append(own, day)
		}
		if graft[day] > ask.Rate {
			t.Fatalf("day %d: %d grafted at %d a day", day, graft[day], ask.Rate)
		}
		n := min(old, graft[day])
		old -= n
		for range graft[day] - n {
			if len(own) == 0 || day-own[0] < 7 || day-own[0] > 14 {
				t.Fatalf("day %d: what is grafted was cut back on %v", day, own)
			}
			own = own[1:]
		}
	}
	if len(own) > 0 {
		t.Fatalf("%d are cut back and not grafted", len(own))
	}
}

// The rate is the median of the days at whose end ready stumps were left over.
func TestTheRateIsTheMedianOfFullDays(t *testing.T) {
	b, on := recordtest.Northern(), recordtest.DayOf("2027-05-20")
	var sums []due.Summary
	graft := func(n int, day string) {
		for range n {
			sums = append(sums, due.Summary{Stage: record.StagePainted, CutBack: unit.MakeDate(2027, 5, 1), Set: recordtest.DayOf(day)})
		}
	}
	if got := RateOf(b, sums, on).PerDay; got != usualRate {
		t.Errorf("of nothing %d", got)
	}
	graft(9, "2027-05-10")
	graft(4, "2027-05-11")
	graft(6, "2027-05-12")
	graft(1, "2027-05-13") // at its end none was left over
	if got := RateOf(b, sums, on).PerDay; got != 6 {
		t.Errorf("%d a day", got)
	}
	b.PerDay = 12
	if got := RateOf(b, sums, on).PerDay; got != 12 {
		t.Errorf("%d a day although the block says 12", got)
	}
}

// The wood is held against what the stumps of each variety take.
func TestWoodByVariety(t *testing.T) {
	sums := many(4, due.Summary{Stage: record.StageStanding})
	for i := range sums {
		sums[i].ID.Tree = uint16(i + 1)
	}
	needed := SeasonLoad(recordtest.Northern(), sums, sums, func(id record.StumpID) string {
		if id.Tree == 1 {
			return "Brisk"
		}
		return "Lantern"
	}, nil).NeedByVariety()
	lantern := Wood{Lot: &record.Lot{Received: &record.Said[record.LotReceived]{What: record.LotReceived{Name: "L-7", Variety: "lantern"}}}}
	got := NeedByLot([]Wood{lantern}, needed)
	if len(got) != 2 || got[0] != (LotNeed{Variety: "Brisk", Left: got[0].Left, Needed: 3}) || *got[0].Left != 0 ||
		got[1] != (LotNeed{Lot: "L-7", Variety: "lantern", Needed: 9}) {
		t.Errorf("%+v", got)
	}
}
