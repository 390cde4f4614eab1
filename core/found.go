package core

import (
	"time"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Found gathers from the record what bears on readiness at now.
func (s *Stump) Found(b *Block, now time.Time) Found {
	a := s.Now()
	f := a.foundAt(b, now, time.Time{})
	f.Across = s.Across()
	f.Waits = a.waits(b)
	return f
}

// foundAt gathers it as known just after asOf, or as known now if that is zero.
func (a *Attempt) foundAt(b *Block, now, asOf time.Time) Found {
	f := Found{Wait: b.waitDays()}
	if a.CutBack != nil {
		f.CutBack = b.Day(a.CutBack.At)
		height := a.CutBack.What.Height.Length - trade.FreshCutBelow
		f.Low = b.Browse.Given() && a.CutBack.What.Height.Given() && height < b.Browse.Length
	}
	gashes, holes, cuts := known(a.Gashes, asOf), known(a.Holes, asOf), known(a.FreshCuts, asOf)
	for _, g := range gashes {
		f.Gashes += g.What.Number
	}
	for _, h := range holes {
		f.Holes += h.What.Number
	}
	var look Said[Looked]
	for _, l := range known(a.Looks, asOf) {
		if l.What.Slip != "" {
			f.Slip, f.Slipped = l.What.Slip, l.At
		}
		if l.What.Bleeding != "" {
			f.Bleeding, f.Looked, look = l.What.Bleeding, l.At, l
			if l.What.Wiped && b.Day(l.At) == b.Day(now) && (len(cuts) == 0 || newer(l, last(cuts))) {
				f.Wipes++
			}
		}
	}
	f.Gashed, f.Drilled, f.FreshCut = behind(gashes, look), behind(holes, look), behind(cuts, look)
	if c := last(cuts); c.What.Height.Given() && b.Browse.Given() {
		f.Low = c.What.Height.Length < b.Browse.Length
	}
	a.limbs(&f)
	return f
}

// known is what had been said by asOf; all of it if that is zero.
func known[T any](said []Said[T], asOf time.Time) []Said[T] {
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
func behind[T any](work []Said[T], look Said[Looked]) time.Time {
	w := last(work)
	if !w.At.IsZero() && w.At.Equal(look.At) && newer(w, look) {
		return w.At.Add(time.Nanosecond)
	}
	return w.At
}

// limbs takes the newest judgement of the limbs below the graft.
func (a *Attempt) limbs(f *Found) {
	limbs, nearest, judged := a.Limbs()
	if !judged {
		return
	}
	f.Limbs, f.NoLimbs = limbs, limbs == 0
	if limbs > 0 && nearest.Given() {
		f.Limb, f.HasLimb = nearest.Length, true
	}
}

// waits counts the days, before that of the newest look at the face, on which a
// running stump was told to wait for that reason: each look is judged with what
// was known then. The newest look is left out because its own verdict is still
// to come.
func (a *Attempt) waits(b *Block) int {
	n := 0
	var last, newest unit.Date
	for _, l := range a.Looks {
		if l.What.Bleeding != "" {
			newest = b.Day(l.At)
		}
	}
	for _, l := range a.Looks {
		if l.What.Bleeding != Running || b.Day(l.At) == last || b.Day(l.At) == newest {
			continue
		}
		f := a.foundAt(b, l.At, l.At)
		f.Waits = n
		early := int(b.Day(l.At)-f.CutBack) < f.wait()
		if v := Judge(f, l.At, b.Zone, b.Units).Verdict; f.Slip == SlipsClean && !early && (v == Wait || v == Leave) {
			n++
			last = b.Day(l.At)
		}
	}
	return n
}

// Advice judges the stump at now.
func (s *Stump) Advice(b *Block, now time.Time) Advice {
	return Judge(s.Found(b, now), now, b.Zone, b.Units)
}
