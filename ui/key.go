package ui

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"barkslip/ui/part"
)

// keysOf splits a message into keys. A key that came right behind Esc arrives as
// alt and the key; where something is typed, alt and a key that goes by words is
// taken as it is.
func (r *root) keysOf(msg tea.KeyMsg) []tea.KeyMsg {
	var keys []tea.KeyMsg
	if f := r.top().Field(); msg.Alt && (f == nil || !f.Edits(msg)) {
		keys = append(keys, tea.KeyMsg{Type: tea.KeyEsc})
		msg.Alt = false
	}
	if msg.Type != tea.KeyRunes || len(msg.Runes) < 2 {
		return append(keys, msg)
	}
	for _, c := range msg.Runes {
		keys = append(keys, tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{c}})
	}
	return keys
}

// key takes one key.
func (r *root) key(k tea.KeyMsg) {
	defer r.recovered()
	if r.noUse {
		r.do(part.Say{})
	}
	switch {
	case k.Type == tea.KeyCtrlC:
		r.quit = true
	case r.x.TooSmall():
		r.quit = k.String() == "q"
	default:
		r.guarded(k)
	}
}

// harmless keys may be held down: they move, or only show.
var harmless = key.NewBinding(key.WithKeys("up", "down", "left", "right", "home", "end", "pgup", "pgdown", " ", "backspace",
	"tab", "shift+tab", "z", "esc", "="))

// guarded keeps a key held down from acting again and again, and from typing
// into the field that came up under it.
func (r *root) guarded(k tea.KeyMsg) {
	const held = "Same key again at once, ignored as held down; press it once more."
	name, now := k.String(), r.x.Tick()
	defer func() { r.guard.Acted(now, r.x.Tick()) }()
	switch f := r.top().Field(); {
	case r.guard.Blind(now) && !key.Matches(k, harmless):
		r.ignored()
	case f != nil && f.Takes(k):
		if r.guard.Repeating(name, now) {
			f.Held(k)
			r.do(part.Say{Text: held})
			return
		}
		if r.said.Wrong { // about what was typed before
			r.do(part.Say{})
		}
		r.send(k)
	case f != nil && f.Edits(k):
		if r.said.Wrong { // about what stood there
			r.do(part.Say{})
		}
		r.send(k)
	case key.Matches(k, harmless):
		r.send(k)
	case r.guard.Held(name, now):
		r.do(part.Say{Text: held})
	case r.guard.Number(name, now):
		r.do(part.Say{Text: "A number? Only its first digit answered; " + name + " was ignored."})
	default:
		r.send(k)
		r.guard.Answered(name, r.x.Tick())
	}
}

// ignored says that a key was pressed too early; what was recorded stays said.
func (r *root) ignored() {
	const says = "A key pressed meanwhile was ignored."
	if text := r.said.Text; !strings.HasSuffix(text, says) {
		r.say(strings.TrimSpace(text+" "+says), r.said.Wrong)
	}
}

func (r *root) send(k tea.KeyMsg) { r.do(r.top().Key(k)...) }
