package block

import (
	"fmt"

	"barkslip/core/record"
	"barkslip/ui/part"
)

// answerRow gives one answer to the row under the cursor.
func (b *Screen) answerRow() part.Msgs {
	if len(b.rows) == 0 {
		return nil
	}
	if b.isWhole() && b.perLine() > 1 {
		return part.Says("Walk into the rows first with Enter; one answer is for one row.")
	}
	r := b.rows[b.at]
	var ids []record.StumpID
	for _, s := range r.sums {
		ids = append(ids, s.ID)
	}
	return b.x.AnswerTogether(fmt.Sprintf("row %d", r.number), ids, nil)
}

// answerPicked gives one answer to the picked stumps.
func (b *Screen) answerPicked() part.Msgs {
	var ids []record.StumpID
	for _, s := range b.sums {
		if b.picked[s.ID] {
			ids = append(ids, s.ID)
		}
	}
	if len(ids) == 0 {
		return part.Says("Pick stumps with Space first, or r answers for the whole row.")
	}
	return b.x.AnswerTogether("the picked", ids, nil)
}
