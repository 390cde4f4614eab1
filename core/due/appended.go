package due

import "barkslip/core/record"

// Appended is what became of events that were put into a journal: the events as
// written, and the stumps they are about as they stand after it, so that nobody
// has to read and reckon them again.
type Appended struct {
	Events  []record.Event
	Changed []Changed // in list order; a stump of which a record is damaged is left out
}

// Changed is a stump that events were written about.
type Changed struct {
	Stump   *record.Stump
	Summary Summary
}

// Of is a stump of an answer as it stands after it, nil if it is not among the
// changed.
func (a Appended) Of(id record.StumpID) *record.Stump {
	for _, c := range a.Changed {
		if c.Stump.ID == id {
			return c.Stump
		}
	}
	return nil
}
