package sample

import (
	"bytes"
	"iter"
	"maps"
	"reflect"
	"slices"
	"sync"
	"testing"
	"time"
	_ "time/tzdata"

	"barkslip/core/due"
	"barkslip/core/ready"
	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/core/walk"
)

func newYork(t testing.TB) *time.Location {
	t.Helper()
	zone, err := time.LoadLocation("America/New_York")
	if err != nil {
		t.Fatal(err)
	}
	return zone
}

func usual(t testing.TB, seed uint64) Plan {
	return planOf(newYork(t), seed)
}

func planOf(zone *time.Location, seed uint64) Plan {
	return Plan{Stumps: 240, Seasons: 1, Seed: seed, Zone: zone, Now: time.Date(2027, 5, 20, 10, 40, 0, 0, zone)}
}

// history is a sample with the events of each stump and the book's.
type history struct {
	plan   Plan
	ground *ground
	book   *record.Book
	block  *record.Block
	order  []record.StumpID
	events map[record.StumpID][]record.Event
	stumps map[record.StumpID]*record.Stump
	steps  map[walk.StepID]int // how often each was answered
	works  map[due.Kind]int    // and each kind of work met
}

func read(p Plan) *history {
	p = p.withDefaults()
	h := &history{
		plan: p, ground: layOut(p), events: map[record.StumpID][]record.Event{}, stumps: map[record.StumpID]*record.Stump{},
		steps: map[walk.StepID]int{}, works: map[due.Kind]int{},
	}
	h.ground.onStep = func(id walk.StepID) { h.steps[id]++ }
	h.ground.onWork = func(k due.Kind) { h.works[k]++ }
	for e := range h.ground.inTimeOrder {
		if _, known := h.events[e.Stump]; !known && e.Stump != record.NoStump {
			h.order = append(h.order, e.Stump)
		}
		h.events[e.Stump] = append(h.events[e.Stump], e)
	}
	for _, id := range h.order {
		h.stumps[id] = record.Fold(id, h.events[id])
	}
	h.book = record.FoldBook(h.events[record.NoStump], func(string) (*time.Location, error) { return p.Zone, nil })
	h.block = h.book.List()[0]
	return h
}

// made is the usual block of eight seeds, made once for all tests.
var made = sync.OnceValue(func() []*history {
	zone, err := time.LoadLocation("America/New_York")
	if err != nil {
		panic(err)
	}
	out := make([]*history, 8)
	var wait sync.WaitGroup
	for seed := range out {
		wait.Go(func() { out[seed] = read(planOf(zone, uint64(seed))) })
	}
	wait.Wait()
	return out
})

func TestTheSameSeedTellsTheSameHistory(t *testing.T) {
	lines := func(seed uint64) []byte {
		var out bytes.Buffer
		p := usual(t, seed)
		p.Stumps = 48
		for e := range Events(p) {
			out.Write(record.Line(e))
			out.WriteByte('\n')
		}
		return out.Bytes()
	}
	first := lines(1)
	if !bytes.Equal(first, lines(1)) {
		t.Error("seed 1 told two histories")
	}
	if bytes.Equal(first, lines(2)) {
		t.Error("seeds 1 and 2 told one history")
	}
}

func TestEveryEventHolds(t *testing.T) {
	now, zone := usual(t, 1).Now, newYork(t)
	for _, p := range []Plan{{Stumps: 7, Now: now, Zone: zone}, {Stumps: 90, Seasons: 6, Seed: 3, Now: now, Zone: zone}} {
		holds(t, p, Events(p))
	}
	large := Plan{Stumps: 4100, Seasons: 2, Now: now, Zone: zone}.withDefaults()
	holds(t, large, copied(large, 60).stumpByStump)
}

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

func holds(t *testing.T, p Plan, events iter.Seq[record.Event]) {
	t.Helper()
	ids, clocks := map[record.ID]bool{}, map[uint64]bool{}
	done := map[record.StumpID]bool{}
	var last record.Event
	for e := range events {
		if err := record.Check(e); err != nil {
			t.Fatalf("%s: %v", record.Line(e), err)
		}
		if p.Stumps < largeBlock {
			if _, err := record.ParseLine(record.Line(e)); err != nil {
				t.Fatalf("%s: %v", record.Line(e), err)
			}
		}
		if ids[e.ID] || clocks[e.Clock] || e.Clock == 0 || e.At.After(p.withDefaults().Now) {
			t.Fatalf("%s: an id or clock twice, or after today", record.Line(e))
		}
		if e.Stump != last.Stump {
			if done[e.Stump] {
				t.Fatalf("%s: the events of %s do not stand together", record.Line(e), e.Stump.Place())
			}
			done[last.Stump] = true
		} else if e.Clock <= last.Clock {
			t.Fatalf("%s: its clock is not above %d", record.Line(e), last.Clock)
		}
		ids[e.ID], clocks[e.Clock], last = true, true, e
	}
	if got := len(done); got != p.Stumps { // the block's own and all but the last
		t.Errorf("%d stumps asked for, %d told", p.Stumps, got)
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

// A life meets all steps and work but these: no stump of the block is so thin,
// and where nothing is due nothing is answered.
func TestALifeMeetsEveryStepAndWork(t *testing.T) {
	steps, works := map[walk.StepID]int{walk.StepSmall: 1, walk.StepRest: 1}, map[due.Kind]int{}
	for _, h := range made() {
		for id, n := range h.steps {
			steps[id] += n
		}
		for k, n := range h.works {
			works[k] += n
		}
	}
	for _, s := range walk.Steps() {
		if steps[s.ID] == 0 {
			t.Errorf("step %s was never answered", s.ID)
		}
	}
	for _, k := range due.Kinds() {
		if works[k] == 0 {
			t.Errorf("work %s was never met", k)
		}
	}
}

// Each scion was set on the advice to graft, or with the advice gone against
// said first.
func TestGraftsFollowTheAdvice(t *testing.T) {
	grafted, against, learner, byLearner := 0, 0, 0, 0
	for _, h := range made() {
		for _, id := range h.order {
			for i, e := range h.events[id] {
				if set, ok := e.Body.(*record.ScionSet); !ok || set.Slot != 1 {
					continue
				}
				s := record.Fold(id, h.events[id][:i])
				grafted++
				if e.Hand == crew[len(crew)-1].initials {
					byLearner++
				}
				if len(s.Now().Against) > 0 {
					against++
					if e.Hand == crew[len(crew)-1].initials {
						learner++
					}
					continue
				}
				h.followed(t, s, e)
			}
		}
	}
	t.Logf("%d grafted, %d of them against advice; by the learner %d, %d", grafted, against, byLearner, learner)
	if share := float64(against) / float64(grafted); share < 0.015 || share > 0.035 {
		t.Errorf("%d grafted, %d of them against advice", grafted, against)
	}
	if learner*(grafted-byLearner) < (against-learner)*byLearner {
		t.Errorf("the learner went against advice %d times in %d, the others %d in %d", learner, byLearner, against-learner, grafted-byLearner)
	}
}

// followed checks that a stump was grafted as it was advised.
func (h *history) followed(t *testing.T, s *record.Stump, e record.Event) {
	t.Helper()
	if days := unit.DateOf(e.At) - unit.DateOf(s.Now().CutBack.At); days < 7 {
		t.Errorf("%s was grafted %d days after it was cut back", s.ID.Place(), days)
	}
	if v := ready.AdviceOn(s, h.block, e.At).Verdict; v != ready.Graft {
		t.Errorf("%s was grafted at %s on the advice to %s", s.ID.Place(), e.At, v)
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

// score is how many grafts of a kind grew and died.
type score struct{ grew, died int }

func (s score) rate() float64 { return float64(s.grew) / float64(max(1, s.grew+s.died)) }

// results gives the score of all grafts that are settled, of each hand's, of
// those against advice, of each lot's by its name, and the causes for which
// stumps failed.
func results(all []*history) (by map[string]score, causes map[string]int) {
	by, causes = map[string]score{}, map[string]int{}
	for _, h := range all {
		for _, s := range h.stumps {
			for _, a := range s.Attempts {
				if a.Failed != nil {
					causes[a.Failed.What.Cause]++
				}
				h.count(by, a)
			}
		}
	}
	return by, causes
}

func (h *history) count(by map[string]score, a *record.Attempt) {
	for _, g := range a.Grafts {
		if g.State != record.Dead && g.State != record.Growing {
			continue
		}
		keys := []string{"all", g.Set.Hand, h.book.LotOf(a.Wood.What.Lot).Received.What.Name}
		if len(a.Against) > 0 {
			keys = append(keys, "against")
		}
		for _, key := range keys {
			s := by[key]
			if g.State == record.Growing {
				s.grew++
			} else {
				s.died++
			}
			by[key] = s
		}
	}
}

// What goes wrong leaves a trace in the results.
func TestLossesHaveTheirCauses(t *testing.T) {
	by, causes := results(made())
	all := by["all"].rate()
	if all < 0.5 || all > 0.8 {
		t.Errorf("of all grafts %.2f took", all)
	}
	if against := by["against"].rate(); against > all-0.1 {
		t.Errorf("of all grafts %.2f took, of those against advice %.2f", all, against)
	}
	if learner, best := by["AS"].rate(), by["MK"].rate(); learner > best-0.1 {
		t.Errorf("of the learner's %.2f took, of the best hand's %.2f", learner, best)
	}
	for _, cause := range []string{"bled", "overheated", "poor wood", "bark lifted", "frost"} {
		if causes[cause] == 0 {
			t.Errorf("no stump failed because of %q: %v", cause, causes)
		}
	}
}

// In each season one lot took about half as well as the others.
func TestOneLotOfASeasonDidWorse(t *testing.T) {
	by, _ := results(made())
	g := made()[0].ground
	for season := 0; season < g.ages; season++ { // this season's are not settled
		var warm, others score
		for _, l := range g.lots[season*len(sources):][:len(sources)] {
			s := by[l.Name]
			if l.warm {
				warm = s
			} else {
				others.grew, others.died = others.grew+s.grew, others.died+s.died
			}
		}
		t.Logf("season %d: warm %.2f %v, others %.2f %v", season, warm.rate(), warm, others.rate(), others)
		if share := warm.rate() / others.rate(); share < 0.3 || share > 0.7 {
			t.Errorf("season %d: of the warm lot %.2f took, of the others %.2f", season, warm.rate(), others.rate())
		}
	}
}

// The sticks of a lot are enough for its scions, and not many more.
func TestWoodCountsDown(t *testing.T) {
	for seed, h := range made() {
		set := map[record.ID]int{}
		for _, s := range h.stumps {
			for _, a := range s.Attempts {
				if len(a.Grafts) > 0 {
					set[a.Wood.What.Lot] += len(a.Grafts)
				}
			}
		}
		for _, l := range h.book.LotList() {
			got := l.Received.What
			sticks := (set[got.Lot] + perStick - 1) / perStick
			if left := got.Sticks - sticks; left < 0 || got.Cut.Year() < h.ground.today.Year() && left > got.Sticks*3/4 {
				t.Errorf("seed %d: %s had %d sticks, %d are used", seed, got.Name, got.Sticks, sticks)
			}
		}
	}
}

// A lived-in block stands the ways of the record: given in any order it folds
// to the same, and its summaries and both written forms come back whole.
func TestTheHistoryStandsTheWaysOfTheRecord(t *testing.T) {
	h := made()[4]
	for _, id := range h.order {
		events, s := h.events[id], h.stumps[id]
		backwards := slices.Clone(events)
		slices.Reverse(backwards)
		if !reflect.DeepEqual(s, record.Fold(id, append(backwards, events[0]))) {
			t.Errorf("%s folds otherwise backwards", id.Place())
		}
		sum := due.Summarize(s, h.block, len(events))
		got, ok := due.UnpackSummary(due.PackSummary(nil, sum), id, h.block.Zone)
		if !ok || got.Stage != sum.Stage || len(got.Dues) != len(sum.Dues) || got.Clock != sum.Clock || got.Events != len(events) {
			t.Errorf("%s: the summary %+v came back as %+v", id.Place(), sum, got)
		}
		for _, e := range events {
			packed, err := record.Unpack(record.Pack(nil, e), e.Stump, e.Clock, e.ID)
			if err != nil || !bytes.Equal(record.Line(packed), record.Line(e)) {
				t.Errorf("%s\ncame back as\n%s, %v", record.Line(e), record.Line(packed), err)
			}
		}
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
		if !set[name] && name != "a-day" && name != "away" { // the one is counted from the work
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

// A length reads back from what was typed, to the last bit.
func TestLengthsAreAsTyped(t *testing.T) {
	for n := 1; n < len(eighthTyped); n++ {
		m := eighths(n)
		if got, err := record.ReadMeasure(m.Typed, 0); err != nil || got != m {
			t.Errorf("%d eighths: %v typed, %v read, %v", n, m, got, err)
		}
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

func BenchmarkEvents(b *testing.B) {
	p := Plan{Stumps: 20_000, Seasons: 4, Zone: newYork(b), Now: usual(b, 1).Now}
	n := 0
	for b.Loop() {
		for range Events(p) {
			n++
		}
	}
	b.ReportMetric(float64(n)/b.Elapsed().Seconds(), "events/s")
}
