package ui

import (
	"crypto/rand"
	"fmt"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/core/record"
	"barkslip/ui/paper"
)

// screen names where the keys go.
type screen int

const (
	onFirst screen = iota
	onBlock
	onStump
	onRounds
)

// root routes keys to the screen that is up, over it a prompt, a list, the help
// or the why-screen if one is open.
type root struct {
	x      *shared
	on     screen
	first  *firstScreen
	block  *blockScreen
	stump  *stumpScreen
	rounds *roundsScreen // kept while a stump of the round is open
	prompt *prompt
	list   *listScreen
	page   *page
	quit   bool
	calm   bool // a fault in the program is said, not thrown
}

type tick time.Time

func newRoot(o Options) *root {
	if o.Tick == nil {
		o.Tick = o.Now
	}
	if o.Random == nil {
		o.Random = rand.Reader
	}
	x := &shared{Options: o, width: fullWidth, height: fullHeight, hand: o.Prefs.Hand}
	x.setTheme(o.Prefs.Theme)
	r := &root{x: x}
	x.clocks.refresh(x)
	r.start()
	return r
}

// start opens the block worked last, or the first-use questions.
func (r *root) start() {
	blocks := r.x.Book.Folded().List()
	if len(blocks) == 0 {
		r.first = newFirst(r)
		r.on = onFirst
		return
	}
	if r.x.block == record.None {
		r.x.block = r.latestBlock(blocks)
	}
	r.openBlock()
	r.warnClock()
	if r.x.OwnDay != nil && r.x.OwnDay() {
		r.x.say("A made-up block; nothing in it is real. Its own day is " + r.x.now().In(r.x.site().Zone).Format("2 January 2006") + ".")
	}
	if r.x.hand == "" {
		r.askHand()
	}
}

// latestBlock is the block with the newest work.
func (r *root) latestBlock(blocks []*record.Block) record.ID {
	best, newest := blocks[0].ID, time.Time{}
	for _, b := range blocks {
		for _, s := range r.x.summaries(b.ID) {
			if s.Newest.After(newest) {
				best, newest = b.ID, s.Newest
			}
		}
	}
	return best
}

// warnClock says when the laptop's clock stands before the newest answer.
func (r *root) warnClock() {
	newest := r.x.Book.Newest()
	if d := newest.Sub(r.x.Now()); d > time.Hour {
		zone := r.x.site().Zone
		r.x.said = "The newest answer is dated " + newest.In(zone).Format("2 Jan 15:04") + ", after this laptop's clock. Is the clock right?"
		r.x.wrong = true
	}
}

func (r *root) openBlock() {
	at := record.NoStump
	switch {
	case r.stump != nil && r.stump.id.Block == r.x.block:
		at = r.stump.id
	case r.block != nil && r.block.block == r.x.block:
		at = r.block.cursor()
	}
	r.stump = nil
	r.block = newBlock(r, at)
	r.on = onBlock
}

// openRounds shows what is due, where it was left if a round is under way.
func (r *root) openRounds() {
	if r.rounds == nil {
		r.rounds = newRounds(r)
	}
	r.stump = nil
	r.rounds.load()
	r.on = onRounds
}

func (r *root) openStump(id record.StumpID) {
	s, err := newStump(r, id)
	if err != nil {
		r.x.fail(err)
		return
	}
	r.x.say("")
	r.stump = s
	r.on = onStump
}

// Init starts the tick that keeps times and white clocks true.
func (r *root) Init() tea.Cmd { return beat() }

func beat() tea.Cmd {
	return tea.Tick(time.Second, func(t time.Time) tea.Msg { return tick(t) })
}

// Update takes one message. Keys typed fast come as one message of several
// letters; each is its own key.
func (r *root) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		r.x.width, r.x.height = msg.Width, msg.Height
	case tick:
		r.beat()
		return r, beat()
	case tea.KeyMsg:
		for _, key := range keysOf(msg) {
			r.key(key)
			if r.quit {
				return r, tea.Quit
			}
		}
		if msg.Paste {
			r.paste(string(msg.Runes))
		}
	}
	return r, nil
}

// keysOf splits a message into keys. A key that came right behind Esc arrives
// as alt and the key.
func keysOf(msg tea.KeyMsg) []string {
	if msg.Paste {
		return nil
	}
	var keys []string
	if msg.Alt {
		keys = append(keys, "esc")
		msg.Alt = false
	}
	if msg.Type != tea.KeyRunes && msg.Type != tea.KeySpace {
		return append(keys, msg.String())
	}
	for _, c := range msg.Runes {
		keys = append(keys, string(c))
	}
	return keys
}

// reload brings the screen that is up in step with the book and the clock.
func (r *root) reload() error {
	switch r.on {
	case onBlock:
		r.block.load()
	case onStump:
		return r.stump.load()
	case onRounds:
		r.rounds.load()
	}
	return nil
}

func (r *root) beat() {
	if r.x.clocks.ring(r.x.Now()) && r.x.Bell != nil {
		r.x.Bell()
	}
	switch r.on {
	case onStump:
		r.stump.tick()
	case onRounds:
		r.rounds.fresh()
	}
}

func (r *root) tooSmall() bool { return r.x.width < leastWidth || r.x.height < leastHeight }

// noSuchKey is said of a key that a screen has no use for, until the next key.
const noSuchKey = "That key does nothing here; ? shows the keys."

// key takes one key.
func (r *root) key(key string) {
	if r.calm {
		defer func() {
			if p := recover(); p != nil {
				r.prompt, r.list, r.page = nil, nil, nil
				r.x.fail(fmt.Errorf("a fault in the program; every answer taken is safe: %v", p))
			}
		}()
	}
	if r.x.said == noSuchKey {
		r.x.say("")
	}
	switch {
	case key == "ctrl+c":
		r.quit = true
	case r.tooSmall():
		if key == "q" {
			r.quit = true
		}
	default:
		r.guarded(key)
	}
}

// harmless keys may be held down: they move, or only show.
var harmless = map[string]bool{"up": true, "down": true, "left": true, "right": true, "j": true, "k": true, "home": true, "end": true,
	"pgup": true, "pgdown": true, " ": true, "backspace": true, "tab": true, "shift+tab": true, "f": true, "esc": true}

// guarded keeps a key held down from acting again and again, and from typing
// into the field that came up under it.
func (r *root) guarded(key string) {
	now := r.x.Tick()
	switch f := r.field(); {
	case f != nil && f.takes(key):
		if r.x.guard.repeating(key, now) {
			if strings.Trim(f.text, key) == "" {
				f.text = ""
			}
			r.x.say("Same key again, ignored: it was held down.")
			return
		}
		r.send(key)
	case harmless[key]:
		r.send(key)
	case r.x.guard.held(key, now):
		r.x.say("Same key again, ignored: it was held down.")
	default:
		r.send(key)
		r.x.guard.answered(key, r.x.Tick())
	}
}

// field is the field that text goes to now, nil if there is none.
func (r *root) field() *field {
	switch {
	case r.prompt != nil:
		return &r.prompt.field
	case r.list != nil, r.page != nil:
		return nil
	case r.on == onFirst && r.first.begun:
		return &r.first.field
	case r.on == onStump && r.stump.doubt == nil && r.stump.entry() != nil:
		return &r.stump.field
	}
	return nil
}

// send hands a key to whatever is on top.
func (r *root) send(key string) {
	switch {
	case r.prompt != nil:
		r.prompt.key(key)
	case r.list != nil:
		r.list.key(key)
	case r.page != nil:
		r.page.key(key)
	case r.on == onFirst:
		r.first.key(key)
	case r.on == onBlock:
		r.block.key(key)
	case r.on == onStump:
		r.stump.key(key)
	case r.on == onRounds:
		r.rounds.key(key)
	}
}

func (r *root) paste(s string) {
	switch {
	case r.prompt != nil:
		r.prompt.field.paste(s)
	case r.on == onFirst:
		r.first.field.paste(s)
	case r.on == onStump:
		r.stump.field.paste(s)
	}
}

// View draws whatever is on top.
func (r *root) View() string {
	if r.tooSmall() {
		lines := wrapped(paper.Plain, "Barkslip needs a window of at least 60 columns by 15 lines. Make it larger; nothing is lost. q leaves.", max(r.x.width, 1))
		return r.x.theme.Paint(lines, r.x.width, r.x.height)
	}
	switch {
	case r.list != nil:
		return r.list.view()
	case r.page != nil:
		return r.page.view()
	}
	var f frame
	switch r.on {
	case onFirst:
		f = r.first.frame()
	case onBlock:
		f = r.block.frame()
	case onStump:
		f = r.stump.frame()
	case onRounds:
		f = r.rounds.frame()
	}
	if r.prompt != nil {
		f.keys = r.prompt.line()
	}
	return r.x.draw(f)
}

// common are the keys that work on every screen.
func (r *root) common(help func()) []binding {
	return []binding{
		{keys: []string{"?"}, word: "keys", help: "All keys of this screen.", do: help},
		{keys: []string{"q"}, word: "leave", help: "Leave the program. Nothing can be lost: every answer is on disk.", do: func() { r.quit = true }},
		{keys: []string{"h"}, help: "Another hand: type the initials.", do: r.askHand},
		{keys: []string{"L"}, help: "Dark or sunlight theme.", do: r.switchTheme},
		{keys: []string{"t"}, help: "Give answers for an earlier time, from notes on paper.", do: r.askTime},
	}
}

func (r *root) switchTheme() {
	if r.x.Prefs.Theme == "sunlight" {
		r.x.setTheme("dark")
	} else {
		r.x.setTheme("sunlight")
	}
	r.x.say("Theme: " + r.x.Prefs.Theme + ".")
	r.x.savePrefs()
}
