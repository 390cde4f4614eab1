package record_test

import (
	"testing"
	"time"

	"barkslip/core/record"
	"barkslip/core/record/recordtest"
)

// What was given in one go is taken back and put back in one go, whatever it is;
// what was given in two is not.
func TestAnActIsTakenBackAsOne(t *testing.T) {
	d := grafted()
	at := on("2027-05-26", 9, 0)
	give(t, d, record.Given{Bodies: bodies(&record.Noted{Text: "before"}), At: at})
	give(t, d, record.Given{Bodies: bodies(&record.RingSet{}, &record.SproutsRubbed{Near: 2}, &record.Noted{Text: "with it"}), At: at})
	taken, _ := d.TakeBack(at)
	a := d.Fold()
	if len(taken) != 3 || len(a.Notes) != 1 || len(a.Now().Rings)+len(a.Now().Rubbed) != 0 {
		t.Fatalf("%d taken back, %d notes stand", len(taken), len(a.Notes))
	}
	if back, _ := d.PutBack(at); len(back) != 3 || len(d.Fold().Notes) != 2 {
		t.Errorf("%d put back", len(back))
	}
	if _, ok := d.PutBack(at); ok {
		t.Error("something more was put back")
	}
}

func TestTwoActsAreTakenBackOneByOne(t *testing.T) {
	d := grafted()
	at := on("2027-10-05", 9, 0)
	give(t, d, record.Given{Bodies: bodies(&record.SeasonsEnd{Word: "dead"}), At: at})
	give(t, d, record.Given{Bodies: bodies(recordtest.Visit(record.Dead, record.Dead)), At: at}) // a key of its own, in the same second
	if taken, _ := d.TakeBack(at); len(taken) != 1 || len(d.Fold().Now().Seasons) != 1 {
		t.Errorf("%d taken back", len(taken))
	}
	d.TakeBack(at)
	if back, _ := d.PutBack(at); len(back) != 1 || len(d.Fold().Now().Visits) != 0 {
		t.Errorf("%d put back", len(back))
	}
	if back, _ := d.PutBack(at); len(back) != 1 || len(d.Fold().Now().Visits) != 1 {
		t.Errorf("%d put back", len(back))
	}
}

// Answers of several acts that were taken back in one go, as digits that were the
// beginning of a place, are put back in one go.
func TestWhatIsTakenBackInOneGoIsPutBackInOneGo(t *testing.T) {
	d := grafted()
	at := on("2027-05-26", 9, 0)
	one := give(t, d, record.Given{Bodies: bodies(&record.RingSet{}), At: at})
	two := give(t, d, record.Given{Bodies: bodies(&record.SproutsRubbed{Near: 2}), At: at})
	d.Append(record.Undo(append(two, one...), at, "AB")...)
	if back, _ := d.PutBack(at); len(back) != 2 || len(d.Fold().Now().Rings) != 1 {
		t.Errorf("%d put back", len(back))
	}
}

// Journals of version 1 name no acts: there a pair that one key gives, one right
// behind the other for one second and by one hand, is one answer.
func TestPairsOfVersionOne(t *testing.T) {
	at := on("2029-10-05", 9, 0)
	dead := recordtest.Visit(record.Dead, record.Dead)
	for _, c := range []struct {
		name        string
		first, then record.Body
		want        int
		change      func(e *record.Event)
	}{
		{"season's end and its visit", &record.SeasonsEnd{Word: "dead"}, dead, 2, nil},
		{"twine cut and untied", &record.TwineCut{}, &record.Untied{}, 2, nil},
		{"headed back and the rival off", &record.HeadedBack{}, &record.RivalCut{}, 2, nil},
		{"cracked and mended", &record.SealChecked{Cracked: true}, &record.Resealed{}, 2, nil},
		{"no pair", &record.RingSet{}, &record.Noted{Text: "x"}, 1, nil},
		{"a pair the other way round", dead, &record.SeasonsEnd{Word: "dead"}, 1, nil},
		{"a minute later", &record.TwineCut{}, &record.Untied{}, 1, func(e *record.Event) { e.At = e.At.Add(time.Minute) }},
		{"another hand", &record.TwineCut{}, &record.Untied{}, 1, func(e *record.Event) { e.Hand = "CD" }},
		{"something between", &record.TwineCut{}, &record.Untied{}, 1, func(e *record.Event) { e.Clock++ }},
		{"one with an act", &record.TwineCut{}, &record.Untied{}, 1, func(e *record.Event) { e.Act = record.ID{9} }},
	} {
		d := grafted()
		d.Say(at, c.first)
		d.Say(at, c.then)
		if c.change != nil {
			c.change(&d.Events[len(d.Events)-1])
		}
		before := len(d.Fold().Live)
		if taken, _ := d.TakeBack(at); len(taken) != c.want || len(d.Fold().Live) != before-c.want {
			t.Errorf("%s: %d taken back", c.name, len(taken))
		}
		if back, _ := d.PutBack(at); len(back) != c.want || len(d.Fold().Live) != before {
			t.Errorf("%s: %d put back", c.name, len(back))
		}
	}
}

// row is three stumps painted white by one answer.
func row() (stumps []*record.Stump, act record.ID) {
	act = record.ID{0xac, 0x70}
	for tree := range uint16(3) {
		id := record.StumpID{Block: recordtest.TheBlock, Row: 4, Tree: 1 + tree}
		events := []record.Event{
			{ID: record.ID{1, byte(tree)}, Clock: 1, At: on("2027-05-12", 9, 0), Stump: id, Body: &record.ScionSet{Slot: 1}},
			{ID: record.ID{2, byte(tree)}, Clock: 2, At: on("2027-05-12", 10, 0), Stump: id, Body: &record.Sealed{Cover: record.Bare}},
			{ID: record.ID{3, byte(tree)}, Act: act, Clock: 3 + uint64(tree), At: on("2027-05-12", 13, 0), Stump: id, Body: &record.PaintedWhite{}},
		}
		stumps = append(stumps, record.Fold(id, events))
	}
	return stumps, act
}

func after(s *record.Stump, more ...record.Event) *record.Stump {
	return record.Fold(s.ID, append(append([]record.Event{}, s.All...), more...))
}

func TestARowAnsweredIsTakenBackAsOneAct(t *testing.T) {
	stumps, act := row()
	events := record.ActOn(stumps, act)
	if got := record.SayAct(events, 0); len(events) != 3 || got != "painted white, 3 stumps" {
		t.Fatalf("%d events, called %q", len(events), got)
	}
	for i, w := range record.Undo(events, on("2027-05-12", 14, 0), "AB") {
		w.ID, w.Clock = record.ID{4, byte(i)}, 10+uint64(i)
		if w.Stump != stumps[i].ID || w.Hand != "AB" {
			t.Errorf("the withdrawal is about %s, by %s", w.Stump.Place(), w.Hand)
		}
		if s := after(stumps[i], w); s.Stage() != record.StageSealed {
			t.Errorf("%s is %s", s.ID.Place(), s.Stage())
		}
	}
	if got := record.ActOn(stumps, record.None); len(got) != 0 {
		t.Errorf("without an act %d events", len(got))
	}
}

// What of an act was taken back, answered anew or has not come yet is left out.
func TestWhatOfAnActIsLeft(t *testing.T) {
	stumps, act := row()
	stumps[0] = after(stumps[0], record.Event{ID: record.ID{8}, Clock: 20, At: on("2027-05-12", 14, 0), Stump: stumps[0].ID,
		Body: &record.Withdrawn{Of: record.ID{3, 0}}})
	stumps[1] = after(stumps[1], record.Event{ID: record.ID{9}, Act: record.ID{7}, Clock: 21, At: on("2027-05-12", 14, 0), Stump: stumps[1].ID,
		Body: &record.PaintedWhite{}, Replaces: []record.ID{{3, 1}}})
	if got := record.ActOn(stumps, act); len(got) != 1 || got[0].Stump != stumps[2].ID {
		t.Errorf("left of the act: %v", got)
	}
}

// Half of an act has come by a join, and half of its withdrawals: what is there is
// taken back and put back, and the rest joins on when it comes.
func TestHalfAnAct(t *testing.T) {
	d := grafted()
	at := on("2027-10-05", 9, 0)
	dead := bodies(&record.SeasonsEnd{Word: "dead"}, recordtest.Visit(record.Dead, record.Dead), &record.Failed{Cause: "bled"})
	out := give(t, d, record.Given{Bodies: dead, At: at})
	whole := d.Events
	d.Events = append([]record.Event{}, whole[:len(whole)-2]...) // only the season's end
	if taken, _ := d.TakeBack(at); len(taken) != 1 || len(d.Fold().Now().Seasons) != 0 {
		t.Fatalf("%d taken back", len(taken))
	}
	d.Events = append(d.Events, whole[len(whole)-2:]...)
	s := d.Fold()
	if e, _ := s.Undoable(); len(s.Act(e)) != 2 || len(s.GivenWith(e)) != 1 || s.Stage() != record.StageFailed {
		t.Errorf("of the rest %d stand, %s", len(s.Act(e)), s.Stage())
	}
	all := d.Fold()
	d.Append(record.Undo(all.Act(out[2]), at, "AB")...)
	d.Events = d.Events[:len(d.Events)-1] // one of the withdrawals did not come
	if back, _ := d.PutBack(at); len(back) != 1 {
		t.Errorf("%d put back", len(back))
	}
	if s := d.Fold(); s.Stage() != record.StageFailed || len(s.Now().Visits) != 1 {
		t.Errorf("%s, %d visits", s.Stage(), len(s.Now().Visits))
	}
}
