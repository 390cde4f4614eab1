package record

import (
	"testing"
	"time"

	"barkslip/core/unit"
)

// One stump through every stage of a tree that is won, then the two ends of
// one that is lost.
func TestAStumpThroughEveryStage(t *testing.T) {
	l := newLaptop("AB")
	seen := map[Stage]bool{}
	day := 0
	at := func() time.Time { day++; return may(1, 9, 0).AddDate(0, 0, day) }
	see := func(want Stage) {
		t.Helper()
		if got := l.fold().Stage(); got != want {
			t.Errorf("after %d days it is %s, want %s", day, got, want)
		}
		seen[want] = true
	}
	step := func(want Stage, bodies ...Body) {
		t.Helper()
		for _, b := range bodies {
			l.say(at(), b)
		}
		see(want)
	}
	see(StageStanding)
	step(StageStanding, &StumpAdded{}, &NurseJudged{Limbs: 1})
	step(StageDraining, &CutBack{}, &Gashed{Number: 2}, &Looked{Bleeding: Dry, Slip: SlipsClean}, &FreshCut{})
	step(StageDraining, &StumpMeasured{Across: Measure{80, "80mm"}}, &SlotsMarked{Slots: []Slot{{0}, {180}}})
	step(StageGrafted, &ScionSet{Slot: 1})
	step(StageGrafted, &ScionSet{Slot: 2})
	step(StageSealed, &Sealed{Wrapped}, &StillWet{})
	step(StagePainted, &PaintedWhite{}, &RingSet{}, &SealChecked{}, &Visited{[]Finding{{Slot: 1, State: Swelling}, {Slot: 2, State: NoChange}}})
	step(StagePushing, &Visited{[]Finding{{Slot: 1, State: Pushing}, {Slot: 2, State: Dead}}})
	step(StagePushing, &Staked{Height: Measure{4 * unit.Foot, "4ft"}}, &SproutsRubbed{Near: 2})
	step(StageLeader, &LeaderChosen{Slot: 1, Shoot: "upper"}, &Pinched{}, &Tied{Shoot: Measure{4 * unit.Foot, "4ft"}})
	step(StageAboveStake, &Tied{Shoot: Measure{49 * unit.Inch, "49in"}}, &Twined{Loops: 2}, &SeasonsEnd{Alive: 1, Word: "strong"}, &TapesLoosened{})
	step(StageHeadedBack, &HeadedBack{}, &RivalCut{}, &SecondShootOff{}, &NurseLimbOff{}, &TwineCut{})
	step(StageUntied, &Untied{})
	l.say(at(), &Withdrawn{Of: l.events[len(l.events)-1].ID})
	step(StageFailed, &Failed{Cause: "wind"}, &SproutsKept{Number: 2})
	step(StageGivenUp, &GivenUp{Why: "too far gone"})
	for _, s := range Stages() {
		if !seen[s] {
			t.Errorf("no stump was ever %s", s)
		}
	}
}

func TestStageNamesDifferAndHeightsRise(t *testing.T) {
	words, height := map[string]Stage{}, -1
	for _, s := range Stages() {
		if other, twice := words[s.String()]; twice || s.String() == "" {
			t.Errorf("%d and %d are both called %q", other, s, s)
		}
		words[s.String()] = s
		if s.Lost() {
			continue
		}
		if s.Height() < height || s.Height() > 8 {
			t.Errorf("%s is %d eighths high, after %d", s, s.Height(), height)
		}
		height = s.Height()
	}
	if height != 8 {
		t.Errorf("the last stage is %d eighths high", height)
	}
}

func TestPastStakeNeedsAMeasuredShoot(t *testing.T) {
	l := newLaptop("AB")
	l.say(may(1, 9, 0), &ScionSet{Slot: 1})
	l.say(may(2, 9, 0), &LeaderChosen{Slot: 1})
	l.say(may(3, 9, 0), &Tied{Shoot: Measure{2000, "2m"}})
	if got := l.fold().Stage(); got != StageLeader {
		t.Errorf("without a stake it is %s", got)
	}
	l.say(may(4, 9, 0), &Staked{Height: Measure{1200, "1.2m"}})
	l.say(may(5, 9, 0), &Tied{})
	if got := l.fold(); got.Stage() != StageAboveStake || got.Now().Shoot() != 2000 {
		t.Errorf("with a tie not measured it is %s, the shoot %v", got.Stage(), got.Now().Shoot())
	}
	l.say(may(6, 9, 0), &Tied{Shoot: Measure{800, "80cm"}, Broken: true})
	if got := l.fold().Stage(); got != StageLeader {
		t.Errorf("broken off it is %s", got)
	}
}

// Every slot is looked at: another said to stay empty does not stand for one that
// is open.
func TestAllSetLooksAtEverySlot(t *testing.T) {
	a := &Attempt{Slots: &Said[SlotsMarked]{What: SlotsMarked{Slots: make([]Slot, 2)}}, Grafts: []*Graft{{Slot: 1}}}
	a.Empty = []Said[SlotEmpty]{{What: SlotEmpty{Slot: 3}}}
	if a.AllSet() {
		t.Error("slot 2 is open, and all are set")
	}
	a.Empty = append(a.Empty, Said[SlotEmpty]{What: SlotEmpty{Slot: 2}})
	if !a.AllSet() {
		t.Error("slot 2 stays empty, and not all are set")
	}
}
