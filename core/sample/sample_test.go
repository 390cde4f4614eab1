package sample

import (
	"bytes"
	"iter"
	"reflect"
	"slices"
	"sync"
	"testing"
	"time"
	_ "time/tzdata"

	"barkslip/core/due"
	"barkslip/core/record"
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
		got, ok := new(due.Unpacker).Unpack(due.PackSummary(nil, sum), id, h.block.Zone)
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

// A length reads back from what was typed, to the last bit.
func TestLengthsAreAsTyped(t *testing.T) {
	for n := 1; n < len(eighthTyped); n++ {
		m := eighths(n)
		if got, err := record.ReadMeasure(m.Typed, 0); err != nil || got != m {
			t.Errorf("%d eighths: %v typed, %v read, %v", n, m, got, err)
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
