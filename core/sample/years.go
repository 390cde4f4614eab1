package sample

import (
	"time"

	"barkslip/core/record"
	"barkslip/core/unit"
)

// years tells the seasons after the first until the tree stands alone. It says
// whether the tree lived through them.
func (l *life) years() bool {
	for n := 1; n <= 3; n++ {
		year := l.year + n
		if l.gone(unit.MakeDate(year, time.February, 1).At(0, 0, l.Zone)) {
			return true
		}
		if l.odds(0.015) {
			l.lostLate(year)
			return false
		}
		l.winter(year, n)
		l.say(l.date(year, time.April, 2, 28), "RD", &record.TwineChecked{Stem: eighths(l.stem(n)), Tight: n == 3 && l.odds(0.3)})
		if n == 3 {
			return l.free(year)
		}
		l.season(year, n)
	}
	return true
}

// date is a working moment of a month, between two days of it.
func (l *life) date(year int, m time.Month, least, most int) time.Time {
	return l.on(unit.MakeDate(year, m, l.between(least, most)))
}

// lostLate is a tree that does not come through a winter.
func (l *life) lostLate(year int) {
	t := l.date(year, time.April, 18, 24)
	l.say(t, "MK", &record.Failed{Cause: l.one("frost", "deer or stock", "girdled", "machine or person")})
	l.say(t.Add(time.Minute), "MK", &record.SproutsKept{Number: l.between(1, 2)})
	l.lostIn = year - 1
}

// winter is the work of the dormant season: after the first the leader headed
// back, after the second the second shoot off. The far end of last season's
// stretch has not been come to yet.
func (l *life) winter(year, n int) {
	t := l.date(year, time.March, 4, 31)
	if n == 1 {
		if _, along := l.age(l.index); along > 0.7 && year == l.today.Year() {
			return
		}
		l.headBack(t)
		l.nurseOff(t.Add(3*time.Minute), 1)
		return
	}
	if n == 2 {
		l.say(t, "JT", &record.SecondShootOff{})
		l.nurseOff(t.Add(2*time.Minute), 0)
	}
}

// nurseOff takes nurse limbs off, down to so many.
func (l *life) nurseOff(t time.Time, left int) {
	if l.nurse > left {
		l.nurse = left
		l.say(t, "JT", &record.NurseLimbOff{Left: left})
	}
}

func (l *life) headBack(t time.Time) {
	length := l.shoot(130)
	if length <= 8*stakeInches {
		l.say(t, "JT", &record.HeadedBack{Short: true, Height: eighths(length / 3)})
		return
	}
	l.say(t, "JT", &record.HeadedBack{Height: inches(stakeInches + l.between(1, 6))})
	if l.odds(0.6) {
		l.say(t.Add(time.Minute), "JT", &record.RivalCut{})
	}
}

// season is a later summer: sprouts every three weeks or so, ties in the second
// year, the twine looked at, the season's end.
func (l *life) season(year, n int) {
	t := l.date(year, time.May, 3, 14)
	for range 3 {
		l.say(t, "AS", &record.SproutsRubbed{Near: l.between(0, 2), Below: l.between(0, 3), Leaf: "some"})
		t = l.at(t, 20, 34)
	}
	if n == 1 {
		for _, m := range []time.Month{time.June, time.July} {
			l.say(l.date(year, m, 5, 25), "RD", &record.Tied{Shoot: inches(min(48+int(14*l.vigour)*int(m-time.May), 120))})
		}
	}
	checked := l.date(year, time.October, 2, 25)
	l.say(checked, "RD", &record.TwineChecked{Stem: eighths(l.stem(n) + 9)})
	if n == 2 && l.odds(0.2) {
		l.say(checked.Add(time.Minute), "RD", &record.TwineMoved{Loop: inches(l.between(14, 18)), Stem: eighths(l.stem(n) + 9)})
	}
	l.seasonsEnd(year)
}

// free takes twine, tapes and stake off in the fourth spring, or in November
// where somebody was late.
func (l *life) free(year int) bool {
	t := l.date(year, time.April, 29, 30)
	if l.odds(0.3) {
		t = l.date(year, time.November, 2, 20)
	}
	l.say(t, "MK", &record.TwineCut{})
	l.say(t.Add(time.Minute), "MK", &record.TapesLoosened{})
	l.say(t.Add(2*time.Minute), "MK", &record.Untied{})
	return true
}
