package sample

import (
	"time"

	"barkslip/core/record"
	"barkslip/core/unit"
)

// seal tells sealing and painting. Most are painted within the three hours;
// some are wet still, some are come to late, and a few are entered from paper
// in the evening.
func (l *life) seal() {
	cover := record.Wrapped
	if l.odds(0.2) {
		cover = record.Bare
	}
	who := l.hand.initials
	l.say(l.sealed, who, &record.Sealed{Cover: cover})
	white := l.sealed.Add(time.Duration(l.between(125, 175)) * time.Minute)
	switch {
	case l.staged == lateToPaint:
		white = l.sealed.Add(5 * time.Hour)
	case l.staged == stillWet || l.odds(0.12):
		wet := l.sealed.Add(time.Duration(l.between(122, 138)) * time.Minute)
		l.say(wet, who, &record.StillWet{Rain: l.odds(0.2)})
		white = wet.Add(time.Duration(l.between(32, 50)) * time.Minute)
	case l.odds(0.05):
		white = l.sealed.Add(time.Duration(l.between(200, 320)) * time.Minute)
	}
	l.painted = white
	switch {
	case l.odds(0.04):
		evening := later(white, unit.DateOf(white).At(20, l.between(0, 59), l.Zone))
		l.sayLate(white, evening, who, &record.PaintedWhite{})
	case l.odds(0.01):
		wrong := l.say(l.sealed.Add(20*time.Minute), who, &record.PaintedWhite{})
		l.say(l.sealed.Add(21*time.Minute), who, &record.Withdrawn{Of: wrong})
		l.say(white, who, &record.PaintedWhite{})
	default:
		l.say(white, who, &record.PaintedWhite{})
	}
	if cover == record.Bare {
		l.say(l.at(l.sealed, 5, 7), who, &record.Resealed{})
	}
}

// at is a working moment some days after another.
func (l *life) at(from time.Time, least, most int) time.Time {
	y, m, d := from.Date()
	day := time.Date(y, m, d+l.between(least, most), l.between(7, 16), l.between(0, 59), 0, 0, l.Zone)
	if day.Weekday() == time.Sunday {
		day = day.AddDate(0, 0, 1)
	}
	return day
}
