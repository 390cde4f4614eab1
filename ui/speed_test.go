package ui

import (
	"slices"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/core/due"
	"barkslip/core/record"
)

// crowd is a book of one block of many stumps that is held in memory.
type crowd struct {
	book *record.Book
	sums []due.Summary
}

const crowdRows, crowdTrees = 500, 200

// newCrowd makes 100,000 stumps at every stage, each with a few dues.
func newCrowd() *crowd {
	events := []record.Event{{At: at("2027-05-01 08:00"), Body: &record.BlockMade{Block: home, Name: "Hollow Lane"}},
		{At: at("2027-05-01 08:00"), Body: &record.BlockSet{Block: home, Setting: "zone", Value: "America/New_York"}}}
	for i := range events {
		events[i].ID = record.ID{byte(i + 1)}
	}
	c := &crowd{book: record.FoldBook(events, time.LoadLocation)}
	stages := record.Stages()
	open := at("2027-05-04 08:00")
	for r := 1; r <= crowdRows; r++ {
		for n := 1; n <= crowdTrees; n++ {
			id := tree(r, n)
			s := due.Summary{ID: id, Stage: stages[(r+n)%len(stages)], Scions: 3, Newest: open}
			for k := range (r + n) % 3 {
				s.Dues = append(s.Dues, due.Due{Stump: id, Kind: due.Look + due.Kind(k), Opens: open, By: open.AddDate(0, 0, n%4)})
			}
			c.sums = append(c.sums, s)
		}
	}
	return c
}

func (c *crowd) Append(events ...record.Event) (due.Appended, error) {
	return due.Appended{Events: events}, nil
}

func (c *crowd) Summaries(record.ID) ([]due.Summary, error)    { return c.sums, nil }
func (c *crowd) Events(record.StumpID) ([]record.Event, error) { return nil, nil }

func (c *crowd) Folded() *record.Book { return c.book }
func (c *crowd) Newest() time.Time    { return at("2027-05-04 08:00") }
func (c *crowd) Stump(id record.StumpID) (*record.Stump, error) {
	var events []record.Event
	for i, b := range append([]record.Body{&record.StumpAdded{}}, cut()...) {
		events = append(events, record.Event{ID: record.ID{byte(i + 1)}, Clock: uint64(i + 1), At: at("2027-04-20 09:00"), Stump: id, Body: b})
	}
	return record.Fold(id, events), nil
}

func newCrowded() *root {
	now := at("2027-05-05 09:00")
	r := newRoot(Options{Book: newCrowd(), Now: func() time.Time { return now }, Tick: time.Now, Prefs: Prefs{Hand: "RK"}, Zones: time.LoadLocation})
	r.Update(tea.WindowSizeMsg{Width: 100, Height: 40})
	return r
}

// crowded are keys that are pressed on a block of 100,000 stumps.
var crowdKeys = []tea.KeyMsg{{Type: tea.KeyDown}, {Type: tea.KeyRight}, {Type: tea.KeyDown}, {Type: tea.KeyRight}, {Type: tea.KeyPgDown}, {Type: tea.KeyUp}}

func BenchmarkView(b *testing.B) {
	r := newCrowded()
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		r.Update(crowdKeys[i%len(crowdKeys)])
		_ = r.View()
	}
}

func BenchmarkViewStump(b *testing.B) {
	r := newCrowded()
	r.Update(tea.KeyMsg{Type: tea.KeyEnter})
	b.ReportAllocs()
	for b.Loop() {
		_ = r.View()
	}
}

// mostFrame is how long a key may take to its frame.
const mostFrame = 16 * time.Millisecond

// TestKeyToFrame times keys on a block of 100,000 stumps, seen whole and walked
// into, and on a stump of it.
func TestKeyToFrame(t *testing.T) {
	if raceDetector || testing.Short() {
		t.Skip("not timed")
	}
	r := newCrowded()
	// the slowest of a hundred but one, in the best of a few rounds: other work on
	// the machine is not the screen's
	slowest := func(keys []tea.KeyMsg) time.Duration {
		best := time.Hour
		for range 5 {
			var took []time.Duration
			for i := range 200 {
				start := time.Now()
				r.Update(keys[i%len(keys)])
				_ = r.View()
				took = append(took, time.Since(start))
			}
			slices.Sort(took)
			best = min(best, took[len(took)*99/100])
		}
		return best
	}
	for _, c := range []struct {
		name string
		open tea.KeyMsg
		keys []tea.KeyMsg
	}{
		{"whole block", tea.KeyMsg{Type: tea.KeyEsc}, []tea.KeyMsg{{Type: tea.KeyDown}, {Type: tea.KeyDown}, {Type: tea.KeyUp}}},
		{"block", tea.KeyMsg{Type: tea.KeyRight}, crowdKeys},
		{"stump", tea.KeyMsg{Type: tea.KeyEnter}, []tea.KeyMsg{{Type: tea.KeyUp}, {Type: tea.KeyUp}, {Type: tea.KeyEsc}}},
	} {
		r.Update(c.open)
		m := slowest(c.keys)
		t.Logf("%s: %s", c.name, m)
		if m > mostFrame {
			t.Errorf("%s: a key takes %s to its frame, at most %s", c.name, m, mostFrame)
		}
	}
}
