package walk

import (
	"errors"
	"strings"
	"testing"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/record/recordtest"
)

// What can hardly be is doubted in place, with ways on; what cannot be is
// refused with what would be taken.
func TestDoubts(t *testing.T) {
	w := threeGrafts(t, "2027-08-20")
	w.On("2027-05-29", 9, 0, recordtest.Visit(record.Growing, record.Growing, record.Growing)).
		On("2027-06-14", 9, 0, &record.LeaderChosen{Slot: 1, Shoot: "only"}, &record.Tied{Shoot: recordtest.Inches(14)})
	w.On("2027-08-02", 9, 0, &record.Twined{Loops: 2, Loop: recordtest.Inches(12), Stem: recordtest.Inches(4), Material: "natural"})
	for _, c := range []struct {
		step       StepID
		key, typed string
		says       string // "" where it is taken
		ways       int    // 0 where it is refused
	}{
		{StepTie, "", "20in", "", 0},
		{StepTie, "", "14in", "", 0},
		{StepTie, "", "10in", "was 14 in and is now 10 in", 3},
		{StepTie, "", "long", "not understood", 0},
		{StepTie, "", "0", "more than", 0},
		{StepTwineCheck, "3", "4 1/2in", "", 0},
		{StepTwineCheck, "3", "3in", "was 4 in round and is now 3 in", 1},
		{StepTwineMove, "", "20in 7in", "", 0},
		{StepTwineMove, "", "10in 7in", "is tight on a stem 7 in round", 1},
		{StepTwineMove, "", "7in 10in", "loop first", 0},
		{StepTwineMove, "", "20in", "then the stem's", 0},
		{StepTwineMove, "", "20in 3in", "does not shrink", 1},
		{StepShoots, "", "14in 9in 8in", "", 0},
		{StepShoots, "", "14in 9in", "3 lengths", 0},
		{StepStake, "", "6ft w", "", 0},
		{StepStake, "", "6ft", "side", 0},
		{StepHeadBack, "3", "5ft", "", 0},
		{StepHeadBack, "3", "50ft", "up to", 0},
	} {
		a := w.sees().Ask(c.step, false)
		entry := a.Entry
		for _, ch := range a.Choices {
			if ch.Key == c.key {
				entry = ch.Entry
			}
		}
		bodies, err := entry.Read(c.typed)
		var doubt *Doubt
		ways := 0
		if errors.As(err, &doubt) {
			ways = len(doubt.Ways)
		}
		if (c.says == "") != (err == nil) || err != nil && !strings.Contains(err.Error(), c.says) || ways != c.ways || err == nil && len(bodies) == 0 {
			t.Errorf("%s, %q: %v with %d ways, want %q with %d", c.step, c.typed, err, ways, c.says, c.ways)
		}
	}
}

func TestAShorterShootByTheWayOn(t *testing.T) {
	w := threeGrafts(t, "2027-07-01")
	w.On("2027-05-29", 9, 0, recordtest.Visit(record.Growing, record.Growing, record.Growing)).
		On("2027-06-14", 9, 0, &record.LeaderChosen{Slot: 1}, &record.Tied{Shoot: recordtest.Inches(14)})
	w.at(StepTie, "10in|1")
	if got := record.LastOf(w.Fold().Now().Ties).What; !got.Broken || got.Shoot.Typed != "10in" {
		t.Errorf("tied %+v", got)
	}
}

// A girth that fills the loop is tight without being said so.
func TestAGirthThatFillsTheLoop(t *testing.T) {
	w := threeGrafts(t, "2028-07-01")
	w.On("2027-05-29", 9, 0, recordtest.Visit(record.Growing, record.Growing, record.Growing)).On("2027-06-14", 9, 0, &record.LeaderChosen{Slot: 1})
	w.On("2027-08-02", 9, 0, &record.Twined{Loop: recordtest.Inches(8), Stem: recordtest.Inches(4)})
	w.at(StepTwineCheck, "3:8in")
	if d, ok := dueIn(w.Diary, due.CutTwine); !ok || !d.Open(w.now) {
		t.Errorf("cut twine %v: %+v", ok, d)
	}
}
