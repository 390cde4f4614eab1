package plan

import (
	"testing"
	"time"

	"pgregory.net/rapid"

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
	// days 7 to 10 carry 20 at 5 a day, so nothing is free for those cut back today.
	if p.Left != 22 || p.Standing != 40 || p.Draining != 32 || p.Grafted != 2 || p.Needed != 4 || p.CutBack != 0 {
		t.Errorf("%d left, %d standing, %d draining, %d grafted, %d needed, cut back %d; want 22 40 32 2 4 0", p.Left, p.Standing, p.Draining, p.Grafted, p.Needed, p.CutBack)
	}
	for i, want := range []float64{3, 5, 4, 0, 0, 0, 0, 5, 5, 5, 5} {
		if p.Days[i].Graft != want {
			t.Errorf("day %d grafts %v, want %v", i, p.Days[i].Graft, want)
		}
	}
	b.PerDay = 8 // 32 on days 7 to 10, 20 of them spoken for
	if p = PaceOf(b, sums, today.At(12, 0, b.Zone)); p.CutBack != 12 {
		t.Errorf("at 8 a day cut back %d, want 12", p.CutBack)
	}
	b.Wait = 14 // cut back 9 days ago is not ready for 5 more; the last four days are 14 to 17
	if p = PaceOf(b, sums, today.At(12, 0, b.Zone)); p.Days[5].Ready != 12 || p.Days[14].Ready != 20 || len(p.Days) != 18 || p.CutBack != 12 {
		t.Errorf("waiting 14 days: %d and %d come ready, %d days, cut back %d; want 12, 20, 18, 12", p.Days[5].Ready, p.Days[14].Ready, len(p.Days), p.CutBack)
	}
}

func TestPaceIsMeasured(t *testing.T) {
	b := paceBlock(0)
	today := unit.MakeDate(2027, 5, 20)
	sums := many(30, due.Summary{Stage: record.StageStanding})
	if p := PaceOf(b, sums, today.At(12, 0, b.Zone)); p.PerDay != 2 || p.Worked != 0 || p.CutBack != 8 {
		t.Errorf("nothing grafted yet: %v a day over %d, cut back %d; want what is needed, 2, and 8", p.PerDay, p.Worked, p.CutBack)
	}
	for i, n := range []int{90, 4, 6, 8, 6, 6} { // the first is too long ago
		sums = append(sums, many(n, due.Summary{Stage: record.StagePainted, Set: today.Add(-20 + 3*i)})...)
	}
	sums = append(sums, many(9, due.Summary{Stage: record.StagePainted, Set: today.Add(-365)})...) // of the year before
	if p := PaceOf(b, sums, today.At(12, 0, b.Zone)); p.PerDay != 6 || p.Worked != 5 {
		t.Errorf("%v a day over %d days, want 6 over 5", p.PerDay, p.Worked)
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

// TestPaceProperties: nothing is grafted twice or out of season, and cutting
// back what is told leaves nothing waiting at the end of the last day.
func TestPaceProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := paceBlock(rapid.IntRange(1, 12).Draw(t, "a day"))
		b.Wait = rapid.IntRange(3, 14).Draw(t, "wait")
		today := unit.MakeDate(2027, 5, 1).Add(rapid.IntRange(0, 45).Draw(t, "today"))
		sums := many(rapid.IntRange(0, 60).Draw(t, "standing"), due.Summary{Stage: record.StageStanding})
		for _, ago := range rapid.SliceOfN(rapid.IntRange(0, 20), 0, 40).Draw(t, "cut back") {
			sums = append(sums, due.Summary{Stage: record.StageDraining, CutBack: today.Add(-ago)})
		}
		p := PaceOf(b, sums, today.At(9, 0, b.Zone))
		grafted := 0.0
		for _, d := range p.Days {
			grafted += d.Graft
			if d.Graft+d.Free > float64(b.PerDay) || !p.Slip.Holds(d.Day) && d.Graft+d.Free > 0 {
				t.Fatalf("%s grafts %v and has %v free at %d a day", d.Day, d.Graft, d.Free, b.PerDay)
			}
		}
		if grafted > float64(p.Draining) || p.CutBack > p.Standing {
			t.Fatalf("%v grafted of %d, cut back %d of %d", grafted, p.Draining, p.CutBack, p.Standing)
		}
		if p.CutBack == 0 {
			return
		}
		var more []due.Summary
		for i, s := range sums {
			if i < p.CutBack { // the standing come first
				s = due.Summary{Stage: record.StageDraining, CutBack: today}
			}
			more = append(more, s)
		}
		after, before := PaceOf(b, more, today.At(9, 0, b.Zone)), p
		if left(after) > left(before)+1e-9 {
			t.Fatalf("cutting back %d leaves %v waiting, %v before", p.CutBack, left(after), left(before))
		}
	})
}

// left is the stumps draining that are not grafted by the last day.
func left(p Pace) float64 {
	n := float64(p.Draining)
	for _, d := range p.Days {
		n -= d.Graft
	}
	return n
}

func TestSupplyOf(t *testing.T) {
	sums := []due.Summary{
		{Stage: record.StageStanding, Across: 4 * unit.Inch}, {Stage: record.StageDraining, Across: 2 * unit.Inch}, {Stage: record.StageStanding},
		{Stage: record.StageStanding, Across: 0.9 * unit.Inch}, {Stage: record.StagePainted, Across: 4 * unit.Inch},
	}
	s := SupplyOf(sums) // 4 and 2 by size, 3 for the one unknown; the small one wants another graft
	if s.Stumps != 3 || s.Measured != 2 || s.Scions != 9 || s.Sticks != [2]int{3, 3} || s.Nails != 18 || s.Stakes != 3 {
		t.Errorf("%+v, want 3 stumps, 9 scions, 3 sticks, 18 nails, 3 stakes", s)
	}
	if s := SupplyOf(nil); s.Scions != 0 || s.Sticks != [2]int{} {
		t.Errorf("nothing to graft takes %+v", s)
	}
}
