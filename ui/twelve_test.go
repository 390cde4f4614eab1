package ui

import (
	"os"
	"slices"
	"testing"
	"time"

	"barkslip/core/due"
	"barkslip/core/plan"
	"barkslip/core/record"
	"barkslip/core/walk"
	"barkslip/ui/part"
	"barkslip/ui/stump"
)

// twelve is twelve stumps of six kinds, two of each by their tree number, walked
// from rounds alone.
type twelve struct {
	*driver
	turns map[record.StumpID]int // steps answered
}

// kind is what becomes of the open stump: plain, bleeds first, lost, given up,
// two scions, or sealed bare.
func (w *twelve) kind() int { return w.kindOf(w.walk().ID()) }

func (w *twelve) kindOf(id record.StumpID) int { return int(id.Tree-1) / 2 }

// answers is the keys for the step asked as the stump's kind has it.
func (w *twelve) answers(step walk.StepID) []string {
	s := w.stump()
	again := len(s.Attempts) > 1
	switch {
	case step == walk.StepBleeding && w.kind() == 1 && len(s.Now().Holes) == 0:
		return []string{"4"}
	case step == walk.StepVisit && w.kind() == 2 && !again:
		return []string{"9", "5"}
	case step == walk.StepVisit && w.kind() == 3:
		return []string{"9", "5"}
	case step == walk.StepVisit && len(w.stump().Now().Living()) == 1:
		return []string{"4"}
	case step == walk.StepVisit:
		return []string{"8"}
	case step == walk.StepKeep && w.kind() == 3:
		return []string{"4"}
	case step == walk.StepMeasure && w.kind() == 4: // two scions by its size
		return []string{"2in", "enter"}
	case step == walk.StepMeasure: // three
		return []string{"3.4in", "enter"}
	case step == walk.StepNewFace:
		return []string{"1"}
	case step == walk.StepGiveUp:
		for _, ch := range w.walk().Asked().Choices {
			if len(ch.Bodies) > 0 {
				if g, ok := ch.Bodies[0].(*record.GivenUp); ok && !g.Season {
					return []string{ch.Key}
				}
			}
		}
		return []string{"1"}
	case step == walk.StepSeal && w.kind() == 5:
		return []string{"1"}
	case step == walk.StepTie:
		return []string{"enter"}
	case step == walk.StepEnded:
		return []string{"2"}
	case step == walk.StepStake && w.walk().Asked().Entry == nil:
		return []string{"enter"}
	}
	if keys := replies[step]; keys != nil {
		return keys
	}
	return []string{"enter"}
}

// walkNow walks what is due now; what only waits is left.
func (w *twelve) walkNow() {
	w.t.Helper()
	w.press("g", "1")
	for turns := 0; turns < 600; turns++ {
		if !is[*stump.Screen](w.driver) {
			before := len(w.driver.round().Calls())
			if before == 0 {
				break
			}
			w.press("enter")
			if !is[*stump.Screen](w.driver) {
				break
			}
		}
		if u := w.walk().Asked().Until; u != nil && u.After(w.now) {
			w.now = *u
			w.root.Update(tick(w.now))
		}
		step, id, had := w.step(), w.walk().ID(), len(w.stump().All)
		w.press(w.answers(step)...)
		if s, _ := w.book.Stump(id); len(s.All) == had && step == walk.StepHeight {
			w.press("1") // old nails stand there: cut with care
		}
		w.turns[id]++
		if s, _ := w.book.Stump(id); len(s.All) == had && is[*stump.Screen](w.driver) && w.walk().ID() == id && w.step() == step {
			w.t.Fatalf("%s: nothing was taken at %s on %s:\n%s", w.now, step, id.Place(), w.screen())
		}
	}
	w.root.do(part.OpenBlock{Block: w.root.x.Block})
}

// TestTwelveStumps walks twelve stumps of six kinds over the seasons from rounds
// alone: each ends untied, given up or grafted again, no due is shown after its
// window, and every stump that is not done has work open or to come each day.
func TestTwelveStumps(t *testing.T) {
	if raceDetector {
		t.Skip("its keys are those of the other tests; it takes minutes then")
	}
	for _, c := range []struct{ name, units, zone, place, begin, until string }{
		{"north, imperial", "us", "America/New_York", "42.7", "2027-05-03 09:00", "2032-01-01 00:00"},
		{"south, metric", "metric", "Pacific/Auckland", "-41.3", "2027-11-01 09:00", "2032-07-01 00:00"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if c.units == "metric" && os.Getenv("BARKSLIP_SLOW") == "" {
				t.Skip("BARKSLIP_SLOW walks it")
			}
			d := newDriver(t, c.begin)
			d.plant("Hollow Lane", rows(1, 12)...)
			for setting, value := range map[string]string{"zone": c.zone, "units": c.units, "latitude": c.place, "earwigs": "yes", "a-day": "12"} {
				d.append(record.Event{At: d.now, Hand: "RK", Body: &record.BlockSet{Block: home, Setting: setting, Value: value}})
			}
			d.open()
			w := &twelve{driver: d, turns: map[record.StumpID]int{}}
			for until := at(c.until); w.now.Before(until); {
				if len(due.Round(w.root.x.Summaries(home), due.Now(w.now))) > 0 {
					w.walkNow()
				}
				w.check()
				w.forward()
			}
			w.ended()
			t.Logf("%d key presses", w.keys)
		})
	}
}

// check sees that nothing is shown after its window, and no stump is forgotten.
func (w *twelve) check() {
	w.t.Helper()
	w.evening()
	for _, s := range w.root.x.Summaries(home) {
		left := due.At(s.Dues, w.now)
		if over := []record.Stage{record.StageUntied, record.StageGivenUp}; len(left) == 0 && !slices.Contains(over, s.Stage) {
			w.t.Fatalf("%s: %s is %s and nothing is due", w.now, s.ID.Place(), s.Stage)
		}
		for _, d := range left {
			if d.Ended(w.now) {
				w.t.Fatalf("%s: %s is shown after its window on %s", w.now, d.Kind, s.ID.Place())
			}
		}
	}
}

// evening looks at what the due command lists at the end of the day: nothing past
// its window, and every stump that is not done is in it or has a first due to come.
func (w *twelve) evening() {
	w.t.Helper()
	b, sums := w.root.x.Site(), w.root.x.Summaries(home)
	end := due.EndOf(b.Day(w.now), b.Zone)
	named := map[record.StumpID]bool{}
	for _, c := range due.Round(sums, due.Asked{From: end, Until: end, CutBack: plan.CutBackOn(b, sums, end)}) {
		for _, d := range c.Dues {
			if named[c.Stump] = true; d.Ended(end) {
				w.t.Fatalf("%s: %s is listed after its window on %s", end, d.Kind, c.Stump.Place())
			}
		}
	}
	for _, s := range sums {
		_, comes := due.Next(due.At(s.Dues, end), end)
		_, open := due.First(due.At(s.Dues, end), end)
		if over := []record.Stage{record.StageUntied, record.StageGivenUp}; !named[s.ID] && !comes && !open && !slices.Contains(over, s.Stage) {
			w.t.Fatalf("%s: %s is %s, is not listed and has nothing to come", end, s.ID.Place(), s.Stage)
		}
	}
}

// forward goes on to the next time anything opens, at nine where that is a day.
func (w *twelve) forward() {
	next := w.now.AddDate(1, 0, 0)
	for _, s := range w.root.x.Summaries(home) {
		for _, d := range due.At(s.Dues, w.now) {
			if d.Opens.After(w.now) && d.Opens.Before(next) {
				next = d.Opens
			}
		}
	}
	if local := next.In(w.root.x.Site().Zone); local.Hour() == 0 && local.Minute() == 0 {
		next = next.Add(9 * time.Hour)
	}
	w.now = next.Add(time.Second)
	w.root.Update(tick(w.now))
}

// ended sees how each stump stands at the end.
func (w *twelve) ended() {
	w.t.Helper()
	for _, s := range w.root.x.Summaries(home) {
		r, _ := w.book.Stump(s.ID)
		w.t.Logf("%s ends %s after %d grafts, %d steps", s.ID.Place(), s.Stage, len(r.Attempts), w.turns[s.ID])
		if (w.kindOf(s.ID) == 4) != (len(r.Attempts[0].Grafts) == 2) && w.kindOf(s.ID) != 3 {
			w.t.Errorf("%s was walked with %d scions", s.ID.Place(), len(r.Attempts[0].Grafts))
		}
		if s.Stage != record.StageUntied && s.Stage != record.StageGivenUp && len(r.Attempts) < 2 {
			w.t.Errorf("%s ends %s", s.ID.Place(), s.Stage)
		}
	}
}
