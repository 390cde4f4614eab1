package rounds

import (
	"fmt"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/walk"
	"barkslip/ui/part"
)

// answerRow gives one answer, to the work under the cursor, for the stumps of its
// row that need it.
func (s *Screen) answerRow() part.Msgs {
	j, ok := s.job()
	if !ok {
		return part.Says("Nothing to do here.")
	}
	row := j.Call.Stump.Row
	return s.together(fmt.Sprintf("row %d", row), j, func(id record.StumpID) bool { return id.Row == row })
}

// answerAll gives it for all stumps shown that need it.
func (s *Screen) answerAll() part.Msgs {
	j, ok := s.job()
	if !ok {
		return part.Says("Nothing to do here.")
	}
	return s.together("all shown", j, func(record.StumpID) bool { return true })
}

// together gives one answer, to the work of the job or to what else is due there,
// for stumps of the round.
func (s *Screen) together(who string, here due.Job, takes func(record.StumpID) bool) part.Msgs {
	var ids []record.StumpID
	for _, c := range s.calls {
		if takes(c.Stump) {
			ids = append(ids, c.Stump)
		}
	}
	return s.x.AnswerTogether(who, ids, func(c *walk.Case) []walk.StepID {
		steps := []walk.StepID{c.Meets(here.Due.Kind)}
		for _, d := range here.Call.Dues {
			if d.Kind != here.Due.Kind {
				steps = append(steps, c.Meets(d.Kind))
			}
		}
		return steps
	})
}
