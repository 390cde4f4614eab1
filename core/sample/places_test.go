package sample

import (
	"maps"
	"slices"
	"strings"
	"testing"
	"time"

	"barkslip/core/due"
	"barkslip/core/ready"
	"barkslip/core/record"
)

// Whatever day of the season today is, the history can be told and shows its
// parts.
func TestEveryDayOfTheSeasonCanBeToday(t *testing.T) {
	zone := newYork(t)
	for _, now := range []time.Time{
		time.Date(2027, 5, 10, 9, 0, 0, 0, zone), time.Date(2027, 5, 23, 12, 0, 0, 0, zone), time.Date(2026, 6, 10, 17, 59, 0, 0, zone),
	} {
		g := layOut(Plan{Stumps: 240, Seasons: 1, Seed: 1, Zone: zone, Now: now})
		l := &life{ground: g}
		l.tellBlock(l)
		for i := range g.Stumps {
			if g.stagedAt(i) == asItFalls {
				continue
			}
			l.begin(i)
			l.live()
			l.shows(t)
		}
	}
}

// shows checks that the part a stump plays is to be seen on it at its today.
func (l *life) shows(t *testing.T) {
	a, late := l.s.Now(), map[due.Kind]bool{}
	for _, d := range due.At(due.Of(l.s, l.blockAs), l.Now) {
		late[d.Kind] = late[d.Kind] || d.Late(l.Now)
	}
	tight := false
	if a.TwineOn() {
		_, tight = a.SeenTight()
	}
	stage := a.Stage()
	if !map[staged]bool{
		lateToPaint:  late[due.White] && stage == record.StageSealed,
		justSet:      a.AllSet() && stage == record.StageGrafted && !late[due.Seal],
		stillWet:     len(a.StillWet) == 1 && stage == record.StageSealed,
		disputed:     len(l.s.Clashes) == 1,
		againstAll:   len(a.Against) > 0 && len(a.Grafts) > 0,
		justLost:     stage == record.StageFailed && l.Now.Sub(a.LostAt()) < 7*24*time.Hour,
		isGivenUp:    stage == record.StageGivenUp,
		lostInWinter: stage == record.StageFailed && a.Failed != nil && !late[due.Regraft],
		towers:       stage == record.StageAboveStake && len(a.AnotherYear) > 0,
		uncut:        stage == record.StageAboveStake && len(a.AnotherYear) == 0,
		tightTwine:   tight && late[due.CutTwine],
		overgrown:    late[due.Sprouts],
	}[l.staged] {
		t.Errorf("seed %d, %s: part %d does not show on stump %d: %s", l.Seed, l.Now.Format(time.DateTime), l.staged, l.index, stage)
	}
}

// cases counts what there is to see on a block at its today.
type cases struct {
	stages                                  map[record.Stage]int
	clashes, against, running, wet, regraft int
}

func (h *history) cases() cases {
	c := cases{stages: map[record.Stage]int{}}
	for _, s := range h.stumps {
		a := s.Now()
		c.stages[s.Stage()]++
		c.clashes += len(s.Clashes)
		c.against += len(a.Against)
		if len(s.Attempts) > 1 {
			c.regraft++
		}
		if s.Stage() == record.StageSealed {
			if ago := h.plan.Now.Sub(a.Sealed.At); ago > time.Hour && ago <= 3*time.Hour {
				c.running++
			}
			c.wet += len(a.StillWet)
		}
	}
	return c
}

func TestEveryStageAndCaseIsThere(t *testing.T) {
	for seed, h := range made() {
		c := h.cases()
		for _, stage := range record.Stages() {
			if c.stages[stage] == 0 {
				t.Errorf("seed %d: no stump is %s", seed, stage)
			}
		}
		if c.clashes != 1 || c.running < 3 || c.against == 0 || c.wet == 0 || c.regraft == 0 {
			t.Errorf("seed %d: %+v", seed, c)
		}
		for i := range h.ground.Stumps {
			if part := h.ground.stagedAt(i); part != asItFalls {
				(&life{ground: h.ground, staged: part, index: i, s: h.stumps[h.ground.place(i)]}).shows(t)
			}
		}
	}
}

// A block is kept: little on it is late, and something is.
func TestFewStumpsAreLate(t *testing.T) {
	for seed, h := range made() {
		stumps, kinds := 0, map[due.Kind]int{}
		for _, s := range h.stumps {
			late := false
			for _, d := range due.At(due.Of(s, h.block), h.plan.Now) {
				if d.Late(h.plan.Now) {
					late = true
					kinds[d.Kind]++
				}
			}
			if late {
				stumps++
			}
		}
		t.Logf("seed %d: %d stumps late, %v", seed, stumps, kinds)
		if stumps < 3 || stumps > 11 || kinds[due.White] < 1 || kinds[due.White] > 2 || kinds[due.CutTwine] < 1 || kinds[due.Sprouts] < 1 {
			t.Errorf("seed %d: %d stumps are late, by their work %v", seed, stumps, kinds)
		}
	}
}

// On some day each verdict about a draining stump is to be seen.
func TestTheDrainingAreToldAllThereIs(t *testing.T) {
	told := map[record.Verdict]int{}
	for seed := range uint64(40) {
		g := layOut(usual(t, seed))
		l := &life{ground: g}
		l.tellBlock(l)
		for k := range g.batch {
			l.begin(g.earlier + todaysBatch*g.batch + k)
			l.live()
			if l.s.Stage() == record.StageDraining {
				told[ready.AdviceOn(l.s, l.blockAs, l.Now).Verdict]++
			}
		}
	}
	for _, v := range []record.Verdict{ready.Wait, ready.Look, ready.Gash, ready.Drill, ready.Wipe, ready.FreshCut, ready.Graft} {
		if told[v] == 0 {
			t.Errorf("no stump is told to %s: %v", v, told)
		}
	}
}

// The work lies along the rows: neighbours in the walk mostly stand at the same
// stage, or at the next.
func TestTheWorkLiesInFronts(t *testing.T) {
	h := made()[1]
	changes := 0
	last := record.Stage(0)
	for _, id := range slices.SortedFunc(maps.Keys(h.stumps), record.StumpID.WalkCompare) {
		stage := h.stumps[id].Stage()
		if stage != last {
			changes++
		}
		last = stage
	}
	if changes > 100 { // shuffled, it would change some 190 times
		t.Errorf("the stage changes %d times along %d stumps", changes, len(h.stumps))
	}
}

func TestBlockIsSetUp(t *testing.T) {
	h := made()[1]
	b := h.block
	if b.Name != "Hollow Lane" || !b.Placed || b.Lat != 42.7 || b.Lon != -77.2 || b.Zone.String() != "America/New_York" || !b.Frosty || !b.Earwigs {
		t.Errorf("the block is %+v", b)
	}
	set := map[string]bool{}
	for _, e := range h.events[record.NoStump] {
		if s, ok := e.Body.(*record.BlockSet); ok {
			set[s.Setting] = true
		}
	}
	for _, name := range record.SettingNames() {
		// the one is counted from the work, and nobody has a day off or a load of their own
		own := name == "days-off" || name == "hands" || strings.HasPrefix(name, "load-")
		if !set[name] && !own && name != "a-day" && name != "away" {
			t.Errorf("%s is not set", name)
		}
	}
	rows := map[uint16]int{}
	for _, id := range h.order {
		rows[id.Row]++
	}
	if len(rows) != 12 || rows[1] != 20 || rows[12] != 20 {
		t.Errorf("rows %v", rows)
	}
	for _, l := range h.book.LotList() {
		if _, m, _ := l.Received.What.Cut.Parts(); m != time.February || len(l.Readings) < 5 {
			t.Errorf("lot %s cut %v, %d readings", l.Received.What.Name, l.Received.What.Cut, len(l.Readings))
		}
	}
	if len(b.Weather) < 25 {
		t.Errorf("weather of %d days", len(b.Weather))
	}
}

func TestTodayIsAGraftDay(t *testing.T) {
	zone := newYork(t)
	for _, c := range []struct{ given, want string }{
		{"2027-05-20T10:40:00-04:00", "2027-05-20T10:40:00-04:00"},
		{"2027-05-12T15:05:30-04:00", "2027-05-12T15:05:00-04:00"},
		{"2027-05-20T22:40:00-04:00", "2027-05-20T10:40:00-04:00"},
		{"2027-01-01T12:00:00Z", "2027-05-20T10:40:00-04:00"},
		{"2027-11-24T23:00:00Z", "2027-05-20T10:40:00-04:00"},
	} {
		given, _ := time.Parse(time.RFC3339, c.given)
		if got := Today(Plan{Zone: zone, Now: given}).Format(time.RFC3339); got != c.want {
			t.Errorf("%s: today is %s, want %s", c.given, got, c.want)
		}
	}
}
