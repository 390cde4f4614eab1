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

// answerMany gives one answer to the picked stumps; with none picked it picks all
// that are shown.
func (b *Screen) answerMany() part.Msgs {
	var ids []record.StumpID
	for _, s := range b.sums {
		if b.picked[s.ID] {
			ids = append(ids, s.ID)
		}
	}
	switch {
	case len(ids) == 0 && b.filter == nil:
		return b.whichMany()
	case len(ids) == 0:
		return b.pickAll()
	}
	return b.x.AnswerTogether("the picked", ids, nil)
}

// whichMany asks which stumps are to be given one answer, where none are picked and
// no filter shows some.
func (b *Screen) whichMany() part.Msgs {
	if len(b.sums) == 0 {
		return part.Says("There is no stump in this block yet.")
	}
	return b.x.Picks("One answer for which stumps?", "Space on the block picks them one by one; f shows some, and a then picks those.", []part.Item{
		{Word: fmt.Sprintf("row %d", b.Cursor().Row), Meaning: "the row under the cursor", Take: b.answerRow},
		{Word: "all of the block", Meaning: "picks " + part.Counted(len(b.sums), "stump") + "; Space then leaves one out", Take: b.pickAll},
	})
}

// manyWord names what answering many does here.
func (b *Screen) manyWord() string {
	switch {
	case len(b.picked) > 0:
		return "answer picked"
	case b.filter != nil:
		return "pick all"
	}
	return ""
}
