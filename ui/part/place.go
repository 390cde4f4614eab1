package part

import (
	"fmt"
	"strings"

	"barkslip/core/record"
)

// AskPlace asks for a place and opens the stump there. A tree alone is one of the
// row that is at hand; what is begun stands in the field already.
func (x *Session) AskPlace(row uint16, begun string) Msgs {
	return x.AsksFrom(begun, "Go to row/tree:", "", true, func(text string) (Msgs, error) {
		id, err := x.readPlace(text, row)
		if err != nil {
			return nil, err
		}
		return Msgs{Open{Stump: id}}, nil
	})
}

// readPlace reads 4/17, 4/17b, 4/17/2, 4 17, or 17 for a tree of the row at hand. A
// tree with limbs is its first limb.
func (x *Session) readPlace(text string, row uint16) (record.StumpID, error) {
	if !strings.Contains(text, "/") {
		parts := strings.Fields(text)
		if len(parts) == 1 && row > 0 {
			parts = []string{fmt.Sprint(row), parts[0]}
		}
		text = strings.Join(parts, "/")
	}
	r, tree, limb, err := record.ParsePlace(text)
	if err != nil {
		return record.NoStump, err
	}
	id := record.StumpID{Block: x.Block, Row: r, Tree: tree, Limb: limb}
	id, found := x.StumpOf(id)
	if !found {
		return record.NoStump, fmt.Errorf("there is no stump at %s in this block", id.Place())
	}
	return id, nil
}
