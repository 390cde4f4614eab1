package ui

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/core/record"
	"barkslip/ui/block"
	"barkslip/ui/part"
)

// glances is how often a book that is open elsewhere is looked at for changes.
const glances = 400 * time.Millisecond

type glanced time.Time

func glance() tea.Cmd { return tea.Tick(glances, func(t time.Time) tea.Msg { return glanced(t) }) }

// glance takes in what was answered elsewhere. Why it cannot is said at once, over
// what was said before, and again behind every key that says nothing.
func (r *root) glance() {
	defer r.recovered()
	newer, err := r.x.Renew()
	if newer {
		r.renewed()
	}
	switch {
	case err != nil:
		why := "Not up to date: " + part.Typed(err.Error())
		if why != r.unseen || r.said.Text == "" {
			r.unseen = why
			r.say(why, true)
		}
	case r.unseen != "":
		if r.said.Text == r.unseen {
			r.say("The book is seen again.", false)
		}
		r.unseen = ""
	}
}

// renewed brings the screen in step with what was seen anew. Where the block that is
// up is not in the book, as when another book was put in its place, or where there
// was none and one was begun, the screens start anew.
func (r *root) renewed() {
	_, onBlock := find[*block.Screen](&r.mode)
	begun := len(r.x.Book.Folded().List()) > 0
	switch {
	case onBlock && r.x.Site() == nil:
		r.anew()
		r.say("Another book stands in the place of the one that was looked at.", true)
	case !onBlock && begun:
		r.anew()
	default:
		r.fail(r.screen().Load())
	}
}

// anew starts from the ground.
func (r *root) anew() {
	r.x.Block = record.None
	r.x.Reread()
	r.start()
}
