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

// together gives one answer for the stumps listed with the job: those of its
// group, or all of the round where they are walked across the kinds of work.
func (s *Screen) together(who string, here due.Job, takes func(record.StumpID) bool) part.Msgs {
	var ids []record.StumpID
	for _, j := range s.groups[s.groupAt(s.at)].Jobs {
		if takes(j.Call.Stump) {
			ids = append(ids, j.Call.Stump)
		}
	}
	dues := []due.Due{*here.Due}
	if s.inWalk {
		dues = here.Call.Dues
	}
	return s.x.AnswerTogether(who, ids, func(c *walk.Case) (steps []walk.StepID) {
		for _, d := range dues {
			steps = append(steps, c.Meets(d.Kind))
		}
		return steps
	})
}
