package record

// ofBlock is a body about one block.
type ofBlock interface{ about() ID }

func (b *BlockMade) about() ID  { return b.Block }
func (b *BlockSet) about() ID   { return b.Block }
func (b *DayWeather) about() ID { return b.Block }

// BlockOf is the block that a body about no stump names, None where it names none.
func BlockOf(b Body) ID {
	if of, ok := b.(ofBlock); ok {
		return of.about()
	}
	return None
}
