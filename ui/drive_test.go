package ui

import (
	"crypto/rand"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/core/record"
	"barkslip/store"
	"barkslip/ui/block"
	"barkslip/ui/first"
	"barkslip/ui/part"
	"barkslip/ui/rounds"
	"barkslip/ui/stump"
)

// driver drives the screens by synthetic keys on a real book, with a clock that
// the test sets.
type driver struct {
	t    *testing.T
	root *root
	book *store.Book
	now  time.Time // answers are dated by it
	hand time.Time // keys are timed by it
	bell int
	keys int // pressed so far
}

var newYork = func() *time.Location {
	z, err := time.LoadLocation("America/New_York")
	if err != nil {
		panic(err)
	}
	return z
}()

func at(text string) time.Time {
	t, err := time.ParseInLocation("2006-01-02 15:04", text, newYork)
	if err != nil {
		panic(err)
	}
	return t
}

func newDriver(t *testing.T, now string) *driver {
	t.Helper()
	book, err := store.Create(filepath.Join(t.TempDir(), "test.bark"), store.Options{})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { book.Close() })
	d := &driver{t: t, book: book, now: at(now), hand: time.Unix(0, 0)}
	d.open()
	return d
}

// open starts the screens anew on the same book.
func (d *driver) open() {
	d.root = newRoot(Options{
		Book: d.book, Now: func() time.Time { return d.now }, Tick: func() time.Time { return d.hand }, Random: rand.Reader,
		Prefs: Prefs{Hand: "RK"}, LocalZone: "America/New_York", Zones: time.LoadLocation, Bell: func() { d.bell++ },
	})
	d.size(80, 24)
}

func (d *driver) size(w, h int) { d.root.Update(tea.WindowSizeMsg{Width: w, Height: h}) }

// clock sets the time and lets the screens see it.
func (d *driver) clock(now string) {
	d.now = at(now)
	d.root.Update(tick(d.now))
}

var named = map[string]tea.KeyType{"tab": tea.KeyTab, "shift-tab": tea.KeyShiftTab,
	"enter": tea.KeyEnter, "esc": tea.KeyEsc, "up": tea.KeyUp, "down": tea.KeyDown, "left": tea.KeyLeft,
	"right": tea.KeyRight, "pgdown": tea.KeyPgDown, "end": tea.KeyEnd, "home": tea.KeyHome, "space": tea.KeySpace, "backspace": tea.KeyBackspace, "ctrl-p": tea.KeyCtrlP, "ctrl-u": tea.KeyCtrlU, "f1": tea.KeyF1, "f2": tea.KeyF2, "f3": tea.KeyF3, "f5": tea.KeyF5}

// press presses keys one after another, a second apart. A word that is no key's
// name is typed letter by letter.
func (d *driver) press(keys ...string) {
	d.t.Helper()
	for _, k := range keys {
		if kind, ok := named[k]; ok {
			msg := tea.KeyMsg{Type: kind}
			if k == "space" {
				msg.Runes = []rune{' '}
			}
			d.send(msg)
			continue
		}
		for _, c := range k {
			d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{c}})
		}
	}
}

func (d *driver) send(msg tea.KeyMsg) {
	d.hand = d.hand.Add(time.Second)
	d.keys++
	d.root.Update(msg)
}

var escapes = regexp.MustCompile("\x1b\\[[0-9;]*m")

func (d *driver) screen() string { return escapes.ReplaceAllString(d.root.View(), "") }

func (d *driver) sees(words ...string) {
	d.t.Helper()
	screen := d.screen()
	flat := strings.Join(strings.Fields(screen), " ")
	for _, w := range words {
		if !strings.Contains(screen, w) && !strings.Contains(flat, w) {
			d.t.Fatalf("the screen lacks %q:\n%s", w, screen)
		}
	}
}

// block begins a block of 2 rows of 3 for Lantern, as a new user would.
func (d *driver) block() {
	d.press("1", "Home block", "enter", "2", "enter", "3", "enter", "enter", "42.7 -77.2", "enter", "enter", "Lantern", "enter", "enter")
	d.sees("Home block", "6 stumps")
}

func (d *driver) stump() *record.Stump {
	s, err := d.book.Stump(d.walk().ID())
	if err != nil {
		d.t.Fatal(err)
	}
	return s
}

// walk is the open stump.
func (d *driver) walk() *stump.Screen {
	d.t.Helper()
	s, ok := find[*stump.Screen](&d.root.mode)
	if !ok {
		d.t.Fatalf("no stump is open:\n%s", d.screen())
	}
	return s
}

// ground is the block that is up or beneath.
func (d *driver) ground() *block.Screen {
	d.t.Helper()
	s, ok := find[*block.Screen](&d.root.mode)
	if !ok {
		d.t.Fatalf("no block is open:\n%s", d.screen())
	}
	return s
}

// round is the round that is up or beneath.
func (d *driver) round() *rounds.Screen {
	d.t.Helper()
	s, ok := find[*rounds.Screen](&d.root.mode)
	if !ok {
		d.t.Fatalf("no round is under way:\n%s", d.screen())
	}
	return s
}

// asked is the question of first use that is asked, "" if none is.
func (d *driver) asked() string {
	s, ok := upon[*first.Screen](&d.root.mode)
	if !ok {
		return ""
	}
	return s.Asked()
}

// is says whether a screen of a kind is up, whatever lies over it.
func is[S part.Screen](d *driver) bool { _, ok := upon[S](&d.root.mode); return ok }

// over says whether a prompt, a list or a page lies over the screen.
func over[S part.Screen](d *driver) bool { _, ok := d.root.over.(S); return ok }
