package core

import "errors"

// BlockMade begins a block. Its id is random and made once.
type BlockMade struct {
	Block ID
	Name  string
}

// Kind is block-made.
func (*BlockMade) Kind() string { return "block-made" }

func (b *BlockMade) fields(f fields) {
	f.id("block", &b.Block)
	f.text("name", &b.Name)
}

func (b *BlockMade) question() string { return "block/" + b.Block.String() + "/name" }

func (b *BlockMade) check() error {
	if b.Block == None || b.Name == "" {
		return errors.New("block-made needs a block and a name")
	}
	return nil
}

func (b *BlockMade) applyBook(book *Book, e Event) { book.block(b.Block).made(b.Name, e.At) }
