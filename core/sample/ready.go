package sample

import (
	"time"

	"barkslip/core/ready"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// firstLook is when the crew comes back for the graft: today's batch along the
// front that is being worked now, others through their day's morning.
func (l *life) firstLook(day, cut unit.Date) time.Time {
	if l.gone(day.At(0, 0, l.Zone)) {
		return day.At(6, 0, l.Zone)
	}
	day = max(day, cut.Add(trade.CutBackDays))
	if day == l.today && l.index >= l.earlier {
		return later(l.sealsToday().Add(-leadBefore), l.Now.Add(-firstLight))
	}
	order := (l.index % max(l.batch, 1)) * 330 / max(l.batch, 1)
	return day.At(6, 0, l.Zone).Add(time.Duration(order) * time.Minute)
}

// A stump that gives no trouble is first looked at leadBefore its sealing, but
// not before the crew came, firstLight ago.
const (
	leadBefore = 150 * time.Minute
	firstLight = 5 * time.Hour
)

// sealsToday is when a stump of today's batch that gives no trouble is sealed:
// the first three hours and a quarter ago, the last in three hours and a half.
func (l *life) sealsToday() time.Time {
	k := (l.index - l.earlier) % l.batch
	return l.Now.Add(-195*time.Minute + time.Duration(k)*400*time.Minute/time.Duration(l.batch)).Truncate(time.Second)
}

// makeReady follows the advice from look to look until it says to graft. ok is
// false where the stump is left for the season.
func (l *life) makeReady(t time.Time) (when time.Time, ok bool) {
	switch l.staged {
	case asItFalls:
	case againstAll:
		l.sap = 0.84
	default:
		l.sap = 0.1
	}
	l.look(t, true, false)
	for range 40 {
		if l.gone(t) {
			return t, true
		}
		advice := ready.Judge(l.found, t, l.Zone, unit.US)
		if l.goesAgainst(t, advice.Verdict) {
			return t.Add(2 * time.Minute), true
		}
		switch advice.Verdict {
		case ready.Graft:
			return t, true
		case ready.Look, ready.Wipe:
			t = later(t, *advice.Until).Add(time.Duration(l.between(0, 4)) * time.Minute)
			l.look(t, false, advice.Verdict == ready.Wipe)
		case ready.Gash:
			t = t.Add(4 * time.Minute)
			l.gash(t)
		case ready.Drill:
			t = t.Add(5 * time.Minute)
			l.drill(t)
		case ready.FreshCut:
			t = t.Add(4 * time.Minute)
			l.freshCut(t)
		case ready.Wait:
			t = l.waits(*advice.Until)
			l.look(t, true, false)
		default:
			return l.leave(t.Add(time.Minute))
		}
	}
	return l.leave(t)
}

// leave gives the stump up for this season.
func (l *life) leave(t time.Time) (time.Time, bool) {
	l.say(t, l.hand.initials, &record.GivenUp{Why: "still runs", Season: true})
	return t, false
}

func later(a, b time.Time) time.Time {
	if a.After(b) {
		return a
	}
	return b
}

// look is a look at the face, and at the bark if asked. Sap falls by the day.
func (l *life) look(t time.Time, bark, wiped bool) {
	if !l.found.Looked.IsZero() {
		l.sap -= 0.06 * t.Sub(l.found.Looked).Hours() / 24
	}
	body := &record.Looked{Bleeding: l.face(), Wiped: wiped}
	l.found.Bleeding, l.found.Looked = body.Bleeding, t
	if wiped {
		l.found.Wipes++
	}
	if bark {
		body.Slip = record.SlipsClean
		if l.found.Slip != record.Drags && l.staged == asItFalls && l.odds(0.05) {
			body.Slip = record.Drags
		}
		l.found.Slip, l.found.Slipped, l.found.Wipes = body.Slip, t, 0
	}
	l.say(t, l.hand.initials, body)
}

// face is how the face shows the sap there is.
func (l *life) face() record.Bleeding {
	switch sap := l.sap + 0.1*l.real(); {
	case sap < 0.55:
		return record.Dry
	case sap < 0.66:
		return record.Damp
	case sap < 0.85:
		return record.Weeping
	}
	return record.Running
}

// waits is the morning after a wait; some are come back to late.
func (l *life) waits(until time.Time) time.Time {
	if l.found.Bleeding == record.Running && l.found.Slip == record.SlipsClean {
		l.found.Waits++
	}
	day := unit.DateOf(until.In(l.Zone).Add(12 * time.Hour))
	if l.odds(0.2) {
		day = day.Add(l.between(1, 2))
	}
	if day.Weekday() == time.Sunday {
		day = day.Add(1)
	}
	return day.At(7, l.between(0, 59), l.Zone)
}

// goesAgainst says whether the hand grafts although told otherwise, and tells
// so. The learner and the hurried do; the weeping stump bears it badly.
func (l *life) goesAgainst(t time.Time, v record.Verdict) bool {
	tempted := v == ready.Drill || v == ready.Wait || v == ready.Wipe
	if !tempted || !(l.staged == againstAll || l.odds(0.025)) {
		return false
	}
	l.advised = false
	why := l.one("rain coming", "last stick of the bundle", "crew goes home today", "looked dry enough to me")
	l.say(t.Add(time.Minute), l.hand.initials, &record.AgainstAdvice{Verdict: v, Why: why})
	return true
}

// freshCut takes the waste off above the graft, and shows a new face.
func (l *life) freshCut(t time.Time) {
	down := 6
	if !l.found.FreshCut.IsZero() {
		down = 2
	}
	l.height -= down
	body := &record.FreshCut{Height: inches(l.height)}
	if l.odds(0.06) {
		body.Torn = []record.Arc{{Bearing: unit.Bearing(l.between(0, 35) * 10), Width: eighths(l.between(4, 9)), Why: "torn"}}
	}
	l.say(t, l.hand.initials, body)
	l.found.FreshCut, l.found.Wipes = t, 0
}
