package record

import (
	"testing"
	"time"
)

// lost writes a stump grafted with two scions that both died.
func lost(l *laptop) {
	l.say(may(1, 9, 0), &StumpAdded{})
	l.say(may(2, 9, 0), &CutBack{Height: Measure{1800, "1.8m"}})
	l.say(may(2, 9, 1), &Gashed{Number: 2})
	l.say(may(12, 10, 0), &ScionSet{Slot: 1, Checks: AllGood})
	l.say(may(12, 10, 5), &ScionSet{Slot: 2, Checks: AllGood})
	l.say(may(12, 10, 30), &Sealed{Wrapped})
}

func dead(slots ...int) *Visited {
	v := &Visited{}
	for _, s := range slots {
		v.Found = append(v.Found, Finding{Slot: s, State: Dead, Cause: "bled"})
	}
	return v
}

func nextYear(day int) time.Time { return may(day, 9, 0).AddDate(1, 0, 0) }

// However the first grafting ended, cutting back again starts anew with the old
// record kept.
func TestGraftingAgainStartsAnew(t *testing.T) {
	for name, end := range map[string]func(l *laptop){
		"failed":             func(l *laptop) { l.say(may(30, 9, 0), &Failed{Cause: "bled"}) },
		"seen dead":          func(l *laptop) { l.say(may(30, 9, 0), dead(1, 2)) },
		"seen dead in turn":  func(l *laptop) { l.say(may(28, 9, 0), dead(2)); l.say(may(30, 9, 0), dead(1)) },
		"left for a season":  func(l *laptop) { l.say(may(30, 9, 0), &GivenUp{Why: "runs", Season: true}) },
		"failed and left it": func(l *laptop) { l.say(may(30, 9, 0), dead(1, 2)); l.say(may(30, 9, 1), &Failed{Cause: "bled"}) },
	} {
		for first, body := range map[string]Body{"limbs": &NurseJudged{Limbs: 1}, "cut": &CutBack{}, "gash": &Gashed{Number: 2}} {
			l := newLaptop("AB")
			lost(l)
			end(l)
			ended := l.fold().Stage()
			l.say(nextYear(10), body)
			l.say(nextYear(10).Add(time.Minute), &CutBack{Height: Measure{1700, "1.7m"}}, l.fold().Answers("cut-back")...)
			s := l.fold()
			if len(s.Attempts) != 2 || len(s.Attempts[0].Grafts) != 2 || s.Attempts[0].CutBack.What.Height.Typed != "1.8m" {
				t.Fatalf("%s, then %s: %d attempts, the first %+v", name, first, len(s.Attempts), s.Attempts[0])
			}
			if s.Attempts[0].Stage() != ended || s.Stage() != StageDraining || len(s.Clashes) != 0 || len(s.Now().Grafts) != 0 {
				t.Errorf("%s, then %s: %s became %s, now %s, clashes %v", name, first, ended, s.Attempts[0].Stage(), s.Stage(), s.Clashes)
			}
		}
	}
}

func TestOneGraftAliveStartsNothingAnew(t *testing.T) {
	l := newLaptop("AB")
	lost(l)
	l.say(may(30, 9, 0), dead(1))
	l.say(may(31, 9, 0), &Gashed{Number: 1})
	if s := l.fold(); len(s.Attempts) != 1 || s.Stage() != StageSealed {
		t.Errorf("one graft of two dead: %d attempts, %s", len(s.Attempts), s.Stage())
	}
}

// Notes on paper come into the program late; their own time says to which
// attempt they belong.
func TestLatePaperNotesGoToTheirAttempt(t *testing.T) {
	l := newLaptop("AB")
	lost(l)
	l.say(may(30, 9, 0), &Failed{Cause: "bled"})
	l.say(nextYear(10), &CutBack{})
	l.say(may(12, 11, 0), &Looked{Bleeding: Weeping})
	l.say(may(12, 14, 0), &PaintedWhite{})
	l.say(nextYear(18), &Looked{Bleeding: Dry})
	s := l.fold()
	old, now := s.Attempts[0], s.Now()
	if len(s.Attempts) != 2 || len(old.Looks) != 1 || old.White == nil || old.Looks[0].What.Bleeding != Weeping {
		t.Errorf("the first attempt has looks %v, white %v", old.Looks, old.White)
	}
	if len(now.Looks) != 1 || now.Looks[0].What.Bleeding != Dry || now.White != nil {
		t.Errorf("the second attempt has looks %v, white %v", now.Looks, now.White)
	}
	if !s.Newest.Equal(nextYear(18)) {
		t.Errorf("the newest time is %v", s.Newest)
	}
}

// A graft's state is that of the latest visit by time; a slot that was looked
// at but never set is no graft.
func TestHowGraftsFare(t *testing.T) {
	l := newLaptop("AB")
	lost(l)
	l.say(may(30, 9, 0), &Visited{[]Finding{{Slot: 1, State: Pushing}, {Slot: 2, State: Swelling}, {Slot: 7, State: Growing}}})
	l.say(may(28, 9, 0), &Visited{[]Finding{{Slot: 1, State: Swelling}, {Slot: 2, State: Swelling}}})
	l.say(may(31, 9, 0), &Visited{[]Finding{{Slot: 1, State: Dead, Cause: "wind"}}})
	a := l.fold().Now()
	if len(a.Grafts) != 2 {
		t.Fatalf("%d grafts", len(a.Grafts))
	}
	one, two := a.Grafts[0], a.Grafts[1]
	if one.State != Dead || one.Cause != "wind" || !one.Since.Equal(may(31, 9, 0)) {
		t.Errorf("the first is %+v", one)
	}
	if two.State != Swelling || !two.Since.Equal(may(28, 9, 0)) {
		t.Errorf("the second is %+v", two)
	}
	if !a.FirstPush().Equal(may(30, 9, 0)) || a.AllDead() || !a.SetAt().Equal(may(12, 10, 5)) {
		t.Errorf("first push %v, all dead %v, set at %v", a.FirstPush(), a.AllDead(), a.SetAt())
	}
}

// Of two cuttings back that clash the later by order stands; whether it was for
// an earlier season is told from that one, not from the later day.
func TestAStaleCutIsTheOneThatStands(t *testing.T) {
	l := newLaptop("AB")
	december := time.Date(2026, 12, 11, 9, 0, 0, 0, may(1, 0, 0).Location())
	l.say(may(1, 9, 0).AddDate(0, 0, -47), &CutBack{Height: Measure{610, "24in"}})
	l.say(december, &CutBack{Height: Measure{1067, "42in"}})
	l.say(may(1, 9, 0), &NurseJudged{Limbs: 1})
	if s := l.fold(); len(s.Attempts) != 2 || s.Now().CutBack != nil {
		t.Errorf("%d attempts, now cut back %v", len(s.Attempts), s.Now().CutBack)
	}
}
