package ui

import (
	"fmt"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/ui/part"
)

// root routes keys to what is on top, and does what comes back.
type root struct {
	mode
	x     *part.Session
	said  part.Status
	noUse bool // what is said is that the last key has no use here
	guard part.Guard
	quit  bool
	calm  bool // a fault in the program is said, not thrown

	met      met
	working  *part.Working // what is written meanwhile; nil for nothing
	seen     bool          // it is looked at
	workedOn part.Screen   // the screen on which it was begun
	unseen   string        // of a look: why the book cannot be seen as it is now; "" where it can
}

type tick time.Time

func newRoot(o Options) *root {
	r := &root{x: part.NewSession(o), met: met{asked: -1}}
	r.start()
	return r
}

// Init starts the tick that keeps times and white clocks true, and in a look the
// one that takes in what is answered elsewhere.
func (r *root) Init() tea.Cmd {
	if r.x.Looking() {
		return tea.Batch(beat(), glance())
	}
	return beat()
}

// beats is how often times and clocks are seen to: they are told in minutes.
const beats = 2 * time.Second

func beat() tea.Cmd {
	return tea.Tick(beats, func(t time.Time) tea.Msg { return tick(t) })
}

// Update takes one message. Keys typed fast come as one message of several
// letters; each is its own key.
func (r *root) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		r.x.Width, r.x.Height = msg.Width, msg.Height
	case tick:
		r.beat()
		return r, beat()
	case glanced:
		r.glance()
		return r, glance()
	case worked:
		return r, r.work()
	case tea.KeyMsg:
		if msg.Paste {
			r.paste(string(msg.Runes))
			return r, nil
		}
		for _, k := range r.keysOf(msg) {
			if r.key(k); r.quit {
				return r, tea.Quit
			}
		}
		if r.working != nil && !r.seen {
			return r, r.work()
		}
	}
	return r, nil
}

func (r *root) beat() {
	if r.x.Clocks.Ring(r.x.Now()) && r.x.Bell != nil {
		r.x.Bell()
	}
	r.do(r.screen().Tick()...)
	r.meetBeat()
}

// paste puts text into the field that has the focus, or nowhere.
func (r *root) paste(text string) {
	if f := r.top().Field(); f != nil && !r.x.TooSmall() {
		f.Paste(text)
	}
}

// View draws what is on top.
func (r *root) View() string {
	if r.x.TooSmall() {
		return r.x.DrawTooSmall()
	}
	return r.x.Draw(r.top().Frame(), r.said)
}

// recovered says that the program has a fault, and goes on without what lay over
// the screen.
func (r *root) recovered() {
	if !r.calm {
		return
	}
	if p := recover(); p != nil {
		r.bare()
		r.do(part.Fail{Err: fmt.Errorf("a fault in the program; every answer recorded is safe: %v", p)})
	}
}
