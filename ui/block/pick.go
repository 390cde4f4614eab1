package block

import (
	"fmt"

	"barkslip/core/record"
	"barkslip/ui/part"
)

// pick picks the stump under the cursor, or leaves it out again; where the block
// is seen whole, all stumps shown of the line.
func (b *Screen) pick() part.Msgs {
	if b.isWhole() {
		return b.pickLine()
	}
	id := b.Cursor()
	if b.picked[id] {
		delete(b.picked, id)
	} else if id != record.NoStump {
		b.picked[id] = true
	}
	b.step(0, 1)
	return b.saysPicked()
}

func (b *Screen) pickLine() part.Msgs {
	if len(b.rows) == 0 {
		return nil
	}
	t := b.count()
	from, to := b.line(b.at / b.perLine())
	var ids []record.StumpID
	all := true
	for i := b.rows[from].first; i < b.rows[to].first+len(b.rows[to].sums); i++ {
		if t.shows(i) {
			ids, all = append(ids, b.sums[i].ID), all && b.picked[b.sums[i].ID]
		}
	}
	for _, id := range ids {
		if all {
			delete(b.picked, id)
		} else {
			b.picked[id] = true
		}
	}
	return b.saysPicked()
}

// pickAll picks all stumps that are shown.
func (b *Screen) pickAll() part.Msgs {
	t := b.count()
	for i, s := range b.sums {
		if t.shows(i) {
			b.picked[s.ID] = true
		}
	}
	return b.saysPicked()
}

func (b *Screen) saysPicked() part.Msgs {
	return part.Says(fmt.Sprintf("%d picked. a gives all of them one answer, Space leaves one out, Esc lets them go.", len(b.picked)))
}

// escWord names what Esc does here, nothing where it does nothing.
func (b *Screen) escWord() string {
	switch {
	case b.view.in:
		return "whole block"
	case len(b.picked) > 0 || b.filter != nil:
		return "let go"
	}
	return ""
}

// esc goes back to the whole block, or lets go of picks and filter where it is up.
func (b *Screen) esc() part.Msgs {
	if b.view.in {
		b.view.in = false
		return part.Says("")
	}
	if !b.view.turned && len(b.picked) == 0 && b.filter == nil {
		return part.Msgs{part.NoUse{Why: "This is the block; nothing lies behind it. q leaves the program."}}
	}
	b.view = view{}
	return b.letGo()
}

func (b *Screen) letGo() part.Msgs {
	b.picked = map[record.StumpID]bool{}
	b.filterBy(nil)
	return part.Says("")
}
