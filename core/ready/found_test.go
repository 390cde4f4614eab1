package ready

import (
	"testing"
	"time"

	"barkslip/core/record"
	"barkslip/core/record/recordtest"
	"barkslip/core/unit"
)

func advised(t *testing.T, l *recordtest.Laptop, now time.Time, want record.Verdict) Advice {
	t.Helper()
	got := AdviceOn(l.Fold(), recordtest.BlockEDT(), now)
	if got.Verdict != want {
		t.Errorf("%s: %s, want %s: %q", now.Format("2 Jan 15:04"), got.Verdict, want, got.Reasons)
	}
	return got
}

// A stump that goes well, from standing to the graft.
func TestAdviceOverTheDays(t *testing.T) {
	l := recordtest.NewLaptop("AB")
	l.Say(recordtest.May(1, 9, 0), &record.StumpAdded{Across: record.Measure{Length: 80, Typed: "80mm"}})
	advised(t, l, recordtest.May(10, 9, 0), CutBack)
	l.Say(recordtest.May(10, 9, 5), &record.NurseJudged{Limbs: 2, Nearest: record.Measure{Length: 15 * unit.Inch, Typed: "15in"}})
	l.Say(recordtest.May(10, 9, 10), &record.CutBack{Height: record.Measure{Length: 7 * unit.Foot, Typed: "7ft"}, Across: record.Measure{Length: 82, Typed: "82mm"}})
	advised(t, l, recordtest.May(10, 9, 11), TakeLimbOff)
	l.Say(recordtest.May(10, 9, 12), &record.LimbTakenOff{Left: 1, Nearest: record.Measure{Length: 24 * unit.Inch, Typed: "24in"}})
	advised(t, l, recordtest.May(10, 9, 13), Wait)
	l.Say(recordtest.May(10, 9, 15), &record.Gashed{Number: 2})
	got := advised(t, l, recordtest.May(16, 23, 59), Wait)
	if !got.Until.Equal(recordtest.May(17, 0, 0)) {
		t.Errorf("wait until %v", got.Until)
	}
	advised(t, l, recordtest.May(17, 0, 0), Look)
	l.Say(recordtest.May(18, 8, 0), &record.Looked{Bleeding: record.Dry, Slip: record.SlipsClean})
	advised(t, l, recordtest.May(18, 8, 1), Gash)
	l.Say(recordtest.May(18, 8, 5), &record.Gashed{Number: 2})
	advised(t, l, recordtest.May(18, 8, 6), FreshCut)
	l.Say(recordtest.May(18, 8, 10), &record.FreshCut{Height: record.Measure{Length: 78 * unit.Inch, Typed: "78in"}})
	if got = advised(t, l, recordtest.May(18, 8, 11), Look); !got.Until.Equal(recordtest.May(18, 8, 25)) {
		t.Errorf("look until %v", got.Until)
	}
	l.Say(recordtest.May(18, 8, 26), &record.Looked{Bleeding: record.Dry})
	if got = advised(t, l, recordtest.May(18, 8, 27), Graft); len(got.Cautions) != 0 {
		t.Errorf("cautions %q", got.Cautions)
	}
	f := FoundOn(l.Fold(), recordtest.BlockEDT(), recordtest.May(18, 8, 27))
	if f.Across != 82 || f.Gashes != 4 || f.Limbs != 1 || f.Limb != 24*unit.Inch || f.Low || !f.Slipped.Equal(recordtest.May(18, 8, 0)) {
		t.Errorf("found %+v", f)
	}
	advised(t, l, recordtest.May(19, 8, 0), Gash)
}

// cutAndGashed is a stump cut back on 1 May, with a hole, seen to slip.
func cutAndGashed() *recordtest.Laptop {
	l := recordtest.NewLaptop("AB")
	l.Say(recordtest.May(1, 9, 0), &record.CutBack{})
	l.Say(recordtest.May(1, 9, 5), &record.Gashed{Number: 2})
	l.Say(recordtest.May(1, 9, 6), &record.Looked{Slip: record.SlipsClean})
	return l
}

func TestWipesAreOfThisFaceAndDay(t *testing.T) {
	l := cutAndGashed()
	l.Say(recordtest.May(10, 8, 0), &record.Gashed{Number: 2})
	l.Say(recordtest.May(10, 8, 5), &record.FreshCut{})
	l.Say(recordtest.May(10, 8, 20), &record.Looked{Bleeding: record.Damp})
	advised(t, l, recordtest.May(10, 8, 21), Wipe)
	l.Say(recordtest.May(10, 8, 36), &record.Looked{Bleeding: record.Damp, Wiped: true})
	if got := advised(t, l, recordtest.May(10, 8, 37), Wipe); !got.Until.Equal(recordtest.May(10, 8, 51)) {
		t.Errorf("wipe again until %v", got.Until)
	}
	l.Say(recordtest.May(10, 8, 52), &record.Looked{Bleeding: record.Damp, Wiped: true})
	advised(t, l, recordtest.May(10, 8, 53), Drill)
	l.Say(recordtest.May(10, 9, 0), &record.FreshCut{})
	advised(t, l, recordtest.May(10, 9, 1), Look)
	l.Say(recordtest.May(10, 9, 16), &record.Looked{Bleeding: record.Damp})
	advised(t, l, recordtest.May(10, 9, 17), Wipe) // the wipes were of the old face
	if f := FoundOn(l.Fold(), recordtest.BlockEDT(), recordtest.May(11, 8, 0)); f.Wipes != 0 {
		t.Errorf("a day on, %d wipes of that day", f.Wipes)
	}
}

// A stump that runs is told to wait twice, on two days, and then to be left.
func TestWaitsCountOnDistinctDays(t *testing.T) {
	l := cutAndGashed()
	l.Say(recordtest.May(10, 8, 0), &record.Looked{Bleeding: record.Running, Slip: record.SlipsClean})
	advised(t, l, recordtest.May(10, 8, 1), Drill)
	l.Say(recordtest.May(10, 8, 5), &record.Drilled{Number: 1})
	l.Say(recordtest.May(10, 8, 6), &record.Gashed{Number: 2})
	advised(t, l, recordtest.May(10, 8, 7), Look)
	l.Say(recordtest.May(10, 8, 40), &record.Looked{Bleeding: record.Running})
	if got := advised(t, l, recordtest.May(10, 8, 41), Wait); !got.Until.Equal(recordtest.May(13, 8, 40)) {
		t.Errorf("first wait until %v", got.Until)
	}
	l.Say(recordtest.May(10, 9, 40), &record.Looked{Bleeding: record.Running})
	advised(t, l, recordtest.May(10, 9, 41), Wait) // again on one day is the same wait
	for i, want := range []record.Verdict{Wait, Leave} {
		day := 13 + 3*i
		l.Say(recordtest.May(day, 10, 0), &record.Looked{Bleeding: record.Running, Slip: record.SlipsClean})
		advised(t, l, recordtest.May(day, 10, 1), Gash)
		l.Say(recordtest.May(day, 10, 5), &record.Gashed{Number: 2})
		l.Say(recordtest.May(day, 10, 40), &record.Looked{Bleeding: record.Running})
		advised(t, l, recordtest.May(day, 10, 41), want)
		if f := FoundOn(l.Fold(), recordtest.BlockEDT(), recordtest.May(day, 10, 41)); f.Waits != i+1 {
			t.Errorf("on %d May it was told %d times before, want %d", day, f.Waits, i+1)
		}
	}
}

func TestLowIsOfTheNewestFace(t *testing.T) {
	l := recordtest.NewLaptop("AB")
	l.Say(recordtest.May(1, 9, 0), &record.CutBack{Height: record.Measure{Length: 77 * unit.Inch, Typed: "77in"}})
	if f := FoundOn(l.Fold(), recordtest.BlockEDT(), recordtest.May(2, 9, 0)); !f.Low {
		t.Error("77 in less the fresh cut of 6 in is under 6 ft")
	}
	l.Say(recordtest.May(9, 9, 0), &record.FreshCut{Height: record.Measure{Length: 75 * unit.Inch, Typed: "75in"}})
	if f := FoundOn(l.Fold(), recordtest.BlockEDT(), recordtest.May(9, 9, 0)); f.Low {
		t.Error("a face at 75 in is not under 6 ft")
	}
}
