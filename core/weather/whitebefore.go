package weather

import (
	"time"

	"barkslip/core/trade"
)

// WhiteBefore is by when a graft must be white, as Heat says it, where that is before a
// time; nil where it is not. It reckons no further than it must. The error is a
// *trade.Impossible.
func WhiteBefore(d HeatDay, by time.Time) (*time.Time, error) {
	if err := d.check(); err != nil {
		return nil, err
	}
	air := airThrough(d.Place, []Extremes{{d.Date, d.Low, d.High}})[0]
	ps := parts(d.Thick, d.Across, blackTakes)
	end := d.Date.Add(1).In(d.Place.Zone)
	sealed := d.sealed()
	last := by.Add(trade.InjuryMinutes * time.Minute)
	var before *time.Time
	var temps [2][2]float64 // at the step before and now
	for from := sealed; before == nil && from.Before(end) && from.Before(last); {
		to := stepAfter(from, end, step)
		m := d.momentAt(from, air(from).C())
		for i, p := range ps[:2] { // scion and side
			if from.Equal(sealed) {
				temps[i] = [2]float64{m.air, m.air}
			}
			loss, slope := p.loss(temps[i][1], m)
			now := warm(temps[i][1], p.takes*m.light[i], loss, slope, p.store, to.Sub(from).Seconds())
			temps[i] = [2]float64{temps[i][1], now}
			if over := firstOver([]time.Time{from, to}, temps[i][:]); over != nil {
				before = sooner(before, whiteFrom(*over, sealed))
			}
		}
		from = to
	}
	if before == nil || !before.Before(by) {
		return nil, nil
	}
	return before, nil
}

// WhiteOn is by when a graft must be white and whether its sealer is not dry by then, as
// Heat says it; nil where the day does no harm. The error is a *trade.Impossible.
func WhiteOn(d HeatDay) (before *time.Time, dry bool, err error) {
	before, err = WhiteBefore(d, d.Date.Add(2).In(d.Place.Zone))
	return before, err == nil && before != nil && dryFirst(before, d.sealed()), err
}

// sealed is the instant of sealing, as sealedAt.
func (d HeatDay) sealed() time.Time {
	if d.Sealed != nil {
		return d.sealedAt(Day{})
	}
	return d.sealedAt(SunDay(d.Place, d.Date))
}

// whiteFrom is by when a graft must be white that passes the limit at a time.
func whiteFrom(over, sealed time.Time) time.Time {
	t := over.Add(-trade.InjuryMinutes * time.Minute)
	if t.Before(sealed) {
		return sealed
	}
	return t
}

func sooner(a *time.Time, b time.Time) *time.Time {
	if a == nil || b.Before(*a) {
		return &b
	}
	return a
}
