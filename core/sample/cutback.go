package sample

import (
	"time"

	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// cutBack tells the first visit, eight days or so before the graft: limbs
// judged, the top cut, two gashes. It returns the day.
func (l *life) cutBack(day unit.Date) unit.Date {
	cut := workday(day.Add(-8))
	order := l.index % 40
	at := cut.At(13, 0, l.Zone).Add(time.Duration(order*6) * time.Minute)
	who := l.hand.initials
	l.limbs(at, who)
	l.height = l.between(80, 84)
	body := &record.CutBack{Height: inches(l.height), Across: eighths(l.across)}
	l.say(at.Add(2*time.Minute), who, body)
	if l.staged == disputed {
		l.say(at.Add(9*time.Minute), "AS", &record.CutBack{Height: inches(l.height - 3)})
	}
	l.gash(at.Add(3 * time.Minute))
	l.found.CutBack, l.found.Across = cut, unit.Length(l.across)*unit.Inch/8
	return cut
}

// limbs judges the limbs below the graft; now and then one is too near and is
// taken off at once.
func (l *life) limbs(at time.Time, who string) {
	leaf := l.one("little", "some", "some", "much")
	l.nurse = 0
	switch {
	case l.odds(0.07):
		l.say(at, who, &record.NurseJudged{Leaf: "none"})
		l.found.NoLimbs = true
	case l.odds(0.08):
		l.say(at, who, &record.NurseJudged{Limbs: 2, Nearest: inches(l.between(8, 16)), Leaf: leaf})
		l.say(at.Add(time.Minute), who, &record.LimbTakenOff{Left: 1, Nearest: inches(l.between(20, 34))})
		l.nurse = 1
	default:
		l.nurse = l.between(1, 3)
		l.say(at, who, &record.NurseJudged{Limbs: l.nurse, Nearest: inches(l.between(19, 40)), Leaf: leaf})
	}
}

// gash makes two gashes, and lets some sap off.
func (l *life) gash(at time.Time) {
	depth := eighths(l.between(4, 6))
	if unit.Length(l.across)*unit.Inch/8 < trade.SmallStem {
		depth = eighths(l.across / 4)
	}
	l.say(at, l.hand.initials, &record.Gashed{Number: trade.GashesAtATime, Depth: depth})
	l.found.Gashed = at
	l.found.Gashes += trade.GashesAtATime
	l.sap -= 0.08 + 0.12*l.real()
}

func (l *life) drill(at time.Time) {
	l.say(at, l.hand.initials, &record.Drilled{Number: trade.HolesAtATime})
	l.found.Drilled = at
	l.found.Holes += trade.HolesAtATime
	l.sap -= 0.1 + 0.15*l.real()
}
