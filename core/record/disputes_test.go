package record_test

import (
	"slices"
	"testing"

	"barkslip/core/record"
	"barkslip/core/record/recordtest"
)

// graftedTwice is a stump with two scions, sealed on 4 May at 10:00.
func graftedTwice() *recordtest.Laptop {
	l := recordtest.NewLaptop("RK")
	at := recordtest.May(4, 9, 0)
	l.Say(recordtest.May(1, 9, 0).AddDate(0, 0, -7), cutBack(40))
	l.Say(at, &record.ScionSet{Slot: 1})
	l.Say(at, &record.ScionSet{Slot: 2})
	l.Say(recordtest.May(4, 10, 0), &record.Sealed{Cover: record.Wrapped})
	return l
}

func union(a, b *recordtest.Laptop) *recordtest.Laptop {
	out := a.Apart("MK")
	for _, e := range b.Events {
		if !slices.ContainsFunc(out.Events, func(o record.Event) bool { return o.ID == e.ID }) {
			out.Events = append(out.Events, e)
		}
	}
	return out
}

// Two laptops that answer differently about one thing disagree, whichever is
// read first; the careful answer holds until a person settles it, and that can be
// taken back.
func TestDatedAnswersThatContradict(t *testing.T) {
	visit := recordtest.Visit
	for _, c := range []struct {
		name         string
		one, other   record.Body
		day, minutes int
		holds        func(a *record.Attempt) bool
		settled      func(a *record.Attempt) bool // with the first picked
	}{
		{"white or wet", &record.PaintedWhite{}, &record.StillWet{}, 4, 5, func(a *record.Attempt) bool { return !a.IsWhite() && len(a.StillWet) == 1 },
			func(a *record.Attempt) bool { return a.IsWhite() && len(a.StillWet) == 0 }},
		{"sealed", &record.Sealed{Cover: record.Wrapped}, &record.Sealed{Cover: record.Bare}, 4, 5,
			func(a *record.Attempt) bool { return a.Sealed.What.Cover == record.Bare }, func(a *record.Attempt) bool { return a.Sealed.What.Cover == record.Wrapped }},
		{"seal", &record.SealChecked{}, &record.SealChecked{Cracked: true}, 6, 200,
			func(a *record.Attempt) bool { return len(a.SealChecks) == 1 && a.SealChecks[0].What.Cracked }, func(a *record.Attempt) bool { return !a.SealChecks[0].What.Cracked }},
		{"graft", visit(record.Dead, record.Pushing), visit(record.Pushing, record.Pushing), 24, 200,
			func(a *record.Attempt) bool { return a.Graft(1).State == "" && a.Graft(2).State == record.Pushing }, func(a *record.Attempt) bool { return a.Graft(1).State == record.Dead }},
		{"lost", &record.Failed{Cause: "wind"}, visit(record.Pushing, record.Pushing), 24, 200,
			func(a *record.Attempt) bool { return a.Failed == nil && a.Graft(1).State == record.Pushing }, func(a *record.Attempt) bool { return a.Failed != nil }},
		{"twine", &record.TwineChecked{}, &record.TwineChecked{Tight: true}, 24, 10, func(a *record.Attempt) bool { _, tight := a.SeenTight(); return tight },
			func(a *record.Attempt) bool { _, tight := a.SeenTight(); return !tight }},
	} {
		base := graftedTwice()
		if c.name == "twine" {
			base.Say(recordtest.May(20, 9, 0), &record.Twined{Loops: 2, Loop: recordtest.Inches(12), Stem: recordtest.Inches(4)})
		}
		one, other := base.Apart("RK"), base.Apart("AB")
		one.Say(recordtest.May(c.day, 14, 0), c.one)
		other.Say(recordtest.May(c.day, 14, 0), &record.Noted{Text: "another clock"})
		other.Say(recordtest.May(c.day, 14, c.minutes), c.other)
		both, back := union(one, other), union(other, one)
		s := both.Fold()
		if d := recordtest.Diff(s, back.Fold()); d != "" {
			t.Errorf("%s: the order makes a difference\n%s", c.name, d)
		}
		if len(s.Clashes) != 1 || !c.holds(s.Now()) {
			t.Errorf("%s: %d disagreements, %+v", c.name, len(s.Clashes), s.Now())
			continue
		}
		clash := s.Clashes[0]
		first := clash.Events[slices.IndexFunc(clash.Events, func(e record.Event) bool { return e.Hand == "RK" && e.Body.Kind() == c.one.Kind() })]
		if c.name == "sealed" {
			first = clash.Events[0]
		}
		both.Append(s.Settle(clash, first)...)
		if s := both.Fold(); len(s.Clashes) != 0 || !c.settled(s.Now()) {
			t.Errorf("%s: settled, %d disagree", c.name, len(s.Clashes))
		}
		both.TakeBack(recordtest.May(25, 9, 0))
		if s := both.Fold(); len(s.Clashes) != 1 || !c.holds(s.Now()) {
			t.Errorf("%s: taken back, %d disagree", c.name, len(s.Clashes))
		}
	}
}

// What changes, or is said with the other answer at hand, is no disagreement.
func TestWhatDoesNotContradict(t *testing.T) {
	one := graftedTwice()
	one.Say(recordtest.May(4, 12, 0), &record.StillWet{})
	one.Say(recordtest.May(4, 12, 10), &record.PaintedWhite{}) // the same hand
	if s := one.Fold(); len(s.Clashes) != 0 || !s.Now().IsWhite() {
		t.Errorf("one hand disagrees with itself: %v", s.Clashes)
	}
	later := graftedTwice()
	later.Say(recordtest.May(4, 12, 0), &record.StillWet{})
	later.Hand = "AB"
	later.Say(recordtest.May(4, 12, 40), &record.PaintedWhite{}) // it has dried
	if n := len(later.Fold().Clashes); n != 0 {
		t.Errorf("dried since, and %d disagree", n)
	}
	known := graftedTwice()
	known.Say(recordtest.May(24, 9, 0), recordtest.Visit(record.Pushing, record.Pushing))
	known.Hand = "AB"
	if _, err := known.Give(record.Given{Bodies: []record.Body{recordtest.Visit(record.Dead, record.Pushing)}, At: recordtest.May(24, 15, 0)}); err != nil {
		t.Fatal(err)
	}
	if s := known.Fold(); len(s.Clashes) != 0 || s.Now().Graft(1).State != record.Dead {
		t.Errorf("said with the other at hand, and %v disagree", s.Clashes)
	}
}
