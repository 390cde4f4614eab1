package record

import (
	"testing"

	"barkslip/core/unit"
)

func tall(n float64) Measure { return inches(n) }

// led is a stump whose leader was chosen on the 10th and tied since.
func led(l *laptop) {
	l.say(may(1, 9, 0), &ScionSet{Slot: 1})
	l.say(may(9, 9, 0), &Visited{[]Finding{{Slot: 1, State: Growing}}})
	l.say(may(9, 9, 0), &Staked{Height: tall(40)})
	l.say(may(10, 9, 0), &LeaderChosen{Slot: 1})
	l.say(may(11, 9, 0), &Tied{Shoot: tall(30)})
}

// What was measured before a tip broke says nothing of the growth since.
func TestABrokenTipBeginsGrowthAnew(t *testing.T) {
	l := newLaptop("AB")
	led(l)
	a := l.fold().Now()
	if !a.WholeSince().IsZero() || a.Shoot() != 30*unit.Inch {
		t.Fatalf("whole since %s, %v long", a.WholeSince(), a.Shoot())
	}
	l.say(may(14, 9, 0), &Tied{Broken: true}) // not measured
	a = l.fold().Now()
	if !a.WholeSince().Equal(may(14, 9, 0)) || a.Shoot() != 0 {
		t.Errorf("after its tip broke it is whole since %s and %v long", a.WholeSince(), a.Shoot())
	}
	l.say(may(13, 9, 0), &Tied{Shoot: tall(50)}) // of before, put down later
	l.say(may(18, 9, 0), &Tied{Shoot: tall(20)})
	a = l.fold().Now()
	if !a.WholeSince().Equal(may(14, 9, 0)) || a.Shoot() != 20*unit.Inch || a.PastStake() {
		t.Errorf("then it is whole since %s, %v long, past its stake %v", a.WholeSince(), a.Shoot(), a.PastStake())
	}
}

func TestABreakAndAHeadingBackBeginGrowthAnew(t *testing.T) {
	for _, body := range []Body{&LeaderBroken{Promoted: 1}, &HeadedBack{}} {
		l := newLaptop("AB")
		led(l)
		l.say(may(14, 9, 0), body)
		if a := l.fold().Now(); !a.WholeSince().Equal(may(14, 9, 0)) || a.Shoot() != 0 {
			t.Errorf("after %s it is whole since %s and %v long", body.Kind(), a.WholeSince(), a.Shoot())
		}
	}
}

// The moves of the twine are in order of time, so that the last is the last.
func TestTheTwineIsSeenTightSinceItWasMoved(t *testing.T) {
	l := newLaptop("AB")
	l.say(may(1, 9, 0), &Twined{})
	l.say(may(10, 9, 0), &TwineChecked{Tight: true})
	l.say(may(12, 9, 0), &TwineMoved{Loop: tall(9)})
	l.say(may(5, 9, 0), &TwineMoved{Loop: tall(8)}) // from notes on paper
	a := l.fold().Now()
	if at, tight := a.SeenTight(); tight || !a.TwineSeen().Equal(may(12, 9, 0)) || LastOf(a.TwineMoves).What.Loop != tall(9) {
		t.Errorf("tight since %s, seen %s", at, a.TwineSeen())
	}
}

// Of two things that are true of a tree the one it has come further by, or that
// ended it, is its stage.
func TestWhichStageLeads(t *testing.T) {
	for _, c := range []struct {
		name   string
		bodies []Body
		want   Stage
	}{
		{"headed back, and grown past its stake again", []Body{&Tied{Shoot: tall(50)}, &HeadedBack{}, &Tied{Shoot: tall(60)}}, StageHeadedBack},
		{"too short, and grown past it since", []Body{&HeadedBack{Short: true}, &Tied{Shoot: tall(60)}}, StageAboveStake},
		{"untied, then given up", []Body{&Untied{}, &GivenUp{}}, StageUntied},
		{"given up, then untied", []Body{&GivenUp{}, &Untied{}}, StageUntied},
		{"failed and given up", []Body{&Failed{Cause: "wind"}, &GivenUp{}}, StageGivenUp},
		{"headed back and failed", []Body{&HeadedBack{}, &Failed{Cause: "wind"}}, StageFailed},
		{"dead though its leader was chosen", []Body{&Visited{[]Finding{{Slot: 1, State: Dead}}}}, StageFailed},
	} {
		l := newLaptop("AB")
		led(l)
		for i, b := range c.bodies {
			l.say(may(20, 9, i), b)
		}
		if got := l.fold().Stage(); got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
	}
}

// The stages in order, as summaries keep them by number.
func TestStagesInOrder(t *testing.T) {
	for i, want := range []string{
		"standing", "draining", "grafted", "sealed", "painted", "pushing", "leader chosen", "above stake", "headed back", "untied", "failed", "given up",
	} {
		if got := Stage(i).String(); got != want {
			t.Errorf("stage %d is %s, want %s", i, got, want)
		}
	}
	if StageAboveStake >= StageHeadedBack || StageLeader >= StageAboveStake || StageHeadedBack >= StageUntied {
		t.Error("the stages are out of order")
	}
}
