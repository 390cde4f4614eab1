package sample

import (
	"bytes"
	"maps"
	"reflect"
	"slices"
	"testing"
	"time"
	_ "time/tzdata"

	"barkslip/core/due"
	"barkslip/core/ready"
	"barkslip/core/record"
	"barkslip/core/unit"
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
	zone := newYork(t)
	return Plan{Stumps: 240, Seasons: 1, Seed: seed, Zone: zone, Now: time.Date(2027, 5, 20, 10, 40, 0, 0, zone)}
}

// history is a sample with the events of each stump and the book's.
type history struct {
	plan   Plan
	book   *record.Book
	block  *record.Block
	order  []record.StumpID
	events map[record.StumpID][]record.Event
}

func read(t testing.TB, p Plan) *history {
	t.Helper()
	h := &history{plan: p, events: map[record.StumpID][]record.Event{}}
	for e := range Events(p) {
		if _, known := h.events[e.Stump]; !known {
			h.order = append(h.order, e.Stump)
		}
		h.events[e.Stump] = append(h.events[e.Stump], e)
	}
	if h.order[0] != record.NoStump {
		t.Fatal("what is about the block does not come first")
	}
	h.order = h.order[1:]
	h.book = record.FoldBook(h.events[record.NoStump], time.LoadLocation)
	if blocks := h.book.List(); len(blocks) != 1 {
		t.Fatalf("%d blocks", len(blocks))
	}
	h.block = h.book.List()[0]
	return h
}

func (h *history) fold(id record.StumpID) *record.Stump { return record.Fold(id, h.events[id]) }

func TestTheSameSeedTellsTheSameHistory(t *testing.T) {
	lines := func(p Plan) []byte {
		var out bytes.Buffer
		for e := range Events(p) {
			out.Write(record.Line(e))
			out.WriteByte('\n')
		}
		return out.Bytes()
	}
	first := lines(usual(t, 1))
	if !bytes.Equal(first, lines(usual(t, 1))) {
		t.Error("seed 1 told two histories")
	}
	if bytes.Equal(first, lines(usual(t, 2))) {
		t.Error("seeds 1 and 2 told one history")
	}
}

func TestEveryEventHolds(t *testing.T) {
	for _, p := range []Plan{usual(t, 1), {Stumps: 7, Now: usual(t, 1).Now, Zone: newYork(t)}, {Stumps: 600, Seasons: 6, Seed: 3, Now: usual(t, 1).Now, Zone: newYork(t)}, {Stumps: 4100, Seasons: 2, Now: usual(t, 1).Now, Zone: newYork(t)}} {
		ids, clocks := map[record.ID]bool{}, map[uint64]bool{}
		done := map[record.StumpID]bool{}
		var last record.Event
		for e := range Events(p) {
			if err := record.Check(e); err != nil {
				t.Fatalf("%s: %v", record.Line(e), err)
			}
			if p.Stumps < largeBlock {
				if _, err := record.ParseLine(record.Line(e)); err != nil {
					t.Fatalf("%s: %v", record.Line(e), err)
				}
			}
			if ids[e.ID] || clocks[e.Clock] || e.Clock == 0 || e.At.After(p.Now) {
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
}

// cases counts what there is to see on a block at its today.
type cases struct {
	stages                                        map[record.Stage]int
	verdicts                                      map[record.Verdict]int // of the stumps that drain
	clashes, against, running, late, wet, regraft int
}

func (h *history) cases() cases {
	c := cases{stages: map[record.Stage]int{}, verdicts: map[record.Verdict]int{}}
	for _, id := range h.order {
		s := h.fold(id)
		c.stages[s.Stage()]++
		c.clashes += len(s.Clashes)
		c.against += len(s.Now().Against)
		if len(s.Attempts) > 1 {
			c.regraft++
		}
		switch s.Stage() {
		case record.StageDraining:
			c.verdicts[ready.AdviceOn(s, h.block, h.plan.Now).Verdict]++
		case record.StageSealed:
			c.clock(s.Now(), h.plan.Now)
		}
	}
	return c
}

// clock counts a white clock that runs.
func (c *cases) clock(a *record.Attempt, now time.Time) {
	switch ago := now.Sub(a.Sealed.At); {
	case ago > 3*time.Hour:
		c.late++
	case ago > time.Hour:
		c.running++
	}
	c.wet += len(a.StillWet)
}

func TestEveryStageAndCaseIsThere(t *testing.T) {
	for seed := range uint64(12) {
		c := read(t, usual(t, seed)).cases()
		for _, stage := range record.Stages() {
			if c.stages[stage] == 0 {
				t.Errorf("seed %d: no stump is %s", seed, stage)
			}
		}
		if c.clashes != 1 || c.late != 1 || c.running < 3 || c.against == 0 || c.wet == 0 || c.regraft == 0 {
			t.Errorf("seed %d: %+v", seed, c)
		}
		if c.verdicts[ready.Graft] < 1 || c.verdicts[ready.Wait] < 10 {
			t.Errorf("seed %d: the draining are told %v", seed, c.verdicts)
		}
	}
}

// Each scion was set on the advice to graft, or with the advice gone against
// said first.
func TestGraftsFollowTheAdvice(t *testing.T) {
	h := read(t, Plan{Stumps: 400, Seasons: 3, Seed: 5, Zone: newYork(t), Now: usual(t, 1).Now})
	grafted, against := 0, 0
	for _, id := range h.order {
		events := h.events[id]
		for i, e := range events {
			set, ok := e.Body.(*record.ScionSet)
			if !ok || set.Slot != 1 {
				continue
			}
			s := record.Fold(id, events[:i])
			grafted++
			if n := s.Now().Against; len(n) > 0 {
				against++
				continue
			}
			day, cut := unit.DateOf(e.At), unit.DateOf(s.Now().CutBack.At)
			if day-cut < 7 {
				t.Errorf("%s was grafted %d days after it was cut back", id.Place(), day-cut)
			}
			if v := ready.AdviceOn(s, h.block, e.At).Verdict; v != ready.Graft {
				t.Errorf("%s was grafted at %s on the advice to %s", id.Place(), e.At, v)
			}
		}
	}
	if grafted < 300 || against == 0 || against*8 > grafted {
		t.Errorf("%d grafted, %d of them against advice", grafted, against)
	}
}

// The work lies along the rows: neighbours in the walk mostly stand at the same
// stage, or at the next.
func TestTheWorkLiesInFronts(t *testing.T) {
	h := read(t, usual(t, 1))
	changes := 0
	ids := slices.SortedFunc(maps.Keys(h.events), record.StumpID.WalkCompare)
	last := record.Stage(0)
	for _, id := range ids {
		stage := h.fold(id).Stage()
		if stage != last {
			changes++
		}
		last = stage
	}
	if changes > 90 { // shuffled, it would change some 190 times
		t.Errorf("the stage changes %d times along %d stumps", changes, len(ids))
	}
}

// score is how many grafts of a kind grew and died.
type score struct{ grew, died int }

func (s *score) rate() float64 { return float64(s.grew) / float64(s.grew+s.died) }

// results gives the score of all grafts that are settled, of each hand's, of
// those against advice, and the causes for which stumps failed.
func (h *history) results() (by map[string]*score, causes map[string]int) {
	by, causes = map[string]*score{}, map[string]int{}
	add := func(key string, grew bool) {
		if by[key] == nil {
			by[key] = &score{}
		}
		if grew {
			by[key].grew++
		} else {
			by[key].died++
		}
	}
	for _, id := range h.order {
		for _, a := range h.fold(id).Attempts {
			if a.Failed != nil {
				causes[a.Failed.What.Cause]++
			}
			for _, g := range a.Grafts {
				if g.State != record.Dead && g.State != record.Growing {
					continue
				}
				add("all", g.State == record.Growing)
				add(g.Set.Hand, g.State == record.Growing)
				if len(a.Against) > 0 {
					add("against", g.State == record.Growing)
				}
			}
		}
	}
	return by, causes
}

// What goes wrong leaves a trace in the results.
func TestLossesHaveTheirCauses(t *testing.T) {
	by, causes := read(t, Plan{Stumps: 3000, Seasons: 4, Seed: 9, Zone: newYork(t), Now: usual(t, 1).Now}).results()
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

// A lived-in block stands the ways of the record: given in any order it folds
// to the same, and its summaries and both written forms come back whole.
func TestTheHistoryStandsTheWaysOfTheRecord(t *testing.T) {
	h := read(t, usual(t, 4))
	for _, id := range h.order {
		events := h.events[id]
		s := h.fold(id)
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
	h := read(t, usual(t, 1))
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
		if !set[name] && name != "a-day" { // which is counted from the work
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
