package ui

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/ui/part"
)

// onlyTrouble are the messages that must be seen wherever one is.
func onlyTrouble(msgs part.Msgs) (out part.Msgs) {
	for _, m := range msgs {
		switch m.(type) {
		case part.Fail, part.Warn, part.Reload:
			out = append(out, m)
		}
	}
	return out
}

type worked time.Time

// worksEvery is how often work in the background is looked at.
const worksEvery = 200 * time.Millisecond

// work says how far work in the background is, or does what is to be done once it is over.
func (r *root) work() tea.Cmd {
	w := r.working
	if w == nil {
		return nil
	}
	msgs, over := w.Over()
	if over {
		r.working, r.seen = nil, false
		r.do(part.Say{Text: "The change is worked out and in force."})
		if r.over != nil || r.screen() != r.workedOn { // nothing is laid over what is done meanwhile
			msgs = onlyTrouble(msgs)
		}
		r.do(msgs...)
		return nil
	}
	r.seen = true
	r.say(w.Far(), false)
	return tea.Tick(worksEvery, func(t time.Time) tea.Msg { return worked(t) })
}
