package ui

import (
	"fmt"
	"os"
	"os/exec"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/results"
	"barkslip/core/sample"
)

// manyGrafts is a crowd whose stumps carry the grafts of the made-up block's, over
// and over.
func manyGrafts(t testing.TB, stumps int) *crowd {
	t.Helper()
	const own = 400
	var general []record.Event
	of := map[record.StumpID][]record.Event{}
	for e := range sample.Events(sample.Plan{Stumps: own, Seasons: 3, Seed: 1, Zone: newYork, Now: at("2027-05-20 10:12")}) {
		if e.Stump == record.NoStump {
			general = append(general, e)
		} else {
			of[e.Stump] = append(of[e.Stump], e)
		}
	}
	c := &crowd{book: record.FoldBook(general, time.LoadLocation)}
	block := c.book.List()[0]
	for id, events := range of {
		c.sums = append(c.sums, due.Summarize(record.Fold(id, events), block, len(events)))
	}
	slices.SortFunc(c.sums, func(a, b due.Summary) int { return a.ID.Compare(b.ID) })
	first := c.sums
	for n := 1; len(c.sums) < stumps; n++ {
		for _, s := range first {
			s.ID.Row += uint16(n * 20)
			c.sums = append(c.sums, s)
		}
	}
	c.sums = c.sums[:stumps]
	return c
}

// TestTallyIsQuick opens the tally of 100,000 stumps and regroups it, and holds the
// grouping against SQLite's over the same rows.
func TestTallyIsQuick(t *testing.T) {
	if raceDetector || os.Getenv("BARKSLIP_SLOW") == "" {
		t.Skip("timed with BARKSLIP_SLOW=1")
	}
	c, now := manyGrafts(t, 100_000), at("2027-05-20 10:12")
	block := c.book.List()[0]
	cols := results.Of(c.book, block, c.sums)
	opening := time.Hour
	var r *root
	for range 10 {
		r = newRoot(Options{Book: c, Now: func() time.Time { return now }, Tick: time.Now, Prefs: Prefs{Hand: "RK"}, Zones: time.LoadLocation})
		r.Update(tea.WindowSizeMsg{Width: 120, Height: 40})
		_ = r.View()
		began := time.Now()
		r.Update(keyNamed("k"))
		_ = r.View()
		opening = min(opening, time.Since(began))
	}
	keys := []string{"2", "3", "down", "4", " ", "down", " ", "5", "right", "down", "8", "9", "0", "1", "y"}
	var took []time.Duration
	clock := time.Unix(0, 0)
	r.x.Tick = func() time.Time { clock = clock.Add(time.Second); return clock }
	for i := range 100 {
		began := time.Now()
		r.Update(keyNamed(keys[i%len(keys)]))
		_ = r.View()
		took = append(took, time.Since(began))
	}
	slices.Sort(took)
	t.Logf("%d grafts: the tally opens in %v, a key takes %v at the median, %v at the 99th of 100", cols.Grafts(), opening, took[49], took[98])
	if opening > 300*time.Millisecond || took[98] > mostFrame {
		t.Errorf("too slow")
	}
	againstSQLite(t, c, cols)
}

func keyNamed(name string) tea.KeyMsg {
	switch name {
	case "down":
		return tea.KeyMsg{Type: tea.KeyDown}
	case "right":
		return tea.KeyMsg{Type: tea.KeyRight}
	case " ":
		return tea.KeyMsg{Type: tea.KeySpace, Runes: []rune{' '}}
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(name)}
}

// againstSQLite groups the same rows by each key in an in-memory table.
func againstSQLite(t *testing.T, c *crowd, cols *results.Columns) {
	t.Helper()
	var script strings.Builder
	script.WriteString(".mode csv\ncreate table r(stump,lot,variety,row int,hand,week int,bleeding,waited int,cover,advice int,thickness int,known int,took int,standing int);\nbegin;\n")
	flag := map[bool]int{true: 1}
	for i := range c.sums {
		for g := range c.sums[i].Grafts {
			fmt.Fprintf(&script, "insert into r values(%d,'%s','%s',%d,'%s',%d,'%s',%d,'%s',%d,%d,%d,%d,%d);\n", i, g.Lot, g.Variety, c.sums[i].ID.Row, g.Hand,
				int(g.Set)/7, g.Bleeding, g.Waited, g.Cover, flag[g.Against], g.Thick, flag[g.Known], flag[g.Took], flag[g.Standing])
		}
	}
	script.WriteString("commit;\n.timer on\n")
	for range 3 {
		for _, k := range results.Keys() {
			fmt.Fprintf(&script, "select %s,count(distinct stump),count(*),sum(known),sum(took),sum(standing) from r group by 1;\n", k)
		}
	}
	cmd := exec.Command("sqlite3", ":memory:")
	cmd.Stdin = strings.NewReader(script.String())
	out, err := cmd.CombinedOutput()
	if err != nil {
		t.Fatalf("sqlite3: %v", err)
	}
	times := regexp.MustCompile(`Run Time: real ([0-9.]+)`).FindAllSubmatch(out, -1)
	if len(times) != 3*len(results.Keys()) {
		t.Fatalf("%d times of sqlite3", len(times))
	}
	for i, k := range results.Keys() {
		theirs, ours := time.Hour, time.Hour
		for n := range 3 {
			seconds, err := strconv.ParseFloat(string(times[n*len(results.Keys())+i][1]), 64)
			if err != nil {
				t.Fatal(err)
			}
			theirs = min(theirs, time.Duration(seconds*float64(time.Second)))
			began := time.Now()
			cols.By(k, 0)
			ours = min(ours, time.Since(began))
		}
		t.Logf("by %s: %v, SQLite %v", k, ours, theirs)
		if ours > 2*theirs {
			t.Errorf("by %s: %v, more than twice SQLite's %v", k, ours, theirs)
		}
	}
}

// tallied is a driver on the made-up block, at its tally.
func tallied(t *testing.T) *driver {
	t.Helper()
	d := newDriver(t, "2027-05-20 10:12")
	if err := d.book.Bulk(sample.Events(sample.Plan{Stumps: 80, Seasons: 2, Seed: 1, Zone: newYork, Now: d.now})); err != nil {
		t.Fatal(err)
	}
	d.open()
	d.press("k")
	return d
}

// Which hand, whether it is chance, why they died, on which stumps: each in a few
// keys from the block.
func TestTallyAnswers(t *testing.T) {
	d := tallied(t)
	d.sees("tally, all seasons")
	d.press("4")
	for _, hand := range []string{"MK", "JT", "RD", "AS", "Lost of all: "} {
		d.sees(hand)
	}
	d.press("down", " ", "down", " ")
	d.sees("AS against JT: ")
	d.sees("(p ")
	d.press("w")
	d.sees("Did AS take better than JT")
	d.press("esc", "z")
	d.sees("From graft to push")
	d.sees("seen pushing")
	d.press("esc", "enter")
	d.sees("Of lot ")
	d.sees("took")
	d.press("v")
	d.sees("only hand JT")
	d.press("k", "f")
	d.sees("season 2027")
}

// Every size and every grouping is drawn whole, empty or not.
func TestTallyAtEverySize(t *testing.T) {
	d := tallied(t)
	empty := newDriver(t, "2027-05-04 08:00")
	empty.plant("Hollow Lane", rows(1, 1)...)
	empty.press("k")
	empty.sees("No graft to count yet")
	empty.press("w", "esc", "z", "esc", "enter", "esc", "y", "down", " ", "f")
	for _, size := range [][2]int{{80, 24}, {120, 40}, {60, 15}} {
		d.root.Update(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
		for _, key := range []string{"1", "2", "3", "4", "5", "6", "7", "8", "9", "0"} {
			d.press(key, "down", " ", "end", " ")
			if lines := strings.Split(d.root.View(), "\n"); len(lines) != size[1] {
				t.Errorf("%v by %s: %d lines", size, key, len(lines))
			}
			d.press("enter", "end", "esc", "z", "esc")
		}
	}
}
