package sample

import (
	"math"
	"time"

	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/core/walk"
)

// peril is a reason to lose a scion and how much it weighs in the odds.
type peril struct {
	cause  string
	weight float64
}

// decideFates settles which scions live. The odds fall with sap on the face,
// heat in the week after, white put on late, wood that was warm or single
// budded, a check that was not good, and the hand; what strikes a stump strikes
// its scions together.
func (l *life) decideFates(c *walk.Case, sealed time.Time) {
	together := 1.1 * (l.real() + l.real() - 1)
	shared := []peril{{"bled", bled(c.A, l.sap)}, {"overheated", l.overheated(sealed)}, {"poor wood", l.woodPeril()}}
	for i := range l.scions {
		s := &l.scions[i]
		worst, weight := l.chanceCause(), 0.0
		sum := 0.0
		perils := shared
		if s.faulty {
			perils = append(perils[:len(perils):len(perils)], peril{"bark lifted", 1.2})
		}
		for _, p := range perils {
			sum += p.weight
			if p.weight > weight {
				worst, weight = p.cause, p.weight
			}
		}
		odds := 1.15 + l.hand.skill + together - sum
		l.fate(s, 1/(1+math.Exp(-odds)), worst)
	}
}

func (l *life) fate(s *scion, chance float64, cause string) {
	day := unit.DateOf(s.set)
	s.pushes = day.Add(l.between(13, 25))
	s.lives = l.keeps() && s == &l.scions[0] || l.odds(chance) && !l.loses()
	switch {
	case s.lives:
	case l.staged == justLost:
		s.cause, s.dies, s.pushes = "overheated", day.Add(12), 0
	case l.odds(0.2):
		s.cause, s.dies = "collapsed after push", s.pushes.Add(l.between(12, 26))
	case cause == "overheated":
		s.cause, s.dies, s.pushes = cause, day.Add(l.between(18, 24)), 0
	default:
		s.cause, s.dies, s.pushes = cause, day.Add(l.between(26, 44)), 0
	}
}

// chanceCause is a loss that comes from outside.
func (l *life) chanceCause() string {
	return l.one("never moved", "never moved", "bird perched", "wind", "earwigs", "dried out or seal cracked", "unknown")
}

// bled weighs the sap that was on the face when it was grafted.
func bled(a *record.Attempt, sap float64) float64 {
	if look := record.LastOf(a.Looks); len(a.Against) > 0 && look != nil {
		return map[record.Bleeding]float64{record.Dry: 0.2, record.Damp: 1, record.Weeping: 1.8, record.Running: 3}[look.What.Bleeding]
	}
	return 1.6 * max(0, sap-0.1)
}

func (l *life) overheated(sealed time.Time) float64 {
	weight := 0.0
	day := unit.DateOf(sealed)
	for d := day; d < day.Add(7); d++ {
		if l.high(d) >= 88 {
			weight += 0.2
		}
	}
	return weight
}

// paintedLate may cost scions under dark sealer their life.
func (l *life) paintedLate(late time.Duration) {
	for i := range l.scions {
		if s := &l.scions[i]; s.lives && l.odds(0.06*late.Hours()) {
			s.lives, s.cause, s.pushes = false, "overheated", 0
			s.dies = unit.DateOf(s.set).Add(l.between(18, 24))
		}
	}
}

func (l *life) woodPeril() float64 {
	weight := 0.0
	if l.wood.warm {
		weight += 1.4
	}
	if l.wood.Buds == record.First {
		weight += 0.3
	}
	return weight
}
