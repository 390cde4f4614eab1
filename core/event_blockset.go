package core

import "errors"

// BlockSet sets one setting of a block; the settings are listed in setting.go.
type BlockSet struct {
	Block   ID
	Setting string
	Value   string
}

// Kind is block-set.
func (*BlockSet) Kind() string { return "block-set" }

func (b *BlockSet) fields(f fields) {
	f.id("block", &b.Block)
	f.text("setting", &b.Setting)
	f.text("value", &b.Value)
}

func (b *BlockSet) question() string { return "block/" + b.Block.String() + "/" + b.Setting }

func (b *BlockSet) check() error {
	if b.Block == None || b.Setting == "" {
		return errors.New("block-set needs a block and a setting")
	}
	if s, ok := settings[b.Setting]; ok {
		return s(&Block{}, b.Value)
	}
	return nil
}

func (b *BlockSet) applyBook(book *Book, _ Event) {
	if set, ok := settings[b.Setting]; ok {
		_ = set(book.block(b.Block), b.Value) // a value that does not hold was refused on entry
	}
}
