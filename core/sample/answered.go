package sample

import (
	"fmt"
	"time"

	"barkslip/core/record"
)

// answered is the events an answer becomes. The crew gives none that cannot be:
// one that is refused is a fault of the sample.
func (l *life) answered(t time.Time, refines []record.ID, bodies []record.Body) []record.Event {
	events, err := l.s.Answer(record.Given{Bodies: bodies, At: t, Refines: refines, Hand: l.hand.initials, Zone: l.Zone})
	if err != nil {
		panic(fmt.Sprintf("the sample gives an answer that cannot be, on %s: %v", l.stump.Place(), err))
	}
	return events
}
