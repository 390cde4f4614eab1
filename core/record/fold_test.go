package record

import (
	"reflect"
	"slices"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"barkslip/core/unit"
)

var (
	theBlock = ID{0xb1}
	stump417 = StumpID{theBlock, 4, 17, 0}
)

// laptop is one journal being written: the clock runs on from the newest event
// it knows.
type laptop struct {
	hand   string
	ids    *int
	events []Event
}

func newLaptop(hand string) *laptop { return &laptop{hand: hand, ids: new(int)} }

// apart is a copy that goes on by itself; the ids stay apart as well.
func (l *laptop) apart(hand string) *laptop {
	return &laptop{hand, l.ids, slices.Clone(l.events)}
}

func (l *laptop) say(at time.Time, body Body, replaces ...ID) Event {
	*l.ids++
	e := Event{ID: ID{0xe0, byte(*l.ids >> 8), byte(*l.ids), l.hand[0]}, Clock: 1, At: at, Hand: l.hand, Body: body, Replaces: replaces}
	if _, ok := body.(onBook); !ok {
		e.Stump = stump417
	}
	for _, known := range l.events {
		e.Clock = max(e.Clock, known.Clock+1)
	}
	l.events = append(l.events, e)
	return e
}

func (l *laptop) fold() *Stump { return Fold(stump417, onStump417(l.events)) }

func onStump417(events []Event) (out []Event) {
	for _, e := range events {
		if e.Stump == stump417 {
			out = append(out, e)
		}
	}
	return out
}

func joined(laptops ...*laptop) (all []Event) {
	for _, l := range laptops {
		all = append(all, l.events...)
	}
	return all
}

func utc(string) (*time.Location, error) { return time.UTC, nil }

// work writes a random answer, observation, correction or withdrawal.
func (l *laptop) work(t *rapid.T, p picker) {
	at := may(1+p(28), p(24), p(60))
	switch p(8) {
	case 0:
		if len(l.events) > 0 {
			l.say(at, &Withdrawn{Of: l.events[p(len(l.events))].ID})
			return
		}
	case 1:
		if len(l.events) > 0 {
			if q := l.events[p(len(l.events))].Question(); q != "" {
				for _, e := range l.events {
					if e.Question() == q {
						l.say(at, e.Body, l.fold().Answers(q)...)
						return
					}
				}
			}
		}
	case 2:
		l.say(at, &Failed{Cause: "bled"})
		return
	}
	body := p.body([]int{1, 2, 3, 4, 6, 7, 9, 14, 15, 17, 22, 27, 39, 42, 45, 46, 48, 1 + p(len(kinds)-1)}[p(18)])
	if w, ok := body.(*Withdrawn); ok {
		w.Of = l.events[p(len(l.events))].ID
	}
	l.say(at, body)
}

// Two laptops that worked apart on one block, both having added the same
// stump: joined in any order, any grouping and any number of times, their
// journals fold to one record.
func TestJoinedJournalsFoldToOneRecord(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawn(t)
		office := newLaptop("OF")
		office.say(may(1, 8, 0), &BlockMade{theBlock, "Hollow Lane"})
		a, b := office.apart("AB"), office.apart("CD")
		a.say(may(1, 9, 0), &StumpAdded{Stock: "black walnut"})
		b.say(may(1, 9, 30), &StumpAdded{Stock: "black walnut", Note: "by the gate"})
		for range rapid.IntRange(1, 25).Draw(t, "work") {
			l := []*laptop{a, b}[p(2)]
			l.work(t, p)
			if act := p(4); act > 0 { // acts of both laptops, and parts of acts
				l.events[len(l.events)-1].Act = ID{0xac, byte(act)}
			}
		}
		all := joined(a, b)
		wantStump, wantBook := Fold(stump417, onStump417(all)), FoldBook(all, utc)
		shuffled := rapid.Permutation(append(all, all[:len(all)/2]...)).Draw(t, "shuffled")
		third := slices.Concat(b.events, shuffled[:len(shuffled)/3], a.events)
		for name, events := range map[string][]Event{"other way round": joined(b, a), "shuffled": shuffled, "in parts": third} {
			if got := Fold(stump417, onStump417(events)); !reflect.DeepEqual(got, wantStump) {
				t.Fatalf("%s, the stump differs:\n%s", name, stumpDiff(wantStump, got))
			}
			if e, ok := wantStump.Undoable(); ok && !reflect.DeepEqual(wantStump.Act(e), Fold(stump417, onStump417(events)).Act(e)) {
				t.Fatalf("%s, another act is taken back", name)
			}
			if got := FoldBook(events, utc); !reflect.DeepEqual(got, wantBook) {
				t.Fatalf("%s, the book differs", name)
			}
		}
	})
}

func stumpDiff(a, b *Stump) string {
	return cmp.Diff(a, b, cmp.AllowUnexported(Stump{}), cmpopts.IgnoreUnexported(Clash{}))
}

// record is a stump's record without the journal it was folded from.
func record(s *Stump) *Stump {
	return &Stump{ID: s.ID, Added: s.Added, Notes: s.Notes, Attempts: s.Attempts, Clashes: s.Clashes, Newest: s.Newest}
}

func TestUndoRestoresTheRecord(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawn(t)
		l := newLaptop("AB")
		l.say(may(1, 8, 0), &StumpAdded{})
		for range rapid.IntRange(0, 15).Draw(t, "before") {
			l.work(t, p)
		}
		before := record(l.fold())
		body := p.body([]int{4, 6, 7, 9, 14, 15, 22, 39, 42}[p(9)])
		var replaces []ID
		if q := (Event{Body: body}).Question(); q != "" && p(2) == 0 {
			replaces = l.fold().Answers(q)
		}
		given := l.say(may(1+p(28), 12, 0), body, replaces...)
		after := record(l.fold())
		undo := l.say(may(29, 8, 0), &Withdrawn{Of: given.ID})
		if d := stumpDiff(before, record(l.fold())); d != "" {
			t.Fatalf("after the undo of %s:\n%s", body.Kind(), d)
		}
		redo := l.say(may(29, 8, 1), &Withdrawn{Of: undo.ID})
		if d := stumpDiff(after, record(l.fold())); d != "" {
			t.Fatalf("after the undo of the undo of %s:\n%s", body.Kind(), d)
		}
		l.say(may(29, 8, 2), &Withdrawn{Of: redo.ID})
		if d := stumpDiff(before, record(l.fold())); d != "" {
			t.Fatalf("after the third undo of %s:\n%s", body.Kind(), d)
		}
	})
}

func TestClashesAreShownAndSettled(t *testing.T) {
	office := newLaptop("OF")
	office.say(may(1, 9, 0), &StumpAdded{})
	a, b := office.apart("AB"), office.apart("CD")
	one := a.say(may(2, 9, 0), &CutBack{Height: Measure{1800, "1.8m"}})
	two := b.say(may(2, 9, 5), &CutBack{Height: Measure{1900, "1.9m"}})
	both := &laptop{"AB", office.ids, joined(a, b)}
	s := both.fold()
	if len(s.Clashes) != 1 || s.Clashes[0].Question != "cut-back" || len(s.Clashes[0].Events) != 2 {
		t.Fatalf("two cut-backs: clashes %v", s.Clashes)
	}
	if got := s.Answers("cut-back"); !slices.Contains(got, one.ID) || !slices.Contains(got, two.ID) {
		t.Fatalf("the standing answers are %v", got)
	}
	settle := both.say(may(3, 9, 0), &CutBack{Height: Measure{1850, "1.85m"}}, s.Answers("cut-back")...)
	s = both.fold()
	if len(s.Clashes) != 0 || s.Now().CutBack.ID != settle.ID {
		t.Errorf("settled: %d clashes, %v stands", len(s.Clashes), s.Now().CutBack)
	}
	both.say(may(3, 9, 1), &Withdrawn{Of: settle.ID})
	if s = both.fold(); len(s.Clashes) != 1 {
		t.Errorf("with the settling taken back: %d clashes", len(s.Clashes))
	}
}

// One id with two contents can only come from a damaged or meddled journal;
// still the same one is kept whichever was read first.
func TestOneIDWithTwoContents(t *testing.T) {
	e := Event{ID: ID{1}, Clock: 5, At: may(1, 9, 0), Hand: "AB", Stump: stump417, Body: &Noted{"one"}}
	same, later := e, e
	same.Body, later.Clock, later.Body = &Noted{"two"}, 6, &Noted{"three"}
	want := Fold(stump417, []Event{e, same, later})
	if len(want.Notes) != 1 || want.Notes[0].What.Text == "three" {
		t.Errorf("kept %v", want.Notes)
	}
	for _, order := range [][]Event{{later, same, e}, {same, e, later}, {same, later, e, e}} {
		if got := Fold(stump417, order); got.Notes[0] != want.Notes[0] {
			t.Errorf("kept %v and %v", want.Notes, got.Notes)
		}
	}
}

func TestTheSameAnswerTwiceIsNoClash(t *testing.T) {
	a, b := newLaptop("AB"), newLaptop("CD")
	*b.ids = 100
	a.say(may(1, 9, 0), &StumpAdded{Stock: "black walnut"})
	b.say(may(1, 9, 7), &StumpAdded{Stock: "black walnut"})
	if s := Fold(stump417, joined(a, b)); len(s.Clashes) != 0 {
		t.Errorf("the same stump added twice clashes: %v", s.Clashes)
	}
}

func TestTheLatestAnswerStands(t *testing.T) {
	l := newLaptop("AB")
	first := l.say(may(10, 9, 0), &CutBack{Height: Measure{1800, "1.8m"}})
	fixed := l.say(may(10, 8, 0), &CutBack{Height: Measure{1750, "1.75m"}}, first.ID)
	s := l.fold()
	if s.Now().CutBack.ID != fixed.ID || len(s.Clashes) != 0 || !s.Now().CutBack.At.Equal(may(10, 8, 0)) {
		t.Errorf("after a correction with an earlier time %v stands, %d clashes", s.Now().CutBack, len(s.Clashes))
	}
}

// Dated observations keep the order of what happened, not of writing down; of
// two at one time, the one written first.
func TestDatedObservationsAreInOrderOfTime(t *testing.T) {
	l := newLaptop("AB")
	l.say(may(12, 9, 0), &Looked{Bleeding: Dry})
	l.say(may(10, 9, 0), &Looked{Bleeding: Running})
	l.say(may(11, 9, 0), &Looked{Bleeding: Weeping})
	l.say(may(11, 9, 0), &Looked{Bleeding: Damp})
	l.say(may(14, 9, 0), &Noted{"second"})
	l.say(may(13, 9, 0), &Noted{"first"})
	s := l.fold()
	var seen []Bleeding
	for _, look := range s.Now().Looks {
		seen = append(seen, look.What.Bleeding)
	}
	if d := cmp.Diff([]Bleeding{Running, Weeping, Damp, Dry}, seen); d != "" {
		t.Error(d)
	}
	if s.Notes[0].What.Text != "first" || !s.Newest.Equal(may(14, 9, 0)) || s.Last.Body.Kind() != "noted" {
		t.Errorf("notes %v, newest %v, last %s", s.Notes, s.Newest, s.Last.Body.Kind())
	}
}

func TestBlocksLotsAndHandsAreJoined(t *testing.T) {
	l := newLaptop("AB")
	one, two, three := ID{1}, ID{2}, ID{3}
	for _, id := range []ID{three, one, two} {
		l.say(may(1, 9, 0), &BlockMade{id, "Hollow Lane"})
	}
	l.say(may(1, 9, 1), &Same{"block", three.String(), two.String()})
	again := l.say(may(1, 9, 2), &Same{"block", two.String(), one.String()})
	l.say(may(1, 9, 3), &Same{"hand", "ZA", "AZ"})
	book := FoldBook(l.events, utc)
	if got := book.CanonicalBlock(three); got != one || len(book.List()) != 1 || book.Canonical("hand", "ZA") != "AZ" {
		t.Errorf("three goes on as %v, %d blocks, ZA as %s", got, len(book.List()), book.Canonical("hand", "ZA"))
	}
	l.say(may(1, 9, 4), &Withdrawn{Of: again.ID})
	book = FoldBook(l.events, utc)
	if got := book.CanonicalBlock(three); got != two || book.CanonicalBlock(one) != one || len(book.List()) != 2 {
		t.Errorf("with the second joining taken back, three goes on as %v", got)
	}
}

func TestBookKeepsSettingsLotsAndWeather(t *testing.T) {
	l := newLaptop("AB")
	lot := ID{7}
	l.say(may(1, 9, 0), &BlockMade{theBlock, "Hollow Lane"})
	l.say(may(1, 9, 0), &BlockSet{theBlock, "frosty", "yes"})
	l.say(may(1, 9, 1), &BlockSet{theBlock, "frosty", "no"})
	l.say(may(1, 9, 2), &BlockSet{theBlock, "browse", "6ft"})
	l.say(may(1, 9, 2), &BlockSet{theBlock, "no such thing", "6ft"})
	l.say(may(2, 9, 0), &LotReceived{Lot: lot, Name: "L1", Sticks: 40})
	l.say(may(4, 9, 0), &StoreRead{lot, Degrees{2, "2C"}})
	l.say(may(3, 9, 0), &StoreRead{lot, Degrees{5, "5C"}})
	l.say(may(5, 9, 0), &LotHeld{Lot: lot, Held: true, Why: "warm"})
	l.say(may(5, 9, 0), &DayWeather{Block: theBlock, Day: mayDay(6), Low: Degrees{5, "5C"}, High: Degrees{25, "25C"}})
	book := FoldBook(l.events, utc)
	b, got := book.Blocks[theBlock], book.Lots[lot]
	if b.Frosty || b.Browse.Typed != "6ft" || b.Name != "Hollow Lane" || !book.Known(theBlock) || b.Zone != time.UTC || b.PinchUntil.Day != 15 {
		t.Errorf("the block is %+v", b)
	}
	if b.Weather[mayDay(6)].What.High.C() != 25 {
		t.Errorf("the weather is %v", b.Weather)
	}
	if got.Received.What.Sticks != 40 || got.Readings[0].What.Temp.C() != 5 || !got.Held.What.Held || len(book.LotList()) != 1 {
		t.Errorf("the lot is %+v", got)
	}
}

var edt = time.FixedZone("", -4*3600)

func may(day, hour, minute int) time.Time { return time.Date(2027, 5, day, hour, minute, 0, 0, edt) }

func mayDay(day int) unit.Date { return unit.MakeDate(2027, 5, day) }

func inches(n float64) Measure { return Measured(unit.Length(n)*unit.Inch, unit.US) }
