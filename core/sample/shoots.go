package sample

import (
	"math"
	"time"

	"barkslip/core/record"
	"barkslip/core/unit"
)

// train tells the leader's first summer: chosen, tied, its rivals pinched,
// twine put round it.
func (l *life) train(best *scion) {
	push := best.pushes.At(9, 0, l.Zone)
	chosen := l.at(push, 15, 26)
	l.say(chosen, "JT", &record.LeaderChosen{Slot: best.slot, Shoot: l.one("upper", "upper", "lower")})
	t := chosen
	for i := range 3 {
		t = l.at(t, 2+12*min(i, 1), 3+15*min(i, 1))
		if t.Month() > time.August || t.Month() == time.August && t.Day() > 15 {
			break
		}
		l.say(t, "RD", &record.Pinched{})
	}
	l.ties(push, chosen)
	l.twine(push)
	year := push.Year()
	l.seasonsEnd(year)
}

// shoot is the leader's length in eighths of an inch some days after its push:
// fast at first, slower towards the end of the season.
func (l *life) shoot(days float64) int {
	final := 8 * (14 + 52*l.vigour)
	return int(final * (1 - math.Exp(-days/45)))
}

func days(from, to time.Time) float64 { return to.Sub(from).Hours() / 24 }

// ties begin when the leader is chosen and follow its growth.
func (l *life) ties(push, chosen time.Time) {
	t := chosen
	for i, gap := range [][2]int{{0, 3}, {7, 9}, {7, 11}, {12, 16}, {14, 20}} {
		t = later(l.at(t, gap[0], gap[1]), chosen.Add(4*time.Minute))
		if l.gone(t) || t.Month() > time.September {
			return
		}
		broken := i == 2 && l.odds(0.03)
		if broken {
			l.vigour *= 0.7
			l.say(t.Add(-time.Minute), "RD", &record.LeaderBroken{Cause: l.one("wind", "bird perched"), Promoted: l.best().slot, Shoot: "lower"})
		}
		l.say(t, "RD", &record.Tied{Shoot: eighths(l.shoot(days(push, t))), Broken: broken})
	}
}

// twine goes on when the leader has three feet, or at the start of August.
func (l *life) twine(push time.Time) {
	t := push.AddDate(0, 0, 30)
	august := time.Date(push.Year(), time.August, 1, 8, 0, 0, 0, l.Zone)
	for t.Before(august) && l.shoot(days(push, t)) < 36*8 {
		t = t.AddDate(0, 0, 5)
	}
	material := "natural"
	if l.odds(0.3) {
		material = "synthetic"
	}
	l.say(l.at(t, 1, 12), "RD", &record.Twined{Loops: 2, Loop: inches(l.between(9, 14)), Stem: eighths(l.stem(0)), Material: material})
}

// stem is the leader's girth above the graft in eighths of an inch, so many
// seasons on: about 3 in more each year on an old root.
func (l *life) stem(seasons int) int { return 12 + int(22*l.vigour*float64(seasons)) }

func (l *life) seasonsEnd(year int) {
	word := "fair"
	switch {
	case l.vigour > 1.05:
		word = "strong"
	case l.vigour < 0.7:
		word = "weak"
	}
	october := unit.MakeDate(year, time.October, 1)
	l.say(l.on(october.Add(l.between(3, 28))), "MK", &record.SeasonsEnd{Alive: l.living(), Word: word})
	l.say(l.on(october.Add(l.between(35, 70))), "AS", &record.TapesLoosened{})
}
