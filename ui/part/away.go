package part

import (
	"fmt"

	"barkslip/core/record"
)

// MadeUp says whether what the screens show is made up.
func (x *Session) MadeUp() bool {
	b := x.Site()
	return x.OwnDay != nil && x.OwnDay() || b != nil && b.MadeUp
}

// PutAway takes a block out of every list, as one act; nothing of it is erased.
// A book that went by a day of its own for its sake goes by the clock from then
// on.
func (x *Session) PutAway(b *record.Block) Msgs {
	bodies := []record.Body{&record.BlockSet{Block: b.ID, Setting: "away", Value: "yes"}}
	ownDay := x.OwnDay != nil && x.OwnDay()
	if ownDay && !b.MadeUp {
		bodies = append(bodies, &record.BlockSet{Block: b.ID, Setting: "made-up", Value: "yes"})
	}
	if err := x.settle(bodies); err != nil {
		return Fails(err)
	}
	if ownDay && x.EndOwnDay != nil {
		if err := x.EndOwnDay(); err != nil {
			return Fails(err)
		}
	}
	return Msgs{Restart{}, Say{fmt.Sprintf("Put away: %s. Nothing is erased; it can be brought back with b.", b.Name)}}
}

// bringBack has a block be worked again. A made-up one beside real ones is only
// opened: it stays in no list with them.
func (x *Session) bringBack(b *record.Block) Msgs {
	said := "Brought back: " + b.Name + "."
	if b.Away {
		if err := x.settle([]record.Body{&record.BlockSet{Block: b.ID, Setting: "away", Value: "no"}}); err != nil {
			return Fails(err)
		}
	}
	if b.MadeUp {
		said = b.Name + " is made up; nothing in it is real, and none of it is in a list with real stumps."
	}
	return Msgs{OpenBlock{Block: b.ID}, Say{said}}
}

// settle writes answers about the book in one transaction.
func (x *Session) settle(bodies []record.Body) error {
	events, err := x.Book.Folded().Answer(record.Given{Bodies: bodies, At: x.Now()})
	if err == nil {
		_, err = x.Write(events...)
	}
	return err
}

// AwayItems are the blocks that are in no list, to be picked and seen again.
func (x *Session) AwayItems() (items []Item) {
	for _, b := range x.Book.Folded().Others() {
		meaning := Counted(len(x.Summaries(b.ID)), "stump")
		if b.MadeUp {
			meaning = "made up, " + meaning
		}
		if b.Away {
			meaning = "put away, " + meaning
		}
		items = append(items, Item{Word: b.Name, Meaning: meaning, Take: func() Msgs { return x.bringBack(b) }})
	}
	return items
}

// OtherBook goes to another book, as one of those of Options opens it.
func OtherBook(open func() (Options, error), said string) Msgs {
	o, err := open()
	if err != nil {
		return Fails(err)
	}
	return Msgs{Reopen{o}, Say{said}}
}
