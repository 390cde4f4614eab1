package ui

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/sample"
	"barkslip/store"
	"barkslip/ui/block"
	"barkslip/ui/rounds"
)

// blocksMade are the books of made-up blocks, by how many stumps they have: each is
// made once, and every test has a copy of its own.
var blocksMade struct {
	sync.Mutex
	book map[int][]byte
}

// madeBook is the file of a book with a made-up block of so many stumps.
func madeBook(t *testing.T, stumps int, now time.Time) []byte {
	t.Helper()
	blocksMade.Lock()
	defer blocksMade.Unlock()
	if made := blocksMade.book[stumps]; made != nil {
		return made
	}
	path := filepath.Join(t.TempDir(), "made.bark")
	book, err := store.Create(path, store.Options{})
	if err == nil {
		err = book.Bulk(sample.Events(sample.Plan{Stumps: stumps, Seasons: 2, Seed: 1, Zone: newYork, Now: now}))
	}
	if err == nil {
		err = book.Close()
	}
	if err != nil {
		t.Fatal(err)
	}
	made, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if blocksMade.book == nil {
		blocksMade.book = map[int][]byte{}
	}
	blocksMade.book[stumps] = made
	return made
}

// blockOf opens a made-up block of so many stumps. The race detector would be a
// minute over thousands, and sees nothing there that it does not in a few.
func blockOf(t *testing.T, stumps int) *driver {
	t.Helper()
	if raceDetector && stumps > 1000 {
		t.Skip("thousands of stumps under the race detector")
	}
	now := at("2027-05-20 10:12")
	path := filepath.Join(t.TempDir(), "test.bark")
	if err := os.WriteFile(path, madeBook(t, stumps, now), 0o600); err != nil {
		t.Fatal(err)
	}
	book, err := store.Open(path, store.Options{})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { book.Close() })
	d := &driver{t: t, book: book, now: now, hand: time.Unix(0, 0)}
	d.open()
	return d
}

// TestGoldenMany is a block of 5,000 stumps, whole and walked into, in three
// windows.
func TestGoldenMany(t *testing.T) {
	d := blockOf(t, 5000)
	d.golden("many")
	d.press("down", "enter")
	d.golden("many-in")
	d.press("esc")
	for _, size := range []struct {
		name string
		w, h int
	}{{"many-wide", 120, 40}, {"many-small", 60, 15}} {
		d.size(size.w, size.h)
		d.golden(size.name)
	}
	d.root.x.Plain = true
	d.golden("many-plain")
	d.root.x.Plain = false
	d.size(80, 24)
	d.press("f", "1")
	d.golden("many-stages")
	d.press("esc", "i")
	d.golden("many-marks")
}

// TestGoldenCrowd is a block of 100,000 stumps seen whole.
func TestGoldenCrowd(t *testing.T) {
	d := &driver{t: t, root: newCrowded()}
	d.size(80, 24)
	d.golden("crowd")
}

// TestWholeCountsEveryStump: the lines of a large block seen whole have every row
// once, and the stages under it add up to all of its stumps.
func TestWholeCountsEveryStump(t *testing.T) {
	d := blockOf(t, 5000)
	at, rows := 0, d.ground().Rows()
	for _, l := range strings.Split(d.screen(), "\n") {
		var from, to int
		switch l = strings.TrimLeft(l, "> "); {
		case scans(l, "rows %d-%d", &from, &to):
		case scans(l, "row %d", &from):
			to = from
		default:
			continue
		}
		if strings.Contains(l, "stumps:") { // the line under the cursor in words
			continue
		}
		if from != at+1 || to < from {
			t.Errorf("behind row %d comes %q", at, l)
		}
		at = to
	}
	if at != rows {
		t.Errorf("the last row seen is %d of %d", at, rows)
	}
	d.sees("5000 stumps")
}

// TestWalkIn goes into the rows with Enter and with the right arrow, opens a stump,
// and comes back to the whole with Esc.
func TestWalkIn(t *testing.T) {
	d := blockOf(t, 5000)
	d.sees("walk in", "rows 1-")
	d.press("down")
	first := d.ground().Cursor()
	for _, key := range []string{"enter", "right"} {
		d.press(key)
		d.lacks("walk in")
		if now := d.ground().Cursor(); now != first {
			t.Errorf("%s walks in at %s, want %s", key, now.Place(), first.Place())
		}
		d.press("esc")
		d.sees("walk in")
	}
	d.press("enter", "right", "enter")
	if id := d.walk().ID(); id.Tree == first.Tree {
		t.Errorf("opened %s", id.Place())
	}
	d.press("esc")
	d.lacks("walk in")
	d.press("v")
	d.sees("walk in")
}

// shownBy is the stumps a filter shows, found by picking all of them.
func (d *driver) shownBy() (out []record.StumpID) {
	d.t.Helper()
	only := d.root.x.OnlyHere()
	if only == nil {
		d.t.Fatalf("no filter:\n%s", d.screen())
	}
	for _, s := range d.root.x.Summaries(d.root.x.Block) {
		if only.Keep(s) {
			out = append(out, s.ID)
		}
	}
	return out
}

// TestFiltersByGrafts: each filter that the grafts tell shows just the stumps whose
// record says so, and what is asked of grafts together must be so of one.
func TestFiltersByGrafts(t *testing.T) {
	d := blockOf(t, 240)
	book, site := d.book.Folded(), d.root.x.Site()
	lot := book.LotList()[len(book.LotList())-1] // the oldest: what became of it is known
	grafts := func(s *record.Stump, is func(a *record.Attempt, g *record.Graft) bool) bool {
		for _, a := range s.Attempts {
			for _, g := range a.Grafts {
				if is(a, g) {
					return true
				}
			}
		}
		return false
	}
	ofLot := func(g *record.Graft) bool {
		of := book.LotOf(g.Set.What.Lot)
		return of != nil && of.ID == lot.ID
	}
	lost := func(a *record.Attempt, g *record.Graft) bool {
		o := a.OutcomeOf(g, site)
		return o.Known && !o.Took
	}
	hand := ""
	for _, s := range d.root.x.Summaries(d.root.x.Block) {
		if s.Scions > 0 {
			r, _ := d.book.Stump(s.ID)
			hand = r.Now().Grafts[0].Set.Hand
		}
	}
	for _, c := range []struct {
		name  string
		picks [][2]string
		is    func(a *record.Attempt, g *record.Graft) bool
	}{
		{"lot", [][2]string{{"lot", lot.Received.What.Name}}, func(_ *record.Attempt, g *record.Graft) bool { return ofLot(g) }},
		{"dead", [][2]string{{"result", "dead, did not take"}}, lost},
		{"took", [][2]string{{"result", "took"}}, func(a *record.Attempt, g *record.Graft) bool { return a.OutcomeOf(g, site).Took }},
		{"not known", [][2]string{{"result", "not known yet"}}, func(a *record.Attempt, g *record.Graft) bool { return !a.OutcomeOf(g, site).Known }},
		{"hand", [][2]string{{"hand", hand}}, func(_ *record.Attempt, g *record.Graft) bool { return g.Set.Hand == hand }},
		{"hand, dead", [][2]string{{"hand", hand}, {"result", "dead, did not take"}},
			func(a *record.Attempt, g *record.Graft) bool { return g.Set.Hand == hand && lost(a, g) }},
		{"lot, dead", [][2]string{{"lot", lot.Received.What.Name}, {"result", "dead, did not take"}},
			func(a *record.Attempt, g *record.Graft) bool { return ofLot(g) && lost(a, g) }},
	} {
		for _, p := range c.picks {
			d.press("f")
			d.pickWord(p[0])
			d.pickWord(p[1])
		}
		var want []record.StumpID
		for _, s := range d.root.x.Summaries(d.root.x.Block) {
			if r, err := d.book.Stump(s.ID); err != nil || grafts(r, c.is) {
				want = append(want, s.ID)
			}
		}
		if got := d.shownBy(); !slices.Equal(got, want) || len(want) == 0 {
			t.Errorf("%s: shows %d, want %d", c.name, len(got), len(want))
		}
		d.press("esc", "esc")
	}
}

// TestRoundsAndNextKeepToTheFilter, and say so.
func TestRoundsAndNextKeepToTheFilter(t *testing.T) {
	d := blockOf(t, 240)
	d.press("f")
	d.pickWord("work")
	d.pickWord("rub sprouts")
	shown := d.shownBy()
	d.sees("only rub sprouts due")
	d.press("g")
	d.sees("only rub sprouts due")
	for _, c := range d.round().Calls() {
		if !slices.Contains(shown, c.Stump) {
			t.Errorf("%s is not shown, but in the round", c.Stump.Place())
		}
	}
	if !is[*rounds.Screen](d) || len(d.round().Calls()) == 0 {
		t.Fatal("no round")
	}
	d.press("esc")
	for range 3 {
		d.press("n")
		if id := d.walk().ID(); !slices.Contains(shown, id) {
			t.Errorf("n goes to %s, which is not shown", id.Place())
		}
		d.sees("only rub sprouts due")
		d.press("esc")
	}
	d.press("esc")
	d.lacks("only rub sprouts due")
}

// TestMatches goes to the next and the previous stump shown and picks all of them
// with one key.
func TestMatches(t *testing.T) {
	d := blockOf(t, 240)
	d.press("f")
	d.pickWord("stage")
	d.pickWord("standing")
	shown := d.shownBy()
	if id := d.ground().Cursor(); id != shown[0] {
		t.Errorf("the cursor is on %s, want %s", id.Place(), shown[0].Place())
	}
	d.press("tab")
	if id := d.ground().Cursor(); id != shown[1] {
		t.Errorf("next is %s, want %s", id.Place(), shown[1].Place())
	}
	d.press("shift-tab", "shift-tab")
	if id := d.ground().Cursor(); id != shown[len(shown)-1] {
		t.Errorf("round to the last is %s, want %s", id.Place(), shown[len(shown)-1].Place())
	}
	d.press("a")
	d.sees(fmt.Sprintf("%d picked", len(shown)))
}

// TestNotSeenSince shows the stumps of which nothing was told since a day.
func TestNotSeenSince(t *testing.T) {
	d := blockOf(t, 240)
	d.press("f")
	d.pickWord("not seen since")
	for range "2027-05-13" {
		d.press("backspace")
	}
	d.press("2027-05-01", "enter")
	d.sees("not seen since 1 May")
	day, site := at("2027-05-01 12:00"), d.root.x.Site()
	var want []record.StumpID
	for _, s := range d.root.x.Summaries(d.root.x.Block) {
		if site.Day(s.Newest) < site.Day(day) {
			want = append(want, s.ID)
		}
	}
	if got := d.shownBy(); !slices.Equal(got, want) || len(want) == 0 {
		t.Errorf("shows %d, want %d", len(got), len(want))
	}
}

// TestHeldLotInThreeKeys: the stumps of the lot that is held are three keys away.
func TestHeldLotInThreeKeys(t *testing.T) {
	d := blockOf(t, 240)
	d.press("f", "3", "1")
	d.sees("only lot ", "of 240 are")
	for _, lot := range d.book.Folded().LotList() {
		if strings.HasSuffix(d.root.x.OnlyWords(), lot.Received.What.Name) && (lot.Held == nil || !lot.Held.What.Held) {
			t.Errorf("first comes %s, which is not held", lot.Received.What.Name)
		}
	}
}

// TestTomorrowsHeat is said to be unknown until a forecast is put down.
func TestTomorrowsHeat(t *testing.T) {
	d := newDriver(t, "2027-05-20 10:12")
	d.plant("Hollow Lane", rows(2, 3)...)
	d.sees("Tomorrow's heat: no forecast", "d records one")
	d.press("d")
	d.pickWord("record another day")
	d.press("tomorrow", "enter", "70", "enter", "100", "enter", "esc", "esc")
	d.sees("Tomorrow 100 F", "must be white by")
}

// TestManyOpensQuickly opens a block of 100,000 stumps, and has a filter over all
// of them, in time.
func TestManyOpensQuickly(t *testing.T) {
	if raceDetector || testing.Short() {
		t.Skip("not timed")
	}
	r := newCrowded()
	best := time.Hour
	for range 5 {
		began := time.Now()
		ground := block.New(r.x)
		if err := ground.Load(); err != nil {
			t.Fatal(err)
		}
		ground.Frame()
		best = min(best, time.Since(began))
	}
	t.Logf("the block opens in %v", best)
	if best > 300*time.Millisecond {
		t.Errorf("the block opens in %v, want under 300 ms", best)
	}
	only := time.Hour
	for range 3 {
		began := time.Now()
		r.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{'f'}})
		r.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{'1'}})
		r.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{'a'}})
		_ = r.View()
		only = min(only, time.Since(began))
		if got := r.x.OnlyHere(); got == nil || !got.Keep(due.Summary{ID: tree(1, 1), Stage: record.StageUntied}) {
			t.Fatalf("no filter: %+v", got)
		}
		time.Sleep(time.Second) // a key that comes again at once is one held down
	}
	t.Logf("a filter by stage takes %v", only)
	if only > 300*time.Millisecond {
		t.Errorf("a filter by stage takes %v, want under 300 ms", only)
	}
}

// scans says whether a text begins so, and reads the numbers in it.
func scans(text, format string, into ...any) bool {
	n, err := fmt.Sscanf(text, format, into...)
	return err == nil && n == len(into)
}

// TestGraftsAreToldQuickly: a filter that the grafts tell goes through the grafts of
// 5,000 stumps once, and answers at once from then on.
func TestGraftsAreToldQuickly(t *testing.T) {
	if raceDetector || testing.Short() {
		t.Skip("not timed")
	}
	d := blockOf(t, 5000)
	began := time.Now()
	d.press("f", "7")
	first := time.Since(began)
	d.press("esc")
	again := time.Hour
	for range 3 {
		began = time.Now()
		d.press("f", "7", "esc")
		again = min(again, time.Since(began))
	}
	t.Logf("first %v, then %v", first, again)
	if again > 300*time.Millisecond {
		t.Errorf("a filter by result takes %v, want under 300 ms", again)
	}
}
