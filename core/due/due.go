// Package due works out what each stump needs next, and by when. It is the one
// answer to that question: the step the walk asks, the rounds, the list, the
// calendar, the marks on the map, the counts and the pace all read it.
//
// It may import the record, whether a stump is ready, and the leaves.
package due

import (
	"cmp"
	"slices"
	"time"

	"barkslip/core/record"
	"barkslip/core/unit"
)

// Due is work a stump needs, from when it can be done to when it should have
// been. For kinds that run by days, Opens is the first instant of the day and
// By the last.
type Due struct {
	Stump  record.StumpID
	Kind   Kind
	Opens  time.Time
	By     time.Time
	Since  time.Time // the cause the times count from
	Ends   time.Time // from when on it is no more: its season is over; zero: never
	Hint   uint8     // which of the kind's sentences applies
	Yearly bool      // not met by its end, it comes again in each year after
}

// Open says whether the work can be done at now.
func (d Due) Open(now time.Time) bool { return !d.Opens.After(now) && !d.Ended(now) }

// Late says whether it should have been done before now.
func (d Due) Late(now time.Time) bool { return now.After(d.By) && !d.Ended(now) }

// Ended says whether the time for the work was over before now: nobody rubs the
// sprouts of last summer.
func (d Due) Ended(now time.Time) bool { return !d.Ends.IsZero() && !now.Before(d.Ends) }

// OpenBetween says whether the work can be done at some time from one instant to
// another.
func (d Due) OpenBetween(from, until time.Time) bool { return !d.Opens.After(until) && !d.Ended(from) }

// On is the due as it stands at now: one that comes again each year is that of
// the first year whose end is still to come.
func (d Due) On(now time.Time) Due {
	if !d.Yearly || !d.Ended(now) {
		return d
	}
	years := max(now.Year()-d.Ends.Year(), 1)
	next := d.years(years)
	if next.Ended(now) {
		next = d.years(years + 1)
	}
	return next
}

// years is the due so many years on, on the same days of its block.
func (d Due) years(n int) Due {
	on := func(t time.Time) unit.Date { return unit.DateOf(t).AddYears(n) }
	zone := d.Opens.Location()
	d.Opens = on(d.Opens).In(zone)
	d.By = on(d.By).Add(1).In(zone).Add(-time.Second)
	d.Ends = on(d.Ends).In(zone)
	return d
}

// Of is all that a stump needs, this season or later. It depends on the record
// and the block alone; see At for how it stands at a time.
func Of(s *record.Stump, b *record.Block) []Due {
	if s.Divided() {
		return nil // its limbs are the stumps
	}
	c := newDueCase(s, b)
	out := make([]Due, 0, 16)
	for _, w := range table {
		if c.kind = w.Kind; c.in(w.While) {
			out = append(out, w.Rule(c)...)
		}
	}
	slices.SortStableFunc(out, sooner)
	return out
}

// At is what of it stands at now, open or to come, soonest first and within a
// day in the order in which the work is done.
func At(dues []Due, now time.Time) []Due {
	out := make([]Due, 0, len(dues))
	for _, d := range dues {
		if d = d.On(now); !d.Ended(now) {
			out = append(out, d)
		}
	}
	slices.SortStableFunc(out, sooner)
	return out
}

// sooner orders dues by when they open, then as they are done on one visit.
func sooner(x, y Due) int {
	return cmp.Or(x.Opens.Compare(y.Opens), cmp.Compare(place[x.Kind], place[y.Kind]))
}

// First is the due whose step is asked at now: of those open the one that is
// done first on a visit; ok is false where none is open.
func First(dues []Due, now time.Time) (first Due, ok bool) {
	for _, d := range dues {
		if d = d.On(now); d.Open(now) && (!ok || d.Kind.Before(first.Kind)) {
			first, ok = d, true
		}
	}
	return first, ok
}

// Next is what of a stump comes first: what is open in the order of a visit,
// else what opens soonest; ok is false where nothing is left to do.
func Next(dues []Due, now time.Time) (next Due, ok bool) {
	if next, ok = First(dues, now); ok {
		return next, true
	}
	if at := At(dues, now); len(at) > 0 {
		return at[0], true
	}
	return Due{}, false
}

// ByWords is when the due should be done as people say it: by the clock for
// what runs by the clock, by the day for the rest.
func (d Due) ByWords(now time.Time, zone *time.Location) string {
	if d.Kind.Timed() {
		return unit.When(d.By, now, zone)
	}
	day := unit.DateOf(d.By.In(zone))
	if day.Year() == now.In(zone).Year() {
		return day.Short()
	}
	return day.Long()
}
