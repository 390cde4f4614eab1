package sample

import (
	"time"

	"barkslip/core/record"
)

// answered is the events an answer becomes.
func (l *life) answered(t time.Time, refines []record.ID, bodies []record.Body) []record.Event {
	var out []record.Event
	for _, b := range bodies {
		e := record.Event{At: t, Body: b}
		if q := e.Question(); q != "" {
			e.Replaces = l.s.Answers(q)
		} else {
			for _, id := range refines {
				for _, old := range l.s.Live {
					if old.ID == id && old.Body.Kind() == b.Kind() {
						e.Replaces, e.At = []record.ID{id}, old.At
					}
				}
			}
		}
		out = append(out, e)
	}
	return out
}
