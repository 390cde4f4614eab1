package block

import (
	"fmt"

	"barkslip/core/due"
	"barkslip/core/plan"
	"barkslip/ui/part"
)

// heldWords is what is to be minded of a stump on which wood of a held lot lives.
func (b *Screen) heldWords(s due.Summary) (words []string) {
	for _, f := range plan.Flags(b.x.Book.Folded(), s) {
		words = append(words, fmt.Sprintf("%s of HELD lot %s, %s", part.Counted(f.Use.Living(), "scion"), f.Lot.Name(), f.Do.Words()))
	}
	return words
}
