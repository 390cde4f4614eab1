package walk

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/record/recordtest"
	"barkslip/core/unit"
)

// begin walks a stump from standing to white: cut back on 3 May, looked at on 10
// May when its bark drags, grafted with two scions on 13 May under bare sealer.
// Dates are those of the north, moved half a year in the south.
func (w *walker) begin(season int) (cut, set string) {
	w.t.Helper()
	cut, first, set := in(w.B, season, time.May, 3), in(w.B, season, time.May, 10), in(w.B, season, time.May, 13)
	w.clock(cut, 9, 0)
	w.present(StepLimbs)
	w.press("2", "30in", "3", "36in", "2")
	w.clock(first, 9, 0)
	w.opens(due.Look)
	w.press("1", "2")
	w.present(StepWait)
	w.meetsAt(recordtest.DayOf(set).At(9, 0, w.B.Zone), due.LookAgain, func() {
		w.press("1", "1", "2", "1")
		w.now = w.now.Add(15 * time.Minute)
		w.press("1")
	})
	w.meetsAt(w.now, due.Graft, func() { w.press("2.5", "1", "9:Lantern", "enter", "1", "enter", "enter") })
	if d, ok := dueIn(w.Diary, due.Look); ok {
		w.t.Errorf("the scions are set, and look is due by %s", d.By)
	}
	w.present(StepSeal)
	w.press("2")
	w.meetsAt(w.now.Add(2*time.Hour), due.White, func() { w.press("1") })
	return cut, set
}

// meets checks that a kind of due opens on a day, not the day before, is met by
// an answer and is then not open any more.
func (w *walker) meets(date string, kind due.Kind, answer func()) {
	w.t.Helper()
	w.meetsAt(recordtest.DayOf(date).At(9, 0, w.B.Zone), kind, answer)
}

func (w *walker) meetsAt(now time.Time, kind due.Kind, answer func()) {
	w.t.Helper()
	w.now = now
	w.opens(kind)
	answer()
	if after, still := dueIn(w.Diary, kind); still && after.Open(w.now) {
		w.t.Fatalf("%s: %s was answered, and opens %s by %s", w.now.Format("2 Jan 2006 15:04"), kind, after.Opens, after.By)
	}
}

// opens checks that a kind of due opens today, a timed one by now.
func (w *walker) opens(kind due.Kind) {
	w.t.Helper()
	d, ok := dueIn(w.Diary, kind)
	switch {
	case !ok:
		w.t.Fatalf("%s: %s is not due at all", w.now.Format("2 Jan 2006 15:04"), kind)
	case !d.Open(w.now) || d.Late(w.now) || w.B.Day(d.Opens) != w.B.Day(w.now):
		w.t.Fatalf("%s: %s opens %s by %s", w.now.Format("2 Jan 2006 15:04"), kind, d.Opens, d.By)
	}
}

// keysFor is how the tester answers each kind of due of part 5, all the steps
// that follow from it included.
func (w *walker) keysFor(kind due.Kind, first bool) []string {
	grown := w.B.Day(w.now) - w.B.InSeason(w.B.SeasonOf(w.B.Day(w.now)), time.April, 20)
	switch kind {
	case due.Buds:
		if first {
			return []string{"2", "0"} // one swells, the other as before
		}
		return []string{"7"} // all pushing
	case due.ConfirmTake:
		return []string{"8"}
	case due.Sprouts:
		if first {
			return []string{"2", "3"}
		}
		return []string{"2"} // the leaf below as it was
	case due.Stake:
		return []string{"5ft w"}
	case due.Leader:
		return []string{"1", "1"}
	case due.Tie:
		return []string{fmt.Sprintf("%dmm", 7*grown)}
	case due.Twine:
		return []string{"12in 4in", "2"}
	case due.TwineCheck:
		years := float64(w.B.Day(w.now)-w.B.Day(w.Fold().Now().Twine.At)) / 365.25
		return []string{fmt.Sprintf("3:%.2fin", 4+3*years)}
	case due.HeadBack:
		if first {
			return []string{"4"} // too short
		}
		return []string{"2"} // and the rival off
	case due.Untie:
		return []string{"2"} // left another year
	case due.NurseLimbsOff:
		if first {
			return []string{"1"}
		}
		return []string{"0"}
	}
	return []string{"1"}
}

// tend visits the stump every day up to a date and does what is due, and notes
// the days on which each kind came.
func (w *walker) tend(from, to string) map[due.Kind][]string {
	w.t.Helper()
	came := map[due.Kind][]string{}
	for day := recordtest.DayOf(from); day <= recordtest.DayOf(to); day = day.Add(1) {
		w.clock(day.String(), 9, 0)
		for round := 0; ; round++ {
			c := w.sees()
			step := c.Present()
			if step == StepRest {
				break
			}
			if white, ok := c.WhiteDue(); ok && step == StepWhite {
				w.now = white.Opens // sealed again this morning
				c = w.sees()
			}
			d, ok := openOf(c, step)
			if !ok || round > 20 {
				w.t.Fatalf("%s: asked %s, and no due is met there", day, step)
			}
			w.meetsAt(w.now, d.Kind, func() { w.press(w.keysFor(d.Kind, len(came[d.Kind]) == 0)...) })
			came[d.Kind] = append(came[d.Kind], day.String())
		}
	}
	return came
}

// openOf is the open due that is met on a step.
func openOf(c *Case, step StepID) (due.Due, bool) {
	for _, kind := range due.Kinds() {
		if d, ok := c.Due(kind); ok && d.Open(c.Now) && kind.Step() == step {
			return d, true
		}
	}
	return due.Due{}, false
}

// A stump from standing to untied over four seasons, looked after day by day:
// every kind of due comes on its day, none is late, and each goes when it is
// met. North and south alike, half a year apart.
func TestFourSeasons(t *testing.T) {
	for name, b := range map[string]*record.Block{"north": recordtest.WithEarwigs(recordtest.Northern()), "south": recordtest.WithEarwigs(recordtest.Southern()), "north, frosty": recordtest.Frosty(recordtest.WithEarwigs(recordtest.Northern()))} {
		t.Run(name, func(t *testing.T) {
			w := walkerOn(t, b, "2027-01-01", 9)
			cut, set := w.begin(2027)
			w.press("1") // the ring of the graft day
			came := w.tend(daysFrom(set, 1), in(b, 2030, time.August, 31))
			swelling, push := daysFrom(set, 14), daysFrom(set, 21)
			mild := func(season int) string {
				if b.Frosty {
					return in(b, season, time.March, 1)
				}
				return in(b, season, time.January, 15)
			}
			for kind, days := range map[due.Kind][]string{
				due.AfterLook: {daysFrom(set, 2)}, due.Reseal: {daysFrom(set, 5)}, due.Stake: {push},
				due.Earwigs: {daysFrom(set, 12), daysFrom(set, 26), daysFrom(set, 40), daysFrom(set, 54)},
				due.Buds:    {swelling, push}, due.ConfirmTake: {daysFrom(push, 30)}, due.Leader: {daysFrom(push, 14)},
				due.SeasonsEnd:     {in(b, 2027, time.October, 1), in(b, 2028, time.October, 1), in(b, 2029, time.October, 1)},
				due.TiesOff:        {in(b, 2027, time.November, 1), in(b, 2028, time.November, 1)},
				due.HeadBack:       {mild(2028), mild(2029)},
				due.NurseLimbsOff:  {mild(2028), mild(2029)},
				due.SecondShootOff: {mild(2029)},
			} {
				if !slices.Equal(came[kind], days) {
					t.Errorf("%s came %v, want %v", kind, came[kind], days)
				}
			}
			w.wantStarts(came, cut, push)
			for _, kind := range due.Kinds() {
				lost := kind == due.KeepSprouts || kind == due.Regraft
				if beforeWhite := kind == due.Finish || stepByID(kind.Step()).Part < PartSeal || kind == due.Seal; !beforeWhite && !lost && len(came[kind]) == 0 {
					t.Errorf("%s never came", kind)
				}
			}
			w.clock(in(b, 2030, time.September, 10), 9, 0)
			w.at(StepUntie, "1")
			if got := duesIn(w.Diary); len(got) != 0 || w.Fold().Stage() != record.StageUntied {
				t.Errorf("%s, and still due: %v", w.Fold().Stage(), got)
			}
			w.present(StepEnded)
		})
	}
}

// wantStarts checks the rounds that come again and again: where they start, how
// far apart they are, and where the season stops them.
func (w *walker) wantStarts(came map[due.Kind][]string, cut, push string) {
	w.t.Helper()
	b, lead := w.B, daysFrom(push, 14)
	if got := came[due.Sprouts][0]; got != daysFrom(cut, 21) {
		w.t.Errorf("sprouts first on %s", got)
	}
	if got := came[due.Pinch]; got[0] != lead || got[1] != daysFrom(lead, 14) || got[len(got)-1] > in(b, 2027, time.August, 15) || len(got) != 5 {
		w.t.Errorf("pinched on %v", got)
	}
	if got := came[due.Tie]; got[0] != lead || got[len(got)-1] > in(b, 2028, time.September, 30) || !slices.Contains(got, in(b, 2028, time.June, 1)) {
		w.t.Errorf("tied on %v", got)
	}
	for season := 2028; season <= 2030; season++ {
		if !slices.Contains(came[due.Sprouts], in(b, season, time.May, 1)) {
			w.t.Errorf("no sprouts at leaf-out %d: %v", season, came[due.Sprouts])
		}
	}
	for _, day := range came[due.Sprouts] {
		d := recordtest.DayOf(day)
		if y := b.SeasonOf(d); y > 2027 && (d < b.LeafOut(y) || d > b.SeasonEnds(y)) {
			w.t.Errorf("sprouts out of season on %s", day)
		}
	}
	var months []string
	for _, day := range came[due.TwineCheck][:4] {
		months = append(months, day[5:])
	}
	want := "10-01 04-01 07-01 10-01"
	if b.South() {
		want = "04-01 10-01 01-01 04-01"
	}
	if got := strings.Join(months, " "); got != want {
		w.t.Errorf("twine checked on %s, want %s", got, want)
	}
	twined := recordtest.DayOf(came[due.Twine][0])
	if tight := twined.Add(974); len(came[due.CutTwine]) != 1 || abs(recordtest.DayOf(came[due.CutTwine][0])-tight.Add(-30)) > 3 {
		w.t.Errorf("8 in to go at 3 in a year from %s: cut on %v, about %s", twined, came[due.CutTwine], tight.Add(-30))
	}
}

func abs(d unit.Date) unit.Date { return max(d, -d) }

// A stump that fails is asked for its cause and its sprouts, comes back in the
// next spring and is grafted anew beside its history.
func TestFailedAndGraftedAgain(t *testing.T) {
	for name, b := range map[string]*record.Block{"north": recordtest.Northern(), "south": recordtest.Southern()} {
		t.Run(name, func(t *testing.T) {
			w := walkerOn(t, b, "2027-01-01", 9)
			_, set := w.begin(2027)
			w.clock(daysFrom(set, 2), 9, 0)
			w.press("1")
			w.clock(daysFrom(set, 5), 9, 0)
			w.press("1")
			day := daysFrom(set, 14)
			w.clock(day, 9, 0)
			w.at(StepVisit, "3", "5") // one pushes, one is dead
			w.present(StepDeath)
			w.press("2") // bled
			if g := w.Fold().Now().Grafts[1]; g.State != record.Dead || g.Cause != "bled" {
				t.Fatalf("graft 2 is %s of %q", g.State, g.Cause)
			}
			if visits := len(w.Fold().Now().Visits); visits != 1 {
				t.Errorf("one visit was made, %d stand", visits)
			}
			lost := daysFrom(set, 30)
			w.clock(lost, 9, 0)
			w.at(StepVisit, "5")
			w.press("9:frost")
			w.present(StepFailed)
			w.press("2:frost")
			w.meets(lost, due.KeepSprouts, func() { w.press("2") })
			w.present(StepEnded)
			w.meets(in(b, 2028, time.March, 15), due.Regraft, func() {
				w.press("2")
				w.press("1", "30in", "3")
				if d, ok := dueIn(w.Diary, due.Regraft); !ok || !d.Open(w.now) {
					t.Error("limbs were judged, and regraft is gone before the cut")
				}
				w.press("28in|1", "2")
			})
			s := w.Fold()
			if len(s.Attempts) != 2 || s.Stage() != record.StageDraining || len(s.Attempts[0].Grafts) != 2 || s.Attempts[0].Nurse.What.Limbs != 2 || s.Attempts[0].CutBack.What.Height.Typed != "36in" {
				t.Fatalf("%d attempts, now %s, before %+v", len(s.Attempts), s.Stage(), s.Attempts[0])
			}
			w.clock(in(b, 2028, time.March, 22), 9, 0)
			w.opens(due.Look)
			w.press("1", "1", "2", "1")
			w.now = w.now.Add(20 * time.Minute)
			w.press("1")
			w.press("2.5", "1", "9:Lantern", "enter", "1", "enter", "enter", "1")
			if got := w.Fold().Stage(); got != record.StageSealed {
				t.Errorf("grafted again, it is %s", got)
			}
		})
	}
}
