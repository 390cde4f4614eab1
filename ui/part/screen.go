// Package part holds what the screens share: the messages by which they ask the
// router, the session they work in, and the parts they are put together from,
// such as fields, key tables, lists, prompts, pages and the frame. It may import
// core and the leaves paper, figure and quiet; it knows no screen.
package part

import tea "github.com/charmbracelet/bubbletea"

// Screen is one thing that takes the keys and fills the window.
type Screen interface {
	// Key takes one key.
	Key(tea.KeyMsg) Msgs
	// Frame is what there is to see.
	Frame() Frame
	// Load brings it in step with the book and the clock.
	Load() error
	// Tick is called once a second.
	Tick() Msgs
	// Field is the text field that text goes to now, nil if there is none.
	Field() *Field
}

// Still is the part of a Screen that neither the book nor the clock changes and
// that takes no text.
type Still struct{}

// Load does nothing.
func (Still) Load() error { return nil }

// Tick does nothing.
func (Still) Tick() Msgs { return nil }

// Field is none.
func (Still) Field() *Field { return nil }
