package sample

import (
	"time"

	"barkslip/core/due"
	"barkslip/core/unit"
	"barkslip/core/walk"
)

// comes is when somebody comes for work that is due, not before a time: what
// runs by the clock in its turn, other work on a working day within its time.
func (l *life) comes(d due.Due, t time.Time) time.Time {
	switch d.Kind {
	case due.CutBack:
		return later(t, l.cutsBack(d))
	case due.Regraft:
		return later(t, l.regrafts(d))
	case due.Look:
		return later(later(t, d.Opens), l.firstLook())
	case due.LookAgain:
		return later(t, l.looksAgain(d))
	case due.Finish, due.Seal, due.Graft:
		return later(t, d.Opens)
	case due.White:
		return later(t, l.paints(d))
	case due.Tie:
		if l.staged == towers || l.staged == uncut { // on a leader that ran away from them
			return later(t, l.whenLong(towerEighths))
		}
	}
	return later(t, l.within(d))
}

// cutsBack is when the stump is cut back: eight days or so before it is grafted,
// in its turn along the row.
func (l *life) cutsBack(d due.Due) time.Time {
	day := workday(l.planned.Add(-8))
	if at := day.At(13, 0, l.Zone).Add(time.Duration(l.index%40*6) * time.Minute); !at.Before(d.Opens) {
		return at
	}
	l.planned = workday(unit.DateOf(d.Opens).Add(l.between(8, 20)))
	return workday(l.planned.Add(-8)).At(13, 0, l.Zone).Add(time.Duration(l.index%40*6) * time.Minute)
}

// regrafts is when a stump that was lost or left is cut back again: in the days
// before the next season of slip, with the season's own wood.
func (l *life) regrafts(d due.Due) time.Time {
	year := unit.DateOf(d.Opens).Year()
	l.planned = workday(l.today.AddYears(year - l.today.Year()).Add(-l.between(2, 14)))
	l.wood = l.lotFor(year, l.index)
	l.scions = l.scions[:0]
	l.regrows = time.Time{}
	return workday(l.planned.Add(-8)).At(13, l.between(0, 59), l.Zone)
}

// firstLook is when the crew comes back for the graft: today's batch along the
// front that is being worked now, others through their day's morning.
func (l *life) firstLook() time.Time {
	if l.planned == l.today && l.inBatch(todaysBatch) {
		switch first := l.sealsToday().Add(-leadBefore); {
		case l.staged == justSet:
			return l.Now.Add(-justSetLead)
		case l.staged == asItFalls:
			return later(first.Add(time.Duration(l.between(-9, 15))*time.Minute), l.Now.Add(-firstLight))
		default:
			return later(first, l.Now.Add(-firstLight))
		}
	}
	order := (l.index % max(l.batch, 1)) * 330 / max(l.batch, 1)
	return l.planned.At(6, 0, l.Zone).Add(time.Duration(order) * time.Minute)
}

// A stump that gives no trouble is first looked at leadBefore its sealing, but
// not before the crew came, firstLight ago.
const (
	leadBefore = 95 * time.Minute
	firstLight = 5 * time.Hour
)

// justSetAgo is how long ago the last scion of the stump that was just set went
// in, and justSetLead how long ago the crew came to it.
const (
	justSetAgo  = 6 * time.Minute
	justSetLead = 150 * time.Minute
)

// paced is when a step is come to that is not taken at once: the scions of the
// stump that was just set, and of that whose sealer is still wet, so that the
// last goes in at its time, and the seal of the first, which is to come.
func (l *life) paced(id walk.StepID, t time.Time) time.Time {
	a := l.s.Now()
	before := time.Duration(a.Marked()-len(a.Grafts)-len(a.Empty)-1) * l.takes(walk.StepScion)
	switch {
	case l.staged == justSet && id == walk.StepSeal:
		return l.Now.Add(time.Minute)
	case l.staged == justSet && id == walk.StepScion:
		return l.Now.Add(-justSetAgo - before)
	case l.staged == stillWet && id == walk.StepScion:
		return l.sealsToday().Add(-before)
	}
	return t
}

// sealsToday is when a stump of today's batch that gives no trouble is sealed:
// the first three hours and a quarter ago, the last in three hours and a half.
func (l *life) sealsToday() time.Time {
	k := (l.index - l.earlier) % l.batch
	return l.Now.Add(-195*time.Minute + time.Duration(k)*400*time.Minute/time.Duration(l.batch)).Truncate(time.Second)
}

// looksAgain is a few minutes after a wait of minutes is over, the morning after
// one of days.
func (l *life) looksAgain(d due.Due) time.Time {
	if d.Opens.Sub(d.Since) < 3*time.Hour {
		return d.Opens.Add(time.Duration(l.between(0, 4)) * time.Minute)
	}
	day := unit.DateOf(d.Opens)
	if d.Opens.Hour() > 9 {
		day = day.Add(1)
	}
	if day.Weekday() == time.Sunday {
		day = day.Add(1)
	}
	return later(d.Opens, day.At(7, l.between(0, 59), l.Zone))
}

// paints is when white goes on: most within the hour it is open.
func (l *life) paints(d due.Due) time.Time {
	open := d.By.Sub(d.Opens)
	switch {
	case l.staged == lateToPaint:
		return d.By.Add(3 * time.Hour)
	case l.staged == stillWet:
		return d.Opens.Add(5 * time.Minute)
	case open <= 0: // it was wet: they stand by
		return d.Opens.Add(time.Duration(l.between(0, 9)) * time.Minute)
	case l.odds(0.04):
		return d.Opens.Add(time.Duration(l.between(20, 150)) * time.Minute)
	}
	return d.Opens.Add(time.Duration(l.real() * 0.8 * float64(open)))
}

// within is a working moment between the day work opens and that by which it is
// due; some is come to a few days late.
func (l *life) within(d due.Due) time.Time {
	first, last := unit.DateOf(d.Opens), unit.DateOf(d.By)
	span := min(int(last-first), 6)
	if span > 2 { // they come in its first days
		span = max(2, span*2/3)
	}
	day := first.Add(l.between(0, max(span, 0)))
	if l.staged == asItFalls && l.odds(0.02) {
		day = last.Add(l.between(1, 5))
	}
	if l.staged == justLost {
		day = first
	}
	if day.Weekday() == time.Sunday {
		day = day.Add(1)
	}
	return day.At(l.between(7, 15), l.between(0, 59), l.Zone)
}
