package block

import (
	"fmt"

	"barkslip/core/record"
	"barkslip/ui/part"
)

// pickBlock goes to another block or begins one.
func (b *Screen) pickBlock() part.Msgs {
	var items []part.Item
	for _, other := range b.x.Book.Folded().List() {
		stumps := fmt.Sprintf("%d stumps", len(b.x.Summaries(other.ID)))
		items = append(items, part.Item{Word: other.Name, Meaning: stumps, Take: part.Does(part.OpenBlock{Block: other.ID})})
	}
	if len(items) > 1 {
		items = append(items, part.Item{Word: "two are one", Meaning: "this block was begun twice, on two laptops", Take: b.pickSame})
	}
	items = append(items, part.Item{Word: "a new block", Meaning: "by rows and trees, or from a list", Take: part.Does(part.NewBlock{})})
	return b.x.Picks("Which block?", "", items)
}

// pickSame says that the block the screens are on and another are one: both were
// begun by hand, and their stumps, by row and tree, are the same.
func (b *Screen) pickSame() part.Msgs {
	here := b.x.Site()
	var items []part.Item
	for _, other := range b.x.Book.Folded().List() {
		if other.ID == here.ID {
			continue
		}
		stumps := part.Counted(len(b.x.Summaries(other.ID)), "stump")
		items = append(items, part.Item{Word: other.Name, Meaning: stumps, Take: func() part.Msgs { return b.same(here, other) }})
	}
	const why = "Stumps with the same row and tree become one; answers that disagree are shown. This stays."
	return b.x.Picks("Which block is the same as "+here.Name+"?", why, items)
}

// same makes two blocks one and goes there.
func (b *Screen) same(here, other *record.Block) part.Msgs {
	same := record.Event{At: b.x.Now(), Body: &record.Same{What: "block", A: here.ID.String(), B: other.ID.String()}}
	if _, err := b.x.Write(same); err != nil {
		return part.Fails(err)
	}
	said := fmt.Sprintf("Recorded: %s and %s are one block.", here.Name, other.Name)
	return part.Msgs{part.OpenBlock{Block: b.x.Book.Folded().CanonicalBlock(here.ID)}, part.Say{Text: said}}
}
