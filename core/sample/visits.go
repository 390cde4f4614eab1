package sample

import (
	"time"

	"barkslip/core/record"
	"barkslip/core/unit"
)

// summer tells the visits of the first season and what they lead to. It says
// whether the stump took: one not yet decided counts as taken.
func (l *life) summer() bool {
	l.settleIn()
	for _, days := range [][2]int{{14, 19}, {24, 30}, {36, 44}, {58, 66}} {
		t := l.at(l.sealed, days[0], days[1])
		if l.gone(t) {
			break
		}
		if alive := l.visit(t); alive == 0 {
			l.lost(t)
			return false
		}
	}
	best := l.best()
	if best == nil {
		return true
	}
	l.sprouts()
	l.train(best)
	return l.years()
}

// settleIn is the first weeks: the seal looked at, earwig rings, the stake.
func (l *life) settleIn() {
	who := l.hand.initials
	cracked := l.odds(0.08)
	l.say(l.at(l.sealed, 2, 4), who, &record.SealChecked{Cracked: cracked})
	if cracked && l.odds(0.9) {
		l.say(l.at(l.sealed, 5, 6), who, &record.Resealed{})
	}
	ring := l.at(l.sealed, 12, 18)
	l.say(ring, "AS", &record.RingSet{})
	l.say(l.at(ring, 14, 17), "AS", &record.RingSet{})
	l.say(l.at(l.sealed, 14, 20), "RD", &record.Staked{Height: inches(stakeInches), Side: unit.Bearing(l.between(26, 30) * 10)})
}

const stakeInches = 48 // above the graft

// visit tells what every graft not yet seen dead looks like, and counts those
// alive.
func (l *life) visit(t time.Time) (alive int) {
	found := make([]record.Finding, 0, len(l.scions))
	for i := range l.scions {
		s := &l.scions[i]
		if s.buried {
			continue
		}
		f := s.look(unit.DateOf(t))
		if s.buried = f.State == record.Dead; !s.buried {
			alive++
		}
		found = append(found, f)
	}
	l.say(t, l.hand.initials, &record.Visited{Found: found})
	return alive
}

// look is what a visit finds on one graft.
func (s *scion) look(d unit.Date) record.Finding {
	f := record.Finding{Slot: s.slot}
	switch {
	case !s.lives && d >= s.dies:
		f.State, f.Cause, f.Scratch = record.Dead, s.cause, record.Brown
	case s.pushes != 0 && d >= s.pushes+14:
		f.State = record.Growing
	case s.pushes != 0 && d >= s.pushes:
		f.State = record.Pushing
	case s.pushes != 0 && d >= s.pushes-6:
		f.State = record.Swelling
	default:
		f.State = record.NoChange
		if d >= unit.DateOf(s.set)+35 {
			f.Scratch = record.Green
		}
	}
	return f
}

// best is the living graft that pushes first.
func (l *life) best() *scion {
	var best *scion
	for i := range l.scions {
		if s := &l.scions[i]; s.lives && (best == nil || s.pushes < best.pushes) {
			best = s
		}
	}
	return best
}

func (l *life) living() (n int) {
	for _, s := range l.scions {
		if s.lives {
			n++
		}
	}
	return n
}

// lost tells the end of an attempt on which every graft died.
func (l *life) lost(t time.Time) {
	causes := map[string]int{}
	cause := l.scions[0].cause
	for _, s := range l.scions {
		if causes[s.cause]++; causes[s.cause] > causes[cause] {
			cause = s.cause
		}
	}
	l.say(t.Add(time.Minute), l.hand.initials, &record.Failed{Cause: cause})
	l.say(t.Add(2*time.Minute), l.hand.initials, &record.SproutsKept{Number: l.between(1, 3)})
}

// sprouts are rubbed through the first season, at longer and longer times.
func (l *life) sprouts() {
	t := l.sealed
	for _, days := range [][2]int{{14, 18}, {8, 11}, {10, 15}, {16, 24}, {20, 30}} {
		t = l.at(t, days[0], days[1])
		if l.gone(t) {
			return
		}
		l.say(t, "AS", &record.SproutsRubbed{Near: l.between(0, 6), Below: l.between(0, 4), Leaf: l.one("little", "some", "some", "much")})
	}
}
