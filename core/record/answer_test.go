package record_test

import (
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"barkslip/core/record"
	"barkslip/core/record/recordtest"
)

// give answers, and fails the test where the record refuses.
func give(t testing.TB, d *recordtest.Diary, g record.Given) []record.Event {
	t.Helper()
	g.Zone = d.B.Zone
	out, err := d.Give(g)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func on(date string, hour, minute int) time.Time {
	return recordtest.DayOf(date).At(hour, minute, recordtest.NewYork)
}

func bodies(b ...record.Body) []record.Body { return b }

func cutBack(height float64) *record.CutBack {
	return &record.CutBack{Height: recordtest.Inches(height)}
}

func diary() *recordtest.Diary { return recordtest.DiaryOn(recordtest.Northern()) }

// grafted is a stump cut back 3 May, grafted and painted 12 May.
func grafted() *recordtest.Diary { return diary().Grafted("2027-05-03", "2027-05-12", record.Wrapped) }

// What an answer said anew keeps of the time of the one it replaces.
func TestWhichTimeAnAnswerKeeps(t *testing.T) {
	scion := &record.ScionSet{Slot: 1, Checks: record.AllGood, Split: recordtest.Inches(1)}
	measured := &record.StumpMeasured{Across: recordtest.Inches(3)}
	started := func() *recordtest.Diary { return diary().On("2027-05-03", 9, 0, cutBack(36)) }
	now := on("2027-05-20", 9, 0)
	for _, c := range []struct {
		name string
		d    *recordtest.Diary
		g    record.Given
		want time.Time
	}{
		{"a first answer is of its time", diary(), record.Given{Bodies: bodies(cutBack(36))}, now},
		{"a standing answer given anew is of now", started(), record.Given{Bodies: bodies(cutBack(40))}, now},
		{"corrected it keeps its time", started(), record.Given{Bodies: bodies(cutBack(40)), Again: true}, on("2027-05-03", 9, 0)},
		{"an earlier time set holds", started(),
			record.Given{Bodies: bodies(cutBack(40)), Again: true, Earlier: true, At: on("2027-05-02", 8, 0)}, on("2027-05-02", 8, 0)},
		{"and so does one behind what it corrects", started(),
			record.Given{Bodies: bodies(cutBack(40)), Again: true, Earlier: true, At: on("2027-05-04", 8, 0)}, on("2027-05-04", 8, 0)},
		{"a cut with grafts on it is not moved behind them", grafted(),
			record.Given{Bodies: bodies(cutBack(40)), Again: true, Earlier: true, At: on("2027-05-04", 8, 0)}, on("2027-05-03", 9, 1)},
		{"but back it is", grafted(), record.Given{Bodies: bodies(cutBack(40)), Again: true, Earlier: true, At: on("2027-05-01", 8, 0)}, on("2027-05-01", 8, 0)},
		{"a scion told more exactly was set when it was set", grafted(), record.Given{Bodies: bodies(scion)}, on("2027-05-12", 10, 0)},
		{"though another time is set", grafted(), record.Given{Bodies: bodies(scion), Earlier: true, At: on("2027-05-13", 8, 0)}, on("2027-05-12", 10, 0)},
		{"a seal with white on it stays in its place", grafted(),
			record.Given{Bodies: bodies(&record.Sealed{Cover: record.Bare}), Again: true, Earlier: true, At: on("2027-05-13", 8, 0)}, on("2027-05-12", 10, 40)},
		{"measured anew before the scions it is measured now", started().On("2027-05-12", 9, 0, measured),
			record.Given{Bodies: bodies(measured), Again: true}, now},
		{"and later corrected", grafted().On("2027-05-12", 9, 0, measured), record.Given{Bodies: bodies(measured), Again: true}, on("2027-05-12", 9, 0)},
		{"a look corrected was seen when it was seen", started().On("2027-05-11", 9, 0, &record.Looked{Bleeding: record.Dry}),
			record.Given{Bodies: bodies(&record.Looked{Bleeding: record.Damp}), Again: true}, on("2027-05-11", 9, 0)},
		{"a new look is of now", started().On("2027-05-11", 9, 0, &record.Looked{Bleeding: record.Dry}),
			record.Given{Bodies: bodies(&record.Looked{Bleeding: record.Damp})}, now},
		{"seconds are left out", diary(), record.Given{Bodies: bodies(cutBack(36)), At: now.Add(700 * time.Millisecond)}, now},
	} {
		if c.g.At.IsZero() {
			c.g.At = now
		}
		out := give(t, c.d, c.g)
		if !out[0].At.Equal(c.want) {
			t.Errorf("%s: it is of %s, want %s", c.name, out[0].At, c.want)
		}
		if n := len(c.d.Fold().Clashes); n > 0 {
			t.Errorf("%s: %d clashes", c.name, n)
		}
	}
}

func TestAScionInASlotSaidEmptyIsNewWork(t *testing.T) {
	d := diary().On("2027-05-03", 9, 0, cutBack(36)).On("2027-05-12", 9, 0, &record.SlotEmpty{Slot: 2})
	out := give(t, d, record.Given{Bodies: bodies(&record.ScionSet{Slot: 2}), At: on("2027-05-12", 11, 0)})
	if !out[0].At.Equal(on("2027-05-12", 11, 0)) || len(out[0].Replaces) != 1 || len(d.Fold().Now().Empty) != 0 {
		t.Errorf("set %s in place of %v", out[0].At, out[0].Replaces)
	}
}

func TestACorrectedLookLeavesTheTryOfTheBark(t *testing.T) {
	d := diary().On("2027-05-03", 9, 0, cutBack(36)).On("2027-05-11", 9, 0, &record.Looked{Bleeding: record.Dry}, &record.Looked{Slip: record.SlipsClean})
	give(t, d, record.Given{Bodies: bodies(&record.Looked{Bleeding: record.Weeping}), At: on("2027-05-11", 10, 0), Again: true})
	looks := d.Fold().Now().Looks
	if len(looks) != 2 || looks[0].What.Bleeding != record.Weeping || looks[1].What.Slip != record.SlipsClean {
		t.Errorf("looks %v", looks)
	}
}

func TestAnAnswerThatCannotHaveBeenIsRefused(t *testing.T) {
	for _, c := range []struct {
		name string
		d    *recordtest.Diary
		g    record.Given
		says string
	}{
		{"sealed without a scion", diary(), record.Given{Bodies: bodies(&record.Sealed{Cover: record.Bare}), At: on("2027-05-12", 9, 0)}, "no scion was set yet"},
		{"white before its seal", grafted(),
			record.Given{Bodies: bodies(&record.PaintedWhite{}), At: on("2027-05-12", 9, 0), Again: true, Earlier: true}, "it was sealed only on 12 May 2027 10:40"},
		{"a graft not there", grafted(),
			record.Given{Bodies: bodies(recordtest.Visit(record.Dead, record.Dead, record.Dead)), At: on("2027-05-26", 9, 0)}, "no scion was set in slot 3"},
		{"the second of two", grafted(), record.Given{Bodies: bodies(&record.RingSet{}, &record.TwineCut{}), At: on("2027-05-26", 9, 0)}, "no twine was put on"},
		{"no word of its list", grafted(), record.Given{Bodies: bodies(&record.Failed{Cause: "bad luck"}), At: on("2027-05-26", 9, 0)}, "cause is"},
	} {
		before := len(c.d.Events)
		c.g.Zone = recordtest.NewYork
		if _, err := c.d.Give(c.g); err == nil || !strings.Contains(err.Error(), c.says) || len(c.d.Events) != before {
			t.Errorf("%s: %v, want words with %q", c.name, err, c.says)
		}
	}
}

// An answer for a time before the stump was put on the list is taken: lists come
// after the work.
func TestAnAnswerFromBeforeTheStumpWasAdded(t *testing.T) {
	d := diary().On("2027-05-10", 9, 0, &record.StumpAdded{}).On("2027-05-03", 9, 0, cutBack(36))
	if s := d.Fold(); s.Stage() != record.StageDraining || s.Added == nil || len(s.Live) != 2 {
		t.Errorf("it is %s, %d answers stand", s.Stage(), len(s.Live))
	}
}

// allDead is a stump whose visit was told graft by graft, all dead, and its
// failing with the last of them.
func allDead(t *testing.T) (*recordtest.Diary, *record.Stump) {
	d := grafted()
	before := d.Fold()
	at := on("2027-06-10", 9, 0)
	visit := give(t, d, record.Given{Bodies: bodies(recordtest.Visit(record.Dead)), At: at})[0]
	visit = give(t, d, record.Given{Bodies: bodies(recordtest.Visit(record.Dead, record.Growing)), At: at.Add(time.Minute), Refines: []record.ID{visit.ID}})[0]
	dead := bodies(recordtest.Visit(record.Dead, record.Dead), &record.Failed{Cause: "bled"})
	out := give(t, d, record.Given{Bodies: dead, At: at.Add(2 * time.Minute), Refines: []record.ID{visit.ID}})
	if !out[0].At.Equal(at) || out[0].Act != out[1].Act || out[0].Act != d.Events[len(d.Events)-4].Act {
		t.Fatalf("a visit told more exactly is of %s, act %s", out[0].At, out[0].Act)
	}
	if d.Fold().Stage() != record.StageFailed {
		t.Fatal("it did not fail")
	}
	return d, before
}

func TestAnAllDeadVisitIsTakenBackWhole(t *testing.T) {
	d, before := allDead(t)
	after := d.Fold()
	taken, _ := d.TakeBack(on("2027-06-10", 10, 0))
	if diff := recordtest.Diff(before, d.Fold()); diff != "" || len(taken) != 4 {
		t.Fatalf("%d events taken back leave:\n%s", len(taken), diff)
	}
	if got := record.SayAct(taken, 0); got != "failed: bled, graft 1 dead; 2 dead" {
		t.Errorf("it is called %q", got)
	}
	if n := len(d.Fold().Now().Visits); n != 0 {
		t.Errorf("%d visits stand", n)
	}
	d.PutBack(on("2027-06-10", 10, 1))
	if diff := recordtest.Diff(after, d.Fold()); diff != "" {
		t.Errorf("put back:\n%s", diff)
	}
}

func TestAnAllDeadVisitIsCorrectedWhole(t *testing.T) {
	d, _ := allDead(t)
	wrong := d.Fold()
	give(t, d, record.Given{Bodies: bodies(recordtest.Visit(record.Growing, record.Pushing)), At: on("2027-06-10", 11, 0), Again: true})
	a := d.Fold().Now()
	if len(a.Visits) != 1 || a.Failed != nil || !a.Visits[0].At.Equal(on("2027-06-10", 9, 0)) || d.Fold().Stage() != record.StagePushing {
		t.Errorf("%d visits, failed %v, %s", len(a.Visits), a.Failed, d.Fold().Stage())
	}
	d.TakeBack(on("2027-06-10", 12, 0))
	if diff := recordtest.Diff(wrong, d.Fold()); diff != "" {
		t.Errorf("the correction taken back:\n%s", diff)
	}
}

func TestASealSaidCrackedAndMendedIsCorrectedWhole(t *testing.T) {
	d := grafted()
	give(t, d, record.Given{Bodies: bodies(&record.SealChecked{Cracked: true}, &record.Resealed{}), At: on("2027-05-14", 9, 0)})
	give(t, d, record.Given{Bodies: bodies(&record.SealChecked{}), At: on("2027-05-14", 10, 0), Again: true})
	if a := d.Fold().Now(); len(a.SealChecks) != 1 || a.SealChecks[0].What.Cracked || len(a.Reseals) != 0 {
		t.Errorf("checks %v, reseals %v", a.SealChecks, a.Reseals)
	}
}

// What was given in one act for other steps is no part of a correction.
func TestACorrectionLeavesOtherStepsOfItsAct(t *testing.T) {
	d := grafted()
	give(t, d, record.Given{Bodies: bodies(recordtest.Visit(record.Pushing, record.Pushing), &record.SproutsRubbed{Near: 2}), At: on("2027-05-26", 9, 0)})
	give(t, d, record.Given{Bodies: bodies(recordtest.Visit(record.Pushing, record.Growing)), At: on("2027-05-26", 10, 0), Again: true})
	if a := d.Fold().Now(); len(a.Rubbed) != 1 || len(a.Visits) != 1 {
		t.Errorf("%d visits, %d times rubbed", len(a.Visits), len(a.Rubbed))
	}
}

// regrafted is a stump that failed and was grafted again a year later.
func regrafted() *recordtest.Diary {
	lost := grafted().On("2027-06-10", 9, 0, recordtest.Visit(record.Dead, record.Dead), &record.Failed{Cause: "bled"})
	return lost.Grafted("2028-05-03", "2028-05-12", record.Bare)
}

func TestAnswersBelongToTheirAttempt(t *testing.T) {
	d := regrafted()
	give(t, d, record.Given{Bodies: bodies(&record.PaintedWhite{}), At: on("2027-05-12", 15, 0), Earlier: true})
	s := d.Fold()
	if s.Attempts[0].White == nil || s.Attempts[0].White.At.Hour() != 15 || s.Now().White == nil || len(s.Clashes) != 0 {
		t.Errorf("white %v and %v, %d clashes", s.Attempts[0].White, s.Now().White, len(s.Clashes))
	}
	give(t, d, record.Given{Bodies: bodies(cutBack(50)), At: on("2028-05-02", 9, 0), Earlier: true, Again: true})
	s = d.Fold()
	if len(s.Attempts) != 2 || s.Attempts[0].CutBack.What.Height != recordtest.Inches(36) || s.Now().CutBack.What.Height != recordtest.Inches(50) {
		t.Errorf("%d attempts, cut at %v and %v", len(s.Attempts), s.Attempts[0].CutBack, s.Now().CutBack)
	}
	if _, err := d.Give(record.Given{Bodies: bodies(&record.Sealed{Cover: record.Bare}), At: on("2027-07-01", 9, 0), Earlier: true, Again: true}); err == nil {
		t.Error("the seal of now was moved to the attempt before")
	}
}

// A stump cut back and left is cut back anew the year after: the cut of the year
// before stays what it was.
func TestCuttingBackAYearLaterReplacesNothing(t *testing.T) {
	d := diary().On("2027-05-03", 9, 0, cutBack(36))
	out := give(t, d, record.Given{Bodies: bodies(cutBack(30)), At: on("2028-05-03", 9, 0)})
	if s := d.Fold(); len(out[0].Replaces) != 0 || len(s.Attempts) != 2 || s.Attempts[0].CutBack == nil {
		t.Errorf("it takes the place of %v, %d attempts", out[0].Replaces, len(s.Attempts))
	}
}

func TestACorrectionStaysInItsAttempt(t *testing.T) {
	d := regrafted()
	out := give(t, d, record.Given{Bodies: bodies(recordtest.Visit(record.Pushing, record.Pushing)), At: on("2028-06-01", 9, 0), Again: true})
	if len(out[0].Replaces) != 0 || len(d.Fold().Attempts[0].Visits) != 1 {
		t.Errorf("it took the place of %v in the attempt before", out[0].Replaces)
	}
}

// Whatever one person answers, and however anew, no two answers disagree, no
// visit stands twice at one time for one step, and every act is taken back and put
// back as a whole.
func TestAnswersNeverDisagreeWithThemselves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := diary()
		at := on("2027-05-01", 8, 0)
		for range rapid.IntRange(1, 30).Draw(t, "answers") {
			at = at.Add(time.Duration(rapid.IntRange(1, 4000).Draw(t, "minutes")) * time.Minute)
			g := record.Given{Bodies: someAnswer(t), At: at, Again: rapid.Bool().Draw(t, "again")}
			if rapid.IntRange(0, 3).Draw(t, "earlier") == 0 {
				g.Earlier, g.At = true, at.Add(-time.Duration(rapid.IntRange(1, 9000).Draw(t, "before"))*time.Minute)
			}
			if visits := d.Fold().Now().Visits; len(visits) > 0 && rapid.Bool().Draw(t, "refine") {
				g.Refines = []record.ID{visits[len(visits)-1].ID}
			}
			before := d.Fold()
			if _, err := d.Give(g); err != nil {
				continue
			}
			after := d.Fold()
			if !begunAsBefore(before, after) {
				return // what was said of two graftings is now of one, and may disagree
			}
			if len(after.Clashes) > 0 {
				t.Fatalf("%v disagree", after.Clashes)
			}
			if rapid.IntRange(0, 2).Draw(t, "back") > 0 {
				continue
			}
			refined := len(g.Refines) > 0 && !g.Again
			d.TakeBack(at)
			if diff := recordtest.Diff(before, d.Fold()); diff != "" && !refined {
				t.Fatalf("%s taken back:\n%s", g.Bodies[0].Kind(), diff)
			}
			d.PutBack(at)
			if diff := recordtest.Diff(after, d.Fold()); diff != "" {
				t.Fatalf("%s put back:\n%s", g.Bodies[0].Kind(), diff)
			}
		}
	})
}

// begunAsBefore says whether every attempt began with the event it began with.
func begunAsBefore(before, after *record.Stump) bool {
	was, is := before.Again(), after.Again()
	for i, e := range was {
		if len(is) < len(was) || is[i].ID != e.ID {
			return false
		}
	}
	return true
}

func someAnswer(t *rapid.T) []record.Body {
	state := func() record.GraftState { return rapid.SampledFrom(record.GraftStates).Draw(t, "state") }
	slot := rapid.IntRange(1, 2).Draw(t, "slot")
	return rapid.SampledFrom([][]record.Body{
		bodies(cutBack(float64(30 + slot))), bodies(&record.Gashed{Number: slot}), bodies(&record.Looked{Bleeding: record.Dry}),
		bodies(&record.ScionSet{Slot: 1, Split: recordtest.Inches(float64(slot))}), bodies(&record.ScionSet{Slot: 2}), bodies(&record.SlotEmpty{Slot: 2}),
		bodies(&record.Sealed{Cover: record.Bare}), bodies(&record.Sealed{Cover: record.Wrapped}), bodies(&record.PaintedWhite{}),
		bodies(recordtest.Visit(state(), state())), bodies(recordtest.Visit(state(), state())),
		bodies(recordtest.Visit(record.Dead, record.Dead), &record.Failed{Cause: "bled"}),
		bodies(&record.SeasonsEnd{Word: "dead"}, recordtest.Visit(record.Dead, record.Dead)), bodies(&record.LeaderChosen{Slot: slot}),
		bodies(&record.Tied{Shoot: recordtest.Inches(float64(10 * slot))}), bodies(&record.Twined{Loops: 2}), bodies(&record.TwineCut{}, &record.Untied{}),
		bodies(&record.GivenUp{Why: "given up"}), bodies(&record.Noted{Text: "a note"}),
	}).Draw(t, "answer")
}

func TestBookAnswersTakeThePlaceOfThoseThatStand(t *testing.T) {
	l := recordtest.NewLaptop("AB")
	book := func() *record.Book { return record.FoldBook(l.Events, recordtest.UTC) }
	lot := record.ID{7}
	say := func(hour int, body ...record.Body) []record.Event {
		t.Helper()
		events, err := book().Answer(record.Given{Bodies: body, At: recordtest.May(4, hour, 0)})
		if err != nil {
			t.Fatal(err)
		}
		return l.Append(events...)
	}
	warm := func(high float64) *record.DayWeather {
		return &record.DayWeather{Block: recordtest.TheBlock, Day: recordtest.MayDay(6),
			Low: record.Degrees{Typed: "0C"}, High: record.Degrees{Temperature: 30, Typed: "30C"}, Wind: high}
	}
	say(8, &record.BlockMade{Block: recordtest.TheBlock, Name: "Hollow Lane"},
		&record.BlockSet{Block: recordtest.TheBlock, Setting: "frosty", Value: "yes"}, warm(1))
	say(9, &record.LotReceived{Lot: lot, Name: "L1"}, &record.StoreRead{Lot: lot, Temp: record.Degrees{Typed: "2C"}})
	for _, again := range []record.Body{
		&record.BlockMade{Block: recordtest.TheBlock, Name: "Gate Field"}, &record.BlockSet{Block: recordtest.TheBlock, Setting: "frosty", Value: "no"},
		warm(2), &record.LotReceived{Lot: lot, Name: "L2"},
	} {
		if e := say(10, again)[0]; len(e.Replaces) != 1 || len(book().Answers(e.Question())) != 1 {
			t.Errorf("%s takes the place of %v", again.Kind(), e.Replaces)
		}
	}
	if e := say(11, &record.StoreRead{Lot: lot, Temp: record.Degrees{Typed: "3C"}})[0]; len(e.Replaces) != 0 || len(book().Lots[lot].Readings) != 2 {
		t.Error("a reading of the store takes the place of another")
	}
	for _, wrong := range []record.Body{&record.BlockSet{Block: recordtest.TheBlock, Setting: "frosty", Value: "very"}, &record.LotHeld{}} {
		if _, err := book().Answer(record.Given{Bodies: bodies(wrong), At: recordtest.May(4, 12, 0)}); err == nil {
			t.Errorf("%v was taken", wrong)
		}
	}
}

func TestSettledClashes(t *testing.T) {
	d := diary().Odd("2027-05-03", 9, 0, cutBack(36), cutBack(38))
	c := d.Fold().Clashes[0]
	d.Append(d.Fold().Settle(c, c.Events[0])...)
	if s := d.Fold(); len(s.Clashes) != 0 || s.Now().CutBack.What.Height != recordtest.Inches(36) || !s.Now().CutBack.At.Equal(c.Events[0].At) {
		t.Errorf("%d clashes, %v stands", len(s.Clashes), s.Now().CutBack)
	}
}
