package ready

import (
	"time"

	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Found gathers from the record what bears on readiness at now.
func FoundOn(s *record.Stump, b *record.Block, now time.Time) Found {
	a := s.Now()
	f := foundAt(a, b, now, time.Time{})
	f.Across = s.Across()
	f.Waits = waits(a, b)
	return f
}

// foundAt gathers it as known just after asOf, or as known now if that is zero.
func foundAt(a *record.Attempt, b *record.Block, now, asOf time.Time) Found {
	f := Found{Wait: b.WaitDays()}
	if a.CutBack != nil {
		f.CutBack = b.Day(a.CutBack.At)
		height := a.CutBack.What.Height.Length - b.Units.Round(trade.FreshCutBelow)
		f.Low = b.Browse.Given() && a.CutBack.What.Height.Given() && height < b.Browse.Length
	}
	gashes, holes, cuts := known(a.Gashes, asOf), known(a.Holes, asOf), known(a.FreshCuts, asOf)
	for _, g := range gashes {
		f.Gashes += g.What.Number
	}
	for _, h := range holes {
		f.Holes += h.What.Number
	}
	var look record.Said[record.Looked]
	for _, l := range known(a.Looks, asOf) {
		if l.What.Slip != "" {
			f.Slip, f.Slipped = l.What.Slip, l.At
		}
		if l.What.Bleeding != "" {
			f.Bleeding, f.Looked, look = l.What.Bleeding, l.At, l
			if l.What.Wiped && b.Day(l.At) == b.Day(now) && (len(cuts) == 0 || record.Newer(l, record.Last(cuts))) {
				f.Wipes++
			}
		}
	}
	f.Gashed, f.Drilled, f.FreshCut = behind(gashes, look), behind(holes, look), behind(cuts, look)
	if c := record.Last(cuts); c.What.Height.Given() && b.Browse.Given() {
		f.Low = c.What.Height.Length < b.Browse.Length
	}
	limbs(a, &f)
	return f
}

// known is what had been said by asOf; all of it if that is zero.
func known[T any](said []record.Said[T], asOf time.Time) []record.Said[T] {
	if !asOf.IsZero() {
		for i, s := range said {
			if s.At.After(asOf) {
				return said[:i]
			}
		}
	}
	return said
}

// behind is when the newest of the work was done. Work put down for the very
// second of the look, but after it, counts as done after it.
func behind[T any](work []record.Said[T], look record.Said[record.Looked]) time.Time {
	w := record.Last(work)
	if !w.At.IsZero() && w.At.Equal(look.At) && record.Newer(w, look) {
		return w.At.Add(time.Nanosecond)
	}
	return w.At
}

// limbs takes the newest judgement of the limbs below the graft.
func limbs(a *record.Attempt, f *Found) {
	limbs, nearest, judged := a.Limbs()
	if !judged {
		return
	}
	f.Limbs, f.NoLimbs = limbs, limbs == 0 && !a.Nurse.What.Other
	if limbs > 0 && nearest.Given() {
		f.Limb, f.HasLimb = nearest.Length, true
	}
}

// waits counts the days, before that of the newest look at the face, on which a
// running stump was told to wait for that reason: each look is judged with what
// was known then. The newest look is left out because its own verdict is still
// to come.
func waits(a *record.Attempt, b *record.Block) int {
	n := 0
	var last, newest unit.Date
	for _, l := range a.Looks {
		if l.What.Bleeding != "" {
			newest = b.Day(l.At)
		}
	}
	for _, l := range a.Looks {
		if l.What.Bleeding != record.Running || b.Day(l.At) == last || b.Day(l.At) == newest {
			continue
		}
		f := foundAt(a, b, l.At, l.At)
		f.Waits = n
		early := int(b.Day(l.At)-f.CutBack) < f.wait()
		if v := Judge(f, l.At, b.Zone, b.Units).Verdict; f.Slip == record.SlipsClean && !early && (v == Wait || v == Leave) {
			n++
			last = b.Day(l.At)
		}
	}
	return n
}

// Advice judges the stump at now.
func AdviceOn(s *record.Stump, b *record.Block, now time.Time) Advice {
	return Judge(FoundOn(s, b, now), now, b.Zone, b.Units)
}
