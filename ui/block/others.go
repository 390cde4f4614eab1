package block

import (
	"fmt"

	"barkslip/core/record"
	"barkslip/ui/part"
)

// pickBlock goes to another block, begins one, or puts one away.
func (b *Screen) pickBlock() part.Msgs {
	var items []part.Item
	listed := b.x.Book.Folded().List()
	for _, other := range listed {
		items = append(items, part.Item{Word: other.Name, Meaning: b.stateOf(other), Take: part.Does(part.OpenBlock{Block: other.ID})})
	}
	items = append(items, b.x.AwayItems()...)
	if len(listed) > 1 {
		items = append(items, part.Item{Word: "two are one", Meaning: "this block was begun twice, on two laptops", Take: b.pickSame})
	}
	here := b.x.Site()
	if len(b.x.Book.Folded().Joined(here.ID)) > 0 {
		items = append(items, part.Item{Word: "take apart", Meaning: here.Name + " was made one with another block", Take: b.askApart})
	}
	if b.x.Own != nil {
		items = append(items, part.Item{Word: "your own book", Meaning: "leave the made-up one", Take: b.ownBook})
	} else {
		items = append(items, part.Item{Word: "a new block", Meaning: "by rows and trees, or from a list", Take: part.Does(part.NewBlock{})})
	}
	if !here.Away {
		items = append(items, part.Item{Word: "put away", Meaning: "this block, out of every list", Take: b.askAway})
	}
	return b.x.Picks("Which block?", "", items)
}

func (b *Screen) ownBook() part.Msgs { return part.OtherBook(b.x.Own, "Your own book.") }

// askAway asks before a block is put away.
func (b *Screen) askAway() part.Msgs {
	here := b.x.Site()
	why := "Its stumps leave every list, round and count. Nothing is erased; it can be brought back."
	return part.Msgs{part.PickList{List: part.NewList(b.x, "Put "+here.Name+" away?", why, []part.Item{
		{Word: "put away", Meaning: part.Counted(len(b.sums), "stump"), Take: func() part.Msgs { return b.x.PutAway(here) }},
		{Word: "leave it", Meaning: "as it is", Take: part.Does(part.Say{})},
	}).Unpicked()}}
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
		items = append(items, part.Item{Word: other.Name, Meaning: stumps, Take: func() part.Msgs { return b.askSame(here, other) }})
	}
	const why = "Stumps with the same row and tree become one; answers that disagree are shown."
	return b.x.Picks("Which block is the same as "+here.Name+"?", why, items)
}

// askSame makes blocks of one name one; of others it first shows what they have
// in common.
func (b *Screen) askSame(here, other *record.Block) part.Msgs {
	if here.MadeUp != other.MadeUp {
		return part.Msgs{part.Warn{Text: "One of them is made up: real stumps and made-up ones stay apart."}}
	}
	if sameName(here.Name, other.Name) {
		return b.same(here, other)
	}
	shared, err := b.overlap(here, other)
	if err != nil {
		return part.Fails(err)
	}
	return part.Msgs{part.PickList{List: part.NewList(b.x, "Are "+here.Name+" and "+other.Name+" one block?", shared.words(here, other), []part.Item{
		{Word: "not one", Meaning: "leave both as they are", Take: part.Does(part.Say{})},
		{Word: "one block", Meaning: "it can be taken apart again with b", Take: func() part.Msgs { return b.same(here, other) }},
	}).Unpicked()}}
}

// same makes two blocks one and goes there.
func (b *Screen) same(here, other *record.Block) part.Msgs {
	same := record.Event{At: b.x.Now(), Body: &record.Same{What: "block", A: here.ID.String(), B: other.ID.String()}}
	if _, err := b.x.Write(same); err != nil {
		return part.Fails(err)
	}
	said := fmt.Sprintf("Recorded: %s and %s are one block. b takes them apart again.", here.Name, other.Name)
	return part.Msgs{part.OpenBlock{Block: b.x.Book.Folded().CanonicalBlock(here.ID)}, part.Say{Text: said}}
}

// askApart asks before blocks that were made one are taken apart.
func (b *Screen) askApart() part.Msgs {
	why := "Each stump goes back to the block it was recorded in. What was answered since they were one stays with " + b.x.Site().Name + "."
	return part.Msgs{part.PickList{List: part.NewList(b.x, "Take "+b.x.Site().Name+" apart again?", why, []part.Item{
		{Word: "leave it", Meaning: "one block", Take: part.Does(part.Say{})},
		{Word: "take apart", Meaning: "the blocks are two again; they can be made one again", Take: b.apart},
	}).Unpicked()}}
}

// apart takes back, as one act, that the block and others are one.
func (b *Screen) apart() part.Msgs {
	var events []record.Event
	for _, s := range b.x.Book.Folded().Joined(b.x.Block) {
		events = append(events, record.Event{At: b.x.Now(), Body: &record.Withdrawn{Of: s.ID}})
	}
	if _, err := b.x.Write(events...); err != nil {
		return part.Fails(err)
	}
	return part.Msgs{part.OpenBlock{Block: b.x.Block}, part.Say{Text: "Taken apart: the blocks are two again."}}
}
