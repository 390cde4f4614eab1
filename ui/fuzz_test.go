package ui

import (
	"crypto/rand"
	"errors"
	"io"
	"path/filepath"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	tea "github.com/charmbracelet/bubbletea"
	"pgregory.net/rapid"

	"barkslip/core/record"
	"barkslip/core/sample"
	"barkslip/store"
	"barkslip/ui/paper"
	"barkslip/ui/part"
	"barkslip/ui/stump"
)

// anyKeys are the keys that a hand in gloves may hit, and texts that it types.
var anyKeys = []string{
	"enter", "enter", "enter", "esc", "up", "down", "left", "right", "space", "backspace", "1", "1", "2", "3", "4", "5", "6", "7", "8", "9", "0",
	"a", "b", "c", "d", "f", "g", "h", "j", "k", "l", "m", "n", "o", "p", "r", "s", "t", "u", "u", "v", "w", "x", "y", "z", "U", "L", "?", "/", "!",
	"i", "e", "f1", "f2", "ctrl-p", "ctrl-u",
	"3.4", "3.4 3.1", "120:2in", "4/17", "RK", "13:40", "20", "36in",
	"1e309", "-1", "NaN", "1/0", "0", "Lantern", "2027-05-03 13:40", "999999999999", "12 x 11 x 10", "木", "\u202e",
}

// TestAnyKeys presses all sorts of keys on a block with stumps at every stage,
// in all sorts of windows: no key fails, every screen keeps its window, and
// what the screen holds is what the book holds.
func TestAnyKeys(t *testing.T) {
	now := at("2027-05-20 10:12")
	book, err := store.Create(filepath.Join(t.TempDir(), "any.bark"), store.Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer book.Close()
	if err := book.Bulk(sample.Events(sample.Plan{Seed: 3, Seasons: 2, Zone: newYork, Now: now})); err != nil {
		t.Fatal(err)
	}
	rapid.Check(t, func(rt *rapid.T) {
		d := &driver{t: t, book: book, now: now, hand: time.Unix(0, 0)}
		w, h := rapid.IntRange(60, 140).Draw(rt, "width"), rapid.IntRange(15, 50).Draw(rt, "height")
		d.root = newRoot(Options{Book: book, Now: func() time.Time { return d.now }, Tick: func() time.Time { return d.hand }, Random: rand.Reader,
			Prefs: Prefs{Hand: "RK", Coach: rapid.Bool().Draw(rt, "coach")}, LocalZone: "America/New_York", Zones: time.LoadLocation,
			OpenFile: noFile, Plain: rapid.Bool().Draw(rt, "plain")})
		d.root.x.Theme = paper.ThemeNamed(rapid.SampledFrom(paper.ThemeNames).Draw(rt, "theme"))
		d.size(w, h)
		if stumps, _ := book.Summaries(d.root.x.Block); len(stumps) > 0 {
			d.root.do(part.Open{Stump: rapid.SampledFrom(stumps).Draw(rt, "stump").ID})
		}
		for range rapid.IntRange(1, 30).Draw(rt, "presses") {
			if rapid.IntRange(0, 9).Draw(rt, "wait") == 0 {
				d.now = d.now.Add(time.Duration(rapid.IntRange(0, 40*24*60).Draw(rt, "minutes")) * time.Minute)
				d.root.Update(tick(d.now))
			}
			d.press(rapid.SampledFrom(anyKeys).Draw(rt, "key"))
			if d.root.quit {
				return
			}
			if wrong := geometry(d.root.View(), w, h); wrong != "" {
				rt.Fatalf("%s\n%s", wrong, d.screen())
			}
			if strings.ContainsFunc(d.screen(), unruly) {
				rt.Fatalf("an unruly character:\n%s", d.screen())
			}
			if s, up := upon[*stump.Screen](&d.root.mode); up { // another may lie beneath, as under the lots
				fresh, err := book.Stump(s.ID())
				if err != nil || len(fresh.Live) != len(s.Record().Live) {
					rt.Fatalf("the screen holds %d answers, the book %d: %v", len(s.Record().Live), len(fresh.Live), err)
				}
			}
		}
	})
}

func noFile(string) (io.ReadCloser, error) { return nil, errors.New("no such file") }

// TestEveryStageKeepsItsWindow opens one stump of every stage that the made-up
// block has.
func TestEveryStageKeepsItsWindow(t *testing.T) {
	seen := map[record.Stage]bool{}
	book, err := store.Create(filepath.Join(t.TempDir(), "any.bark"), store.Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer book.Close()
	now := at("2027-05-20 10:12")
	if err := book.Bulk(sample.Events(sample.Plan{Seed: 3, Seasons: 2, Zone: newYork, Now: now})); err != nil {
		t.Fatal(err)
	}
	d := &driver{t: t, book: book, now: now, hand: time.Unix(0, 0)}
	d.open()
	for _, s := range d.root.x.Summaries(d.root.x.Block) {
		if seen[s.Stage] {
			continue
		}
		seen[s.Stage] = true
		d.root.do(part.Open{Stump: s.ID})
		d.each(func(size [2]int, theme string, plain bool) {
			if wrong := geometry(d.root.View(), size[0], size[1]); wrong != "" {
				t.Errorf("%s, %v: %s", s.Stage, size, wrong)
			}
		})
		for _, size := range windows[:2] {
			d.size(size[0], size[1])
			if missing := d.hidden(); missing != "" {
				t.Errorf("%s, %v: %q is not to be seen:\n%s", s.Stage, size, missing, d.screen())
			}
		}
		d.press("esc")
	}
	if len(seen) < 8 {
		t.Errorf("only %d stages", len(seen))
	}
}

// FuzzKeys types and pastes any bytes, on a block and from the first question on: no key
// fails, every frame keeps its window, and nothing acts on the terminal.
func FuzzKeys(f *testing.F) {
	for _, keys := range []string{"1Home\r2\r3\r\r\r\r\r\r\r", "\x1bgj?\x1b", "o3\xffAmerica/New_York\r", "/1/1\r1\r2\r3", "l4\xff\x1b[2J\u202e\r", "1\xff\xfe\xfd", ".\r\r"} {
		f.Add([]byte(keys), false)
		f.Add([]byte(keys), true)
	}
	f.Fuzz(func(t *testing.T, keys []byte, fresh bool) {
		d := newDriver(t, "2027-05-04 09:00")
		if !fresh {
			d.plant("Hollow Lane", rows(2, 3)...)
		}
		named := map[byte]tea.KeyType{'\r': tea.KeyEnter, 0x1b: tea.KeyEsc, 0x7f: tea.KeyBackspace, '\t': tea.KeyTab, 1: tea.KeyUp, 2: tea.KeyDown, 3: tea.KeyLeft, 4: tea.KeyRight,
			5: tea.KeyF1, 6: tea.KeyF2, 7: tea.KeyF5, 8: tea.KeyCtrlU, 14: tea.KeyCtrlP, 15: tea.KeyPgDown}
		for left := keys[:min(len(keys), 80)]; len(left) > 0 && !d.root.quit; {
			k := left[0]
			left = left[1:]
			switch kind, has := named[k]; {
			case has:
				d.send(tea.KeyMsg{Type: kind})
			case k == 0xff: // the next twenty bytes are pasted
				n := min(20, len(left))
				d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(string(left[:n])), Paste: true})
				left = left[n:]
			default:
				c, n := utf8.DecodeRune(append([]byte{k}, left...))
				d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{c}})
				left = left[n-1:]
			}
			if wrong := geometry(d.root.View(), 80, 24); wrong != "" {
				t.Fatalf("%s\n%s", wrong, d.screen())
			}
			if strings.ContainsFunc(d.screen(), unruly) {
				t.Fatalf("an unruly character:\n%s", d.screen())
			}
		}
	})
}
