package walk

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/record/recordtest"
	"barkslip/core/unit"
)

// threeGrafts is a stump grafted with three scions, walked to a date.
func threeGrafts(t *testing.T, now string) *walker {
	w := walkerOn(t, recordtest.Northern(), now, 9)
	w.Grafted("2027-05-03", "2027-05-12", record.Wrapped)
	w.On("2027-05-12", 9, 50, &record.SlotsMarked{Slots: []record.Slot{{Bearing: 20}, {Bearing: 140}, {Bearing: 260}}}).
		On("2027-05-12", 10, 5, &record.ScionSet{Slot: 3, Checks: record.AllGood})
	w.On("2027-05-14", 8, 0, &record.SealChecked{}).On("2027-05-26", 8, 0, &record.Staked{Height: recordtest.Inches(60)})
	return w
}

func (w *walker) states() string {
	var words []string
	for _, g := range w.Fold().Now().Grafts {
		words = append(words, string(g.Was()))
	}
	return strings.Join(words, " ")
}

// A visit with nothing to report is one key from its question; three grafts
// unlike each other are one key each; all alike are one key.
func TestAVisitByItsKeys(t *testing.T) {
	for _, c := range []struct {
		keys, want string
	}{
		{"0", "no-change no-change no-change"},
		{"1 2 3", "no-change swelling pushing"},
		{"4 4 4", "growing growing growing"},
		{"6", "swelling swelling swelling"},
		{"7", "pushing pushing pushing"},
		{"8", "growing growing growing"},
		{"2 7", "swelling pushing pushing"},
		{"3 0", "pushing no-change no-change"},
	} {
		w := threeGrafts(t, "2027-05-30")
		w.present(StepVisit)
		w.press(strings.Fields(c.keys)...)
		if got := w.states(); got != c.want {
			t.Errorf("%s: %s, want %s", c.keys, got, c.want)
		}
		if got := len(w.Fold().Now().Visits); got != 1 {
			t.Errorf("%s: %d visits stand", c.keys, got)
		}
		w.present(StepSprouts)
	}
}

// Each answer of a visit stands at once, before the next is given.
func TestAVisitStandsAnswerByAnswer(t *testing.T) {
	w := threeGrafts(t, "2027-05-30").press("3")
	if got := w.states(); got != "pushing no-change no-change" || len(w.Fold().Now().Visits) != 1 {
		t.Errorf("after one key: %s", got)
	}
	w.present(StepVisit)
	if _, a := w.asked(); !strings.HasPrefix(a.Question, "Graft 2 of 3, at 140°, SE") {
		t.Errorf("asked %q", a.Question)
	}
	w.clock("2027-05-31", 9, 0) // a visit broken off is no visit: on another day it begins anew
	w.present(StepVisit)
	if _, a := w.asked(); !strings.HasPrefix(a.Question, "Graft 1 of 3") {
		t.Errorf("on the next day asked %q", a.Question)
	}
}

func TestAVisitIsSaidAgain(t *testing.T) {
	w := threeGrafts(t, "2027-05-30").press("5", "3", "3", "2")
	if got := w.states(); got != "dead pushing pushing" {
		t.Fatalf("first %s", got)
	}
	a := w.sees().Ask(StepVisit, true)
	if !strings.HasPrefix(a.Question, "Graft 1 of 3") {
		t.Errorf("asked %q", a.Question)
	}
	w.choose(a.Choices[2], "") // it pushes after all
	w.press("3", "2")
	if got := w.states(); got != "pushing pushing swelling" || len(w.Fold().Now().Visits) != 1 {
		t.Errorf("said again: %s, %d visits", got, len(w.Fold().Now().Visits))
	}
}

func TestDeathsAreExplained(t *testing.T) {
	w := threeGrafts(t, "2027-05-30").press("5", "5", "2")
	w.present(StepDeath)
	w.press("3") // dried out
	w.present(StepDeath)
	w.press("enter") // the other of the same
	grafts := w.Fold().Now().Grafts
	if grafts[0].Cause != "dried out or seal cracked" || grafts[1].Cause != grafts[0].Cause || grafts[2].Cause != "" {
		t.Errorf("causes %q, %q, %q", grafts[0].Cause, grafts[1].Cause, grafts[2].Cause)
	}
	w.clock("2027-06-06", 9, 0)
	if _, a := w.asked(); a.Question != "Graft 3 of 3, at 260°, W: what do its buds do?" {
		t.Errorf("asked %q; the dead are not asked for", a.Question)
	}
	w.press("5", "0")
	w.present(StepFailed)
	w.press("enter")
	if got := w.Fold().Now().Failed.What.Cause; got != "dried out or seal cracked" {
		t.Errorf("failed of %q", got)
	}
}

// From day 42 what has not moved is scratched: green waits, brown is dead.
func TestScratchFromDay42(t *testing.T) {
	w := threeGrafts(t, "2027-06-22").press("3", "0") // day 41
	if got := w.sees().Present(); got == StepScratch {
		t.Error("scratched on day 41")
	}
	w = threeGrafts(t, "2027-06-23").press("3", "0")
	w.present(StepScratch)
	w.press("1", "2")
	if got := w.states(); got != "pushing no-change dead" {
		t.Errorf("scratched: %s", got)
	}
	if d, ok := dueIn(w.Diary, due.Buds); !ok || w.B.Day(d.Opens).String() != "2027-07-11" {
		t.Errorf("green waits until %s", d.Opens)
	}
	w = threeGrafts(t, "2027-06-23").press("0", "4")
	if got := w.states(); got != "dead dead dead" {
		t.Errorf("all brown: %s", got)
	}
}

// The leader asked for first is the one known to grow best, and why is said.
func TestWhichLeads(t *testing.T) {
	measured := func(mm ...float64) *record.Visited {
		v := recordtest.Visit(record.Growing, record.Growing, record.Growing)
		for i, l := range mm {
			v.Found[i].Shoot = record.Measured(unit.Length(l), unit.US)
		}
		return v
	}
	for _, c := range []struct {
		name, likely, because string
		visits                []*record.Visited
	}{
		{"longest", "3", "grows best: 10 in against 8 in", []*record.Visited{recordtest.Visit(record.Pushing, record.Pushing, record.Pushing), measured(8*25.4, 5*25.4, 10*25.4)}},
		{"further on", "2", "further on: it is growing, the next pushing", []*record.Visited{recordtest.Visit(record.Pushing, record.Growing, record.NoChange)}},
		{"pushed first", "2", "pushed first", []*record.Visited{recordtest.Visit(record.NoChange, record.Pushing, record.NoChange), recordtest.Visit(record.Growing, record.Growing, record.Growing)}},
		{"alike", "", "None is known to grow better", []*record.Visited{recordtest.Visit(record.Growing, record.Growing, record.Growing)}},
		{"alone", "1", "the only graft alive", []*record.Visited{recordtest.Visit(record.Growing, record.Dead, record.Dead)}},
	} {
		w := threeGrafts(t, "2027-06-20")
		for i, v := range c.visits {
			w.On(daysFrom("2027-05-29", i), 9, 0, v)
		}
		a := w.sees().Ask(StepLeader, false)
		if a.Likely != c.likely || !strings.Contains(a.Because, c.because) {
			t.Errorf("%s: likely %q, because %q", c.name, a.Likely, a.Because)
		}
		for _, ch := range a.Choices {
			if c.name == "alone" && (ch.Key == "2" || ch.Key == "3") {
				t.Error("a dead graft is offered as leader")
			}
		}
	}
}

func TestALeaderIsLostAndAnotherPromoted(t *testing.T) {
	w := threeGrafts(t, "2027-06-20")
	w.On("2027-05-29", 9, 0, recordtest.Visit(record.Growing, record.Growing, record.Growing))
	w.at(StepLeader, "2", "1")
	w.clock("2027-07-10", 9, 0)
	w.at(StepBroken, "1") // wind
	w.at(StepLeader, "3", "2")
	l, _ := w.Fold().Now().Leads()
	if broken := w.Fold().Now().Broken; l.Slot != 3 || l.Shoot != "lower" || len(broken) != 1 || broken[0].What.Cause != "wind" || w.Fold().Now().Leader.What.Slot != 2 {
		t.Errorf("leads %+v, broken %+v", l, broken)
	}
	w.clock("2027-07-12", 9, 0)
	w.On("2027-07-12", 8, 0, recordtest.Visit(record.Growing, record.Growing, record.Dead))
	w.at(StepLeader, "1", "4")
	if l, _ := w.Fold().Now().Leads(); l.Slot != 1 {
		t.Errorf("the graft promoted died, and %+v leads", l)
	}
}

// Sprouts are shown against the leaf left at grafting.
func TestSproutsAgainstTheLeafLeft(t *testing.T) {
	w := threeGrafts(t, "2027-06-10")
	w.On("2027-05-03", 10, 0, &record.NurseJudged{Limbs: 1, Leaf: "little"})
	w.at(StepSprouts, "3")
	w.present(StepSproutLeaf)
	c := w.sees()
	a := c.Ask(StepSproutLeaf, false)
	if !strings.Contains(a.Because, "little leaf was left") {
		t.Errorf("because %q", a.Because)
	}
	var meanings []string
	for _, ch := range a.Choices[:4] {
		meanings = append(meanings, ch.Meaning)
	}
	if want := []string{"no more than was left", "no more than was left", "as much as it may be", "too much: rub the highest"}; !slices.Equal(meanings, want) {
		t.Errorf("meanings %q", meanings)
	}
	w.press("5:4", "2")
	rubbed := w.Fold().Now().Rubbed
	if got := record.LastOf(rubbed).What; len(rubbed) != 1 || got != (record.SproutsRubbed{Near: 3, Below: 4, Leaf: "little"}) {
		t.Errorf("%d rubbings, the last %+v", len(rubbed), got)
	}
}

// What was done on the stump before is offered for the stake.
func TestStakeAsBefore(t *testing.T) {
	w := threeGrafts(t, "2027-05-30")
	before := HabitOf(w.Fold())
	a := NewCase(w.Fold(), w.B, w.book, w.now, before).Ask(StepStake, false)
	if a.Likely != "1" || a.Choices[0].Meaning != "60 in, N" {
		t.Errorf("likely %q, %+v", a.Likely, a.Choices)
	}
	if a = w.sees().Ask(StepStake, false); a.Entry == nil {
		t.Error("nothing before, and no field")
	}
}

func TestASeasonEndedDead(t *testing.T) {
	w := threeGrafts(t, "2027-10-05")
	w.On("2027-05-29", 9, 0, recordtest.Visit(record.Growing, record.Growing, record.Growing))
	w.at(StepSeason, "4")
	if w.Fold().Stage() != record.StageFailed {
		t.Errorf("it is %s", w.Fold().Stage())
	}
	w.present(StepDeath)
}

func TestUntyingTakesTheTwineOff(t *testing.T) {
	w := threeGrafts(t, "2030-10-05")
	w.On("2027-05-29", 9, 0, recordtest.Visit(record.Growing, record.Growing, record.Growing)).On("2027-06-14", 9, 0, &record.LeaderChosen{Slot: 1}).
		On("2027-08-02", 9, 0, &record.Twined{Loop: recordtest.Inches(8), Stem: recordtest.Inches(4)})
	w.at(StepUntie, "1")
	if a := w.Fold().Now(); a.TwineCut == nil || a.Untied == nil || len(duesIn(w.Diary)) != 0 {
		t.Errorf("twine cut %v, untied %v, due %v", a.TwineCut, a.Untied, duesIn(w.Diary))
	}
}

// Cutting back after an end replaces nothing of the attempt before.
func TestAnswersAfterTheEnd(t *testing.T) {
	d := recordtest.DiaryOn(recordtest.Northern()).Grafted("2027-05-03", "2027-05-12", record.Bare)
	if got := d.Fold().Answers("cut-back"); len(got) != 1 {
		t.Errorf("while it lives: %d answers", len(got))
	}
	d.On("2027-06-20", 9, 0, recordtest.Visit(record.Dead, record.Dead))
	s := d.Fold()
	if got := append(s.Answers("cut-back"), s.Answers("nurse-limbs")...); len(got) != 0 {
		t.Errorf("after the end: %d answers to replace", len(got))
	}
	if got := s.Answers("sealed"); len(got) != 1 {
		t.Errorf("what may still be corrected: %d answers", len(got))
	}
}

// Every step of the walk can be asked on a stump at any point, and its keys are
// single, apart and short enough for a small screen.
func TestEveryAskIsWhole(t *testing.T) {
	w := threeGrafts(t, "2027-08-20")
	stumps := []*record.Stump{recordtest.DiaryOn(recordtest.Northern()).Fold(), recordtest.DiaryOn(recordtest.Northern()).
		On("2027-05-03", 9, 0, &record.CutBack{Height: recordtest.Inches(36)}).Fold(), w.Fold()}
	w.On("2027-05-29", 9, 0, recordtest.Visit(record.Growing, record.Growing, record.NoChange)).
		On("2027-06-14", 9, 0, &record.LeaderChosen{Slot: 1}, &record.Tied{Shoot: recordtest.Inches(14)}).
		On("2027-08-20", 8, 0, &record.Twined{Loop: recordtest.Inches(8), Stem: recordtest.Inches(4)}, &record.SproutsRubbed{})
	stumps = append(stumps, w.Fold())
	w.On("2027-08-20", 8, 30, recordtest.Visit(record.Dead, record.Dead, record.Dead))
	stumps = append(stumps, w.Fold())
	for i, s := range stumps {
		c := NewCase(s, recordtest.Northern(), w.book, w.now, Habit{})
		for _, step := range Steps() {
			if step.Part != PartAfter {
				continue
			}
			for _, again := range []bool{false, true} {
				a := c.Ask(step.ID, again)
				name := fmt.Sprintf("stump %d, %s", i, step.ID)
				if a.Question == "" || a.Because == "" || a.Entry == nil && len(a.Choices) == 0 {
					t.Errorf("%s: question %q, because %q, %d choices", name, a.Question, a.Because, len(a.Choices))
				}
				checkChoices(t, name, a)
			}
		}
	}
	for _, step := range Steps() {
		if step.Part == PartAfter && (step.LookFor == "" || step.Why == "" || len(step.Name) > 13) {
			t.Errorf("%s: name %q, look for %q, why %q", step.ID, step.Name, step.LookFor, step.Why)
		}
	}
}

func checkChoices(t *testing.T, name string, a Ask) {
	seen := map[string]bool{}
	for _, ch := range a.Choices {
		if len(ch.Key) != 1 || ch.Key < "0" || ch.Key > "9" || seen[ch.Key] {
			t.Errorf("%s: key %q", name, ch.Key)
		}
		seen[ch.Key] = true
		leads := len(ch.Bodies) > 0 || ch.Entry != nil || ch.Go != "" || ch.Leave || ch.Pick != PickNone
		if !leads || ch.Go != "" && stepByID(ch.Go) == nil {
			t.Errorf("%s: %s leads nowhere", name, ch.Word)
		}
		if n := len([]rune(ch.Word)); n > 26 || n+len([]rune(ch.Meaning)) > 42 {
			t.Errorf("%s: %q %q is too long", name, ch.Word, ch.Meaning)
		}
		for _, b := range ch.Bodies {
			if err := record.Check(record.Event{Body: b, Stump: recordtest.Stump417}); err != nil {
				t.Errorf("%s: %s: %v", name, ch.Word, err)
			}
		}
	}
	if a.Likely != "" && !seen[a.Likely] {
		t.Errorf("%s: likely %q is no choice", name, a.Likely)
	}
}
