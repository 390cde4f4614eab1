package sample

import (
	"time"

	"barkslip/core/due"
	"barkslip/core/unit"
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
	l.planned = workday(unit.MakeDate(year, time.May, l.between(6, 18)))
	l.wood = l.lotOf(year, l.variety)
	return workday(l.planned.Add(-8)).At(13, l.between(0, 59), l.Zone)
}

// firstLook is when the crew comes back for the graft: today's batch along the
// front that is being worked now, others through their day's morning.
func (l *life) firstLook() time.Time {
	if l.planned == l.today && l.index >= l.earlier {
		return later(l.sealsToday().Add(-leadBefore), l.Now.Add(-firstLight))
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
	switch {
	case l.staged == lateToPaint && l.index >= l.earlier:
		return d.By.Add(3 * time.Hour)
	case d.By.After(d.Opens) && !l.odds(0.04):
		return d.Opens.Add(time.Duration(l.real() * 0.8 * float64(d.By.Sub(d.Opens))))
	}
	return d.Opens.Add(time.Duration(l.between(2, 90)) * time.Minute)
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
	if l.odds(0.02) {
		day = last.Add(l.between(1, 5))
	}
	if day.Weekday() == time.Sunday {
		day = day.Add(1)
	}
	return day.At(l.between(7, 15), l.between(0, 59), l.Zone)
}

// on is a working moment of a day.
func (l *life) on(d unit.Date) time.Time {
	return workday(d).At(l.between(7, 16), l.between(0, 59), l.Zone)
}
