package core

import (
	"testing"
	"time"

	"barkslip/core/unit"
)

func advised(t *testing.T, l *Laptop, now time.Time, want Verdict) Advice {
	t.Helper()
	got := l.Fold().Advice(BlockEDT(), now)
	if got.Verdict != want {
		t.Errorf("%s: %s, want %s: %q", now.Format("2 Jan 15:04"), got.Verdict, want, got.Reasons)
	}
	return got
}

// A stump that goes well, from standing to the graft.
func TestAdviceOverTheDays(t *testing.T) {
	l := NewLaptop("AB")
	l.Say(May(1, 9, 0), &StumpAdded{Across: Measure{80, "80mm"}})
	advised(t, l, May(10, 9, 0), CutBackIt)
	l.Say(May(10, 9, 5), &NurseJudged{Limbs: 2, Nearest: Measure{15 * unit.Inch, "15in"}})
	l.Say(May(10, 9, 10), &CutBack{Height: Measure{7 * unit.Foot, "7ft"}, Across: Measure{82, "82mm"}})
	advised(t, l, May(10, 9, 11), TakeLimbOff)
	l.Say(May(10, 9, 12), &LimbTakenOff{Left: 1, Nearest: Measure{24 * unit.Inch, "24in"}})
	advised(t, l, May(10, 9, 13), Wait)
	l.Say(May(10, 9, 15), &Gashed{Number: 2})
	got := advised(t, l, May(16, 23, 59), Wait)
	if !got.Until.Equal(May(17, 0, 0)) {
		t.Errorf("wait until %v", got.Until)
	}
	advised(t, l, May(17, 0, 0), LookIt)
	l.Say(May(18, 8, 0), &Looked{Bleeding: Dry, Slip: SlipsClean})
	advised(t, l, May(18, 8, 1), Gash)
	l.Say(May(18, 8, 5), &Gashed{Number: 2})
	advised(t, l, May(18, 8, 6), CutFresh)
	l.Say(May(18, 8, 10), &FreshCut{Height: Measure{78 * unit.Inch, "78in"}})
	if got = advised(t, l, May(18, 8, 11), LookIt); !got.Until.Equal(May(18, 8, 25)) {
		t.Errorf("look until %v", got.Until)
	}
	l.Say(May(18, 8, 26), &Looked{Bleeding: Dry})
	if got = advised(t, l, May(18, 8, 27), GraftIt); len(got.Cautions) != 0 {
		t.Errorf("cautions %q", got.Cautions)
	}
	f := l.Fold().Found(BlockEDT(), May(18, 8, 27))
	if f.Across != 82 || f.Gashes != 4 || f.Limbs != 1 || f.Limb != 24*unit.Inch || f.Low || !f.Slipped.Equal(May(18, 8, 0)) {
		t.Errorf("found %+v", f)
	}
	advised(t, l, May(19, 8, 0), Gash)
}

// cutAndGashed is a stump cut back on 1 May, with a hole, seen to slip.
func cutAndGashed() *Laptop {
	l := NewLaptop("AB")
	l.Say(May(1, 9, 0), &CutBack{})
	l.Say(May(1, 9, 5), &Gashed{Number: 2})
	l.Say(May(1, 9, 6), &Looked{Slip: SlipsClean})
	return l
}

func TestWipesAreOfThisFaceAndDay(t *testing.T) {
	l := cutAndGashed()
	l.Say(May(10, 8, 0), &Gashed{Number: 2})
	l.Say(May(10, 8, 5), &FreshCut{})
	l.Say(May(10, 8, 20), &Looked{Bleeding: Damp})
	advised(t, l, May(10, 8, 21), Wipe)
	l.Say(May(10, 8, 36), &Looked{Bleeding: Damp, Wiped: true})
	if got := advised(t, l, May(10, 8, 37), Wipe); !got.Until.Equal(May(10, 8, 51)) {
		t.Errorf("wipe again until %v", got.Until)
	}
	l.Say(May(10, 8, 52), &Looked{Bleeding: Damp, Wiped: true})
	advised(t, l, May(10, 8, 53), Drill)
	l.Say(May(10, 9, 0), &FreshCut{})
	advised(t, l, May(10, 9, 1), LookIt)
	l.Say(May(10, 9, 16), &Looked{Bleeding: Damp})
	advised(t, l, May(10, 9, 17), Wipe) // the wipes were of the old face
	if f := l.Fold().Found(BlockEDT(), May(11, 8, 0)); f.Wipes != 0 {
		t.Errorf("a day on, %d wipes of that day", f.Wipes)
	}
}

// A stump that runs is told to wait twice, on two days, and then to be left.
func TestWaitsCountOnDistinctDays(t *testing.T) {
	l := cutAndGashed()
	l.Say(May(10, 8, 0), &Looked{Bleeding: Running, Slip: SlipsClean})
	advised(t, l, May(10, 8, 1), Drill)
	l.Say(May(10, 8, 5), &Drilled{Number: 1})
	l.Say(May(10, 8, 6), &Gashed{Number: 2})
	advised(t, l, May(10, 8, 7), LookIt)
	l.Say(May(10, 8, 40), &Looked{Bleeding: Running})
	if got := advised(t, l, May(10, 8, 41), Wait); !got.Until.Equal(May(13, 8, 40)) {
		t.Errorf("first wait until %v", got.Until)
	}
	l.Say(May(10, 9, 40), &Looked{Bleeding: Running})
	advised(t, l, May(10, 9, 41), Wait) // again on one day is the same wait
	for i, want := range []Verdict{Wait, Leave} {
		day := 13 + 3*i
		l.Say(May(day, 10, 0), &Looked{Bleeding: Running, Slip: SlipsClean})
		advised(t, l, May(day, 10, 1), Gash)
		l.Say(May(day, 10, 5), &Gashed{Number: 2})
		l.Say(May(day, 10, 40), &Looked{Bleeding: Running})
		advised(t, l, May(day, 10, 41), want)
		if f := l.Fold().Found(BlockEDT(), May(day, 10, 41)); f.Waits != i+1 {
			t.Errorf("on %d May it was told %d times before, want %d", day, f.Waits, i+1)
		}
	}
}

func TestLowIsOfTheNewestFace(t *testing.T) {
	l := NewLaptop("AB")
	l.Say(May(1, 9, 0), &CutBack{Height: Measure{77 * unit.Inch, "77in"}})
	if f := l.Fold().Found(BlockEDT(), May(2, 9, 0)); !f.Low {
		t.Error("77 in less the fresh cut of 6 in is under 6 ft")
	}
	l.Say(May(9, 9, 0), &FreshCut{Height: Measure{75 * unit.Inch, "75in"}})
	if f := l.Fold().Found(BlockEDT(), May(9, 9, 0)); f.Low {
		t.Error("a face at 75 in is not under 6 ft")
	}
}
