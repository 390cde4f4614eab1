package plan

import (
	"testing"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/record/recordtest"
	"barkslip/core/unit"
)

// paceBlock lies at 42.7 N, where bark slips 10 May to 10 June unless it says
// otherwise.
func paceBlock(perDay int) *record.Block {
	b := recordtest.Northern()
	b.Placed, b.Lat, b.PerDay = true, 42.7, perDay
	return b
}

func many(n int, s due.Summary) (out []due.Summary) {
	for range n {
		out = append(out, s)
	}
	return out
}

// TestPaceByHand works two days of a crew of 5 stumps a day through on paper.
func TestPaceByHand(t *testing.T) {
	b := paceBlock(5)
	today := unit.MakeDate(2027, 5, 20)
	sums := append(many(40, due.Summary{Stage: record.StageStanding}), many(12, due.Summary{Stage: record.StageDraining, CutBack: today.Add(-9)})...)
	sums = append(sums, many(20, due.Summary{Stage: record.StageDraining, CutBack: today})...)
	sums = append(sums, many(2, due.Summary{Stage: record.StagePainted, Set: today})...)
	p := PaceOf(b, sums, today.At(12, 0, b.Zone))
	// 12 are ready now: 3 more fit today, 5 tomorrow, 4 the day after. 20 come on day 7:
	// days 7 to 10 carry 20 at 5 a day, so those cut back from day 4 on are grafted from
	// day 11 to the end, day 21: 11 days of 5, enough for the 40.
	if p.Left != 22 || p.Standing != 40 || p.Draining != 32 || p.Season.Grafted != 2 || p.Needed != 4 || p.CutBack != 0 {
		t.Errorf("%+v; want 22 left, 40 standing, 32 draining, 2 grafted, 4 needed, 0 to cut back", p)
	}
	for i, want := range []int{3, 5, 4, 0, 0, 0, 0, 5, 5, 5, 5, 5} {
		if got := p.Season.OnDay(today.Add(i)); got.Graft != want || (got.CutBack > 0) != (i >= 4) {
			t.Errorf("day %d grafts %d and cuts back %d, want %d", i, got.Graft, got.CutBack, want)
		}
	}
	b.PerDay = 30 // 20 of day 7 are spoken for
	if p = PaceOf(b, sums, today.At(12, 0, b.Zone)); p.CutBack != 10 {
		t.Errorf("at 30 a day cut back %d, want 10", p.CutBack)
	}
}

func TestSlipOn(t *testing.T) {
	for _, c := range []struct {
		lat      float64
		own      [2]record.MonthDay
		day      unit.Date
		from, to unit.Date
		left     int
		known    bool
	}{
		{42.7, [2]record.MonthDay{}, unit.MakeDate(2027, 5, 20), unit.MakeDate(2027, 5, 10), unit.MakeDate(2027, 6, 10), 22, true},
		{42.7, [2]record.MonthDay{}, unit.MakeDate(2027, 6, 10), unit.MakeDate(2027, 5, 10), unit.MakeDate(2027, 6, 10), 1, true},
		{42.7, [2]record.MonthDay{}, unit.MakeDate(2027, 6, 11), unit.MakeDate(2028, 5, 10), unit.MakeDate(2028, 6, 10), 32, true},
		{38.5, [2]record.MonthDay{}, unit.MakeDate(2027, 3, 1), unit.MakeDate(2027, 4, 15), unit.MakeDate(2027, 5, 15), 31, true},
		{-34, [2]record.MonthDay{}, unit.MakeDate(2027, 10, 31), unit.MakeDate(2027, 10, 1), unit.MakeDate(2027, 11, 30), 31, true},
		{10, [2]record.MonthDay{}, unit.MakeDate(2027, 10, 31), 0, 0, 0, false},
		{10, [2]record.MonthDay{{Month: time.December, Day: 20}, {Month: time.January, Day: 10}}, unit.MakeDate(2027, 1, 5), unit.MakeDate(2026, 12, 20), unit.MakeDate(2027, 1, 10), 6, true},
	} {
		b := paceBlock(0)
		b.Lat, b.SlipFrom, b.SlipTo = c.lat, c.own[0], c.own[1]
		s, known := b.SlipOn(c.day)
		if known != c.known || s.From != c.from || s.To != c.to || known && s.Left(c.day) != c.left {
			t.Errorf("at %g on %s: %s to %s, %d left, known %v; want %s to %s, %d, %v", c.lat, c.day, s.From, s.To, s.Left(c.day), known, c.from, c.to, c.left, c.known)
		}
	}
}
