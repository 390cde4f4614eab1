package record

import "barkslip/core/list"

// FromList is the stump a row of a list stands for, and what the list says of
// it.
func FromList(block ID, r list.Row) (StumpID, *StumpAdded) {
	id := StumpID{Block: block, Row: uint16(r.Row), Tree: uint16(r.Tree), Limb: uint8(r.Limb)}
	return id, &StumpAdded{Across: Measure{Length: r.Across, Typed: r.Typed}, Stock: r.Stock, Variety: r.Variety, Note: r.Note}
}
